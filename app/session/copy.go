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
	"sync"

	"gussetwright/app/document"
	"gussetwright/app/lockfile"
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
	// Order tells which of two copies is newer, whatever the clock said: that of every
	// session is one more than the highest that it found.
	Order int             `json:"order"`
	Bag   json.RawMessage `json:"bag"` // bag.json
}

// copies writes the copy of one session into a folder of its own, which it owns as
// long as there is one. A copy may be under way on another goroutine than that of the
// session.
type copies struct {
	folder string // for the folders of all programs
	due    bool   // something changed since the last copy; of the session's goroutine
	busy   bool   // a copy was begun and not ended; of the session's goroutine

	lock    sync.Mutex // over what follows
	mine    string     // the folder of this session, or empty while there is none
	owner   *os.File
	artwork map[string]artwork // by name in the bag
	order   int                // higher than that of any copy from before
	epoch   int                // counts removals, to tell a copy that came too late
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
	if task := s.BeginAutosave(); task != nil {
		return task.now()
	}
	return nil
}

// BeginAutosave is Autosave in parts. It returns nil when there is nothing to do or
// the last copy is still being written; what is due then comes with the next call.
func (s *Session) BeginAutosave() *Task {
	if !s.copies.due || s.copies.busy {
		return nil
	}
	s.copies.due, s.copies.busy = false, true
	return &Task{write: s.copying(), end: func(err error) error {
		s.copies.busy = false
		s.copies.due = s.copies.due || err != nil
		return err
	}}
}

// copying returns what brings the copy up to date with the bag as it is now.
func (s *Session) copying() func() error {
	state := s.doc.State()
	if !state.Dirty {
		return s.copies.remove
	}
	opened, saved, epoch := s.opened, s.doc.Project(), s.copies.now()
	saved.Spec = state.Spec
	return func() error {
		if err := s.copies.write(epoch, opened, saved, state.Snapshot); err != nil {
			return phrase.Errorf("keep a copy of unsaved work: %s; save the bag yourself", err)
		}
		return nil
	}
}

// write writes a copy, unless what it is a copy of was saved or dropped since.
func (c *copies) write(epoch int, opened file, p project.Project, good *document.Snapshot) error {
	c.lock.Lock()
	defer c.lock.Unlock()
	if c.epoch != epoch {
		return nil
	}
	if err := c.settle(); err != nil {
		return err
	}
	var text bytes.Buffer
	p.Spec = mend(p.Spec, &good.Spec)
	if err := p.Encode(&text); err != nil {
		return err
	}
	var err error
	names := map[string]string{}
	for _, name := range p.Placed() {
		if names[name], err = c.keep(name, p.Files[name]); err != nil {
			return phrase.Errorf("artwork %q: %s", name, err)
		}
	}
	data, err := json.Marshal(record{opened.path, opened.sum, opened.bare, opened.readOnly, names, c.order, text.Bytes()})
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
	if c.mine != "" && lockfile.IsAt(c.owner, filepath.Join(c.mine, ownerName)) {
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
		_ = os.RemoveAll(mine)                                                    // each try would leave one more
		if !errors.Is(err, lockfile.ErrHeld) && !errors.Is(err, fs.ErrNotExist) { // cleared away by another program
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
	c.order = highestOrder(filepath.Dir(folder)) + 1
	maps.Copy(c.artwork, there)
}

// move is take for a session that may have a folder already.
func (c *copies) move(folder string, owner *os.File, there map[string]artwork) {
	c.lock.Lock()
	defer c.lock.Unlock()
	_ = c.removeMine() // else it is offered once more
	c.leave()
	c.take(folder, owner, there)
}

// here returns the folder of this session, or "".
func (c *copies) here() string {
	c.lock.Lock()
	defer c.lock.Unlock()
	return c.mine
}

func (c *copies) now() (epoch int) {
	c.lock.Lock()
	defer c.lock.Unlock()
	return c.epoch
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
	c.lock.Lock()
	defer c.lock.Unlock()
	return c.removeMine()
}

func (c *copies) removeMine() error {
	c.epoch++
	if c.mine == "" {
		return nil
	}
	if err := removeFolder(c.mine, c.owner); err != nil {
		return phrase.Errorf("remove the copy of unsaved work: %s; remove the folder yourself", err)
	}
	c.leave()
	return nil
}

// drop is remove for when there is nobody to tell, and no time to wait for a copy that
// is under way: the next Autosave does.
func (c *copies) drop() {
	if !c.lock.TryLock() {
		c.due = true
		return
	}
	defer c.lock.Unlock()
	c.due = c.removeMine() != nil
}

func removeFolder(folder string, owner *os.File) error {
	if err := os.Remove(filepath.Join(folder, copyName)); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	owner.Close() // not every system removes open files
	return os.RemoveAll(folder)
}
