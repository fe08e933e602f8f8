//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package lockfile

import (
	"errors"
	"os"
	"syscall"
)

// Hold opens the file at path, which it makes where there is none, and holds it until
// it is closed. held is false where the file system knows no locks. The error is
// ErrHeld where somebody else holds it.
func Hold(path string) (file *os.File, held bool, err error) {
	file, err = os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, false, err
	}
	if held, err = Take(file); err != nil {
		file.Close()
		return nil, false, err
	}
	return file, held, nil
}

// Take holds a file that is open for writing, until it is closed. held is false where
// the file system knows no locks. The error is ErrHeld where somebody else holds it.
func Take(file *os.File) (held bool, err error) {
	err = syscall.Flock(int(file.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	if errors.Is(err, syscall.EWOULDBLOCK) {
		return false, ErrHeld
	}
	return err == nil, nil
}
