package press

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

func (d *drafter) add(item scene.Item) { d.items = append(d.items, item) }

// line draws a straight line in the width of its role.
func (d *drafter) line(role scene.Role, a, b geometry.Vec2) {
	path := geometry.Path{Vertices: []geometry.Vertex{{Vec2: a}, {Vec2: b}}}
	d.add(scene.Stroke{Role: role, Path: path, Width: role.Style().Width})
}

func (d *drafter) outline(role scene.Role, r geometry.Rect) {
	d.add(scene.Stroke{Role: role, Path: r.Path(), Width: role.Style().Width})
}

// write writes a line of text that begins at a point.
func (d *drafter) write(role scene.Role, text string, at geometry.Vec2) {
	d.add(scene.Label{Role: role, Text: text, At: at, Size: d.u})
}

// centred writes a line of text with its middle on a point.
func (d *drafter) centred(role scene.Role, text string, middle geometry.Vec2, size, turn float64, bold bool) {
	down := geometry.Polar(size/3, turn-math.Pi/2)
	d.add(scene.Label{Role: role, Text: text, At: middle.Add(down), Size: size, Anchor: scene.Middle, Turn: turn, Bold: bold})
}

// arrowhead draws the tip of an arrow that points in a direction.
func (d *drafter) arrowhead(role scene.Role, tip, along geometry.Vec2, size float64) {
	back := tip.Sub(along.Scale(size))
	side := along.Left().Scale(size / 4)
	d.add(scene.Fill{Role: role, Path: geometry.Polygon(tip, back.Add(side), back.Sub(side))})
}

// hatch draws lines at 45° in a rectangle, but not where lettering stands.
func (d *drafter) hatch(role scene.Role, r, lettering geometry.Rect, spacing float64) {
	for x := r.Min.X - r.Height() + spacing; x < r.Max.X; x += spacing {
		from := geometry.Vec2{X: x, Y: r.Min.Y}
		to := geometry.Vec2{X: x + r.Height(), Y: r.Max.Y}
		enter, leave, hit := r.Through(from, to)
		if !hit || leave-enter < geometry.Tolerance {
			continue
		}
		at := func(share float64) geometry.Vec2 { return from.Add(to.Sub(from).Scale(share)) }
		stop, resume, covered := lettering.Through(from, to)
		if !covered {
			d.line(role, at(enter), at(leave))
			continue
		}
		if stop > enter {
			d.line(role, at(enter), at(stop))
		}
		if resume < leave {
			d.line(role, at(resume), at(leave))
		}
	}
}

// extent returns the box round everything drawn beside the blanks.
func (d *drafter) extent() geometry.Rect {
	var box geometry.Rect
	for _, item := range d.items {
		switch item := item.(type) {
		case scene.Stroke:
			box = box.Union(item.Path.Bounds())
		case scene.Fill:
			box = box.Union(item.Path.Bounds())
		case scene.Label:
			box = box.Union(labelBox(item))
		}
	}
	return box
}

// labelBox returns a box that surely holds the label, whichever way it is turned.
func labelBox(l scene.Label) geometry.Rect {
	width := typeface.Advance(l.Text, l.Size, l.Bold)
	along := geometry.Polar(1, l.Turn)
	share := map[scene.Anchor]float64{scene.Start: 0, scene.Middle: 0.5, scene.End: 1}[l.Anchor]
	start := l.At.Sub(along.Scale(width * share))
	up := along.Left()
	low, high := start.Sub(up.Scale(l.Size/4)), start.Add(up.Scale(l.Size))
	end := along.Scale(width)
	return geometry.Polygon(low, low.Add(end), high.Add(end), high).Bounds()
}

// wholeMillimetres grows a page to whole millimetres.
func wholeMillimetres(r geometry.Rect) geometry.Rect {
	r.Min.X, r.Min.Y = math.Floor(r.Min.X), math.Floor(r.Min.Y)
	r.Max.X, r.Max.Y = math.Ceil(r.Max.X), math.Ceil(r.Max.Y)
	return r
}

func (d *drafter) number(v float64) string { return d.voice.Number(v, 2) }
