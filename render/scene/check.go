package scene

import (
	"errors"
	"fmt"
	"math"

	"gussetwright/geometry"
)

// Farthest is the largest coordinate or length, in mm, that a drawing may hold:
// a kilometre. Anything beyond it comes from a fault, not from paper.
const Farthest = 1e6

// smallest is the least size of a label in mm that has a height in every file.
const smallest = 0.01

// flat is how far, in mm, an edge may bulge from its chord and still count as
// straight: a hundredth of what a cutting rule can hold. Without it a nearly
// straight edge would become an arc of many kilometres radius.
const flat = 1e-4

// Straight tells whether the edge is to be drawn as a straight line. The rise of
// an arc over its chord is the chord times half the bulge.
func Straight(edge geometry.Edge) bool {
	return math.Abs(edge.Bulge)*edge.To.Sub(edge.From).Length()/2 < flat
}

// CheckAll returns an error when there are no drawings or one cannot be written.
func CheckAll(drawings []Drawing) error {
	if len(drawings) == 0 {
		return errors.New("there is no drawing; lay out a piece first")
	}
	for _, drawing := range drawings {
		if err := drawing.Check(); err != nil {
			return err
		}
	}
	return nil
}

// Check returns an error for the first thing in the drawing that no file can
// hold: a number that is not finite or beyond Farthest, a negative width, an
// unknown role, an empty page.
func (d Drawing) Check() error {
	page := numbers{{"page left", d.Media.Min.X}, {"page bottom", d.Media.Min.Y}, {"page right", d.Media.Max.X}, {"page top", d.Media.Max.Y}}
	if err := page.check(-Farthest); err != nil {
		return fmt.Errorf("drawing %q: %w", d.Title, err)
	}
	if d.Media.Empty() {
		return fmt.Errorf("drawing %q: the page is %g × %g mm; both must be more than 0, set Media around the piece", d.Title, d.Media.Width(), d.Media.Height())
	}
	for i, item := range d.Items {
		if err := checkItem(item); err != nil {
			return fmt.Errorf("drawing %q, item %d: %w", d.Title, i, err)
		}
	}
	return nil
}

func checkItem(item Item) error {
	var err error
	switch item := item.(type) {
	case Stroke:
		err = errors.Join(checkPath(item.Path), checkPen(item))
	case Fill:
		err = checkPath(item.Path)
	case Label:
		at := numbers{{"x", item.At.X}, {"y", item.At.Y}, {"turn", item.Turn}}
		size := numbers{{"size", item.Size}}
		err = errors.Join(at.check(-Farthest), size.check(smallest))
	case Placed:
		err = item.check()
	case Repeated:
		return item.check()
	default:
		return fmt.Errorf("it is a %T; use a Stroke, a Fill, a Label, a Placed or a Repeated", item)
	}
	if _, known := styles[item.Layer()]; !known {
		err = errors.Join(err, fmt.Errorf("role %d is not known; use one of AllRoles", item.Layer()))
	}
	return err
}

func checkPath(path geometry.Path) error {
	for i, v := range path.Vertices {
		corner := numbers{{"x", v.X}, {"y", v.Y}, {"bulge", v.Bulge}}
		if err := corner.check(-Farthest); err != nil {
			return fmt.Errorf("vertex %d: %w", i, err)
		}
	}
	return nil
}

func checkPen(stroke Stroke) error {
	pen := numbers{{"width", stroke.Width}}
	for _, length := range stroke.Dash {
		pen = append(pen, number{"dash", length})
	}
	return pen.check(0)
}

type number struct {
	name  string
	value float64
}

type numbers []number

// check returns an error for the first value outside lowest to Farthest. Not a
// number fails every comparison, so the comparison asks for what is right.
func (n numbers) check(lowest float64) error {
	for _, number := range n {
		if !(number.value >= lowest && number.value <= Farthest) {
			return fmt.Errorf("%s is %g; it must be a number from %g to %g, correct the size it was computed from", number.name, number.value, lowest, Farthest)
		}
	}
	return nil
}
