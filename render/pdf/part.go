package pdf

import (
	"fmt"

	"gussetwright/geometry"
	"gussetwright/render/pdf/object"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// parts are what is repeated in a document: each stands in it once as a form, without
// colour and layer, which it takes from where it is placed.
type parts struct {
	*draft
	known map[*scene.Part]part
}

type part struct {
	entry
	blends bool // something shines through
}

func newParts(d *draft) *parts { return &parts{d, map[*scene.Part]part{}} }

// form returns the form of a part, the same for every use.
func (p *parts) form(source *scene.Part) part {
	if known, isKnown := p.known[source]; isKnown {
		return known
	}
	inner := content{fonts: p.fonts, forms: p.forms}
	inner.clip(source.Clip)
	inner.items(source.Items)
	box := extent(source)
	head := dict{
		{"Type", name("XObject")},
		{"Subtype", name("Form")},
		{"BBox", numbers(box.Min.X, box.Min.Y, box.Max.X, box.Max.Y)},
		{"Resources", p.resources(inner)},
	}
	p.drawn.Write(inner.data) // a hash takes everything
	made := part{entry{name(fmt.Sprintf("Part%d", len(p.known)+1)), p.add(stream{head, inner.data})}, inner.blends}
	p.known[source] = made
	return made
}

// extent returns a box that surely holds all that a part shows.
func extent(source *scene.Part) geometry.Rect {
	var boxes []geometry.Rect
	for _, item := range source.Items {
		switch item := item.(type) {
		case scene.Stroke:
			boxes = append(boxes, item.Path.Bounds().Inset(-item.Width))
		case scene.Fill:
			boxes = append(boxes, item.Path.Bounds())
		case scene.Label:
			reach := typeface.Advance(item.Text, item.Size, item.Bold) + 2*item.Size
			boxes = append(boxes, geometry.Rect{Min: item.At, Max: item.At}.Inset(-reach))
		case scene.Placed:
			for _, at := range item.Places() {
				boxes = append(boxes, at.Bounds(geometry.RectAt(0, 0, 1, 1)))
			}
		}
	}
	if len(boxes) == 0 {
		return geometry.Rect{}
	}
	all := boxes[0]
	for _, box := range boxes[1:] {
		all = all.Union(box)
	}
	return all
}

// resources returns what the operators of a part name, and nothing else.
func (p *parts) resources(c content) dict {
	resources := dict{}
	for _, group := range []struct {
		key  name
		held dict
	}{{"ExtGState", c.states}, {"Font", p.fonts.used(&p.file, c.lettered)}, {"XObject", c.placed}} {
		if len(group.held) > 0 {
			resources = append(resources, entry{group.key, group.held})
		}
	}
	return resources
}

// clip bounds what follows to the inside of any of the paths (ISO 32000-1, 8.5.4).
func (c *content) clip(paths []geometry.Path) {
	if len(paths) == 0 {
		return
	}
	for _, path := range paths {
		c.path(path)
	}
	c.do("W")
	c.do("n")
}

// repeat draws a part in each of its places.
func (c *content) repeat(r scene.Repeated) {
	form := c.parts.form(r.Part)
	c.blends = c.blends || form.blends
	for _, place := range r.Places {
		c.placed = include(c.placed, form.entry)
		c.do("q")
		if !place.Window.Empty() {
			c.clip([]geometry.Path{place.Window.Path()})
		}
		c.matrix(place.At)
		c.named("Do", form.Key)
		c.do("Q")
	}
}

// placedIn calls visit for each piece of artwork on a page, that of parts too.
func placedIn(page scene.Drawing, visit func(item int, form *object.Form) error) error {
	for i, item := range page.Items {
		items := []scene.Item{item}
		if repeated, is := item.(scene.Repeated); is {
			items = repeated.Part.Items
		}
		for _, item := range items {
			if placed, is := item.(scene.Placed); is {
				if err := visit(i+1, placed.Form); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// checkRepeated refuses parts that hold what cannot be drawn, or stand out of reach.
func checkRepeated(r scene.Repeated) error {
	if r.Part == nil {
		return fmt.Errorf("there is no part; give what is repeated")
	}
	for i, item := range r.Part.Items {
		if _, is := item.(scene.Repeated); is || item.Layer() != r.Part.Role {
			return fmt.Errorf("item %d of the part is on another layer or is itself repeated; make a part of its own of it", i+1)
		}
		if err := checkItem(item); err != nil {
			return fmt.Errorf("item %d of the part: %w", i+1, err)
		}
	}
	for _, path := range r.Part.Clip {
		if err := checkPath(path); err != nil {
			return err
		}
	}
	for _, place := range r.Places {
		at := place.At
		if err := within("place", farthest, at.U.X, at.U.Y, at.V.X, at.V.Y, at.Origin.X, at.Origin.Y); err != nil {
			return err
		}
	}
	return nil
}
