//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package session

import (
	"errors"
	"os"
	"syscall"
)

// hold opens a file that only one program can hold. held is false where the file
// system knows no locks.
func hold(path string) (file *os.File, held bool, err error) {
	file, err = os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return nil, false, err
	}
	err = syscall.Flock(int(file.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	if errors.Is(err, syscall.EWOULDBLOCK) {
		file.Close()
		return nil, false, errHeld
	}
	return file, err == nil, nil
}

// isRunning tells whether there is a process of this number.
func isRunning(number int) bool {
	err := syscall.Kill(number, 0)
	return err == nil || errors.Is(err, syscall.EPERM)
}
