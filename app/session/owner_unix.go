//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package session

import (
	"errors"
	"syscall"
)

// isRunning tells whether there is a process of this number.
func isRunning(number int) bool {
	err := syscall.Kill(number, 0)
	return err == nil || errors.Is(err, syscall.EPERM)
}
