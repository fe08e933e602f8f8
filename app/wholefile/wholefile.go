// Package wholefile writes files whole or not at all.
package wholefile

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"

	"gussetwright/geometry/phrase"
)

// Write writes a new file beside the one at path, syncs it and puts it in its
// place. After any error the old file is as it was and nothing is left behind.
func Write(path string, write func(io.Writer) error) (err error) {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real // a link stays, what it leads to is replaced
	}
	mode, err := replaceable(path)
	if err != nil {
		return err
	}
	folder := filepath.Dir(path)
	file, err := createBeside(folder)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			file.Close() // closing twice does no harm
			os.Remove(file.Name())
		}
	}()
	if err = write(file); err != nil {
		return err
	}
	if mode != 0 {
		if err = file.Chmod(mode); err != nil {
			return err
		}
	}
	if err = file.Sync(); err != nil {
		return err
	}
	if err = file.Close(); err != nil {
		return err
	}
	if err = os.Rename(file.Name(), path); err != nil {
		return err
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
		return 0, err
	case info.IsDir():
		return 0, phrase.Errorf("this is a folder; choose a file name in it")
	case !info.Mode().IsRegular():
		return 0, phrase.Errorf("this is not a plain file (mode %s); choose another name", info.Mode())
	case info.Mode().Perm()&0o200 == 0:
		return 0, phrase.Errorf("the file is write-protected; choose another name or take the protection off")
	}
	return info.Mode().Perm(), nil
}

// createBeside creates a file with a name of its own and the usual permissions,
// which os.CreateTemp does not give.
func createBeside(folder string) (*os.File, error) {
	const attempts = 100
	for range attempts {
		name := filepath.Join(folder, fmt.Sprintf(".gussetwright-%08x.tmp", rand.Uint32()))
		file, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) {
			return file, err
		}
	}
	return nil, phrase.Errorf("no free name for a temporary file in %s; remove the files .gussetwright-*.tmp", folder)
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
