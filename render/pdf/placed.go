package pdf

import (
	"fmt"

	"gussetwright/geometry"
	"gussetwright/render/pdf/object"
	"gussetwright/render/scene"
)

// forms are the artwork of a document: each form stands in it once, however often
// it is placed.
type forms struct {
	file      *file
	numbering object.Numbering
	known     map[use]entry
	objects   map[*object.Form]*object.Indirect
	states    map[float64]entry
	blending  map[*object.Form]bool // which forms something shines through
}

// use is a form as it is, or as a whole through which something shines.
type use struct {
	form  *object.Form
	whole bool
}

func newForms(file *file) *forms {
	return &forms{
		file:      file,
		numbering: object.Numbering{Reserve: file.reserve, Set: file.set},
		known:     map[use]entry{},
		objects:   map[*object.Form]*object.Indirect{},
		states:    map[float64]entry{},
		blending:  map[*object.Form]bool{},
	}
}

// add returns the name and the number of a form, the same for every use.
func (f *forms) add(u use) entry {
	if known, isKnown := f.known[u]; isKnown {
		return known
	}
	object := f.object(u.form)
	if u.whole && u.form.Group == nil {
		object = group(u.form, object)
	}
	added := entry{name(fmt.Sprintf("Form%d", len(f.known)+1)), f.numbering.Place(object)}
	f.known[u] = added
	return added
}

func (f *forms) object(form *object.Form) *object.Indirect {
	if f.objects[form] == nil {
		f.objects[form] = form.XObject()
	}
	return f.objects[form]
}

// group returns a form as a transparency group, in which parts that overlap are not
// seen through one another (ISO 32000-1, 11.6.6).
func group(form *object.Form, inner *object.Indirect) *object.Indirect {
	outer := object.Form{
		Width: form.Width, Height: form.Height,
		Content:   []byte("/Inner Do\n"),
		Resources: dict{{"XObject", dict{{"Inner", inner}}}},
		Group:     dict{{"Type", name("Group")}, {"S", name("Transparency")}},
	}
	return outer.XObject()
}

// state returns the name and the number of the graphics state for an opacity.
func (f *forms) state(opacity float64) entry {
	if known, isKnown := f.states[opacity]; isKnown {
		return known
	}
	state := dict{{"Type", name("ExtGState")}, {"ca", number(opacity)}, {"CA", number(opacity)}}
	added := entry{name(fmt.Sprintf("Opacity%d", len(f.states)+1)), f.file.add(state)}
	f.states[opacity] = added
	return added
}

// blends tells whether something shines through parts of a form.
func (f *forms) blends(form *object.Form) bool {
	known, isKnown := f.blending[form]
	if !isKnown {
		known = blends(form)
		f.blending[form] = known
	}
	return known
}

// place draws artwork. What cannot be seen is left out.
func (c *content) place(p scene.Placed) {
	if p.Opacity == 0 {
		return
	}
	c.do("q")
	if len(p.Clip.Vertices) > 0 {
		c.path(p.Clip)
		c.do("W")
		c.do("n")
	}
	if p.Opacity < 1 {
		state := c.forms.state(p.Opacity)
		c.states = include(c.states, state)
		c.named("gs", state.Key)
	}
	c.blends = c.blends || p.Opacity < 1 || c.forms.blends(p.Form)
	form := c.forms.add(use{p.Form, p.Opacity < 1})
	for _, at := range p.Places() {
		c.show(form, p.Form, at)
	}
	c.do("Q")
}

// show draws a form whose unit square goes to a place on the page.
func (c *content) show(named entry, form *object.Form, at geometry.Affine) {
	c.placed = include(c.placed, named)
	c.do("q")
	c.matrix(at.After(geometry.Stretch(1/form.Width, 1/form.Height)))
	c.named("Do", named.Key)
	c.do("Q")
}

// include returns the list with an entry, which it may hold already.
func include(list dict, e entry) dict {
	if list.Get(e.Key) != nil {
		return list
	}
	return append(list, e)
}

// checkPlaced refuses artwork that lies out of reach. An unseen piece counts too, so
// that it does not fail once it is shown.
func checkPlaced(p scene.Placed) error {
	if p.Form == nil {
		return fmt.Errorf("there is no form; give the artwork")
	}
	if !(p.Form.Width >= thinnest && p.Form.Height >= thinnest) {
		return fmt.Errorf("the form is %g × %g; both must be %g at least", p.Form.Width, p.Form.Height, thinnest)
	}
	if err := within("size of the form", 1e9, p.Form.Width, p.Form.Height); err != nil {
		return err
	}
	for _, at := range p.Places() {
		low, high := at.At(geometry.Vec2{}), at.At(geometry.Vec2{X: 1, Y: 1})
		if err := within("place", farthestForm, low.X, low.Y, high.X, high.Y, at.U.X, at.U.Y, at.V.X, at.V.Y); err != nil {
			return err
		}
	}
	if p.At.Area() == 0 {
		return fmt.Errorf("the artwork is pressed flat; give it a width and a height")
	}
	if !(p.Opacity >= 0 && p.Opacity <= 1) {
		return fmt.Errorf("opacity of %g; give a share from 0 to 1", p.Opacity)
	}
	if len(p.Clip.Vertices) == 0 {
		return nil
	}
	return checkPath(p.Clip)
}
