package sheetpicture

import (
	"fmt"
	"math"

	"fyne.io/fyne/v2/lang"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

const quarterTurn = math.Pi / 2

// paintMeasures writes the sides of the sheet above and to the right of everything,
// names the gripper at its edge and shows the grain below.
func (a *artist) paintMeasures(extent geometry.Rect) {
	s, box := a.art.Plan.Sheet, a.sheetBox()
	out := a.mm(0.8 * a.letter)
	a.measure(a.art.Length(s.Width), geometry.Vec2{X: box.Min.X, Y: extent.Max.Y + out}, geometry.Vec2{X: box.Max.X, Y: extent.Max.Y + out})
	a.measure(a.art.Length(s.Height), geometry.Vec2{X: extent.Max.X + out, Y: box.Min.Y}, geometry.Vec2{X: extent.Max.X + out, Y: box.Max.Y})
	gripper, turn := fmt.Sprintf(lang.L("Gripper %s"), a.art.Length(s.Gripper)), 0.0
	below := geometry.Vec2{X: box.Min.X, Y: box.Min.Y - a.mm(1.15*a.letter)}
	if sheet.GripOf(s) == sheet.GripLeft {
		below, turn = geometry.Vec2{X: box.Min.X - a.mm(0.45*a.letter), Y: box.Min.Y}, quarterTurn
	}
	if s.Gripper > 0 {
		a.write(inInk, gripper, below, scene.Start, turn, false)
	}
	a.grain(box)
}

// measure draws a measure with its text in the middle, the line left out there.
func (a *artist) measure(text string, from, to geometry.Vec2) {
	along := to.Sub(from).Unit()
	turn, end := along.Angle(), along.Left().Scale(a.mm(0.3*a.letter))
	for _, tip := range []geometry.Vec2{from, to} {
		a.stroke(inMuted, straight(tip.Sub(end), tip.Add(end)), nil)
	}
	middle := from.Mid(to)
	free := along.Scale(a.mm(typeface.Advance(text, a.letter, false)/2 + 0.4*a.letter))
	if free.Length() < to.Sub(from).Length()/2 {
		a.stroke(inMuted, straight(from, middle.Sub(free)), nil)
		a.stroke(inMuted, straight(middle.Add(free), to), nil)
	}
	// The middle of the letters, not their feet, stands on the line.
	a.write(inInk, text, middle.Sub(along.Left().Scale(a.mm(0.36*a.letter))), scene.Middle, turn, false)
}

// grain shows along which side of the sheet the fibres lie, as they are or as they must
// be ordered.
func (a *artist) grain(box geometry.Rect) {
	plan := a.art.Plan
	along, known := fibresOf(plan, a.art.Blank.Spec.Paper.Grain)
	if !known {
		return
	}
	row := box.Min.Y - a.mm(0.8*a.letter)
	tip := geometry.Vec2{X: box.Max.X, Y: row}
	reach := geometry.Vec2{X: a.mm(1.9 * a.letter)}
	start := tip.Sub(reach)
	if along == bag.GrainHeight {
		reach = geometry.Vec2{Y: a.mm(1.5 * a.letter)}
		start = tip.Sub(geometry.Vec2{X: a.mm(0.3 * a.letter), Y: a.mm(0.75 * a.letter)})
	}
	middle := start.Add(reach.Scale(0.5))
	a.arrow(inInk, middle, start)
	a.arrow(inInk, middle, start.Add(reach))
	left := min(start.X, middle.X) - a.mm(0.5*a.letter)
	a.write(inInk, lang.L("Grain"), geometry.Vec2{X: left, Y: row - a.mm(0.36*a.letter)}, scene.End, 0, false)
}

// fibresOf returns the side of the sheet along which its fibres lie, or must lie for
// the bags; not known where they are free and nothing was said of the sheet.
func fibresOf(plan *sheet.Plan, onBag bag.Grain) (along bag.Grain, known bool) {
	if fibres := plan.Piece.SheetFibres; fibres != "" {
		return fibres, true
	}
	if plan.Up() == 0 || plan.Piece.Grain == sheet.GrainFree {
		return "", false
	}
	return plan.GrainAlong(onBag), true
}

// paintOverhang marks what of a blank passes the usable part of the sheet, and by how
// much.
func (a *artist) paintOverhang(box geometry.Rect) {
	usable := a.art.Plan.Usable
	over := box.Max.Sub(usable.Max)
	if over.X > geometry.Tolerance {
		edge := max(usable.Max.X, box.Min.X)
		a.overhang(geometry.Rect{Min: geometry.Vec2{X: edge, Y: box.Min.Y}, Max: box.Max})
		at := geometry.Vec2{X: edge - a.mm(0.5*a.letter), Y: (box.Min.Y + min(box.Max.Y, usable.Max.Y)) / 2}
		a.write(inWrong, a.overText(over.X), at, scene.Middle, quarterTurn, true)
	}
	if over.Y > geometry.Tolerance {
		edge := max(usable.Max.Y, box.Min.Y)
		a.overhang(geometry.Rect{Min: geometry.Vec2{X: box.Min.X, Y: edge}, Max: geometry.Vec2{X: min(box.Max.X, max(usable.Max.X, box.Min.X)), Y: box.Max.Y}})
		at := geometry.Vec2{X: (box.Min.X + min(box.Max.X, usable.Max.X)) / 2, Y: edge - a.mm(1.2*a.letter)}
		a.write(inWrong, a.overText(over.Y), at, scene.Middle, 0, true)
	}
}

func (a *artist) overText(over float64) string {
	return fmt.Sprintf(lang.L("%s too long"), a.art.Length(over))
}

func (a *artist) overhang(box geometry.Rect) {
	if box.Empty() {
		return
	}
	a.painter.Fill(faint(a.look.wrong, 0.22), box.Path())
	a.hatch(a.look.wrong, box, -1)
	a.painter.Outline(a.look.wrong, box.Path(), a.line)
}
