package project

import (
	"encoding/json"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// complaints collects what is wrong with a file, up to mostComplaints.
type complaints struct {
	found []error
	more  int
}

func (c *complaints) add(complaint error) {
	if c.full() {
		c.more++
		return
	}
	c.found = append(c.found, complaint)
}

func (c *complaints) full() bool { return len(c.found) >= mostComplaints }

// err returns all complaints joined, or nil.
func (c *complaints) err() error {
	if c.more == 0 {
		return errors.Join(c.found...)
	}
	return errors.Join(errors.Join(c.found...), phrase.Errorf("and %d more; mend these first", c.more))
}

// shown returns a value of bag.json as it stands in the file, or what it is when
// that would be long.
func shown(value any) string {
	switch value := value.(type) {
	case nil:
		return "null"
	case string:
		return strconv.Quote(clip(value))
	case json.Number:
		return clip(value.String())
	case bool:
		return strconv.FormatBool(value)
	case []any:
		return fmt.Sprintf("a list of %d", len(value))
	case map[string]any:
		return fmt.Sprintf("a group of %d entries", len(value))
	}
	return fmt.Sprint(value)
}

// shownKey returns a key as it may stand in a path: plain names as they are, all
// others quoted, so that a message cannot be broken by a file.
func shownKey(key string) string {
	plain := func(r rune) bool {
		return r == '_' || r == '-' || '0' <= r && r <= '9' || 'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z'
	}
	if key == "" || strings.ContainsFunc(key, func(r rune) bool { return !plain(r) }) {
		return strconv.Quote(clip(key))
	}
	return clip(key)
}

func clip(text string) string {
	count := 0
	for at := range text {
		if count == longestShown {
			return text[:at] + "…"
		}
		count++
	}
	return text
}

// join returns the path of a key in a group.
func join(group, key string) string {
	if group == "" {
		return shownKey(key)
	}
	return group + "." + shownKey(key)
}

// asWritten returns the complaint with the value as it stands in the file: a
// rounded 1e-9 would read as 0, and 1e300 would fill the screen.
func asWritten(complaint *bag.FieldError, value any) *bag.FieldError {
	changed := *complaint
	changed.Value = shown(value)
	if field, found := bag.FieldAt(complaint.Path); found {
		if _, isNumber := value.(json.Number); isNumber {
			changed.Value = geometry.WithUnit(changed.Value, field.Unit)
		}
	}
	return &changed
}
