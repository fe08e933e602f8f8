package document

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"gussetwright/geometry/check"
)

// ShowArt makes the document show artwork as the gallery opens it. Call Renew when
// the gallery has opened more.
func (d *Document) ShowArt(gallery Gallery) {
	d.gallery = gallery
	d.Renew()
}

// Renew derives the bag anew and tells everybody, because something that it depends
// on changed outside: a file was opened or read again.
func (d *Document) Renew() {
	d.stale = true
	d.tell()
}

// PutFile adds a file to the project and returns the name under which artwork can
// name it: its own, or one with a number where another file has that already. The
// file is in the project from then on, but saved only while the spec names it, so
// adding one is no step of its own.
func (d *Document) PutFile(name string, data []byte) string {
	free := d.FreeName(name, data)
	if _, there := d.files[free]; !there {
		d.files[free] = data
	}
	return free
}

// FreeName returns the name that PutFile would give to a file.
func (d *Document) FreeName(name string, data []byte) string {
	ending := filepath.Ext(name)
	stem := strings.TrimSuffix(name, ending)
	free := name
	for number := 2; ; number++ {
		taken, found := d.named(free)
		if !found || bytes.Equal(d.files[taken], data) && taken == free {
			return free
		}
		free = fmt.Sprintf("%s-%d%s", stem, number, ending)
	}
}

// named returns the file of the project with a name, whatever its capitals: some file
// systems do not tell them apart.
func (d *Document) named(name string) (string, bool) {
	for there := range d.files {
		if strings.EqualFold(there, name) {
			return there, true
		}
	}
	return "", false
}

// ReplaceFile puts newer content in the place of a file of the project, for artwork
// that was changed where it was drawn. The bag then differs from what was saved.
func (d *Document) ReplaceFile(name string, data []byte) {
	old, found := d.files[name]
	if !found || bytes.Equal(old, data) {
		return
	}
	d.files[name] = data
	d.saved = nil
	d.Renew()
}

// dropFiles lets go of those of the files that no state of the history names any more,
// after states that named them were dropped. They can be many megabytes.
func (d *Document) dropFiles(names []string) {
	if len(names) == 0 {
		return
	}
	needed := map[string]bool{}
	for i := range d.steps {
		for _, name := range d.steps[i].spec.FileNames() {
			needed[name] = true
		}
	}
	for _, name := range names {
		if !needed[name] {
			delete(d.files, name)
		}
	}
}

// File returns the content of a file of the project.
func (d *Document) File(name string) (data []byte, found bool) {
	data, found = d.files[name]
	return data, found
}

// Found adds findings that took longer to make than a snapshot. They are of no use
// any more when the bag has changed since.
func (d *Document) Found(of *Snapshot, findings []check.Finding) {
	if d.last != of || len(findings) == 0 {
		return
	}
	d.last = of.with(findings)
	d.tell()
}
