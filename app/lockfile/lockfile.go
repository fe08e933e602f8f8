// Package lockfile knows files that one program at a time can hold. The system lets go
// of them however the program ends.
package lockfile

import (
	"os"

	"gussetwright/geometry/phrase"
)

// ErrHeld says that another program, or another part of this one, holds the file.
var ErrHeld = phrase.Errorf("another running Gussetwright is working on it")

// IsAt tells whether an open file is the one that stands at path now.
func IsAt(file *os.File, path string) bool {
	opened, err := file.Stat()
	if err != nil {
		return false
	}
	there, err := os.Stat(path)
	return err == nil && os.SameFile(opened, there)
}
