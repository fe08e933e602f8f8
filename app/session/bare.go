package session

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"gussetwright/app/wholefile"
	"gussetwright/geometry/phrase"
)

// putBare writes bag.json alone, and beside it the artwork that is not there yet:
// that first, so that bag.json never names what is missing.
func (v *saving) putBare() error {
	fail := func(err error) error { return phrase.Errorf("save project %s: %s", v.path, err) }
	var text bytes.Buffer
	if err := v.project.Encode(&text); err != nil {
		return fail(err)
	}
	for _, name := range v.project.Placed() {
		if strings.EqualFold(name, filepath.Base(v.path)) {
			return fail(phrase.Errorf("artwork %q has the name of the project file; choose another name", name))
		}
		beside := filepath.Join(filepath.Dir(v.path), name)
		if err := v.putArtwork(beside, name, v.project.Files[name]); err != nil {
			return fail(phrase.Errorf("artwork %q: %s", name, err))
		}
	}
	var refused error
	err := wholefile.Replace(v.path, func() error {
		refused = v.approve()
		return refused
	}, all(text.Bytes()))
	switch {
	case refused != nil:
		return refused
	case err != nil:
		return fail(err)
	}
	return nil
}

// putArtwork writes artwork beside bag.json unless it is there. A file that was
// read from there and then changed by its owner is left to him; any other that
// differs is not ours to replace.
func (v *saving) putArtwork(path, name string, data []byte) error {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return writeFile(path, data)
	}
	ours, known := v.opened.artwork[name]
	atHome := v.opened.bare && filepath.Dir(path) == filepath.Dir(v.opened.path)
	if err == nil && known && atHome && unchanged(ours, data) {
		return nil
	}
	if err != nil {
		return err
	}
	equal := false
	if info.Mode().IsRegular() && info.Size() == int64(len(data)) { // whatever else stands there is not read
		there, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		equal = bytes.Equal(there, data)
	}
	if !equal {
		return phrase.Errorf("another file of this name is in the folder; choose another folder, or save as .gusset, which holds its artwork")
	}
	return nil
}

func writeFile(path string, data []byte) error { return wholefile.Write(path, all(data)) }

// all writes data as a whole.
func all(data []byte) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := w.Write(data)
		return err
	}
}
