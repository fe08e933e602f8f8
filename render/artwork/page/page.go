package page

import (
	"context"
	"time"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/requests"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf/object"
)

// Page is one page of a PDF file that was read. It never changes, so that goroutines
// can share it.
type Page struct {
	Number, Pages int           // counted from 1, and how many the file has
	Size          geometry.Vec2 // of the area that is placed, upright, in mm
	Box           Box           // which box of the page that area is
	// Trim, Bleed and Media are the boxes of the page relative to the placed area,
	// in mm, upright. Trim is the finished artwork and Media the whole sheet, with
	// printer's marks where there are any; a box that the page does not state is the
	// placed area.
	Trim, Bleed, Media geometry.Rect
	Fonts              []Font // in the order of their names
	Colours            Colours
	Images             []Image // pictures on the page, those in patterns left aside
	LeastPPI           Measure // the coarsest picture, in pixels to the inch
	LeastLine          Measure // the thinnest stroke, in mm; 0 is as thin as a device can
	LeastText          Measure // the smallest text, in points: the size of its font
	Notes              []phrase.Phrase

	form *object.Form
}

// Read reads a page, counted from 1, of a PDF file. The error says what is wrong with
// the file and what can be done: it wraps ErrPassword where a password is needed, and
// is the error of ctx where that ended first. data must not change any more.
func Read(ctx context.Context, data []byte, number int) (*Page, error) {
	page, err := read(ctx, data, number)
	if err != nil {
		return nil, phrase.Errorf("read page %d of the PDF file: %s", number, err)
	}
	return page, nil
}

func read(ctx context.Context, data []byte, number int) (*Page, error) {
	e, err := extractPage(ctx, data, number)
	if err != nil {
		return nil, err
	}
	d, err := draw(e)
	if err != nil {
		return nil, err
	}
	b := d.boxes
	p := &Page{
		Number: number, Pages: e.pages, Box: b.box,
		Size: geometry.Vec2{X: d.form.Width * point, Y: d.form.Height * point},
		Trim: b.millimetres(b.trim), Bleed: b.millimetres(b.bleed), Media: b.millimetres(b.media),
		Colours: d.inks, form: d.form,
	}
	f := look(d.form, &p.Colours)
	p.Fonts = f.list()
	whole, err := p.measure(ctx)
	if err != nil {
		return nil, err
	}
	p.Notes = notes(p, e, d, f, whole)
	return p, nil
}

// measure looks at what is on the page, and tells whether it looked at all of it.
func (p *Page) measure(ctx context.Context) (whole bool, err error) {
	err = withPage(ctx, readTime, onePage(p.form), func(pdfium pdfium.Pdfium, page requests.Page) error {
		m := measurer{pdfium: pdfium, page: p, area: geometry.RectAt(0, 0, p.form.Width, p.form.Height)}
		err := m.sheet(page)
		whole = !m.full()
		return err
	})
	return whole, err
}

// withPage opens the only page of a file for some work in PDFium.
func withPage(ctx context.Context, limit time.Duration, data []byte, work func(pdfium.Pdfium, requests.Page) error) error {
	return shared.run(ctx, limit, func(p pdfium.Pdfium) error {
		file := newFile(data)
		defer file.leave()
		document, err := file.open(p)
		if err != nil {
			return err
		}
		defer p.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: document})
		page, err := p.FPDF_LoadPage(&requests.FPDF_LoadPage{Document: document, Index: 0})
		if err != nil {
			return damaged(err)
		}
		defer p.FPDF_ClosePage(&requests.FPDF_ClosePage{Page: page.Page})
		return work(p, requests.Page{ByReference: &page.Page})
	})
}

// Form returns the placed area as vectors for another PDF file, Width and Height in
// points. Pictures, fonts and colour profiles are in it byte by byte as they were.
// What the layers of the artwork hide is left out; the rest is in no layer any more.
// It is the same form every time, so a file that holds the artwork twice can hold it
// once; it must not be changed.
func (p *Page) Form(ctx context.Context) (*object.Form, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	return p.form, nil
}
