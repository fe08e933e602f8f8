package dxf

import (
	"io"

	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
)

// Write writes the pieces side by side into one DXF file, in millimetres. The
// same pieces give the same bytes. The error names the first thing that cannot
// be drawn, such as a coordinate that is not a number.
func Write(w io.Writer, pieces []scene.Drawing) error {
	if err := scene.CheckAll(pieces); err != nil {
		return phrase.Errorf("write DXF: %s", err)
	}
	doc := newDocument(scene.Singles(pieces))
	// The header names the first handle that is free, so it is made last.
	body := doc.body()
	head := doc.header()
	for _, part := range [][]byte{head, body} {
		if _, err := w.Write(part); err != nil {
			return phrase.Errorf("write DXF: %s", err)
		}
	}
	return nil
}

// document is what the parts of a file share.
type document struct {
	pieces    []scene.Drawing
	roles     []scene.Role // that have a layer
	layers    map[scene.Role]layer
	lineTypes lineTypes
	next      handle // the first that is free
}

func newDocument(pieces []scene.Drawing) *document {
	types, roles := lineTypesOf(pieces), rolesOf(pieces)
	return &document{pieces: pieces, roles: roles, layers: layersOf(pieces, roles, types), lineTypes: types, next: firstFree}
}

// body returns all sections after the header.
func (d *document) body() []byte {
	var out tags
	out.lines(classes)
	d.tables(&out)
	out.lines(blocks)
	d.entities(&out)
	out.lines(objects)
	out.text(0, "EOF")
	return out.buffer
}

// take returns a handle that no other object of the file has.
func (d *document) take() handle {
	d.next++
	return d.next - 1
}
