// Package wholefile writes files whole or not at all.
package wholefile

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"gussetwright/app/lockfile"
	"gussetwright/geometry/phrase"
)

// ErrBusy says that another program is replacing the same file at this moment.
var ErrBusy = phrase.Errorf("another program is writing this file just now; try again, or choose another name")

// Write writes a new file beside the one at path, syncs it and puts it in its
// place. After any error the old file is as it was and nothing is left behind.
// What a program that was killed left in the folder is cleared away.
func Write(path string, write func(io.Writer) error) error {
	return Replace(path, func() error { return nil }, write)
}

// Replace is Write for a file that others may change too. It calls approve once the
// new file is written, however long that took, and before it takes the place of the
// old one; no other Replace comes in between. An error of approve leaves the old file.
func Replace(path string, approve func() error, write func(io.Writer) error) (err error) {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real // a link stays, what it leads to is replaced
	}
	mode, err := replaceable(path)
	if err != nil {
		return err
	}
	folder := filepath.Dir(path)
	file, held, err := createBeside(folder)
	if err != nil {
		return explain(err, folder)
	}
	defer func() {
		file.Close() // closing twice does no harm
		if err != nil {
			os.Remove(file.Name())
		}
	}()
	clearLeftovers(folder, file)
	if err := fill(file, mode, write); err != nil {
		return explainFull(err, folder)
	}
	release, err := claim(path)
	if err != nil {
		return err
	}
	defer release()
	if err := approve(); err != nil {
		return err
	}
	if !held { // what is held cannot be taken for a leftover before it has its name
		if err := file.Close(); err != nil {
			return explainFull(err, folder)
		}
	}
	if err := os.Rename(file.Name(), path); err != nil {
		return explain(err, folder)
	}
	syncFolder(folder)
	return nil
}

// replaceable tells whether there may be a new file at path. It returns the
// permissions of the one that is there, or 0.
func replaceable(path string) (fs.FileMode, error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return 0, nil
	case err != nil:
		return 0, explain(err, filepath.Dir(path))
	case info.IsDir():
		return 0, phrase.Errorf("this is a folder; choose a file name in it")
	case !info.Mode().IsRegular():
		return 0, phrase.Errorf("this is not a plain file (mode %s); choose another name", info.Mode())
	case info.Mode().Perm()&0o200 == 0:
		return 0, phrase.Errorf("the file is write-protected; choose another name or take the protection off")
	}
	return info.Mode().Perm(), nil
}

// fill writes the new file down to the disk. A mode of 0 leaves the usual one.
func fill(file *os.File, mode fs.FileMode, write func(io.Writer) error) error {
	if err := write(file); err != nil {
		return err
	}
	if mode != 0 {
		if err := file.Chmod(mode); err != nil {
			return err
		}
	}
	return file.Sync()
}

// claim keeps every other Replace from the file at path until it is released. Where
// there is no file, or none that can be held, there is nothing to keep them from.
func claim(path string) (release func(), err error) {
	nothing := func() {}
	file, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return nothing, nil
	}
	held, err := lockfile.Take(file)
	switch {
	case err != nil || held && !lockfile.IsAt(file, path):
		file.Close()
		return nothing, ErrBusy
	case !held:
		file.Close() // not every system replaces open files
		return nothing, nil
	}
	return func() { file.Close() }, nil
}

// syncFolder makes the new name last through a power cut. Not every system can do
// that for a folder, and the file itself is safe already, so failing is no error.
func syncFolder(folder string) {
	handle, err := os.Open(folder)
	if err != nil {
		return
	}
	defer handle.Close()
	_ = handle.Sync()
}
