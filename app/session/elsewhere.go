package session

import (
	"errors"

	"gussetwright/app/lockfile"
	"gussetwright/geometry/phrase"
)

// elsewhere returns what the user should know about other windows that have the file
// at path open: one that has changed it and not saved. One without changes does no
// harm, and whoever saves second is asked anyway.
func (s *Session) elsewhere(path string) []phrase.Phrase {
	all, err := s.copies.all()
	if err != nil {
		return nil
	}
	mine := s.copies.here()
	for folder, kept := range records(all) {
		if folder != mine && kept.Path != "" && isSameFile(kept.Path, path) && isOwned(folder) {
			return []phrase.Phrase{phrase.New("Another window has changes to this file that are not saved yet. Go on there, or save under another name here.")}
		}
	}
	return nil
}

// isOwned tells whether a running program works in a folder.
func isOwned(folder string) bool {
	owner, err := own(folder)
	if err == nil {
		owner.Close()
	}
	return errors.Is(err, lockfile.ErrHeld)
}
