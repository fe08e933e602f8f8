package pdf

import (
	"errors"
	"fmt"
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
)

// Limits of what is written, in millimetres.
const (
	longestSide  = 14400 / pointsPerMM // of a page: 14 400 points (ISO 32000-1, annex C; value from memory)
	shortestSide = 3 / pointsPerMM     // of a page: 3 points (the same)
	farthest     = 10000               // coordinates; older readers end at 32 767 points (value from memory)
	farthestForm = 1e9                 // corners of artwork, which is clipped; numbers may go to 3.4e38 (ISO 32000-1, annex C; value from memory)
	thinnest     = 0.01                // lines and lettering; below, a reader draws what it likes
	roundest     = 1000                // bulge of an edge that is within a quarter of a degree of a full circle
)

// check refuses what a reader of the file could not show as it was meant. All
// that comes after it takes the drawings as sound.
func check(pages []scene.Drawing, info Info) error {
	if err := info.check(); err != nil {
		return err
	}
	if len(pages) == 0 {
		return errors.New("there is no page; give at least one drawing")
	}
	for i, page := range pages {
		if err := checkPage(page); err != nil {
			return phrase.Errorf("page %d (%s): %s", i+1, page.Title, err)
		}
	}
	return nil
}

func checkPage(page scene.Drawing) error {
	if err := checkBoxes(page); err != nil {
		return err
	}
	if len(page.Items) == 0 {
		return errors.New("there is nothing to draw; leave the page out")
	}
	for i, item := range page.Items {
		if err := checkItem(item); err != nil {
			return phrase.Errorf("item %d: %s", i+1, err)
		}
	}
	return nil
}

func checkBoxes(page scene.Drawing) error {
	boxes := []struct {
		what phrase.Word
		geometry.Rect
	}{{"media box", page.Media}, {"bleed box", page.Bleed}, {"trim box", page.Trim}}
	for i, box := range boxes {
		if err := within(box.what, farthest, box.Min.X, box.Min.Y, box.Max.X, box.Max.Y); err != nil {
			return err
		}
		if box.Empty() {
			return phrase.Errorf("the %s is %g × %g mm; it must have an area", box.what, box.Width(), box.Height())
		}
		if i > 0 && !(boxes[i-1].Contains(box.Min) && boxes[i-1].Contains(box.Max)) {
			return phrase.Errorf("the %s, %s, sticks out of the %s, %s; enlarge that box", box.what, corners(box.Rect), boxes[i-1].what, corners(boxes[i-1].Rect))
		}
	}
	for _, side := range []float64{page.Media.Width(), page.Media.Height()} {
		if side < shortestSide || side > longestSide+geometry.Tolerance {
			return phrase.Errorf("a side of the page is %g mm; a PDF page is %.1f to %.0f mm, choose another sheet", side, shortestSide, longestSide)
		}
	}
	return nil
}

func corners(r geometry.Rect) phrase.Phrase {
	return phrase.New("(%g, %g) to (%g, %g) mm", r.Min.X, r.Min.Y, r.Max.X, r.Max.Y)
}

func checkItem(item scene.Item) error {
	switch item := item.(type) {
	case scene.Stroke:
		return describe("line", item.Role, checkStroke(item))
	case scene.Fill:
		return describe("area", item.Role, checkFill(item))
	case scene.Label:
		return describe("label", item.Role, checkLabel(item))
	case scene.Placed:
		return describe("placed form", scene.Artwork, checkPlaced(item))
	case scene.Repeated:
		return describe("part", item.Layer(), checkRepeated(item))
	default:
		return fmt.Errorf("a %T can't be drawn; use a Stroke, a Fill, a Label, a Placed or a Repeated", item)
	}
}

// describe says which item an error is about. It finds unknown roles too, as
// those have no name to say it with.
func describe(what phrase.Word, role scene.Role, err error) error {
	if role.Style().Name == "" {
		return fmt.Errorf("%s of role %d: there is no such role; use one of scene.AllRoles", what, int(role))
	}
	if err != nil {
		return phrase.Errorf("%s on layer %s: %s", what, role, err)
	}
	return nil
}

func checkStroke(s scene.Stroke) error {
	if s.Role == scene.Artwork {
		return errors.New("artwork has no colour of its own; draw it as an area with an ink")
	}
	if err := atLeast("width", s.Width); err != nil {
		return err
	}
	if err := within("dash", farthest, s.Dash...); err != nil {
		return err
	}
	sum := 0.0
	for _, length := range s.Dash {
		if length < 0 {
			return phrase.Errorf("dash of %g mm; dashes and gaps must not be negative", length)
		}
		sum += length
	}
	if len(s.Dash) > 0 && sum < thinnest {
		return phrase.Errorf("dashes of %g mm in all; they must come to %g mm at least, leave them out for a solid line", sum, thinnest)
	}
	return checkPath(s.Path)
}

func checkFill(f scene.Fill) error {
	if isArtwork := f.Role == scene.Artwork; isArtwork && f.Ink == nil {
		return errors.New("artwork has no colour of its own; give the area an ink")
	} else if !isArtwork && f.Ink != nil {
		return errors.New("the area has an ink, but a step prints in its spot colour; leave the ink out")
	}
	if ink := f.Ink; ink != nil {
		for _, share := range []float64{ink.C, ink.M, ink.Y, ink.K} {
			if !(share >= 0 && share <= 1) {
				return phrase.Errorf("ink of %g; give a share from 0 to 1", share)
			}
		}
	}
	return checkPath(f.Path)
}

func checkLabel(l scene.Label) error {
	if l.Role == scene.Artwork {
		return errors.New("artwork has no colour of its own; lettering belongs to a step")
	}
	if err := atLeast("size", l.Size); err != nil {
		return err
	}
	if err := within("direction", farthest, l.Turn); err != nil {
		return err
	}
	return within("place", farthest, l.At.X, l.At.Y)
}

func checkPath(path geometry.Path) error {
	if path.Len() == 0 {
		return errors.New("the path has no edge; leave it out")
	}
	for i, v := range path.Vertices {
		if err := within("vertex", farthest, v.X, v.Y); err != nil {
			return phrase.Errorf("%s (vertex %d)", err, i+1)
		}
	}
	for i := range path.Len() {
		edge := path.Edge(i)
		if err := within("bulge", roundest, edge.Bulge); err != nil {
			return phrase.Errorf("%s (edge %d)", err, i+1)
		}
		// An arc reaches no farther from its chord than this.
		reach := edge.To.Sub(edge.From).Length() * math.Abs(edge.Bulge)
		if err := within("arc", farthest, reach); err != nil {
			return phrase.Errorf("%s (edge %d)", err, i+1)
		}
	}
	return nil
}

// within refuses values beyond ±limit and values that are no number.
func within(what phrase.Word, limit float64, values ...float64) error {
	for _, value := range values {
		if !(math.Abs(value) <= limit) {
			return phrase.Errorf("%s: %g is not a number from %g to %g", what, value, -limit, limit)
		}
	}
	return nil
}

// atLeast refuses lines and lettering that are too small to be drawn alike
// everywhere.
func atLeast(what phrase.Word, value float64) error {
	if !(value >= thinnest && value <= farthest) {
		return phrase.Errorf("%s of %g mm; give %g to %d mm", what, value, thinnest, farthest)
	}
	return nil
}
