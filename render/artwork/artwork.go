// Package artwork opens what designers draw elsewhere: raster pictures, SVG drawings
// and pages of PDF files. Whatever it was, opened artwork has a size in mm, pictures
// to look at, and a form that goes into a PDF file unharmed.
package artwork

import (
	"bytes"
	"context"
	"image"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/placement"
	"gussetwright/render/artwork/page"
	"gussetwright/render/artwork/raster"
	"gussetwright/render/artwork/vector"
	"gussetwright/render/pdf/object"
)

// Art is artwork that was opened. It never changes and may be used from several
// goroutines. One of Raster, Drawing and Document is set.
type Art struct {
	Name   string
	Format string // such as "JPEG"
	Pages  int    // of the file; 1 but for PDF
	Source placement.Source
	// Stated is false where the file does not say how large it is and Source is a
	// guess: 300 pixels or 96 units to the inch.
	Stated bool
	Notes  []phrase.Phrase // what the user should know
	// Levels are pictures of the artwork, the finest first, each next about half as
	// large, premultiplied.
	Levels []*image.RGBA

	Raster   *raster.Picture
	Drawing  *vector.Drawing
	Document *page.Page
}

// usualPixels is how many pixels make a mm where a raster file does not say: 300 to
// the inch, what printers ask for.
const usualPixels = 300 / 25.4

// Open reads artwork. number is the page of a PDF file, counted from 1. The content
// tells what the file is, not its name.
func Open(ctx context.Context, name string, data []byte, number int) (*Art, error) {
	art, err := open(ctx, data, number)
	if err != nil {
		return nil, phrase.Errorf("open artwork %q: %s", name, err)
	}
	art.Name = name
	return art, nil
}

func open(ctx context.Context, data []byte, number int) (*Art, error) {
	switch {
	case len(data) == 0:
		return nil, phrase.Errorf("the file is empty; save it again where it was drawn")
	case isPDF(data):
		return openPage(ctx, data, number)
	case number > 1:
		return nil, phrase.Errorf("page %d was asked for, but only PDF files have pages; choose page 1", number)
	case isSVG(data):
		return openDrawing(ctx, data)
	}
	return openRaster(ctx, data)
}

// headerRoom is how far into a file the header of a PDF may begin, as readers accept
// it (ISO 32000-1, annex H, note 13; value from memory).
const headerRoom = 1024

func isPDF(data []byte) bool {
	return bytes.Contains(data[:min(len(data), headerRoom)], []byte("%PDF-"))
}

// isSVG tells whether the file is XML text; the reader says if it is no SVG.
func isSVG(data []byte) bool {
	start := bytes.TrimPrefix(data[:min(len(data), headerRoom)], []byte("\xef\xbb\xbf"))
	return bytes.HasPrefix(bytes.TrimLeft(start, " \t\r\n"), []byte("<"))
}

func openRaster(ctx context.Context, data []byte) (*Art, error) {
	picture, err := raster.Read(ctx, data)
	if err != nil {
		return nil, err
	}
	art := &Art{Format: picture.Format, Pages: 1, Raster: picture, Levels: picture.Levels, Notes: picture.Notes}
	perMM := picture.PerMM
	art.Stated = perMM.X > 0 && perMM.Y > 0
	if !art.Stated {
		perMM = geometry.Vec2{X: usualPixels, Y: usualPixels}
	}
	art.Source.Size = geometry.Vec2{X: float64(picture.Size.X) / perMM.X, Y: float64(picture.Size.Y) / perMM.Y}
	return art, nil
}

func openDrawing(ctx context.Context, data []byte) (*Art, error) {
	drawing, err := vector.Read(ctx, data)
	if err != nil {
		return nil, err
	}
	art := &Art{Format: "SVG", Pages: 1, Drawing: drawing, Stated: drawing.Stated, Notes: drawing.Notes}
	art.Source.Size = drawing.Size
	return art, art.draw(func(width, height int) (*image.RGBA, error) { return drawing.Render(ctx, width, height) })
}

func openPage(ctx context.Context, data []byte, number int) (*Art, error) {
	read, err := page.Read(ctx, data, number)
	if err != nil {
		return nil, err
	}
	art := &Art{Format: "PDF", Pages: read.Pages, Document: read, Stated: true, Notes: read.Notes}
	art.Source = placement.Source{Size: read.Size, Trim: read.Trim}
	return art, art.draw(func(width, height int) (*image.RGBA, error) { return read.Render(ctx, width, height) })
}

// Form returns the artwork as it goes into a PDF file: a JPEG and what a PDF page
// holds as they were, an SVG drawing as vectors.
func (a *Art) Form(ctx context.Context) (*object.Form, error) {
	var form *object.Form
	var err error
	switch {
	case a.Raster != nil:
		form, err = a.Raster.Form(ctx)
	case a.Drawing != nil:
		form, err = a.Drawing.Form(ctx)
	case a.Document != nil:
		form, err = a.Document.Form(ctx)
	default:
		err = phrase.Errorf("nothing was opened; open the file first")
	}
	if err != nil {
		return nil, phrase.Errorf("embed artwork %q: %s", a.Name, err)
	}
	return form, nil
}
