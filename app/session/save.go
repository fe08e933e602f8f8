package session

import (
	"errors"
	"io/fs"
	"path/filepath"
	"strings"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/app/project"
	"gussetwright/geometry/phrase"
)

// Errors after which saving needs a decision of the user.
var (
	// ErrNoPath says that the bag has no file yet: SaveAs it.
	ErrNoPath = phrase.Errorf("the bag has no file yet; choose one with Save as")
	// ErrReadOnly says that the file was written by a newer version, parts of
	// which this one would lose: SaveAs another name.
	ErrReadOnly = phrase.Errorf("the file was saved by a newer version, and saving would lose what this version does not know; save a copy under another name")
)

// ChangedError says that another program changed the open file since it was opened
// or saved: Overwrite it, or SaveAs another name.
type ChangedError struct{ Path string }

// Error names the file and the ways out.
func (e *ChangedError) Error() string { return e.message().String() }

// In is Error in another language.
func (e *ChangedError) In(translate func(string) string) string { return e.message().In(translate) }

func (e *ChangedError) message() phrase.Phrase {
	return phrase.New("save project %s: another program changed the file after it was opened here; save under another name, or overwrite it", e.Path)
}

// Save writes the open file, bag.json alone where it was that. A file that was
// removed meanwhile is written anew. After any error the file is as it was. The
// errors that ask for a decision are ErrNoPath, ErrReadOnly and *ChangedError.
func (s *Session) Save() error {
	if s.opened.path == "" {
		return phrase.Errorf("save project: %s", ErrNoPath)
	}
	if s.opened.readOnly {
		return phrase.Errorf("save project %s: %s", s.opened.path, ErrReadOnly)
	}
	sum, _, err := look(s.opened.path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return phrase.Errorf("save project %s: %s; save under another name", s.opened.path, err)
	case sum != s.opened.sum:
		return &ChangedError{s.opened.path}
	}
	return s.Overwrite()
}

// Overwrite is Save for a file that another program changed.
func (s *Session) Overwrite() error {
	if s.opened.path == "" {
		return phrase.Errorf("save project: %s", ErrNoPath)
	}
	return s.write(s.opened.path, s.opened.bare)
}

// SaveAs writes the project to path, which then is the open file, and replaces
// what is there. A path that ends in ".json" gets bag.json alone with the artwork
// beside it.
func (s *Session) SaveAs(path string) error {
	absolute, err := filepath.Abs(path)
	if err != nil {
		return phrase.Errorf("save project %s: %s", path, err)
	}
	return s.write(absolute, strings.EqualFold(filepath.Ext(path), ".json"))
}

func (s *Session) write(path string, bare bool) error {
	if s.opened.readOnly && isSameFile(path, s.opened.path) {
		return phrase.Errorf("save project %s: %s", path, ErrReadOnly)
	}
	state := s.doc.State()
	saved := s.doc.Project()
	saved.ReadOnly = false
	saved.Spec.Date = state.Day(s.now()).Format(time.DateOnly)
	if err := s.put(path, bare, saved); err != nil {
		return err
	}
	sum, _, err := look(path)
	if err != nil {
		return phrase.Errorf("save project %s: written, but not to be read again: %s; save under another name", path, err)
	}
	s.opened = file{path: path, sum: sum, bare: bare, artwork: saved.Files}
	s.doc.MarkSavedOn(saved.Spec.Date)
	s.remember()
	s.copies.drop()
	return nil
}

func (s *Session) put(path string, bare bool, saved project.Project) error {
	if bare {
		return s.putBare(path, saved)
	}
	saved.Preview = preview(saved)
	return project.Save(path, saved)
}

// preview returns the small picture of the bag. One that cannot be drawn must not
// keep the work from being saved.
func preview(saved project.Project) []byte {
	snapshot, err := document.Derive(saved.Spec)
	if err != nil {
		return nil
	}
	picture, err := export.Preview(snapshot)
	if err != nil {
		return nil
	}
	return picture
}
