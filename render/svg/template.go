package svg

import (
	"io"

	"gussetwright/render/scene"
)

// The namespaces in which the drawing program Inkscape keeps its layers and locks;
// other programs see plain groups.
const layerNames = ` xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape"` +
	` xmlns:sodipodi="http://sodipodi.sourceforge.net/DTD/sodipodi-0.dtd"`

// WriteTemplate writes a piece for artwork to be drawn under: an empty layer for it
// at the bottom, and the drawing on a locked layer above. Its descriptions are in a
// voice; nil is English.
func WriteTemplate(w io.Writer, piece scene.Drawing, voice scene.Voice) error {
	pieces := []scene.Drawing{piece}
	return write(w, pieces, voice, func(doc *document) {
		doc.open(pieces, layerNames)
		doc.text(`<g id="artwork" inkscape:groupmode="layer" inkscape:label="Artwork">` + "\n<title>Artwork</title>\n</g>\n")
		doc.text(`<g id="die" inkscape:groupmode="layer" inkscape:label="Die" sodipodi:insensitive="true">` + "\n<title>Die</title>\n")
		doc.groups(pieces)
		doc.text("</g>\n")
	})
}
