package dieline

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
)

// dimensions draws all measures round the piece and returns the height below
// which nothing is drawn yet.
func (d *drafter) dimensions() float64 {
	bottom := d.dimensionsBelow()
	d.dimensionsLeft()
	d.dimensionsOfHoles()
	return bottom
}

// dimensionsBelow measures the columns and the whole width.
func (d *drafter) dimensionsBelow() float64 {
	var spans []span
	for _, panel := range d.piece.Panels {
		if panel.Row != blank.RowBody {
			continue
		}
		left, right := panel.Box.Min.X, panel.Box.Max.X
		switch panel.Column {
		case "front", "back":
			spans = append(spans, span{left, right, "W"})
		case "seam-flap":
			spans = append(spans, span{left, right, "G"})
		default:
			middle := left + d.spec.Body.Gusset/2
			spans = append(spans, span{left, middle, "D/2"}, span{middle, right, halfName(d.spec.Body, middle, right)})
		}
	}
	edge := -d.spec.Print.Bleed
	first, second := edge-3*d.u, edge-6.5*d.u
	d.across(spans, edge, first)
	d.across([]span{{0, d.piece.Width, "blank width"}}, edge, second)
	return second - 2*d.u
}

// halfName tells a half gusset that gave up the seam relief from a full one.
func halfName(b bag.Body, from, to float64) phrase.Word {
	if to-from < b.Gusset/2-geometry.Tolerance {
		return "D/2 − r"
	}
	return "D/2"
}

// dimensionsLeft measures the rows, the standing height where the flat-fold crease
// divides it, and the whole height.
func (d *drafter) dimensionsLeft() {
	levels := d.piece.Levels
	flap := phrase.Word("B")
	if d.spec.Body.Base == bag.BasePinch {
		flap = "V"
	}
	rows := []span{{0, levels.Base, flap}}
	divided := levels.FlatFold > levels.Base
	if divided {
		rows = append(rows, span{levels.Base, levels.FlatFold, "D/2"}, span{levels.FlatFold, levels.TopFold, "flat-fold crease to top"})
	} else {
		rows = append(rows, span{levels.Base, levels.TopFold, "standing height H"})
	}
	if levels.Top > levels.TopFold {
		rows = append(rows, span{levels.TopFold, levels.Top, "T"})
	}
	edge := -d.spec.Print.Bleed
	x := edge - 3*d.u
	d.upward(rows, edge, x)
	if divided {
		x -= 3.5 * d.u
		d.upward([]span{{levels.Base, levels.TopFold, "standing height H"}}, edge, x)
	}
	d.upward([]span{{0, levels.Top, "blank height"}}, edge, x-3.5*d.u)
}

// dimensionsOfHoles measures spacing, drop and size of the openings on the first
// face.
func (d *drafter) dimensionsOfHoles() {
	if d.outside {
		d.openingsOutside()
		return
	}
	h := d.spec.Handle
	face, found := d.piece.Panel("front")
	if !found {
		face, _ = d.piece.Panel("back")
	}
	if d.screen != nil && face.Box.Width() < leastFace*d.u {
		return
	}
	middle, top := face.Box.Center().X, d.piece.Levels.TopFold
	y := top - h.Drop
	switch {
	case h.Kind.HasHoles():
		left, right := middle-h.Spacing/2, middle+h.Spacing/2
		below := y - h.HoleDiameter/2 - 2.5*d.u
		d.across([]span{{left, right, "s"}}, y-h.HoleDiameter/2-d.u/2, below)
		d.drop(face.Box, right+h.HoleDiameter/2+2*d.u, y, right+h.HoleDiameter/2)
		d.note(scene.Dimensions, d.holeText(), geometry.Vec2{X: left + h.HoleDiameter/2 + d.u/2, Y: y + h.HoleDiameter/2 + d.u/3})
	case h.Kind.HasSlits():
		left, right, half := middle-h.Spacing/2, middle+h.Spacing/2, h.SlitHeight/2
		d.across([]span{{left, right, "s"}}, y, y) // below, a top card ends
		d.drop(face.Box, right+blank.SlitWidth/2+2*d.u, y, right+blank.SlitWidth/2)
		beside := left - blank.SlitWidth/2
		d.upward([]span{{y - half, y + half, ""}}, beside-d.u/2, beside-2.5*d.u)
	case h.Kind == bag.HandleHandHole:
		right := middle + h.HandHoleWidth/2
		below := y - h.HandHoleHeight/2 - 2.5*d.u
		d.across([]span{{middle - h.HandHoleWidth/2, right, ""}}, y-h.HandHoleHeight/2-d.u/2, below)
		d.drop(face.Box, right+2*d.u, y, right)
		left := middle - h.HandHoleWidth/2
		d.upward([]span{{y - h.HandHoleHeight/2, y + h.HandHoleHeight/2, ""}}, left-d.u/2, left-2.5*d.u)
	case h.Kind.HasPatch():
		d.drop(face.Box, middle+h.PatchWidth/2+2*d.u, y, middle+h.PatchWidth/2)
	}
}

// holeText tells what round holes are like.
func (d *drafter) holeText() string {
	text := "Ø " + d.number(d.spec.Handle.HoleDiameter)
	if d.spec.Handle.Eyelets {
		text += ", " + d.voice.Word("eyelets")
	}
	return text
}

// drop measures from the top edge of the bag down to the height y of an opening in a
// face, at x; edge is where the opening ends.
func (d *drafter) drop(face geometry.Rect, x, y, edge float64) {
	top := d.piece.Levels.TopFold
	d.line(scene.Dimensions, geometry.Vec2{X: edge + d.u/2, Y: y}, geometry.Vec2{X: x + d.u/2, Y: y})
	d.measure(geometry.Vec2{X: x, Y: y}, geometry.Vec2{X: x, Y: top})
	measured := span{y, top, "drop"}
	at := geometry.Vec2{X: x + d.u/2, Y: (y+top)/2 - d.u/3}
	text := d.spanText(measured)
	if !d.outside && d.textWidth(text) > d.roomBeside(face, at.X, measured) {
		text = d.number(measured.length())
	}
	d.note(scene.Dimensions, text, at)
}

// roomBeside returns how long the text of a drop may be from x on: on a screen up to the
// safe margin of the face. In a file its English name always has room, and one in longer
// words as far as the face goes.
func (d *drafter) roomBeside(face geometry.Rect, x float64, measured span) float64 {
	if d.screen != nil {
		return face.Max.X - d.spec.Print.Safe - x
	}
	return max(face.Max.X-x, d.textWidth(string(measured.symbol)+" "+d.number(measured.length())))
}
