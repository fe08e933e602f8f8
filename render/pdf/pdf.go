package pdf

import (
	"io"

	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
)

// Write writes the drawings as a PDF file, a page for each, at their true size.
// The same drawings and info give the same bytes every time.
//
// With an output intent in info the file declares PDF/X-4.
//
// A page without items, a number that is none, a side above 5080 mm and boxes
// that do not lie in one another are errors that name the page and the item, and so
// is what PDF/X-4 does not allow where it is declared; then nothing is written.
func Write(w io.Writer, pages []scene.Drawing, info Info) error {
	return write(w, pages, info, true)
}

// write can leave overprinting out, which only serves to show that it matters.
func write(w io.Writer, pages []scene.Drawing, info Info, overprinting bool) error {
	data, err := build(pages, info, overprinting)
	if err != nil {
		return phrase.Errorf("make the PDF file: %s", err)
	}
	return send(w, data)
}

// send writes a whole file.
func send(w io.Writer, data []byte) error {
	if _, err := w.Write(data); err != nil {
		return phrase.Errorf("write the PDF file: %s", err)
	}
	return nil
}

func build(pages []scene.Drawing, info Info, overprinting bool) ([]byte, error) {
	intent, err := info.Output.read()
	if err != nil {
		return nil, err
	}
	if err := check(pages, info); err != nil {
		return nil, err
	}
	d := newDraft()
	shared := shared{
		layers:    addLayers(&d.file, pages, info.Template),
		stepState: d.add(overprint(overprinting)),
		forPress:  intent != nil,
		template:  info.Template,
	}
	if intent != nil {
		if err := checkForPress(pages, info); err != nil {
			return nil, err
		}
		d.forms.assumeSRGB()
	}
	for _, drawing := range pages {
		d.kids = append(d.kids, d.addPage(drawing, shared))
	}
	more := dict{
		{"OCProperties", layerList(shared.layers, info.Template)},
		{"PageMode", name("UseOC")},
		{"ViewerPreferences", dict{trueToScale}},
	}
	claim := ""
	if intent != nil {
		more = append(more, entry{"OutputIntents", array{d.add(intent.entry(&d.file))}})
		claim = intent.claim(info.Title, d.drawn)
	}
	return d.finish(info, info.packet(claim), more)
}
