package wholefile

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"time"

	"gussetwright/app/lockfile"
	"gussetwright/geometry/phrase"
)

// Names of files that are being written begin and end with these; the leading dot
// keeps them out of sight.
const (
	unfinishedStart = ".gussetwright-"
	unfinishedEnd   = ".tmp"
)

// oldEnough is how much older than a new file a leftover must be where files cannot be
// held, in the time of the drive itself: nobody writes one file for so long.
const oldEnough = 24 * time.Hour

// IsUnfinished tells whether a file of this name is one that is being written, or that
// a program left which was killed while it wrote.
func IsUnfinished(name string) bool {
	return strings.HasPrefix(name, unfinishedStart) && strings.HasSuffix(name, unfinishedEnd)
}

// createBeside creates a file with a name of its own and the usual permissions,
// which os.CreateTemp does not give, and holds it where that can be.
func createBeside(folder string) (file *os.File, held bool, err error) {
	const attempts = 100
	for range attempts {
		name := filepath.Join(folder, fmt.Sprintf("%s%08x%s", unfinishedStart, rand.Uint32(), unfinishedEnd))
		file, err := os.OpenFile(name, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o666)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return nil, false, err
		}
		held, err := lockfile.Take(file)
		if err == nil && lockfile.IsAt(file, name) {
			return file, held, nil
		}
		file.Close() // another program took it for a leftover before it was held
	}
	return nil, false, phrase.Errorf("no free name for a temporary file in %s; remove the files .gussetwright-*.tmp", folder)
}

// clearLeftovers removes what killed programs left in a folder. It does what it can:
// a file that stays does no harm.
func clearLeftovers(folder string, current *os.File) {
	now, err := current.Stat()
	if err != nil {
		return
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		return
	}
	for _, entry := range entries {
		if !IsUnfinished(entry.Name()) || !entry.Type().IsRegular() {
			continue
		}
		info, err := entry.Info()
		if err == nil && !os.SameFile(info, now) {
			clearLeftover(filepath.Join(folder, entry.Name()), now.ModTime().Sub(info.ModTime()))
		}
	}
}

func clearLeftover(path string, age time.Duration) {
	file, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return
	}
	defer file.Close()
	held, err := lockfile.Take(file)
	switch {
	case err != nil: // another program is writing it
	case held:
		os.Remove(path)
	case age > oldEnough:
		file.Close() // not every system removes open files
		os.Remove(path)
	}
}
