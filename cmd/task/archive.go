package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// member is a file in an archive.
type member struct {
	name    string // with slashes, below the top folder of the archive
	mode    fs.FileMode
	content []byte
}

// The rights of what users read, and of what they start.
const (
	readable fs.FileMode = 0o644
	runnable fs.FileMode = 0o755
)

// arranged returns the members below a top folder, in the order of their names. Two of
// one name are an error.
func arranged(top string, members []member) ([]member, error) {
	var all []member
	for _, one := range members {
		one.name = top + "/" + one.name
		all = append(all, one)
	}
	slices.SortFunc(all, func(a, b member) int { return strings.Compare(a.name, b.name) })
	for i := 1; i < len(all); i++ {
		if all[i].name == all[i-1].name {
			return nil, fmt.Errorf("%s is in the archive twice", all[i].name)
		}
	}
	return all, nil
}

// writeTar writes the members as a compressed tar archive. The same members give the
// same bytes: their order, owner and time are fixed.
func writeTar(w io.Writer, top string, members []member, date time.Time) error {
	all, err := arranged(top, members)
	if err != nil {
		return err
	}
	packed, err := gzip.NewWriterLevel(w, gzip.BestCompression)
	if err != nil {
		return err
	}
	archive := tar.NewWriter(packed)
	for _, one := range all {
		head := &tar.Header{
			Typeflag: tar.TypeReg, Name: one.name, Size: int64(len(one.content)),
			Mode: int64(one.mode), ModTime: date, Uname: "root", Gname: "root", Format: tar.FormatUSTAR,
		}
		if err := archive.WriteHeader(head); err != nil {
			return err
		}
		if _, err := archive.Write(one.content); err != nil {
			return err
		}
	}
	if err := archive.Close(); err != nil {
		return err
	}
	return packed.Close()
}

// writeZip writes the members as a zip archive, with the same promise as writeTar.
func writeZip(w io.Writer, top string, members []member, date time.Time) error {
	all, err := arranged(top, members)
	if err != nil {
		return err
	}
	archive := zip.NewWriter(w)
	for _, one := range all {
		head := &zip.FileHeader{Name: one.name, Method: zip.Deflate, Modified: date}
		head.SetMode(one.mode)
		file, err := archive.CreateHeader(head)
		if err != nil {
			return err
		}
		if _, err := file.Write(one.content); err != nil {
			return err
		}
	}
	return archive.Close()
}

// saveArchive writes an archive to a file, a zip where its name says so.
func saveArchive(path, top string, members []member, date time.Time) error {
	write := writeTar
	if strings.HasSuffix(path, ".zip") {
		write = writeZip
	}
	var whole bytes.Buffer
	if err := write(&whole, top, members, date); err != nil {
		return fmt.Errorf("write %s: %w", filepath.Base(path), err)
	}
	if err := os.WriteFile(path, whole.Bytes(), readable); err != nil {
		return fmt.Errorf("write an archive: %w", err)
	}
	return nil
}

// fromDisk returns a file as a member of another name.
func fromDisk(name string, mode fs.FileMode, path string) (member, error) {
	content, err := os.ReadFile(path)
	if err != nil {
		return member{}, fmt.Errorf("put %s into the archive: %w", name, err)
	}
	return member{name, mode, content}, nil
}
