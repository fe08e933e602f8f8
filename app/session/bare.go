package session

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"gussetwright/app/project"
	"gussetwright/app/wholefile"
	"gussetwright/geometry/phrase"
)

// putBare writes bag.json alone, and beside it the artwork that is not there yet:
// that first, so that bag.json never names what is missing.
func (s *Session) putBare(path string, saved project.Project) error {
	fail := func(err error) error { return phrase.Errorf("save project %s: %s", path, err) }
	var text bytes.Buffer
	if err := project.Encode(&text, saved.Spec); err != nil {
		return fail(err)
	}
	for _, name := range saved.Placed() {
		if strings.EqualFold(name, filepath.Base(path)) {
			return fail(phrase.Errorf("artwork %q has the name of the project file; choose another name", name))
		}
		beside := filepath.Join(filepath.Dir(path), name)
		if err := s.putArtwork(beside, name, saved.Files[name]); err != nil {
			return fail(phrase.Errorf("artwork %q: %s", name, err))
		}
	}
	if err := writeFile(path, text.Bytes()); err != nil {
		return fail(err)
	}
	return nil
}

// putArtwork writes artwork beside bag.json unless it is there. A file that was
// read from there and then changed by its owner is left to him; any other that
// differs is not ours to replace.
func (s *Session) putArtwork(path, name string, data []byte) error {
	_, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return writeFile(path, data)
	}
	ours, known := s.opened.artwork[name]
	atHome := s.opened.bare && filepath.Dir(path) == filepath.Dir(s.opened.path)
	if err == nil && known && atHome && unchanged(ours, data) {
		return nil
	}
	there, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	if !bytes.Equal(there, data) {
		return phrase.Errorf("another file of this name is in the folder; choose another folder, or save as .gusset, which holds its artwork")
	}
	return nil
}

func writeFile(path string, data []byte) error {
	return wholefile.Write(path, func(w io.Writer) error {
		_, err := w.Write(data)
		return err
	})
}
