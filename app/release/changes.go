package release

import (
	"fmt"
	"strings"
	"time"
)

// Change is a version of the program and what is new in it.
type Change struct {
	Version string    // as in 1.2.3
	Date    time.Time // the day of the release, in UTC
	Parts   []Part    // at least one
}

// Part is a list of changes of one kind.
type Part struct {
	Title string   // "Added", "Changed", "Mended"
	Items []string // a sentence or two each, at least one
}

// Parse reads a list of changes: a title line that starts with "# ", then for each
// version, the newest first, a line "## VERSION - YYYY-MM-DD" and below it lines
// "### PART" with items "- TEXT". An item goes on in the lines that are indented.
// An error names the line and what was expected there.
func Parse(text string) ([]Change, error) {
	r := reader{}
	for i, line := range strings.Split(text, "\n") {
		if err := r.take(strings.TrimRight(line, "\r")); err != nil {
			return nil, fmt.Errorf("read the changes, line %d: %w", i+1, err)
		}
	}
	if err := r.finished(); err != nil {
		return nil, fmt.Errorf("read the changes: %w", err)
	}
	return r.changes, nil
}

// reader gathers the versions from line after line.
type reader struct{ changes []Change }

func (r *reader) take(line string) error {
	switch {
	case strings.HasPrefix(line, "### "):
		return r.part(strings.TrimPrefix(line, "### "))
	case strings.HasPrefix(line, "## "):
		return r.version(strings.TrimPrefix(line, "## "))
	case strings.HasPrefix(line, "- "):
		return r.item(strings.TrimPrefix(line, "- "))
	case strings.HasPrefix(line, "  ") && strings.TrimSpace(line) != "":
		return r.more(strings.TrimSpace(line))
	case strings.TrimSpace(line) == "", len(r.changes) == 0:
		return nil // space, or the words at the head
	}
	return fmt.Errorf("%q is neither a version, a part nor an item", line)
}

func (r *reader) version(head string) error {
	if err := r.finished(); err != nil && len(r.changes) > 0 {
		return err
	}
	name, day, found := strings.Cut(head, " - ")
	if !found || !isVersion(name) {
		return fmt.Errorf("%q is no head of a version; write it as 1.2.3 - 2026-12-31", head)
	}
	date, err := time.Parse(time.DateOnly, day)
	if err != nil {
		return fmt.Errorf("%q is no day; write it as 2026-12-31: %w", day, err)
	}
	if last := len(r.changes) - 1; last >= 0 && date.After(r.changes[last].Date) {
		return fmt.Errorf("%s of %s stands below an older version; put the newest first", name, day)
	}
	r.changes = append(r.changes, Change{Version: name, Date: date})
	return nil
}

// isVersion tells whether a text is three numbers with points between.
func isVersion(text string) bool {
	numbers := strings.Split(text, ".")
	for _, number := range numbers {
		if number == "" || strings.Trim(number, "0123456789") != "" {
			return false
		}
	}
	return len(numbers) == 3
}

func (r *reader) part(title string) error {
	if len(r.changes) == 0 {
		return fmt.Errorf("the part %q stands above the first version", title)
	}
	last := &r.changes[len(r.changes)-1]
	last.Parts = append(last.Parts, Part{Title: title})
	return nil
}

// open returns the part that items go to.
func (r *reader) open() (*Part, error) {
	if len(r.changes) == 0 || len(r.changes[len(r.changes)-1].Parts) == 0 {
		return nil, fmt.Errorf("an item stands above the first part; write ### Added or the like over it")
	}
	parts := r.changes[len(r.changes)-1].Parts
	return &parts[len(parts)-1], nil
}

func (r *reader) item(text string) error {
	part, err := r.open()
	if err != nil {
		return err
	}
	part.Items = append(part.Items, text)
	return nil
}

func (r *reader) more(text string) error {
	part, err := r.open()
	if err != nil {
		return err
	}
	if len(part.Items) == 0 {
		return fmt.Errorf("%q goes on with an item that is not there", text)
	}
	part.Items[len(part.Items)-1] += " " + text
	return nil
}

// finished tells what the version that was read last lacks.
func (r *reader) finished() error {
	if len(r.changes) == 0 {
		return fmt.Errorf("there is no version; write ## 1.2.3 - 2026-12-31")
	}
	last := r.changes[len(r.changes)-1]
	if len(last.Parts) == 0 {
		return fmt.Errorf("%s has no changes", last.Version)
	}
	for _, part := range last.Parts {
		if len(part.Items) == 0 {
			return fmt.Errorf("%s of %s is empty", part.Title, last.Version)
		}
	}
	return nil
}
