package wholefile

import (
	"errors"
	"syscall"
)

// Values of ERROR_WRITE_PROTECT, ERROR_HANDLE_DISK_FULL and ERROR_DISK_FULL in
// golang.org/x/sys/windows.
const (
	writeProtect   = syscall.Errno(19)
	handleDiskFull = syscall.Errno(39)
	diskFull       = syscall.Errno(112)
)

func isReadOnly(err error) bool { return errors.Is(err, writeProtect) }

func isFull(err error) bool { return errors.Is(err, diskFull) || errors.Is(err, handleDiskFull) }
