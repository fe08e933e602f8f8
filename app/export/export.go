// Package export writes the files that leave the program. Each is made from the
// same snapshot, and none appears until all of them are made.
package export

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/wholefile"
	"gussetwright/geometry/blank"
	"gussetwright/render/creasefile"
	"gussetwright/render/dieline"
	"gussetwright/render/dxf"
	"gussetwright/render/pdf"
	"gussetwright/render/scene"
	"gussetwright/render/svg"
)

// Kind is one kind of file.
type Kind struct {
	Name   string // what the user asks for it by, such as "dieline"
	Title  string // what the window calls it, in English
	Suffix string // what follows the name of the project
	Help   string
	write  func(io.Writer, *order) error
}

// order is what the files are made from.
type order struct {
	snapshot *document.Snapshot
	drawings []scene.Drawing
	date     time.Time
}

// Kinds returns every kind of file, in the order in which they are written.
func Kinds() []Kind {
	return []Kind{
		{"dieline", "Dieline", "-dieline.pdf", "drawing of the blank at true size, a page for each piece, lines as spot colours on layers", writePDF},
		{"svg", "SVG drawing", ".svg", "the same drawing in millimetres, a group for each kind of line", writeSVG},
		{"dxf", "DXF drawing", ".dxf", "the same drawing for cutting tables and die-makers, a layer for each kind of line", writeDXF},
		{"fold", "Crease pattern", ".fold", "crease pattern with fold directions, for folding programs", writeFOLD},
		{"png", "Picture", "-blank.png", "picture of the drawing, a file for each piece", nil},
	}
}

// Choose returns the kinds that are named in a list such as "dieline,dxf"; an empty
// list names all. The error names what is not known and what is.
func Choose(list string) ([]Kind, error) {
	if list == "" {
		return Kinds(), nil
	}
	var chosen []Kind
	for _, name := range strings.Split(list, ",") {
		kind, found := kindNamed(strings.TrimSpace(name))
		if !found {
			var names []string
			for _, k := range Kinds() {
				names = append(names, k.Name)
			}
			return nil, fmt.Errorf("file kind %q is not known; choose from %s", name, strings.Join(names, ", "))
		}
		chosen = append(chosen, kind)
	}
	return chosen, nil
}

func kindNamed(name string) (Kind, bool) {
	for _, kind := range Kinds() {
		if kind.Name == name {
			return kind, true
		}
	}
	return Kind{}, false
}

// made is a finished file that waits to be written.
type made struct {
	name string
	data []byte
}

// Write makes the chosen kinds of file and puts them into folder, which is
// created where it is missing, under names that begin with the project's. It
// calls progress before each kind with the share done. When ctx ends or one file
// cannot be made, none is written.
func Write(ctx context.Context, folder, project string, snapshot *document.Snapshot, date time.Time, kinds []Kind, progress func(share float64, kind string)) ([]string, error) {
	o := order{
		snapshot: snapshot, date: date,
		drawings: dieline.Sheets(&snapshot.Blank, date.Format(time.DateOnly)),
	}
	var files []made
	for i, kind := range kinds {
		if err := ctx.Err(); err != nil {
			return nil, fmt.Errorf("export: %w; nothing was written", err)
		}
		progress(float64(i)/float64(len(kinds)), kind.Name)
		more, err := kind.make(kind.Files(project, snapshot), &o)
		if err != nil {
			return nil, fmt.Errorf("export %s: %w; nothing was written", kind.Name, err)
		}
		files = append(files, more...)
	}
	if err := ctx.Err(); err != nil {
		return nil, fmt.Errorf("export: %w; nothing was written", err)
	}
	return put(folder, files)
}

// Files returns the names of the files that the kind takes for a bag: one, but for
// pictures one for each piece, numbered where there are two.
func (k Kind) Files(project string, snapshot *document.Snapshot) []string {
	base, pieces := FileName(project), len(snapshot.Blank.Pieces)
	if k.write != nil || pieces == 1 {
		return []string{base + k.Suffix}
	}
	var names []string
	for i := range pieces {
		names = append(names, fmt.Sprintf("%s-%d%s", base, i+1, k.Suffix))
	}
	return names
}

// make makes the files with the names that Files returned.
func (k Kind) make(names []string, o *order) ([]made, error) {
	if k.write == nil {
		return makePictures(names, o)
	}
	var out bytes.Buffer
	if err := k.write(&out, o); err != nil {
		return nil, err
	}
	return []made{{names[0], out.Bytes()}}, nil
}

func put(folder string, files []made) ([]string, error) {
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return nil, fmt.Errorf("export: %w", err)
	}
	var paths []string
	for _, file := range files {
		path := filepath.Join(folder, file.name)
		err := wholefile.Write(path, func(w io.Writer) error {
			_, err := w.Write(file.data)
			return err
		})
		if err != nil {
			return paths, fmt.Errorf("export %s: %w", path, err)
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

func writePDF(w io.Writer, o *order) error {
	title := o.snapshot.Spec.Name
	if title == "" {
		title = "Paper carrier bag"
	}
	return pdf.Write(w, o.drawings, pdf.Info{Title: title, Date: o.date})
}

func writeSVG(w io.Writer, o *order) error { return svg.Write(w, o.drawings) }

func writeDXF(w io.Writer, o *order) error { return dxf.Write(w, o.drawings) }

func writeFOLD(w io.Writer, o *order) error {
	return creasefile.Write(w, o.snapshot.Spec.Name, blank.Patterns(o.snapshot.Spec))
}
