package pdf

import (
	"fmt"
	"io"

	"gussetwright/render/scene"
)

// Write writes the drawings as a PDF file, a page for each, at their true size.
// The same drawings and info give the same bytes every time.
//
// A page without items, a number that is none, a side above 5080 mm and boxes
// that do not lie in one another are errors that name the page and the item;
// then nothing is written.
func Write(w io.Writer, pages []scene.Drawing, info Info) error {
	return write(w, pages, info, true)
}

// write can leave overprinting out, which only serves to show that it matters.
func write(w io.Writer, pages []scene.Drawing, info Info, overprinting bool) error {
	data, err := build(pages, info, overprinting)
	if err != nil {
		return fmt.Errorf("make the PDF file: %w", err)
	}
	if _, err := w.Write(data); err != nil {
		return fmt.Errorf("write the PDF file: %w", err)
	}
	return nil
}

func build(pages []scene.Drawing, info Info, overprinting bool) ([]byte, error) {
	if err := check(pages, info); err != nil {
		return nil, err
	}
	var f file
	catalog := f.reserve()
	shared := shared{
		tree:      f.reserve(),
		layers:    addLayers(&f, pages),
		stepState: f.add(overprint(overprinting)),
		fonts:     newFonts(),
	}
	var kids array
	for _, drawing := range pages {
		kids = append(kids, addPage(&f, drawing, shared))
	}
	for _, font := range shared.fonts {
		if err := font.embed(&f); err != nil {
			return nil, err
		}
	}
	f.set(shared.tree, dict{{"Type", name("Pages")}, {"Kids", kids}, {"Count", integer(len(kids))}})
	f.set(catalog, dict{
		{"Type", name("Catalog")},
		{"Pages", shared.tree},
		{"Metadata", f.add(info.packet())},
		{"OCProperties", layerList(shared.layers)},
		{"PageMode", name("UseOC")},
		// A print of the drawing is measured with a ruler.
		{"ViewerPreferences", dict{{"PrintScaling", name("None")}}},
	})
	return f.bytes(catalog, f.add(info.dictionary())), nil
}
