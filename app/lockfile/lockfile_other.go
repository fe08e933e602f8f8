//go:build !(darwin || dragonfly || freebsd || linux || netbsd || openbsd || windows)

package lockfile

import "os"

// Hold opens the file at path, which it makes where there is none; this system has no
// way to hold it.
func Hold(path string) (file *os.File, held bool, err error) {
	file, err = os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	return file, false, err
}

// Take does nothing: this system has no way to hold a file.
func Take(*os.File) (held bool, err error) { return false, nil }
