package session

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/geometry/phrase"
)

// copyName is the file with the copy of unsaved work; the artwork lies beside it.
const copyName = "copy.json"

// record is a copy of unsaved work, written as a whole so that it always fits
// together.
type record struct {
	Path     string            `json:"path"` // of the file it was opened from, or empty
	Sum      string            `json:"sum"`  // of that file, as it was known
	Bare     bool              `json:"bare"`
	ReadOnly bool              `json:"read_only"`
	Artwork  map[string]string `json:"artwork"` // name in the bag → name beside the copy
	Bag      json.RawMessage   `json:"bag"`     // bag.json
}

// copies writes the copy of one session into a folder of its own, which it owns as
// long as there is one.
type copies struct {
	folder  string // for the folders of all programs
	due     bool   // something changed since the last copy
	mine    string // the folder of this session, or empty while there is none
	owner   *os.File
	artwork map[string]artwork // by name in the bag
}

// artwork is a file that lies beside the copy.
type artwork struct {
	file string
	data []byte
}

// Autosave brings the copy of unsaved work up to date, so that a crash loses what
// was changed since the last call at worst. It writes nothing when nothing
// changed, so call it every few seconds. Entries that cannot be drawn are copied
// with the last value that could. After an error it tries again at the next call.
func (s *Session) Autosave() error {
	if !s.copies.due {
		return nil
	}
	state := s.doc.State()
	if !state.Dirty {
		return s.copies.remove()
	}
	saved := s.doc.Project()
	saved.Spec = state.Spec
	if err := s.copies.write(s.opened, saved, state.Snapshot); err != nil {
		return phrase.Errorf("keep a copy of unsaved work: %s; save the bag yourself", err)
	}
	s.copies.due = false
	return nil
}

func (c *copies) write(opened file, p project.Project, good *document.Snapshot) error {
	if err := c.settle(); err != nil {
		return err
	}
	var text bytes.Buffer
	if err := project.Encode(&text, mend(p.Spec, &good.Spec)); err != nil {
		return err
	}
	var err error
	names := map[string]string{}
	for _, name := range p.Placed() {
		if names[name], err = c.keep(name, p.Files[name]); err != nil {
			return phrase.Errorf("artwork %q: %s", name, err)
		}
	}
	data, err := json.Marshal(record{opened.path, opened.sum, opened.bare, opened.readOnly, names, text.Bytes()})
	if err != nil {
		return err
	}
	return writeFile(filepath.Join(c.mine, copyName), data)
}

// keep writes artwork beside the copy, once, and returns its name there. Artwork
// never replaces artwork, as an older copy may still need it.
func (c *copies) keep(name string, data []byte) (string, error) {
	if there, found := c.artwork[name]; found && unchanged(there.data, data) {
		return there.file, nil
	}
	file := c.free()
	if err := writeFile(filepath.Join(c.mine, file), data); err != nil {
		return "", err
	}
	c.artwork[name] = artwork{file, data}
	return file, nil
}

// free returns a name for artwork that is not taken, not even from before a crash.
func (c *copies) free() string {
	for number := 1; ; number++ {
		name := "artwork-" + strconv.Itoa(number)
		if _, err := os.Lstat(filepath.Join(c.mine, name)); err != nil {
			return name
		}
	}
}

// settle makes a folder for this session where it has none, or where somebody
// cleared it away.
func (c *copies) settle() error {
	if c.mine != "" && isAt(c.owner, filepath.Join(c.mine, ownerName)) {
		return nil
	}
	c.leave()
	folder, err := c.all()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return err
	}
	const attempts = 20
	for range attempts {
		mine := filepath.Join(folder, fmt.Sprintf("%d-%08x", os.Getpid(), rand.Uint32()))
		if err := os.Mkdir(mine, 0o700); errors.Is(err, fs.ErrExist) {
			continue
		} else if err != nil {
			return err
		}
		owner, err := own(mine)
		if err == nil {
			c.take(mine, owner, nil)
			return nil
		}
		if !errors.Is(err, errHeld) && !errors.Is(err, fs.ErrNotExist) { // cleared away by another program
			return err
		}
	}
	return phrase.Errorf("no free name for a folder in %s; clear it", folder)
}

// all returns the folder in which every running program has its own.
func (c *copies) all() (string, error) {
	if c.folder != "" {
		return c.folder, nil
	}
	cache, err := os.UserCacheDir()
	if err != nil {
		return "", err
	}
	return filepath.Join(cache, "gussetwright", "recovery"), nil
}

// take makes a folder that is owned already the one of this session.
func (c *copies) take(folder string, owner *os.File, there map[string]artwork) {
	c.mine, c.owner, c.artwork = folder, owner, map[string]artwork{}
	maps.Copy(c.artwork, there)
}

// leave lets go of the folder of this session.
func (c *copies) leave() {
	if c.owner != nil {
		c.owner.Close()
	}
	c.mine, c.owner, c.artwork = "", nil, nil
}

// remove removes the copy with its folder. The copy goes first: without it there
// is nothing to recover.
func (c *copies) remove() error {
	if c.mine == "" {
		c.due = false
		return nil
	}
	if err := removeFolder(c.mine, c.owner); err != nil {
		return phrase.Errorf("remove the copy of unsaved work: %s; remove the folder yourself", err)
	}
	c.leave()
	c.due = false
	return nil
}

// drop is remove for when there is nobody to tell: the next Autosave does.
func (c *copies) drop() { c.due = c.remove() != nil }

func removeFolder(folder string, owner *os.File) error {
	if err := os.Remove(filepath.Join(folder, copyName)); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	owner.Close() // not every system removes open files
	return os.RemoveAll(folder)
}
