package scene

import (
	"errors"
	"fmt"

	"gussetwright/geometry"
	"gussetwright/render/pdf/object"
)

// Placed is artwork on the drawing. It is shown by files that can hold it; the
// others leave it out.
type Placed struct {
	Form *object.Form // what is placed
	// At takes the unit square of the form, from (0, 0) in its lower left corner to
	// (1, 1) in its upper right, to the drawing in mm.
	At geometry.Affine
	// Copies are where the form stands once more: displacements in steps of its unit
	// square, before At; nil where it stands once.
	Copies  []geometry.Vec2
	Clip    geometry.Path // nothing is shown outside; without vertices for no bounds
	Opacity float64       // 0 for unseen to 1 for opaque
}

// Layer returns Artwork.
func (p Placed) Layer() Role { return Artwork }

// Places returns where the form stands: At, and At after each of the Copies.
func (p Placed) Places() []geometry.Affine {
	places := []geometry.Affine{p.At}
	for _, step := range p.Copies {
		places = append(places, p.At.After(geometry.Shift(step)))
	}
	return places
}

func (p Placed) check() error {
	if p.Form == nil {
		return errors.New("nothing is placed; give the form of the artwork")
	}
	size := numbers{{"width of the form", p.Form.Width}, {"height of the form", p.Form.Height}}
	if err := size.check(smallest); err != nil {
		return err
	}
	for _, at := range p.Places() {
		ways := numbers{{"x", at.Origin.X}, {"y", at.Origin.Y}, {"width across", at.U.X}, {"width up", at.U.Y}, {"height across", at.V.X}, {"height up", at.V.Y}}
		if err := ways.check(-Farthest); err != nil {
			return err
		}
	}
	if p.At.Area() == 0 {
		return errors.New("the artwork is pressed flat; give it a width and a height")
	}
	if !(p.Opacity >= 0 && p.Opacity <= 1) {
		return fmt.Errorf("opacity is %g; give 0 for unseen to 1 for opaque", p.Opacity)
	}
	return checkPath(p.Clip)
}
