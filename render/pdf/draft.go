package pdf

import (
	"crypto/sha256"
	"hash"

	"gussetwright/render/pdf/object"
)

// draft is a file in the making: its objects and what all its pages share.
type draft struct {
	file
	catalog reference
	tree    reference // parent of the pages
	kids    array     // the pages
	fonts   *fonts
	forms   *forms
	parts   *parts
	drawn   hash.Hash // of what is drawn on the pages
}

func newDraft() *draft {
	d := &draft{fonts: newFonts(), drawn: sha256.New()}
	d.catalog, d.tree = d.reserve(), d.reserve()
	d.forms = newForms(&d.file)
	d.parts = newParts(d)
	return d
}

// draw adds the operators of a page.
func (d *draft) draw(operators []byte) reference {
	d.drawn.Write(operators) // a hash takes everything
	return d.add(stream{nil, operators})
}

// finish adds what the pages refer to and returns the whole file; packet is the
// metadata, and more are further entries of the catalog.
func (d *draft) finish(info Info, packet object.Object, more dict) ([]byte, error) {
	for _, font := range d.fonts {
		if err := font.embed(&d.file); err != nil {
			return nil, err
		}
	}
	d.set(d.tree, dict{{"Type", name("Pages")}, {"Kids", d.kids}, {"Count", integer(len(d.kids))}})
	head := dict{{"Type", name("Catalog")}, {"Pages", d.tree}, {"Metadata", d.add(packet)}}
	if info.Language != "" {
		more = append(more, entry{"Lang", text(info.Language)})
	}
	d.set(d.catalog, append(head, more...))
	return d.bytes(d.catalog, d.add(info.dictionary())), nil
}

// trueToScale asks programs to print the pages at their size: they are measured
// with a ruler.
var trueToScale = entry{"PrintScaling", name("None")}
