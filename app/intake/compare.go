package intake

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"io"
	"os"
	"path/filepath"
)

// likeness is how a file on disk compares with one of the project.
type likeness int

const (
	gone  likeness = iota // there is no such plain file, or it cannot be read
	other                 // it has another content
	same
)

// sumOf returns the sum by which a content is told from others.
func sumOf(content []byte) string {
	sum := sha256.Sum256(content)
	return hex.EncodeToString(sum[:])
}

// compare compares the file at a path with a content.
func compare(path string, content []byte) likeness {
	return compareIn(os.Stat, os.Open, path, content)
}

// compareBeside compares the file beside a project with a content. Links that lead out of
// the folder are not followed.
func compareBeside(path string, content []byte) likeness {
	root, err := os.OpenRoot(filepath.Dir(path))
	if err != nil {
		return gone
	}
	defer root.Close()
	return compareIn(root.Stat, root.Open, filepath.Base(path), content)
}

// compareIn compares a file with a content by what looks at files and opens them.
func compareIn(stat func(string) (os.FileInfo, error), open func(string) (*os.File, error), name string, content []byte) likeness {
	// What is no plain file must not even be opened: a pipe makes whoever opens it wait.
	info, err := stat(name)
	if err != nil || !info.Mode().IsRegular() {
		return gone
	}
	if info.Size() != int64(len(content)) {
		return other
	}
	file, err := open(name)
	if err != nil {
		return gone
	}
	defer file.Close()
	return compareWith(file, content)
}

// compareWith reads only as far as there is no difference.
func compareWith(file io.Reader, content []byte) likeness {
	part := make([]byte, 64<<10)
	for {
		count, err := file.Read(part)
		if !bytes.HasPrefix(content, part[:count]) {
			return other
		}
		content = content[count:]
		switch {
		case err == io.EOF && len(content) == 0:
			return same
		case err == io.EOF:
			return other
		case err != nil:
			return gone
		}
	}
}
