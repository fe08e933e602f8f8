package export

import (
	"bytes"
	"image"
	"image/png"
	"io"
	"math"

	"gussetwright/app/document"
	"gussetwright/geometry/phrase"
	"gussetwright/render/dieline"
	"gussetwright/render/flat"
	"gussetwright/render/printed"
	"gussetwright/render/scene"
)

// pixelsPerMillimetre of the picture of the blank: 150 per inch, sharp on screens
// and small enough to send.
const pixelsPerMillimetre = 150 / 25.4

// previewWidth is the width in pixels of the small picture in a project file.
const previewWidth = 480

// mostPixels is the size of the picture of the largest blanks, which have fewer pixels to
// the millimetre: 200 MB in memory.
const mostPixels = flat.MostPixels / 2

// writePicture writes the picture of a piece.
func writePicture(w io.Writer, o *order, number int) error {
	page := o.drawings[number].Media
	scale := min(pixelsPerMillimetre, math.Sqrt(mostPixels/(page.Width()*page.Height())))
	return drawPicture(w, o.snapshot, o.drawings[number], number, scale)
}

// Preview returns the small PNG picture of the bag's blank that a project file
// carries.
func Preview(snapshot *document.Snapshot) ([]byte, error) {
	drawing := dieline.Sheets(&snapshot.Blank, snapshot.Spec.Date)[0]
	var out bytes.Buffer
	if err := drawPicture(&out, snapshot, drawing, 0, previewWidth/drawing.Media.Width()); err != nil {
		return nil, phrase.Errorf("draw the preview: %s", err)
	}
	return out.Bytes(), nil
}

// Draw paints the drawing of a piece over what is printed on it, in pixels to the mm.
func Draw(snapshot *document.Snapshot, drawing scene.Drawing, piece int, scale float64) (image.Image, error) {
	return flat.DrawOver(drawing, scale, func(picture *image.RGBA, view flat.View) {
		if side := snapshot.Side(piece); !side.Bare() {
			side.Paint(&printed.Bench{}, picture, view, printed.Fine)
		}
	})
}

// drawPicture writes the picture of Draw as PNG.
func drawPicture(w io.Writer, snapshot *document.Snapshot, drawing scene.Drawing, piece int, scale float64) error {
	picture, err := Draw(snapshot, drawing, piece, scale)
	if err != nil {
		return err
	}
	if err := png.Encode(w, picture); err != nil {
		return phrase.Errorf("write the PNG picture of %q: %s", drawing.Title, err)
	}
	return nil
}
