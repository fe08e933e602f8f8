package wholefile

import (
	"errors"
	"io/fs"
	"os"

	"gussetwright/geometry/phrase"
)

// explain says what can be done about an error in a folder.
func explain(err error, folder string) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return phrase.Errorf("the folder %s is not there (%s); choose another, or connect the drive again", folder, cause(err))
	case errors.Is(err, fs.ErrPermission) || isReadOnly(err):
		return phrase.Errorf("nothing can be written in the folder %s (%s); choose another folder", folder, cause(err))
	}
	return explainFull(err, folder)
}

// explainFull says what can be done about a disk that is full.
func explainFull(err error, folder string) error {
	if isFull(err) {
		return phrase.Errorf("there is no room for the file in %s (%s); free some space, or choose a folder on another disk", folder, cause(err))
	}
	return err
}

// cause leaves out the name of the temporary file, which means nothing to anybody.
func cause(err error) error {
	var path *os.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	var link *os.LinkError
	if errors.As(err, &link) {
		return link.Err
	}
	return err
}
