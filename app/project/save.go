package project

import (
	"archive/zip"
	"bytes"
	"io"
	"slices"
	"time"

	"gussetwright/app/wholefile"
	"gussetwright/geometry/phrase"
)

// Save writes a project file. The file at path is replaced as a whole once the new
// one is safely on the disk; after any error it is as it was, and nothing is left
// behind. Only the artwork that the spec names is saved.
func Save(path string, p Project) error {
	return Replace(path, p, func() error { return nil })
}

// Replace is Save for a file that others may change too. It calls approve when the new
// file is written, however long that took, and before it takes the place of the old
// one; an error of approve is returned as it is and leaves the old file.
func Replace(path string, p Project, approve func() error) error {
	if p.ReadOnly {
		return phrase.Errorf("save project %s: it was saved by a newer version and opened read-only, "+
			"saving would lose what this version does not know; save a copy under another name", path)
	}
	var refused error
	err := wholefile.Replace(path, func() error {
		refused = approve()
		return refused
	}, func(w io.Writer) error { return write(w, p, standard()) })
	if refused != nil {
		return refused
	}
	if err != nil {
		return phrase.Errorf("save project %s: %s", path, err)
	}
	return nil
}

// earliest is the time stamp of all entries, the first that ZIP knows, so that
// saving twice gives the same bytes.
var earliest = time.Date(1980, time.January, 1, 0, 0, 0, 0, time.UTC)

// write writes the container: bag.json, the artwork by name, the preview.
func write(w io.Writer, p Project, within limits) error {
	var document bytes.Buffer
	if err := p.Encode(&document); err != nil {
		return err
	}
	if err := checkSizes(p, int64(document.Len()), within); err != nil {
		return err
	}
	archive := zip.NewWriter(w)
	if err := add(archive, documentName, zip.Deflate, document.Bytes()); err != nil {
		return err
	}
	for _, name := range p.Placed() {
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

// Placed returns the names of the files that the spec names and that are at hand,
// sorted.
func (p *Project) Placed() []string {
	names := slices.DeleteFunc(p.Spec.FileNames(), func(name string) bool {
		_, found := p.Files[name]
		return !found
	})
	slices.Sort(names)
	return names
}

// checkSizes refuses what could not be opened again.
func checkSizes(p Project, document int64, within limits) error {
	total := document + int64(len(p.Preview))
	for _, name := range p.Placed() {
		size := int64(len(p.Files[name]))
		if size > within.file {
			return phrase.Errorf("artwork %s has %s, more than the most, %s; make it smaller",
				shown(name), byteSize(size), byteSize(within.file))
		}
		total += size
	}
	switch {
	case int64(len(p.Preview)) > within.file:
		return phrase.Errorf("the preview has %s, more than the most, %s; make it smaller",
			byteSize(int64(len(p.Preview))), byteSize(within.file))
	case document > within.document:
		return phrase.Errorf("bag.json has %s, more than the most, %s; take artwork out", byteSize(document), byteSize(within.document))
	case total > within.total:
		return phrase.Errorf("the project has %s, more than the most, %s; take artwork out or make it smaller",
			byteSize(total), byteSize(within.total))
	}
	return nil
}
