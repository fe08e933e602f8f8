package page

import (
	"math"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"

	"gussetwright/geometry"
)

// Image is a picture that stands on the page.
type Image struct {
	Width, Height int           // in pixels
	At            geometry.Rect // where it stands, in mm
	PPI           float64       // pixels to the inch as it stands, in the coarser direction
}

// Measure is the smallest of something on the page.
type Measure struct {
	Found bool
	Value float64
	At    geometry.Rect // in mm
}

// least keeps the smaller one.
func (m *Measure) least(value float64, at geometry.Rect) {
	if !m.Found || value < m.Value {
		*m = Measure{true, value, at}
	}
}

// measurer looks at the objects on a page one by one.
type measurer struct {
	pdfium pdfium.Pdfium
	page   *Page
	area   geometry.Rect // of the page in points
	looked int
}

// full tells whether enough was looked at.
func (m *measurer) full() bool { return m.looked >= mostLooked }

// sheet measures all objects of a page.
func (m *measurer) sheet(page requests.Page) error {
	count, err := m.pdfium.FPDFPage_CountObjects(&requests.FPDFPage_CountObjects{Page: page})
	if err != nil {
		return err
	}
	for i := 0; i < count.Count && !m.full(); i++ {
		found, err := m.pdfium.FPDFPage_GetObject(&requests.FPDFPage_GetObject{Page: page, Index: i})
		if err != nil {
			return err
		}
		if err := m.object(found.PageObject, geometry.Identity(), 0); err != nil {
			return err
		}
	}
	return nil
}

// object measures one object; to is the motion from its own space to points.
func (m *measurer) object(o references.FPDF_PAGEOBJECT, to geometry.Affine, depth int) error {
	m.looked++
	kind, err := m.pdfium.FPDFPageObj_GetType(&requests.FPDFPageObj_GetType{PageObject: o})
	if err != nil {
		return err
	}
	switch kind.Type {
	case enums.FPDF_PAGEOBJ_FORM:
		return m.form(o, to, depth)
	case enums.FPDF_PAGEOBJ_IMAGE:
		m.image(o, to)
	case enums.FPDF_PAGEOBJ_PATH:
		m.path(o, to)
	case enums.FPDF_PAGEOBJ_TEXT:
		m.text(o, to)
	}
	return nil
}

// form measures the objects of a form.
func (m *measurer) form(o references.FPDF_PAGEOBJECT, to geometry.Affine, depth int) error {
	own, is := m.matrix(o)
	if !is || depth >= deepestTree {
		return nil
	}
	count, err := m.pdfium.FPDFFormObj_CountObjects(&requests.FPDFFormObj_CountObjects{PageObject: o})
	if err != nil {
		return nil // an empty form
	}
	for i := 0; i < count.Count && !m.full(); i++ {
		found, err := m.pdfium.FPDFFormObj_GetObject(&requests.FPDFFormObj_GetObject{PageObject: o, Index: uint64(i)})
		if err != nil {
			return err
		}
		if err := m.object(found.PageObject, to.After(own), depth+1); err != nil {
			return err
		}
	}
	return nil
}

// matrix returns the motion that an object brings along.
func (m *measurer) matrix(o references.FPDF_PAGEOBJECT) (geometry.Affine, bool) {
	found, err := m.pdfium.FPDFPageObj_GetMatrix(&requests.FPDFPageObj_GetMatrix{PageObject: o})
	if err != nil {
		return geometry.Affine{}, false
	}
	a := found.Matrix
	motion := geometry.Affine{
		U:      geometry.Vec2{X: float64(a.A), Y: float64(a.B)},
		V:      geometry.Vec2{X: float64(a.C), Y: float64(a.D)},
		Origin: geometry.Vec2{X: float64(a.E), Y: float64(a.F)},
	}
	sum := motion.U.X + motion.U.Y + motion.V.X + motion.V.Y + motion.Origin.X + motion.Origin.Y
	return motion, !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

// bounds returns where an object lies, in mm, and whether any of it is on the page.
func (m *measurer) bounds(o references.FPDF_PAGEOBJECT, to geometry.Affine) (geometry.Rect, bool) {
	b, err := m.pdfium.FPDFPageObj_GetBounds(&requests.FPDFPageObj_GetBounds{PageObject: o})
	if err != nil {
		return geometry.Rect{}, false
	}
	r := to.Bounds(geometry.Rect{
		Min: geometry.Vec2{X: float64(b.Left), Y: float64(b.Bottom)},
		Max: geometry.Vec2{X: float64(b.Right), Y: float64(b.Top)},
	})
	on := r.Max.X >= m.area.Min.X && r.Min.X <= m.area.Max.X && r.Max.Y >= m.area.Min.Y && r.Min.Y <= m.area.Max.Y
	return millimetre(r), on
}

func (m *measurer) image(o references.FPDF_PAGEOBJECT, to geometry.Affine) {
	own, is := m.matrix(o)
	size, err := m.pdfium.FPDFImageObj_GetImagePixelSize(&requests.FPDFImageObj_GetImagePixelSize{ImageObject: o})
	if !is || err != nil || len(m.page.Images) >= mostListed {
		return
	}
	place := to.After(own)
	unit := geometry.RectAt(0, 0, 1, 1) // a picture fills the unit square
	at, on := m.bounds(o, to)
	width, height := place.U.Length(), place.V.Length()
	if !on || width == 0 || height == 0 || size.Width == 0 || size.Height == 0 {
		return
	}
	if own := millimetre(place.Bounds(unit)); at.Empty() {
		at = own
	}
	ppi := 72 * min(float64(size.Width)/width, float64(size.Height)/height)
	m.page.Images = append(m.page.Images, Image{int(size.Width), int(size.Height), at, ppi})
	m.page.LeastPPI.least(ppi, at)
}

// path measures the line of a path. Where it is stretched, its thinner direction
// counts.
func (m *measurer) path(o references.FPDF_PAGEOBJECT, to geometry.Affine) {
	mode, err := m.pdfium.FPDFPath_GetDrawMode(&requests.FPDFPath_GetDrawMode{PageObject: o})
	if err != nil || !mode.Stroke {
		return
	}
	width, err := m.pdfium.FPDFPageObj_GetStrokeWidth(&requests.FPDFPageObj_GetStrokeWidth{PageObject: o})
	own, is := m.matrix(o)
	if err != nil || !is {
		return
	}
	if at, on := m.bounds(o, to); on {
		m.page.LeastLine.least(float64(width.StrokeWidth)*narrowest(to.After(own))*point, at)
	}
}

// narrowest returns by how much a motion stretches in the direction in which it
// stretches least: its smaller singular value.
func narrowest(a geometry.Affine) float64 {
	e, f := (a.U.X+a.V.Y)/2, (a.U.X-a.V.Y)/2
	g, h := (a.U.Y+a.V.X)/2, (a.U.Y-a.V.X)/2
	return math.Abs(math.Hypot(e, h) - math.Hypot(f, g))
}

// text measures the height of a text; what is not drawn does not count.
func (m *measurer) text(o references.FPDF_PAGEOBJECT, to geometry.Affine) {
	mode, err := m.pdfium.FPDFTextObj_GetTextRenderMode(&requests.FPDFTextObj_GetTextRenderMode{PageObject: o})
	if err != nil || mode.TextRenderMode == enums.FPDF_TEXTRENDERMODE_INVISIBLE || mode.TextRenderMode == enums.FPDF_TEXTRENDERMODE_CLIP {
		return
	}
	size, err := m.pdfium.FPDFTextObj_GetFontSize(&requests.FPDFTextObj_GetFontSize{PageObject: o})
	own, is := m.matrix(o)
	if err != nil || !is {
		return
	}
	points := math.Abs(float64(size.FontSize)) * to.After(own).V.Length()
	if at, on := m.bounds(o, to); on && points > 0 {
		m.page.LeastText.least(points, at)
	}
}

// millimetre returns a rectangle in points in millimetres.
func millimetre(r geometry.Rect) geometry.Rect { return geometry.Stretch(point, point).Bounds(r) }
