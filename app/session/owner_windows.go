package session

import (
	"errors"
	"os"
	"syscall"
)

// sharingViolation says that another program has the file open: value 32 of
// ERROR_SHARING_VIOLATION in golang.org/x/sys/windows.
const sharingViolation = syscall.Errno(32)

// hold opens a file without sharing it, so that only one program can.
func hold(path string) (file *os.File, held bool, err error) {
	name, err := syscall.UTF16PtrFromString(path)
	if err != nil {
		return nil, false, err
	}
	const unshared = 0
	handle, err := syscall.CreateFile(name, syscall.GENERIC_READ|syscall.GENERIC_WRITE, unshared, nil,
		syscall.OPEN_ALWAYS, syscall.FILE_ATTRIBUTE_NORMAL, 0)
	if errors.Is(err, sharingViolation) {
		return nil, false, errHeld
	}
	if err != nil {
		return nil, false, &os.PathError{Op: "open", Path: path, Err: err}
	}
	return os.NewFile(uintptr(handle), path), true, nil
}

// isRunning tells whether there is a process of this number.
func isRunning(number int) bool {
	process, err := os.FindProcess(number)
	if err != nil {
		return false
	}
	process.Release()
	return true
}
