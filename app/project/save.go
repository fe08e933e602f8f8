package project

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"time"
)

// Save writes a project file. The file at path is replaced as a whole once the new
// one is safely on the disk; after any error it is as it was, and nothing is left
// behind. Only the artwork that the spec names is saved.
func Save(path string, p Project) error {
	if p.ReadOnly {
		return fmt.Errorf("save project %s: it was saved by a newer version and opened read-only, "+
			"saving would lose what this version does not know; save a copy under another name", path)
	}
	err := replace(path, func(w io.Writer) error { return write(w, p, standard()) })
	if err != nil {
		return fmt.Errorf("save project %s: %w", path, err)
	}
	return nil
}

// earliest is the time stamp of all entries, the first that ZIP knows, so that
// saving twice gives the same bytes.
var earliest = time.Date(1980, time.January, 1, 0, 0, 0, 0, time.UTC)

// write writes the container: bag.json, the artwork by name, the preview.
func write(w io.Writer, p Project, within limits) error {
	var document bytes.Buffer
	if err := Encode(&document, p.Spec); err != nil {
		return err
	}
	if err := checkSizes(p, int64(document.Len()), within); err != nil {
		return err
	}
	archive := zip.NewWriter(w)
	if err := add(archive, documentName, zip.Deflate, document.Bytes()); err != nil {
		return err
	}
	for _, name := range artworkNames(p) {
		// Artwork formats are packed already, and a stored one has no ratio.
		if err := add(archive, artworkFolder+name, zip.Store, p.Files[name]); err != nil {
			return err
		}
	}
	if len(p.Preview) > 0 {
		if err := add(archive, previewName, zip.Store, p.Preview); err != nil {
			return err
		}
	}
	return archive.Close()
}

func add(archive *zip.Writer, name string, method uint16, data []byte) error {
	header := &zip.FileHeader{Name: name, Method: method, Modified: earliest}
	header.SetMode(0o644)
	entry, err := archive.CreateHeader(header)
	if err != nil {
		return err
	}
	_, err = entry.Write(data)
	return err
}

// artworkNames returns the names of the files that the spec places, in order.
func artworkNames(p Project) []string {
	placed := map[string]bool{}
	for _, piece := range p.Spec.Artwork {
		if _, found := p.Files[piece.File]; found {
			placed[piece.File] = true
		}
	}
	return slices.Sorted(maps.Keys(placed))
}

// checkSizes refuses what could not be opened again.
func checkSizes(p Project, document int64, within limits) error {
	total := document + int64(len(p.Preview))
	for _, name := range artworkNames(p) {
		size := int64(len(p.Files[name]))
		if size > within.file {
			return fmt.Errorf("artwork %s has %s, more than the most, %s; make it smaller",
				shown(name), byteSize(size), byteSize(within.file))
		}
		total += size
	}
	switch {
	case int64(len(p.Preview)) > within.file:
		return fmt.Errorf("the preview has %s, more than the most, %s; make it smaller",
			byteSize(int64(len(p.Preview))), byteSize(within.file))
	case document > within.document:
		return fmt.Errorf("bag.json has %s, more than the most, %s; take artwork out", byteSize(document), byteSize(within.document))
	case total > within.total:
		return fmt.Errorf("the project has %s, more than the most, %s; take artwork out or make it smaller",
			byteSize(total), byteSize(within.total))
	}
	return nil
}

// replace writes a new file beside the one at path and puts it in its place.
func replace(path string, write func(io.Writer) error) (err error) {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real // a link stays, what it leads to is replaced
	}
	mode, err := replaceable(path)
	if err != nil {
		return err
	}
	folder := filepath.Dir(path)
	file, err := createBeside(folder)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			file.Close() // closing twice does no harm
			os.Remove(file.Name())
		}
	}()
	if err = write(file); err != nil {
		return err
	}
	if mode != 0 {
		if err = file.Chmod(mode); err != nil {
			return err
		}
	}
	if err = file.Sync(); err != nil {
		return err
	}
	if err = file.Close(); err != nil {
		return err
	}
	if err = os.Rename(file.Name(), path); err != nil {
		return err
	}
	syncFolder(folder)
	return nil
}

// replaceable tells whether there may be a new file at path. It returns the
// permissions of the one that is there, or 0.
func replaceable(path string) (fs.FileMode, error) {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return 0, nil
	case err != nil:
		return 0, err
	case info.IsDir():
		return 0, errors.New("this is a folder; choose a file name in it")
	case !info.Mode().IsRegular():
		return 0, fmt.Errorf("this is not a plain file (mode %s); choose another name", info.Mode())
	case info.Mode().Perm()&0o200 == 0:
		return 0, errors.New("the file is write-protected; choose another name or take the protection off")
	}
	return info.Mode().Perm(), nil
}

// createBeside creates a file with a name of its own and the usual permissions,
// which os.CreateTemp does not give.
func createBeside(folder string) (*os.File, error) {
	const attempts = 100
	for range attempts {
		name := filepath.Join(folder, fmt.Sprintf(".gussetwright-%08x.tmp", rand.Uint32()))
		file, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) {
			return file, err
		}
	}
	return nil, fmt.Errorf("no free name for a temporary file in %s; remove the files .gussetwright-*.tmp", folder)
}

// syncFolder makes the new name last through a power cut. Not every system can do
// that for a folder, and the file itself is safe already, so failing is no error.
func syncFolder(folder string) {
	handle, err := os.Open(folder)
	if err != nil {
		return
	}
	defer handle.Close()
	_ = handle.Sync()
}
