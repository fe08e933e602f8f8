package press

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/sheet"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// What is kept free and how large things are, in mm; common practice, no published
// source. air lies between marks, bleed and the edge of the sheet.
const (
	air                         = 0.5
	registerLeast, registerMost = 4, 8 // side of the square that holds a register mark
	trimLeast, trimMost         = 1.5, 5
	barRoom, barMost, barAir    = 4, 6, 1 // least depth of the free tail, most that the bar takes, what of it stays free
	hatchSpacing                = 4
	registerStep                = 5 // along a side
)

// gripper marks what the press holds.
func (d *drafter) gripper() {
	deep := d.Sheet.Gripper
	if deep < geometry.Tolerance {
		return
	}
	zone := d.rect(0, d.length, 0, deep)
	text := d.voice.Tell(phrase.New("gripper %s mm: no ink", d.number(deep)))
	size := min(d.u, 0.7*deep)
	reach := (typeface.Advance(text, size, false) + 2*size) / 2
	lettering := d.rect(d.length/2-reach, d.length/2+reach, deep/2-0.6*size, deep/2+0.6*size)
	d.outline(scene.Gripper, zone)
	d.hatch(scene.Gripper, zone, lettering, hatchSpacing)
	d.centred(scene.Gripper, text, zone.Center(), size, d.turn(), false)
}

// free tells whether a mark may cover a rectangle.
func (d *drafter) free(r geometry.Rect) bool {
	paper := d.rect(0, d.length, d.Sheet.Gripper, d.depth)
	if !paper.Contains(r.Min) || !paper.Contains(r.Max) {
		return false
	}
	for _, taken := range d.taken {
		if !clearOf(r, taken.Inset(-air)) {
			return false
		}
	}
	return true
}

// registerMarks stands a mark at each side of the sheet: as near to its middle as
// there is room.
func (d *drafter) registerMarks() {
	first, second := phrase.Word("the left side"), phrase.Word("the right side")
	if d.grip == sheet.GripLeft {
		first, second = "the lower side", "the upper side"
	}
	inner := d.Sheet.Gripper + air
	sides := []struct {
		name     phrase.Word // empty where a mark is rarely looked for
		length   float64
		farthest float64                                 // from the middle, as a share of the length
		square   func(along, side float64) geometry.Rect // around a mark that comes as near to the side as it may
	}{
		{first, d.depth, 0.45, func(t, s float64) geometry.Rect { return d.rect(air, air+s, t-s/2, t+s/2) }},
		{second, d.depth, 0.45, func(t, s float64) geometry.Rect { return d.rect(d.length-air-s, d.length-air, t-s/2, t+s/2) }},
		{"the tail", d.length, 0.45, func(t, s float64) geometry.Rect { return d.rect(t-s/2, t+s/2, d.depth-air-s, d.depth-air) }},
		{"", d.length, 0.1, func(t, s float64) geometry.Rect { return d.rect(t-s/2, t+s/2, inner, inner+s) }},
	}
	for _, side := range sides {
		square, found := d.nearMiddle(side.length, side.farthest, side.square)
		if found {
			d.register(square)
		} else if side.name != "" {
			d.notes = append(d.notes, phrase.New("No register mark at %s: beside the bleed it takes %s mm of margin.", side.name, d.number(registerLeast+2*air)))
		}
	}
}

// nearMiddle returns the free square nearest to the middle of a side, as large as it
// can be there.
func (d *drafter) nearMiddle(length, farthest float64, square func(along, side float64) geometry.Rect) (geometry.Rect, bool) {
	for off := 0.0; off <= length*farthest; off += registerStep {
		for _, along := range []float64{length/2 + off, length/2 - off} {
			for side := float64(registerMost); side >= registerLeast; side-- {
				if r := square(along, side); d.free(r) {
					return r, true
				}
			}
		}
	}
	return geometry.Rect{}, false
}

// register draws a circle with a cross through it.
func (d *drafter) register(square geometry.Rect) {
	middle, reach := square.Center(), square.Width()/2
	width := scene.PressMarks.Style().Width
	d.add(scene.Stroke{Role: scene.PressMarks, Path: geometry.Circle(middle, 0.6*reach), Width: width})
	for _, arm := range []geometry.Vec2{{X: reach}, {Y: reach}} {
		d.line(scene.PressMarks, middle.Sub(arm), middle.Add(arm))
	}
	d.taken = append(d.taken, square)
}

// colourBar marks the room for the colour bar at the tail, on both sides of the
// register mark, where blanks and their bleed leave enough.
func (d *drafter) colourBar() {
	last := d.Sheet.Gripper
	for _, shown := range d.spread.shown {
		_, _, _, high := d.span(shown)
		last = max(last, high)
	}
	room := d.depth - last
	if room < barRoom {
		d.notes = append(d.notes, phrase.New("No room for a colour bar: the bleed leaves %s mm of the tail, a bar takes %s; widen the tail margin.", d.number(max(0, room)), d.number(barRoom)))
		return
	}
	high := min(room, barMost) - barAir
	top := d.depth - barAir/2.0
	stops := []float64{d.Sheet.Side, d.length - d.Sheet.Side}
	for _, taken := range d.taken[len(d.Blanks):] {
		low, end, _, deep := d.span(taken)
		if deep > top-high-air && low > stops[0]+2*barMost && end < stops[1]-2*barMost {
			stops = []float64{stops[0], low - 2*air, end + 2*air, stops[1]}
		}
	}
	for i := 0; i+1 < len(stops); i += 2 {
		bar := d.rect(stops[i], stops[i+1], top-high, top)
		if d.free(bar) {
			d.outline(scene.ColourBar, bar)
			d.centred(scene.ColourBar, d.voice.Word("colour bar"), bar.Center(), min(0.7*high, d.u), d.turn(), false)
			d.taken = append(d.taken, bar)
		}
	}
}

// trimMarks draws marks at the corners of each blank, in line with its sides and off
// its bleed, where they run into nothing.
func (d *drafter) trimMarks() {
	drawn := map[[4]float64]bool{}
	for i, laid := range d.Blanks {
		box, shown := laid.Box(), d.spread.shown[i]
		for _, x := range []float64{box.Min.X, box.Max.X} {
			d.trimMark(drawn, geometry.Vec2{X: x, Y: max(shown.Max.Y, box.Max.Y)}, geometry.Vec2{Y: 1})
			d.trimMark(drawn, geometry.Vec2{X: x, Y: min(shown.Min.Y, box.Min.Y)}, geometry.Vec2{Y: -1})
		}
		for _, y := range []float64{box.Min.Y, box.Max.Y} {
			d.trimMark(drawn, geometry.Vec2{X: max(shown.Max.X, box.Max.X), Y: y}, geometry.Vec2{X: 1})
			d.trimMark(drawn, geometry.Vec2{X: min(shown.Min.X, box.Min.X), Y: y}, geometry.Vec2{X: -1})
		}
	}
}

// trimMark draws the longest mark that is free from a point outward, each only once.
func (d *drafter) trimMark(drawn map[[4]float64]bool, from, out geometry.Vec2) {
	start := from.Add(out.Scale(air + geometry.Tolerance))
	for length := float64(trimMost); length >= trimLeast; length -= 0.5 {
		end := start.Add(out.Scale(length))
		low := geometry.Vec2{X: min(start.X, end.X), Y: min(start.Y, end.Y)}
		high := geometry.Vec2{X: max(start.X, end.X), Y: max(start.Y, end.Y)}
		thick := out.Left().Scale(scene.PressMarks.Style().Width / 2)
		half := geometry.Vec2{X: math.Abs(thick.X), Y: math.Abs(thick.Y)}
		if !d.free(geometry.Rect{Min: low.Sub(half), Max: high.Add(half)}) {
			continue
		}
		key := [4]float64{math.Round(start.X * 1e4), math.Round(start.Y * 1e4), out.X, out.Y}
		if !drawn[key] {
			drawn[key] = true
			d.line(scene.PressMarks, start, end)
		}
		return
	}
}

// lays shows beside the sheet where the press aligns it: two guides at the held edge
// and one at a side.
func (d *drafter) lays() {
	size := 1.2 * d.u
	for _, share := range []float64{0.2, 0.8} {
		d.lay("front lay", d.at(share*d.length, 0), d.at(0, 1), size)
	}
	d.lay("side lay", d.at(0, d.Sheet.Gripper+0.1*(d.depth-d.Sheet.Gripper)), d.at(1, 0), size)
}

// lay draws a triangle whose tip touches the sheet, and its name beyond it.
func (d *drafter) lay(name phrase.Word, tip, along geometry.Vec2, size float64) {
	d.arrowhead(scene.Gripper, tip, along, size)
	turn := 0.0
	if along.X != 0 {
		turn = math.Pi / 2
	}
	d.centred(scene.Gripper, d.voice.Word(name), tip.Sub(along.Scale(size+0.7*d.u)), 0.8*d.u, turn, false)
}
