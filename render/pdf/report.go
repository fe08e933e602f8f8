package pdf

import (
	"errors"
	"io"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
	"gussetwright/render/scene"
)

// WriteReport writes pages for people to read as a PDF file, at their true size. The
// same pages and info give the same bytes every time.
//
// A report makes no claim to be PDF/X, so an output intent in info is an error, as is
// a page that no file can hold; the error names page and item. Then nothing is written.
func WriteReport(w io.Writer, pages []report.Page, info Info) error {
	data, err := buildReport(pages, info)
	if err != nil {
		return phrase.Errorf("make the PDF file: %s", err)
	}
	return send(w, data)
}

func buildReport(pages []report.Page, info Info) ([]byte, error) {
	if err := checkReport(pages, info); err != nil {
		return nil, err
	}
	d := newDraft()
	images := newImages(&d.file)
	for i, page := range pages {
		number, err := d.addReportPage(page, images)
		if err != nil {
			return nil, phrase.Errorf("page %d: %s", i+1, err)
		}
		d.kids = append(d.kids, number)
	}
	return d.finish(info, info.packet(""), dict{
		{"ViewerPreferences", dict{trueToScale, {"DisplayDocTitle", boolean(true)}}},
	})
}

func checkReport(pages []report.Page, info Info) error {
	if err := info.check(); err != nil {
		return err
	}
	if info.Output != nil {
		return errors.New("a report makes no claim to be PDF/X; leave the output intent out")
	}
	if len(pages) == 0 {
		return errors.New("there is no page; give at least one")
	}
	for i, page := range pages {
		if err := page.Check(); err != nil {
			return phrase.Errorf("page %d: %s", i+1, err)
		}
	}
	return nil
}

func (d *draft) addReportPage(page report.Page, images *images) (reference, error) {
	c := reportContent{content: content{fonts: d.fonts, forms: d.forms}, images: images}
	c.scale(geometry.Vec2{})
	for i, item := range page.Items {
		if err := c.item(item); err != nil {
			return 0, phrase.Errorf("item %d: %s", i+1, err)
		}
	}
	resources := dict{{"Font", d.fonts.used(&d.file, c.lettered)}}
	if len(c.placed) > 0 {
		resources = append(resources, entry{"XObject", c.placed})
	}
	return d.add(dict{
		{"Type", name("Page")},
		{"Parent", d.tree},
		{"MediaBox", box(geometry.RectAt(0, 0, page.Width, page.Height), geometry.Vec2{})},
		{"Resources", resources},
		{"Contents", d.draw(c.data)},
	}), nil
}

// reportContent writes the operators of a page of a report.
type reportContent struct {
	content
	images *images
}

func (c *reportContent) item(item report.Item) error {
	switch item := item.(type) {
	case report.Text:
		c.colour(item.Colour, "rg", "k")
		c.label(scene.Label{Text: item.Text, At: item.At, Size: item.Size, Anchor: item.Align, Turn: item.Turn, Bold: item.Bold})
	case report.Rule:
		c.outline(item.Path(), item.Line)
	case report.Box:
		c.shape(report.Shape{Path: item.Path(), Fill: item.Fill, Line: item.Line})
	case report.Shape:
		c.shape(item)
	case report.Picture:
		return c.picture(item)
	case report.Window:
		return c.window(item)
	}
	return nil
}

// window draws items within a rectangle. What the file knows of the line to come is as
// before once it is left.
func (c *reportContent) window(w report.Window) error {
	c.do("q")
	c.path(w.Rect.Path())
	c.do("W")
	c.do("n")
	before := c.pen
	for i, item := range w.Items {
		if err := c.item(item); err != nil {
			return phrase.Errorf("item %d in a window: %s", i+1, err)
		}
	}
	c.do("Q")
	c.pen = before
	return nil
}

// colour writes a colour with the operator for light or the one for inks; no colour is
// black.
func (c *reportContent) colour(colour report.Colour, light, inks string) {
	if mix, isInk := colour.Inks(); isInk {
		c.do(inks, mix.C, mix.M, mix.Y, mix.K)
		return
	}
	seen := colour.Screen()
	c.do(light, float64(seen.R)/255, float64(seen.G)/255, float64(seen.B)/255)
}

func (c *reportContent) shape(s report.Shape) {
	if !s.Fill.None() {
		c.colour(s.Fill, "rg", "k")
		c.path(s.Path)
		c.do("f")
	}
	c.outline(s.Path, s.Line)
}

func (c *reportContent) outline(path geometry.Path, line report.Line) {
	if line.Colour.None() {
		return
	}
	c.colour(line.Colour, "RG", "K")
	c.stroke(scene.Stroke{Path: path, Width: line.Width, Dash: line.Dash})
}

func (c *reportContent) picture(p report.Picture) error {
	at := geometry.Affine{U: geometry.Vec2{X: p.Rect.Width()}, V: geometry.Vec2{Y: p.Rect.Height()}, Origin: p.Rect.Min}
	if p.Form != nil {
		c.show(c.forms.add(use{form: p.Form}), p.Form, at)
		return nil
	}
	image, err := c.images.add(p.Image, p.Quality)
	if err != nil {
		return err
	}
	c.placed = include(c.placed, image)
	c.do("q")
	c.matrix(at)
	c.named("Do", image.Key)
	c.do("Q")
	return nil
}
