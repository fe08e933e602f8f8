package session

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"gussetwright/app/lockfile"
)

// ownerName is the file that a running program holds as long as the folder beside
// it is its own. The system lets go of it however the program ends.
const ownerName = "owner.lock"

// own makes this program the owner of a folder until the file is closed. The
// number of the process stands in the file for file systems that hold nothing.
func own(folder string) (*os.File, error) {
	path := filepath.Join(folder, ownerName)
	file, held, err := lockfile.Hold(path)
	if err != nil {
		return nil, err
	}
	if !held && ownerLives(file) {
		file.Close()
		return nil, lockfile.ErrHeld
	}
	if !lockfile.IsAt(file, path) { // another program removed the folder in between
		file.Close()
		return nil, lockfile.ErrHeld
	}
	if _, err := file.WriteAt(fmt.Appendf(nil, "%-20d\n", os.Getpid()), 0); err != nil {
		file.Close()
		return nil, err
	}
	return file, nil
}

// ownerLives tells whether the process whose number stands in the file is running.
// It is asked only where files cannot be held, as a number may be given anew.
func ownerLives(file *os.File) bool {
	var text [20]byte
	count, _ := file.ReadAt(text[:], 0) // shorter or none: nobody's
	number, err := strconv.Atoi(strings.TrimSpace(string(text[:count])))
	return err == nil && number != os.Getpid() && isRunning(number)
}
