package lockfile

import (
	"errors"
	"os"
	"syscall"
)

// sharingViolation says that another program has the file open: value 32 of
// ERROR_SHARING_VIOLATION in golang.org/x/sys/windows.
const sharingViolation = syscall.Errno(32)

// Hold opens the file at path, which it makes where there is none, without sharing it,
// so that only one program can. The error is ErrHeld where somebody else holds it.
func Hold(path string) (file *os.File, held bool, err error) {
	name, err := syscall.UTF16PtrFromString(path)
	if err != nil {
		return nil, false, err
	}
	const unshared = 0
	handle, err := syscall.CreateFile(name, syscall.GENERIC_READ|syscall.GENERIC_WRITE, unshared, nil,
		syscall.OPEN_ALWAYS, syscall.FILE_ATTRIBUTE_NORMAL, 0)
	if errors.Is(err, sharingViolation) {
		return nil, false, ErrHeld
	}
	if err != nil {
		return nil, false, &os.PathError{Op: "open", Path: path, Err: err}
	}
	return os.NewFile(uintptr(handle), path), true, nil
}

// Take does nothing here: an open file cannot be held later on, but it cannot be
// removed or replaced either while it is open.
func Take(*os.File) (held bool, err error) { return false, nil }
