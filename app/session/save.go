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
	"gussetwright/geometry/bag"
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
func (s *Session) Save() error { return s.BeginSave().now() }

// BeginSave is Save in parts.
func (s *Session) BeginSave() *Task {
	switch {
	case s.opened.path == "":
		return failed(phrase.Errorf("save project: %s", ErrNoPath))
	case s.opened.readOnly:
		return failed(phrase.Errorf("save project %s: %s", s.opened.path, ErrReadOnly))
	}
	return s.begin(saving{path: s.opened.path, bare: s.opened.bare, approve: s.opened.approve})
}

// Overwrite is Save for a file that another program changed.
func (s *Session) Overwrite() error { return s.BeginOverwrite().now() }

// BeginOverwrite is Overwrite in parts.
func (s *Session) BeginOverwrite() *Task {
	if s.opened.path == "" {
		return failed(phrase.Errorf("save project: %s", ErrNoPath))
	}
	return s.begin(saving{path: s.opened.path, bare: s.opened.bare, approve: always})
}

// SaveAs writes the project to path, which then is the open file, and replaces
// what is there. A path that ends in ".json" gets bag.json alone with the artwork
// beside it. The open file itself is replaced under the conditions of Save.
func (s *Session) SaveAs(path string) error { return s.BeginSaveAs(path).now() }

// BeginSaveAs is SaveAs in parts.
func (s *Session) BeginSaveAs(path string) *Task {
	absolute, err := filepath.Abs(path)
	if err != nil {
		return failed(phrase.Errorf("save project %s: %s", path, err))
	}
	approve := always
	if absolute == s.opened.path {
		approve = s.opened.approve
	}
	return s.begin(saving{path: absolute, bare: strings.EqualFold(filepath.Ext(path), ".json"), approve: approve})
}

// approve allows the open file to be replaced as long as it is the one that was opened
// here, or is gone.
func (f file) approve() error {
	sum, _, err := look(f.path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return phrase.Errorf("save project %s: %s; save under another name", f.path, err)
	case sum != f.sum:
		return &ChangedError{f.path}
	}
	return nil
}

func always() error { return nil }

// saving is a project on its way to the disk. It shares nothing with the session that
// either of them changes.
type saving struct {
	path    string
	bare    bool
	approve func() error // asked before the file is replaced

	opened  file // what was open when it was begun
	project project.Project
	sum     string // of what was written
}

func (s *Session) begin(v saving) *Task {
	state, loads := s.doc.State(), s.doc.State().Loads
	v.opened, v.project = s.opened, s.doc.Project()
	v.project.ReadOnly = false
	shown := v.project.Spec
	v.project.Spec.Date = state.Day(s.now()).Format(time.DateOnly)
	return &Task{write: v.write, end: func(err error) error {
		if err == nil && s.doc.State().Loads == loads { // else another bag is open by now
			s.saved(&v, shown)
		}
		return err
	}}
}

// saved takes over what was saved. What was changed meanwhile keeps its copy.
func (s *Session) saved(v *saving, shown bag.Spec) {
	s.opened = file{path: v.path, sum: v.sum, bare: v.bare, artwork: v.project.Files}
	s.doc.MarkKeptSaved(v.project.Kept)
	s.doc.MarkSpecSavedOn(shown, v.project.Spec.Date)
	s.remember()
	if !s.Dirty() {
		s.copies.drop()
	}
}

func (v *saving) write() error {
	if v.opened.readOnly && isSameFile(v.path, v.opened.path) {
		return phrase.Errorf("save project %s: %s", v.path, ErrReadOnly)
	}
	if err := v.approve(); err != nil { // before long work is done for nothing
		return err
	}
	if err := v.put(); err != nil {
		return err
	}
	var err error
	if v.sum, _, err = look(v.path); err != nil {
		return phrase.Errorf("save project %s: written, but not to be read again: %s; save under another name", v.path, err)
	}
	return nil
}

func (v *saving) put() error {
	if v.bare {
		return v.putBare()
	}
	v.project.Preview = preview(v.project)
	return project.Replace(v.path, v.project, v.approve)
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
