package jobsheet

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/render/report"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// Lines of the drawings, in mm.
var (
	cutLine    = report.Line{Width: 0.28, Colour: dark}
	creaseLine = report.Line{Width: 0.16, Colour: faint, Dash: []float64{1, 0.7}}
	thinLine   = report.Line{Width: 0.14, Colour: faint}
)

var (
	paperFill = report.RGB(246, 244, 240)
	glueFill  = report.RGB(228, 223, 213)
	gripFill  = report.RGB(158, 165, 172)
)

// drawing is a drawing in the making: what is drawn in mm of the bag is carried to the
// page.
type drawing struct {
	scale  float64       // mm of the page for each mm of the bag
	origin geometry.Vec2 // where the point (0, 0) of what is drawn lies on the page
	letter float64       // size of lettering on the page
	items  []report.Item
}

// fitted returns a drawing of a size in the middle of an area of the page, with room for
// its dimensions at the left and below.
func fitted(area geometry.Rect, width, height, letter float64) *drawing {
	room := dimensionRoom(letter)
	area.Min.X += room
	area.Min.Y += room
	scale := min(area.Width()/width, area.Height()/height)
	middle := area.Center()
	return &drawing{
		scale: scale, letter: letter,
		origin: geometry.Vec2{X: middle.X - scale*width/2, Y: middle.Y - scale*height/2},
	}
}

// dimensionRoom is what a dimension takes beside a drawing.
func dimensionRoom(letter float64) float64 { return 1.9 * letter }

func (d *drawing) at(p geometry.Vec2) geometry.Vec2 { return d.origin.Add(p.Scale(d.scale)) }

// path carries a path that was moved by an affine motion, without stretching, to the page.
func (d *drawing) path(path geometry.Path, motion geometry.Affine) geometry.Path {
	moved := geometry.Path{Closed: path.Closed, Vertices: make([]geometry.Vertex, len(path.Vertices))}
	for i, v := range path.Vertices {
		moved.Vertices[i] = geometry.Vertex{Vec2: d.at(motion.At(v.Vec2)), Bulge: v.Bulge}
	}
	return moved
}

func (d *drawing) shape(path geometry.Path, motion geometry.Affine, fill report.Colour, line report.Line) {
	d.items = append(d.items, report.Shape{Path: d.path(path, motion), Fill: fill, Line: line})
}

func (d *drawing) edge(edge geometry.Edge, motion geometry.Affine, line report.Line) {
	path := geometry.Path{Vertices: []geometry.Vertex{{Vec2: edge.From, Bulge: edge.Bulge}, {Vec2: edge.To}}}
	d.items = append(d.items, report.Shape{Path: d.path(path, motion), Line: line})
}

func (d *drawing) rule(from, to geometry.Vec2, line report.Line) {
	d.items = append(d.items, report.Rule{From: from, To: to, Line: line})
}

// write sets a text with its middle at a place of the page, turned by radians, no longer
// than room.
func (d *drawing) write(text string, at geometry.Vec2, turn, size, room float64, bold bool, colour report.Colour) {
	if length := typeface.Advance(text, size, bold); length > room {
		size *= room / length
	}
	face := typeface.Of(bold).Metrics()
	drop := face.CapHeight * size / 2
	at = at.Add(geometry.Vec2{X: drop * math.Sin(turn), Y: -drop * math.Cos(turn)})
	d.items = append(d.items, report.Text{Text: text, At: at, Size: size, Bold: bold, Colour: colour, Align: scene.Middle, Turn: turn})
}

// across dimensions a width below a box of what is drawn, upward a height at its left.
func (d *drawing) across(box geometry.Rect, text string) {
	low := d.at(box.Min)
	y := low.Y - 0.75*d.letter
	d.dimension(geometry.Vec2{X: low.X, Y: y}, geometry.Vec2{X: d.at(box.Max).X, Y: y}, 0, text)
}

func (d *drawing) upward(box geometry.Rect, text string) {
	low := d.at(box.Min)
	x := low.X - 0.75*d.letter
	d.dimension(geometry.Vec2{X: x, Y: low.Y}, geometry.Vec2{X: x, Y: d.at(box.Max).Y}, math.Pi/2, text)
}

// dimension draws a line with slanted ends and its text beyond it, away from what is
// measured.
func (d *drawing) dimension(from, to geometry.Vec2, turn float64, text string) {
	d.rule(from, to, thinLine)
	tick := geometry.Vec2{X: 0.25 * d.letter, Y: 0.25 * d.letter}
	for _, end := range []geometry.Vec2{from, to} {
		d.rule(end.Sub(tick), end.Add(tick), report.Line{Width: 0.22, Colour: dark})
	}
	away := geometry.Vec2{Y: -0.7 * d.letter}
	if turn != 0 {
		away = geometry.Vec2{X: -0.7 * d.letter}
	}
	d.write(text, from.Mid(to).Add(away), turn, d.letter, math.Inf(1), false, dark)
}

// arrow draws a line with a head at both ends.
func (d *drawing) arrow(from, to geometry.Vec2) {
	d.rule(from, to, report.Line{Width: 0.22, Colour: dark})
	along := to.Sub(from).Scale(1 / to.Sub(from).Length())
	for _, head := range []struct{ tip, back geometry.Vec2 }{{from, along}, {to, along.Scale(-1)}} {
		across := geometry.Vec2{X: -head.back.Y, Y: head.back.X}
		base := head.tip.Add(head.back.Scale(0.55 * d.letter))
		side := across.Scale(0.18 * d.letter)
		d.items = append(d.items, report.Shape{Path: geometry.Polygon(head.tip, base.Add(side), base.Sub(side)), Fill: dark})
	}
}
