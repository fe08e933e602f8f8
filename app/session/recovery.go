package session

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"time"

	"gussetwright/app/project"
	"gussetwright/geometry/phrase"
	"gussetwright/render/limits"
)

// Recovery is a copy of unsaved work that a program left when it came to a sudden
// end.
type Recovery struct {
	Name string    // of the file or the bag; may be empty
	Path string    // of the file it was opened from, or empty
	Time time.Time // when the copy was written

	folder string
	order  int
}

// Recoverable returns the copies that no running program works on any more, those of
// the newest session first, whatever the clock said. A copy that cannot be read is among them, without a name: Restore says
// why, Discard removes it.
func (s *Session) Recoverable() ([]Recovery, error) {
	all, err := s.copies.all()
	if err != nil {
		return nil, phrase.Errorf("look for unsaved work: %s", err)
	}
	entries, err := os.ReadDir(all)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, phrase.Errorf("look for unsaved work: %s", err)
	}
	var found []Recovery
	for _, entry := range entries {
		folder := filepath.Join(all, entry.Name())
		if !entry.IsDir() || folder == s.copies.here() {
			continue
		}
		if recovery, left := leftIn(folder); left {
			found = append(found, recovery)
		}
	}
	slices.SortStableFunc(found, func(a, b Recovery) int {
		return cmp.Or(cmp.Compare(b.order, a.order), b.Time.Compare(a.Time))
	})
	return found, nil
}

// leftIn returns the copy in a folder that nobody owns. A folder without a copy is
// cleared away.
func leftIn(folder string) (Recovery, bool) {
	owner, err := own(folder)
	if err != nil {
		return Recovery{}, false
	}
	defer owner.Close()
	info, err := os.Stat(filepath.Join(folder, copyName))
	if errors.Is(err, fs.ErrNotExist) {
		_ = removeFolder(folder, owner) // an empty folder does no harm
		return Recovery{}, false
	}
	if err != nil {
		return Recovery{}, false
	}
	found := Recovery{Time: info.ModTime(), folder: folder}
	kept, saved, err := readCopy(folder)
	found.order = kept.Order
	if err == nil {
		found.Path, found.Name = kept.Path, saved.Spec.Name
	}
	if found.Path != "" {
		found.Name = nameOf(found.Path)
	}
	return found, true
}

// readCopy reads a copy without its artwork.
func readCopy(folder string) (record, project.Project, error) {
	kept, err := readRecord(folder)
	if err != nil {
		return kept, project.Project{}, err
	}
	saved, err := project.ReadFrom(bytes.NewReader(kept.Bag))
	return kept, saved, err
}

func readRecord(folder string) (kept record, err error) {
	data, err := readWithin(filepath.Join(folder, copyName), limits.ProjectCopyBytes)
	if err == nil {
		err = json.Unmarshal(data, &kept)
	}
	return kept, err
}

// readWithin reads a file of at most so many bytes. Copies are ours, but the folder they
// lie in is open to others.
func readWithin(path string, most int64) ([]byte, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, most+1))
	if err == nil && int64(len(data)) > most {
		err = phrase.Errorf("the file has more than %d bytes, which no copy needs; remove it", most)
	}
	return data, err
}

// highestOrder returns the highest order of all copies, or 0.
func highestOrder(all string) (highest int) {
	for _, kept := range records(all) {
		highest = max(highest, kept.Order)
	}
	return highest
}

// records returns the copies of all programs, running or not, by their folder. What
// cannot be read is left out.
func records(all string) map[string]record {
	found := map[string]record{}
	entries, err := os.ReadDir(all)
	if err != nil {
		return found
	}
	for _, entry := range entries {
		folder := filepath.Join(all, entry.Name())
		if kept, err := readRecord(folder); err == nil {
			found[folder] = kept
		}
	}
	return found
}

// Restore opens a copy as unsaved work on the file it was opened from, and returns
// what the user should know about it. What was open before is dropped, so ask
// before. The copy stays, as that of this session, until the work is saved. After
// an error everything is as it was.
func (s *Session) Restore(r Recovery) (notes []phrase.Phrase, err error) {
	fail := func(err error) ([]phrase.Phrase, error) {
		return nil, phrase.Errorf("restore unsaved work from %s: %s", r.folder, err)
	}
	owner, err := own(r.folder)
	if err != nil {
		return fail(err)
	}
	kept, saved, err := readCopy(r.folder)
	if err != nil {
		owner.Close()
		return fail(phrase.Errorf("the copy is damaged: %s", err))
	}
	there := map[string]artwork{}
	saved.Files = map[string][]byte{}
	for name, file := range kept.Artwork {
		data, err := readWithin(filepath.Join(r.folder, filepath.Base(file)), limits.ProjectArtworkBytes)
		if err != nil {
			notes = append(notes, phrase.New("The artwork %q could not be restored (%s); place it again.", name, err))
			continue
		}
		saved.Files[name], there[name] = data, artwork{file, data}
	}
	s.copies.move(r.folder, owner, there)
	saved.ReadOnly = kept.ReadOnly
	s.opened = file{path: kept.Path, sum: kept.Sum, bare: kept.Bare, readOnly: kept.ReadOnly}
	s.doc.Restore(saved)
	return notes, nil
}

// Discard removes a copy for good.
func (s *Session) Discard(r Recovery) error {
	owner, err := own(r.folder)
	if err == nil {
		err = removeFolder(r.folder, owner)
	}
	if err != nil {
		return phrase.Errorf("discard unsaved work in %s: %s", r.folder, err)
	}
	return nil
}
