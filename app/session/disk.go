package session

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"io"
	"os"

	"gussetwright/geometry/phrase"
)

// look returns a sum over the content of a file and whether it is bag.json alone
// rather than a ZIP container, which begins with "PK" (PKWARE APPNOTE 4.3.7). The
// content is compared because size and time can be those of before, and because a
// time alone is no change.
func look(path string) (sum string, bare bool, err error) {
	opened, err := os.Open(path)
	if err != nil {
		return "", false, phrase.Errorf("look at project: %s", err)
	}
	defer opened.Close()
	var start [2]byte
	count, err := io.ReadFull(opened, start[:])
	if err != nil && err != io.EOF && err != io.ErrUnexpectedEOF {
		return "", false, phrase.Errorf("look at project: %s", err)
	}
	hash := sha256.New()
	hash.Write(start[:count])
	if _, err := io.Copy(hash, opened); err != nil {
		return "", false, phrase.Errorf("look at project: %s", err)
	}
	return hex.EncodeToString(hash.Sum(nil)), !bytes.Equal(start[:], []byte("PK")), nil
}

// isSameFile tells whether two paths lead to one file.
func isSameFile(a, b string) bool {
	first, err := os.Stat(a)
	if err != nil {
		return a == b
	}
	second, err := os.Stat(b)
	return err == nil && os.SameFile(first, second)
}

// unchanged tells whether two slices are one and the same; artwork is never
// changed in place.
func unchanged(a, b []byte) bool {
	return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0])
}
