package project

import (
	"strconv"
	"strings"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

const (
	formatName = "gussetwright/"
	// version is the current version of the project file.
	version = 1
)

// migration turns a tree of one version into a tree of the next, in place.
type migration func(tree map[string]any) error

// history is what the reader knows about the versions of the project file.
type history struct {
	current    int
	migrations map[int]migration // from the version in the key to the next
}

// released returns the history of this program. Version 1 is the first one, so
// there is nothing to migrate yet.
func released() history { return history{current: version} }

// age is how the version of a file compares with the current one.
type age struct {
	format string
	newer  bool
	older  bool
}

// migrate reads and removes the format of a tree and brings an older tree up to
// the current version. A tree without a format is taken as current.
func (h history) migrate(tree map[string]any) (age, error) {
	value, given := tree["format"]
	delete(tree, "format")
	if !given {
		return age{}, nil
	}
	format, _ := value.(string)
	number, isOurs := versionOf(format)
	if !isOurs {
		return age{}, h.unknownFormat(value)
	}
	for step := number; step < h.current; step++ {
		change, known := h.migrations[step]
		if !known {
			return age{}, h.unknownFormat(value)
		}
		if err := change(tree); err != nil {
			return age{}, phrase.Errorf("bring the file from version %d to %d: %s", step, step+1, err)
		}
	}
	return age{format: format, newer: number > h.current, older: number < h.current}, nil
}

func (h history) unknownFormat(value any) error {
	return &bag.FieldError{
		Path: "format", Value: shown(value), Limit: phrase.New("not a project file that this program knows"),
		Remedy: phrase.New("choose another file, or write %q", formatName+strconv.Itoa(h.current)),
	}
}

// versionOf returns the version of a format such as gussetwright/1.
func versionOf(format string) (int, bool) {
	digits, isOurs := strings.CutPrefix(format, formatName)
	number, err := strconv.Atoi(digits)
	return number, isOurs && err == nil && number >= 0 && digits == strconv.Itoa(number)
}
