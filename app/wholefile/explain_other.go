//go:build !windows

package wholefile

import (
	"errors"
	"syscall"
)

// isReadOnly tells whether the file system takes no files at all.
func isReadOnly(err error) bool { return errors.Is(err, syscall.EROFS) }

// isFull tells whether the disk is full, the share of the user is, or the file grew
// larger than it may.
func isFull(err error) bool {
	return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT) || errors.Is(err, syscall.EFBIG)
}
