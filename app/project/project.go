package project

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// Project is what a project file holds.
type Project struct {
	Spec bag.Spec
	// Kept holds the sizes that were kept to be compared, MostKept at most.
	Kept []KeptSize
	// Files holds the artwork files as they were given, by the name that stands
	// in Spec.FileNames. A file that could not be found is missing here and has a
	// note.
	Files map[string][]byte
	// Preview is a small PNG picture of the bag, or nil.
	Preview []byte
	// ReadOnly is true for a file of a newer version: entries that this version
	// does not know would be lost, so Save refuses it. Clear it to save a copy.
	ReadOnly bool
	// Notes are for the user to read, one sentence each.
	Notes []phrase.Phrase
}

// Open reads a project file, or bag.json with the artwork in the same folder.
// The content tells which it is, not the name.
func Open(path string) (Project, error) {
	file, err := os.Open(path)
	if err != nil {
		return Project{}, phrase.Errorf("open project: %s", err)
	}
	defer file.Close()
	info, err := file.Stat()
	if err != nil {
		return Project{}, phrase.Errorf("open project: %s", err)
	}
	read := opening{limits: standard(), history: released(), folder: filepath.Dir(path)}
	var p Project
	switch {
	case info.IsDir():
		err = phrase.Errorf("this is a folder; choose a file in it")
	case info.Mode().IsRegular():
		p, err = read.project(file, info.Size())
	default: // a pipe or a device has no size
		p, err = read.stream(file)
	}
	if err != nil {
		return Project{}, phrase.Errorf("open project %s: %s", path, err)
	}
	return p, nil
}

// Read reads a project file or bag.json of the given size in bytes. Artwork
// beside bag.json is not looked for.
func Read(r io.ReaderAt, size int64) (Project, error) {
	p, err := opening{limits: standard(), history: released()}.project(r, size)
	if err != nil {
		return Project{}, phrase.Errorf("read project: %s", err)
	}
	return p, nil
}

// ReadFrom reads a project file or bag.json to the end, such as from standard
// input, but never more than a project file can hold.
func ReadFrom(r io.Reader) (Project, error) {
	p, err := opening{limits: standard(), history: released()}.stream(r)
	if err != nil {
		return Project{}, phrase.Errorf("read project: %s", err)
	}
	return p, nil
}

// opening is how a project is read.
type opening struct {
	limits  limits
	history history
	folder  string // where the artwork of a bare bag.json lies; empty for nowhere
}

func (o opening) stream(r io.Reader) (Project, error) {
	data, err := readBounded(r, o.limits.container())
	if err != nil {
		return Project{}, err
	}
	return o.project(bytes.NewReader(data), int64(len(data)))
}

func (o opening) project(r io.ReaderAt, size int64) (Project, error) {
	start := make([]byte, 4)
	count, err := r.ReadAt(start, 0)
	if err != nil && !errors.Is(err, io.EOF) {
		return Project{}, err
	}
	if isContainer(start[:count]) {
		return o.container(r, size)
	}
	data, err := readBounded(io.NewSectionReader(r, 0, size), o.limits.document)
	if err != nil {
		return Project{}, err
	}
	p, err := o.document(data)
	if err != nil {
		return Project{}, err
	}
	if o.folder != "" {
		if err := o.artworkBeside(&p); err != nil {
			return Project{}, err
		}
	}
	p.noteMissing()
	return p, nil
}

// document reads bag.json into a project without files.
func (o opening) document(data []byte) (Project, error) {
	read, err := o.history.decode(data)
	if err != nil {
		return Project{}, fmt.Errorf("bag.json: %w", err)
	}
	p := Project{Spec: read.spec, Kept: read.kept, Files: map[string][]byte{}, ReadOnly: read.age.newer}
	if read.age.newer {
		p.note("The file was saved by a newer version (%s); it opens read-only. Save a copy to change it.", read.age.format)
	}
	if len(read.ignored) > 0 {
		p.note("Not known to this version and left out: %s.", someOf(read.ignored))
	}
	if read.age.older {
		p.note("The file was saved by an older version (%s); saving it writes %s%d.", read.age.format, formatName, o.history.current)
	}
	return p, nil
}

func (p *Project) note(format string, values ...any) {
	p.Notes = append(p.Notes, phrase.New(format, values...))
}

// noteMissing notes the files that were not found.
func (p *Project) noteMissing() {
	for _, name := range p.Spec.FileNames() {
		switch _, found := p.Files[name]; {
		case found:
		case name == p.Spec.Profile:
			p.note("The output profile %s is missing; choose it again.", shown(name))
		default:
			p.note("The artwork %s is missing; place it again.", shown(name))
		}
	}
}

// artworkBeside reads the artwork that lies in the folder of bag.json. Links that
// lead out of the folder are not followed.
func (o opening) artworkBeside(p *Project) error {
	folder, err := os.OpenRoot(o.folder)
	if err != nil {
		return err
	}
	defer folder.Close()
	left := o.limits.total
	for _, name := range p.Spec.FileNames() {
		info, err := folder.Stat(name)
		if err != nil || !info.Mode().IsRegular() {
			continue // noted as missing
		}
		file, err := folder.Open(name)
		if err != nil {
			return phrase.Errorf("artwork: %s", err)
		}
		data, err := readBounded(file, min(left, o.limits.file))
		file.Close()
		if err != nil {
			return phrase.Errorf("artwork %s: %s", shown(name), err)
		}
		p.Files[name] = data
		left -= int64(len(data))
	}
	return nil
}

// readBounded reads to the end, or fails where there is more than most bytes.
func readBounded(r io.Reader, most int64) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, most+1))
	if err != nil {
		return nil, err
	}
	if int64(len(data)) > most {
		return nil, phrase.Errorf("the file has more than the most, %s; choose a smaller one", byteSize(most))
	}
	return data, nil
}

// byteSize writes a number of bytes in the unit that people read.
func byteSize(bytes int64) string {
	switch {
	case bytes >= mebibyte:
		return fmt.Sprintf("%.4g MiB", float64(bytes)/mebibyte)
	case bytes >= 1024:
		return fmt.Sprintf("%.4g KiB", float64(bytes)/1024)
	}
	return fmt.Sprintf("%d bytes", bytes)
}

// someOf lists the first of many names, as a value of a phrase.
func someOf(names []string) any {
	const most = 5
	if len(names) > most {
		return phrase.New("%s and %d more", strings.Join(names[:most], ", "), len(names)-most)
	}
	return strings.Join(names, ", ")
}
