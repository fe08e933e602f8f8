package dieline

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
)

// On a drawing of a printed bag nothing is written on the blank: lettering cannot be read
// on dark artwork, and a pale field under it would be taken out of the print. Names stand
// above the blank and on its right, and so do the measures of the openings.

// printed tells whether artwork or a background colour is on the bag.
func printed(spec *bag.Spec) bool {
	return len(spec.Artwork) > 0 || spec.Print.Background != bag.Background{}
}

// beyondTop returns the height of a line of lettering above the blank, beyondRight where
// what stands on its right begins.
func (d *drafter) beyondTop(letters float64) float64 {
	return d.piece.Levels.Top + d.spec.Print.Bleed + letters*d.u
}

func (d *drafter) beyondRight(letters float64) float64 {
	return d.piece.Width + d.spec.Print.Bleed + letters*d.u
}

// namesOutside writes the names of the columns above the blank and those of the rows
// beside it.
func (d *drafter) namesOutside() {
	base, turnIn := false, false
	for _, panel := range d.piece.Panels {
		middle := panel.Box.Center()
		switch panel.Row {
		case blank.RowBody:
			d.columnName(d.panelName(panel.ID), middle.X, panel.Box.Width())
		case blank.RowBase:
			base = d.rowName(base, "Base flaps", middle.Y)
		case blank.RowTurnIn:
			turnIn = d.rowName(turnIn, "Turn-in", middle.Y)
		}
	}
}

// columnName writes a name above the blank, upright where the column is too narrow.
func (d *drafter) columnName(name string, x, width float64) {
	y := d.beyondTop(1)
	if d.textWidth(name) > width-d.u/2 {
		d.write(scene.Legend, name, geometry.Vec2{X: x + d.u/3, Y: y}, scene.Start, math.Pi/2)
		return
	}
	d.write(scene.Legend, name, geometry.Vec2{X: x, Y: y}, scene.Middle, 0)
}

// rowName writes a name beside the blank, unless it was written for another panel of
// the row.
func (d *drafter) rowName(written bool, name phrase.Word, y float64) bool {
	if !written {
		d.write(scene.Legend, d.voice.Word(name), geometry.Vec2{X: d.beyondRight(1), Y: y - d.u/3}, scene.Start, 0)
	}
	return true
}

// openingsOutside measures the openings of the last face: their spacing above the blank
// and their drop on its right. Their own size is in the title block.
func (d *drafter) openingsOutside() {
	h := d.spec.Handle
	wide, high, spacing := d.opening()
	if wide == 0 {
		return
	}
	face := d.lastFace()
	middle, top := face.Box.Center().X, d.piece.Levels.TopFold
	y := top - h.Drop
	left, right := middle-spacing/2, middle+spacing/2
	if symbol := phrase.Word("s"); spacing > 0 {
		if h.Kind == bag.HandleHandHole {
			symbol = ""
		}
		above := d.aboveNames()
		d.across([]span{{left, right, symbol}}, y+high/2, above)
		if h.Kind.HasHoles() {
			d.write(scene.Dimensions, d.holeText(), geometry.Vec2{X: right + d.u, Y: above + d.u/3}, scene.Start, 0)
		}
	}
	edge := middle + wide/2
	d.drop(face.Box, d.beyondRight(2), y, edge)
}

// opening returns how wide all openings of a face are together, how high one is, and
// what is measured between two; all 0 where the bag has none.
func (d *drafter) opening() (wide, high, spacing float64) {
	h := d.spec.Handle
	switch {
	case h.Kind.HasHoles():
		return h.Spacing + h.HoleDiameter, h.HoleDiameter, h.Spacing
	case h.Kind.HasSlits():
		return h.Spacing + blank.SlitWidth, h.SlitHeight, h.Spacing
	case h.Kind == bag.HandleHandHole:
		return h.HandHoleWidth, h.HandHoleHeight, h.HandHoleWidth
	case h.Kind.HasPatch():
		return h.PatchWidth, 0, 0
	}
	return 0, 0, 0
}

// lastFace returns the face that lies farthest to the right.
func (d *drafter) lastFace() blank.Panel {
	face, found := d.piece.Panel("back")
	if !found {
		face, _ = d.piece.Panel("front")
	}
	return face
}

// aboveNames returns a height above the names of the columns.
func (d *drafter) aboveNames() float64 {
	top := d.beyondTop(2)
	for _, item := range d.items {
		if label, is := item.(scene.Label); is {
			top = max(top, labelBox(label).Max.Y)
		}
	}
	return top + 1.5*d.u
}

// grainOutside draws the direction of the fibres on the right of the blank.
func (d *drafter) grainOutside() {
	levels := d.piece.Levels
	along, name := geometry.Vec2{Y: 1}, geometry.Vec2{X: d.u, Y: -d.u / 3}
	middle := geometry.Vec2{X: d.beyondRight(2), Y: (levels.Base + levels.TopFold) / 2}
	reach := min(6*d.u, d.spec.Body.Height/6)
	if d.spec.Paper.Grain == bag.GrainWidth {
		along, name = geometry.Vec2{X: 1}, geometry.Vec2{X: -reach, Y: d.u / 2}
		middle.X += reach
	}
	half := along.Scale(reach)
	d.line(scene.Legend, middle.Sub(half), middle.Add(half))
	d.arrowhead(scene.Legend, middle.Add(half), along)
	d.arrowhead(scene.Legend, middle.Sub(half), along.Scale(-1))
	d.write(scene.Legend, d.voice.Word("grain"), middle.Add(name), scene.Start, 0)
}
