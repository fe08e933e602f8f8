// Package export writes the files that leave the program. Each is made from the
// same snapshot, and none appears until all of them are made.
package export

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/practice"
	"gussetwright/app/wholefile"
	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// Job is an order for files.
type Job struct {
	Folder   string // made where it is missing
	Project  string // what the names of the files begin with
	Snapshot *document.Snapshot
	Date     time.Time // of title blocks and proofs
	Kinds    []Kind
	// Say puts the English words of files into the language of the user; nil leaves
	// them in English. Names of layers and spot colours stay as they are.
	Say func(english string) string
	// Unit is that of sizes in files that clients read, "" for mm.
	Unit geometry.Unit
	// PracticePaper is what practice blanks are printed on, "" for what is usual with
	// the unit.
	PracticePaper practice.Paper
}

// made is a finished file that waits to be written.
type made struct {
	name string
	data []byte
}

// Write makes the chosen kinds of file and puts them into the folder under names that
// begin with the project's. It calls progress before each kind with the share done.
// When ctx ends or one file cannot be made, none is written. A kind that the bag lacks
// is an error where it was chosen by name, or where nothing else would be written.
func Write(ctx context.Context, job Job, progress func(share float64, kind string)) ([]string, error) {
	o := newOrder(ctx, job)
	var files []made
	var lacking error
	for i, kind := range job.Kinds {
		if err := ctx.Err(); err != nil {
			return nil, phrase.Errorf("export: %s; nothing was written", err)
		}
		progress(float64(i)/float64(len(job.Kinds)), kind.Name)
		if err := kind.Lacking(job.Snapshot); err != nil {
			lacking = phrase.Errorf("export %s: %s; nothing was written", kind.Name, err)
			if kind.asked {
				return nil, lacking
			}
		}
		for number, name := range kind.Files(job.Project, job.Snapshot) {
			var out bytes.Buffer
			if err := kind.write(&out, o, number); err != nil {
				return nil, phrase.Errorf("export %s: %s; nothing was written", kind.Name, err)
			}
			files = append(files, made{name, out.Bytes()})
		}
	}
	if err := ctx.Err(); err != nil {
		return nil, phrase.Errorf("export: %s; nothing was written", err)
	}
	if len(files) == 0 && lacking != nil {
		return nil, lacking
	}
	return put(job.Folder, files)
}

func put(folder string, files []made) ([]string, error) {
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return nil, phrase.Errorf("export: %s; choose another folder", err)
	}
	var paths []string
	for _, file := range files {
		path := filepath.Join(folder, file.name)
		err := wholefile.Write(path, func(w io.Writer) error {
			_, err := w.Write(file.data)
			return err
		})
		if err != nil {
			return paths, phrase.Errorf("export %s: %s", path, err)
		}
		paths = append(paths, path)
	}
	return paths, nil
}

// FileName turns the name of a project into one that every file system takes.
func FileName(project string) string {
	safe := strings.Map(func(r rune) rune {
		if r < ' ' || strings.ContainsRune(`<>:"/\|?*`, r) {
			return '-'
		}
		return r
	}, project)
	safe = strings.Trim(safe, " .")
	if safe == "" {
		return "bag"
	}
	return safe
}
