package page

import (
	"errors"
	"fmt"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf/object"
)

// drawn is a page taken out of its file.
type drawn struct {
	form        *object.Form
	boxes       boxes
	inks        Colours
	hidden      bool // something on hidden layers was left out
	layered     bool // there were layers
	annotations int
}

// draw takes a page out of a copy. The drawing stands in a form within the form that
// is returned, and not directly in it, because patterns keep to the coordinates of
// the form in which they are used, whatever its operators have turned since.
func draw(e extract) (*drawn, error) {
	s, err := newSource(e.copied)
	if err != nil {
		return nil, damaged(err)
	}
	page, err := s.page(e.index)
	if err != nil {
		return nil, err
	}
	d := &drawn{layered: e.whole, annotations: len(s.array(page.Get("Annots")))}
	if d.boxes, err = s.readBoxes(page); err != nil {
		return nil, err
	}
	c := &carrier{
		file: s, layers: newLayers(s), made: map[object.Reference]*object.Indirect{},
		resources: &object.Indirect{}, pageResources: s.dict(s.inherited(page, "Resources")),
		inks: &d.inks, separate: e.whole,
	}
	stream, err := c.content(page)
	if err != nil {
		return nil, err
	}
	c.resources.Value = c.dict(c.pageResources)
	group := c.group(s.dict(page.Get("Group")))
	if err := c.finish(); err != nil {
		return nil, err
	}
	d.hidden = c.hidden
	d.form = d.boxes.form(stream, c.resources, group)
	return d, nil
}

// form returns the outer form around the drawing.
func (b boxes) form(stream object.Plain, resources *object.Indirect, group object.Dict) *object.Form {
	m, r := b.upright(), b.placed
	size := m.Bounds(r)
	stream.Dict = append(object.Dict{
		{Key: "Type", Value: object.Name("XObject")}, {Key: "Subtype", Value: object.Name("Form")},
		{Key: "BBox", Value: exact(r.Min.X, r.Min.Y, r.Max.X, r.Max.Y)},
		{Key: "Matrix", Value: exact(m.U.X, m.U.Y, m.V.X, m.V.Y, m.Origin.X, m.Origin.Y)},
		{Key: "Resources", Value: resources},
	}, stream.Dict...)
	return &object.Form{
		Width: size.Width(), Height: size.Height(),
		Content: []byte("/Artwork Do\n"),
		Resources: object.Dict{{Key: "XObject", Value: object.Dict{
			{Key: "Artwork", Value: &object.Indirect{Value: stream}},
		}}},
		Group: group,
	}
}

// exact returns numbers with all digits that a page of any size needs.
func exact(values ...float64) object.Array {
	list := make(object.Array, len(values))
	for i, v := range values {
		list[i] = numeral(object.AppendNumber(nil, v, 8))
	}
	return list
}

// content returns the operators of the page: as they were where they are in one
// stream and nothing had to be left out, else joined and packed again.
func (c *carrier) content(page object.Dict) (object.Plain, error) {
	list := c.file.each(page.Get("Contents"))
	var joined []byte
	var last object.Plain
	streams := 0
	for _, o := range list {
		stream, is := c.file.resolve(o).(object.Plain)
		if !is {
			continue
		}
		part, err := c.unpack(stream)
		if errors.Is(err, errUnpacked) {
			return object.Plain{}, err
		}
		if err != nil {
			return object.Plain{}, phrase.Errorf("the drawing operators of the page are damaged (%s); save the file again in the program that made it", err)
		}
		if streams++; streams == 1 {
			joined = part
		} else {
			joined = append(append(joined, '\n'), part...)
		}
		last = stream
	}
	filtered, unchanged := filterContent(joined, c.layerIn(c.pageResources), c.inks)
	if !unchanged || streams != 1 {
		return packed(nil, filtered), nil
	}
	return object.Plain{Dict: c.head(last.Dict), Data: c.data(last.Data)}, nil
}

// group returns the transparency group of the page. A page is a group that nothing
// beneath shines into, whatever its entry says (ISO 32000-1, 11.4.7), and must stay
// one within another page.
func (c *carrier) group(d object.Dict) object.Dict {
	if c.file.name(d.Get("S")) != "Transparency" {
		return nil
	}
	group := drop(c.entries(d, left), map[object.Name]bool{"I": true})
	return append(group, object.Entry{Key: "I", Value: object.Boolean(true)})
}

// page returns a page of the copy, counted from 0, in the way that PDFium counts
// them: whatever has no children is one.
func (s *source) page(index int) (object.Dict, error) {
	root := s.dict(s.trailer.Get("Root"))
	w := walk{file: s, left: index, seen: map[object.Reference]bool{}}
	w.node(root.Get("Pages"), 0)
	if w.found == nil {
		return nil, phrase.Errorf("the page is not where the file says; save it again in the program that made it")
	}
	return w.found, nil
}

// walk looks for a page in the page tree.
type walk struct {
	file  *source
	left  int // pages before it
	seen  map[object.Reference]bool
	found object.Dict
}

func (w *walk) node(o object.Object, depth int) {
	if number, is := o.(object.Reference); is {
		if w.seen[number] {
			return
		}
		w.seen[number] = true
	}
	d := w.file.dict(o)
	children := w.file.array(d.Get("Kids"))
	if d.Get("Kids") == nil {
		if w.left == 0 {
			w.found = d
		}
		w.left--
		return
	}
	if depth > deepestTree {
		return
	}
	for _, child := range children {
		if w.node(child, depth+1); w.left < 0 {
			return
		}
	}
}

// onePage writes a PDF file that holds the form as its only page, for PDFium to draw
// and to measure: so what is seen is what is placed.
func onePage(form *object.Form) []byte {
	file := []byte("%PDF-1.7\n")
	objects := []object.Object{nil} // by number, from 1
	numbering := object.Numbering{
		Reserve: func() object.Reference {
			objects = append(objects, object.Null{})
			return object.Reference(len(objects) - 1)
		},
		Set: func(number object.Reference, o object.Object) { objects[number] = o },
	}
	parent := &object.Indirect{}
	sheet := object.Dict{
		{Key: "Type", Value: object.Name("Page")}, {Key: "Parent", Value: parent},
		{Key: "MediaBox", Value: object.Numbers(0, 0, form.Width, form.Height)},
		{Key: "Resources", Value: form.Resources},
		{Key: "Contents", Value: &object.Indirect{Value: object.Plain{Data: form.Content}}},
	}
	if form.Group != nil {
		sheet = append(sheet, object.Entry{Key: "Group", Value: form.Group})
	}
	parent.Value = object.Dict{
		{Key: "Type", Value: object.Name("Pages")}, {Key: "Count", Value: object.Integer(1)},
		{Key: "Kids", Value: object.Array{&object.Indirect{Value: sheet}}},
	}
	root := numbering.Place(&object.Indirect{Value: object.Dict{
		{Key: "Type", Value: object.Name("Catalog")}, {Key: "Pages", Value: parent},
	}})
	offsets := make([]int, len(objects))
	for number := 1; number < len(objects); number++ {
		offsets[number] = len(file)
		file = fmt.Appendf(file, "%d 0 obj\n", number)
		file = append(objects[number].AppendTo(file), "\nendobj\n"...)
	}
	start := len(file)
	file = fmt.Appendf(file, "xref\n0 %d\n0000000000 65535 f \n", len(objects))
	for _, offset := range offsets[1:] {
		file = fmt.Appendf(file, "%010d 00000 n \n", offset)
	}
	trailer := object.Dict{{Key: "Size", Value: object.Integer(len(objects))}, {Key: "Root", Value: root}}
	return fmt.Appendf(trailer.AppendTo(append(file, "trailer\n"...)), "\nstartxref\n%d\n%%%%EOF\n", start)
}

// millimetre returns a rectangle of the form, in points, in millimetres.
func millimetre(r geometry.Rect) geometry.Rect { return geometry.Stretch(point, point).Bounds(r) }
