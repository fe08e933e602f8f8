// Package session knows which project is open, in which file, and keeps a copy of
// unsaved work for the case that the program comes to a sudden end.
//
// A Session belongs to one goroutine, that of the window. It never asks anybody
// anything: where saving needs a decision it returns an error that says which.
package session

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// Recent is told which files were opened and saved, and which are gone.
type Recent interface {
	AddRecent(path string)
	ForgetRecent(path string)
}

// Options is what a session needs from outside.
type Options struct {
	Recent Recent           // nil: nobody is told
	Now    func() time.Time // nil: the clock of the system
	// Recovery is the folder for copies of unsaved work, shared by all running
	// programs of this user; empty: one in the cache folder of the user.
	Recovery string
}

// Session is the project that is open.
type Session struct {
	doc    *document.Document
	stop   func()
	recent Recent
	now    func() time.Time

	opened file
	copies copies
}

// file is where the project was read from or saved to last.
type file struct {
	path     string // absolute, or empty for a bag that has no file yet
	sum      string // of the content, to tell whether somebody else changed it
	bare     bool   // bag.json alone, not a container
	readOnly bool   // written by a newer version
	artwork  map[string][]byte
}

// New returns a session for the bag in a document, which has no file yet. Close it
// when the window is closed.
func New(doc *document.Document, options Options) *Session {
	s := &Session{doc: doc, recent: options.Recent, now: options.Now, copies: copies{folder: options.Recovery}}
	if s.now == nil {
		s.now = time.Now
	}
	s.stop = doc.Listen(func(document.State) { s.copies.due = true })
	s.copies.due = doc.State().Dirty
	return s
}

// Path returns the absolute path of the open file, or "" for a bag without one.
func (s *Session) Path() string { return s.opened.path }

// Name returns what the project is called and its files begin with: the name of
// the open file without its ending, else the name of the bag, which may be empty.
func (s *Session) Name() string {
	if s.opened.path == "" {
		return s.doc.Project().Spec.Name
	}
	return nameOf(s.opened.path)
}

func nameOf(path string) string {
	base := filepath.Base(path)
	return strings.TrimSuffix(base, filepath.Ext(base))
}

// Title returns the title of the window, such as "tea-house* – Gussetwright", with
// an asterisk while there are changes to save. A bag without a name is called
// untitled.
func (s *Session) Title(untitled string) string {
	name := s.Name()
	if name == "" {
		name = untitled
	}
	if s.Dirty() {
		name += "*"
	}
	return name + " – Gussetwright"
}

// Dirty tells whether there are changes that are not in the file.
func (s *Session) Dirty() bool { return s.doc.State().Dirty }

// New replaces what is open by the default bag. Unsaved changes are dropped, so
// ask before.
func (s *Session) New() {
	s.opened = file{}
	s.doc.Load(project.Project{Spec: bag.Default()})
	s.copies.drop()
}

// Open replaces what is open by the project at path and returns what the user
// should know about it, a sentence each. Unsaved changes are dropped, so ask
// before; after an error everything is as it was. A file that is gone is taken
// from the recent ones.
func (s *Session) Open(path string) (notes []phrase.Phrase, err error) {
	path, err = filepath.Abs(path)
	if err != nil {
		return nil, phrase.Errorf("open project %s: %s", path, err)
	}
	read, found, err := read(path)
	if err != nil {
		if errors.Is(err, fs.ErrNotExist) && s.recent != nil {
			s.recent.ForgetRecent(path)
		}
		return nil, err
	}
	s.opened = found
	s.doc.Load(read)
	s.remember()
	s.copies.drop()
	return append(read.Notes, s.elsewhere(path)...), nil
}

// read reads a project. The file is looked at before it is read: should somebody
// change it in between, saving asks once too often rather than not at all.
func read(path string) (project.Project, file, error) {
	info, err := os.Stat(path)
	if err == nil && !info.Mode().IsRegular() && !info.IsDir() {
		return project.Project{}, file{}, phrase.Errorf("open project %s: this is not a plain file (mode %s); choose another", path, info.Mode())
	}
	sum, bare, lookErr := look(path)
	read, err := project.Open(path)
	if err == nil {
		err = lookErr
	}
	return read, file{path: path, sum: sum, bare: bare, readOnly: read.ReadOnly, artwork: read.Files}, err
}

func (s *Session) remember() {
	if s.recent != nil {
		s.recent.AddRecent(s.opened.path)
	}
}

// Close ends the session and removes the copy of unsaved work. Ask about unsaved
// changes before. The error says what could not be removed; the next start of the
// program then offers it for recovery.
func (s *Session) Close() error {
	s.stop()
	return s.copies.remove()
}
