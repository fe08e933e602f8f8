package svg

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
)

// Write writes the pieces side by side into one SVG document, in millimetres, with its
// descriptions in English. The same pieces give the same bytes. The error names the
// first thing that cannot be drawn, such as a coordinate that is not a number.
func Write(w io.Writer, pieces []scene.Drawing) error { return WriteIn(w, pieces, nil) }

// WriteIn does what Write does, with its descriptions in a voice; nil is English.
func WriteIn(w io.Writer, pieces []scene.Drawing, voice scene.Voice) error {
	return write(w, pieces, voice, func(doc *document) {
		doc.open(pieces, "")
		doc.groups(pieces)
	})
}

// write writes a document with what content puts between its start and its end.
func write(w io.Writer, pieces []scene.Drawing, voice scene.Voice, content func(*document)) error {
	if err := scene.CheckAll(pieces); err != nil {
		return phrase.Errorf("write SVG: %s", err)
	}
	doc := document{page: scene.RowMedia(pieces), voice: scene.OrEnglish(voice)}
	content(&doc)
	doc.text("</svg>\n")
	if _, err := w.Write(doc.buffer); err != nil {
		return phrase.Errorf("write SVG: %s", err)
	}
	return nil
}

// document is the text of the file as far as it is written.
type document struct {
	page   geometry.Rect
	voice  scene.Voice
	buffer []byte
}

// open writes everything before the first group; names declares further namespaces.
func (d *document) open(pieces []scene.Drawing, names string) {
	d.text(`<?xml version="1.0" encoding="UTF-8"?>` + "\n" + `<svg xmlns="http://www.w3.org/2000/svg"` + names + ` version="1.1" width="`)
	d.number(d.page.Width())
	d.text(`mm" height="`)
	d.number(d.page.Height())
	d.text(`mm" viewBox="0 0 `)
	d.number(d.page.Width())
	d.text(" ")
	d.number(d.page.Height())
	d.text(`">` + "\n<title>")
	d.escaped(title(pieces))
	d.text("</title>\n")
	d.description("millimetres, true scale")
}

// title returns the titles of the pieces, each once.
func title(pieces []scene.Drawing) string {
	var titles []string
	for _, piece := range pieces {
		if piece.Title != "" && !slices.Contains(titles, piece.Title) {
			titles = append(titles, piece.Title)
		}
	}
	return strings.Join(titles, ", ")
}

// groups writes one group for each role that has items, lowest first.
func (d *document) groups(pieces []scene.Drawing) {
	moves := scene.Row(pieces)
	sorted := make([]map[scene.Role][]scene.Item, len(pieces))
	for i, piece := range scene.Singles(pieces) {
		sorted[i] = piece.ByRole()
	}
	for _, role := range scene.AllRoles() {
		opened := false
		for i, items := range sorted {
			if len(items[role]) > 0 && !opened {
				d.openGroup(role)
				opened = true
			}
			for _, item := range items[role] {
				d.item(item, moves[i])
			}
		}
		if opened {
			d.text("</g>\n")
		}
	}
}

// openGroup writes the start of a group with what all its strokes share and the
// processing step of ISO 19593-1 that they stand for.
func (d *document) openGroup(role scene.Role) {
	style := role.Style()
	name := role.Spelled("-")
	d.text(`<g id="` + name + `" class="` + name + `"`)
	d.attribute("data-iso-19593-1-group", style.Group)
	d.attribute("data-iso-19593-1-type", style.Step)
	d.text(` fill="none" stroke="` + colour(role) + `" stroke-linecap="butt" stroke-linejoin="round">` + "\n<title>")
	d.escaped(style.Name)
	d.text("</title>\n")
	if style.Help != "" {
		d.description(phrase.Word(style.Help))
	}
}

// description writes what the part of the document just opened is, for a reader.
func (d *document) description(text phrase.Word) {
	d.text("<desc>")
	d.escaped(d.voice.Word(text))
	d.text("</desc>\n")
}

func (d *document) item(item scene.Item, move geometry.Vec2) {
	switch item := item.(type) {
	case scene.Stroke:
		d.stroke(item, move)
	case scene.Fill:
		d.fill(item, move)
	case scene.Label:
		d.label(item, move)
	}
}

// colour returns the screen colour of the role as #rrggbb.
func colour(role scene.Role) string {
	c := role.Style().Screen
	return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
}
