package project

import (
	"os"
	"path/filepath"
	"strings"
	"unicode"
	"unicode/utf8"

	"gussetwright/geometry/phrase"
)

// Take reads a file from disk that is to become part of a project, and returns it with
// a name that it can have there. room is how many bytes the project has left for it; see
// Room.
func Take(path string, room int64) (name string, data []byte, err error) {
	name = plainName(filepath.Base(path))
	data, err = takeWithin(path, room, standard())
	if err != nil {
		return name, nil, phrase.Errorf("read %s: %s", path, err)
	}
	return name, data, nil
}

// Room returns how many bytes of further files a project can hold.
func (p *Project) Room() int64 {
	left := standard().total - standard().document - int64(len(p.Preview))
	for _, name := range p.Placed() {
		left -= int64(len(p.Files[name]))
	}
	return max(left, 0)
}

func takeWithin(path string, room int64, within limits) ([]byte, error) {
	// What is no plain file must not even be opened: a pipe makes whoever opens it wait.
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, err
	case info.IsDir():
		return nil, phrase.Errorf("this is a folder; choose a file in it")
	case !info.Mode().IsRegular():
		return nil, phrase.Errorf("this is not a plain file (mode %s); choose another", info.Mode())
	case info.Size() > room && info.Size() <= within.file:
		return nil, phrase.Errorf("the file has %s, more than the %s that the project has left of %s; make it smaller, or take other artwork out",
			byteSize(info.Size()), byteSize(room), byteSize(within.total))
	}
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	return readBounded(file, within.file)
}

// plainName returns the name as it can stand in a project on every system: what may not
// is replaced, and what is too long is cut before the ending.
func plainName(name string) string {
	name = strings.Map(func(letter rune) rune {
		if letter == utf8.RuneError || unicode.IsControl(letter) || strings.ContainsRune(`/\:`, letter) {
			return '-'
		}
		return letter
	}, name)
	// PutFile may put a number behind the name.
	const spare = 8
	ending := filepath.Ext(name)
	if len(ending) > longestEntryName/2 {
		ending = ""
	}
	stem := strings.TrimSuffix(name, ending)
	for len(stem)+len(ending) > longestEntryName-spare {
		_, last := utf8.DecodeLastRuneInString(stem)
		stem = stem[:len(stem)-last]
	}
	if name = stem + ending; refuseFileName(name).Empty() {
		return name
	}
	return "file"
}
