package page

import (
	"errors"

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
		{Key: "Type", Value: object.Name("XObject")},
		{Key: "Subtype", Value: object.Name("Form")},
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
	group := drop(c.entries(d), map[object.Name]bool{"I": true})
	return append(group, object.Entry{Key: "I", Value: object.Boolean(true)})
}
