package vector

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/render/artwork/vector/outline"
)

// arcTo goes on along a part of an ellipse, given by its ends (SVG 2, appendix B.2).
// size is the half axes, and by how many degrees the first is turned from the x axis.
func arcTo(path *outline.Path, from, to geometry.Vec2, size [3]float64, large, sweep bool) {
	rx, ry := math.Abs(size[0]), math.Abs(size[1])
	if from == to {
		return
	}
	if rx == 0 || ry == 0 {
		path.Line(to)
		return
	}
	turn := geometry.Rotation(math.Mod(size[2], 360) * math.Pi / 180)
	// In the plane where the ellipse is the unit circle, its centre stands beside the
	// middle of the chord.
	round := turn.After(geometry.Stretch(rx, ry))
	flat, ok := round.Inverse()
	if !ok {
		path.Line(to)
		return
	}
	a, b := flat.At(from), flat.At(to)
	half := b.Sub(a).Scale(0.5)
	reach := half.Length()
	grow := 1.0
	if reach > 1 { // too small to touch both ends: it grows until it does
		grow = reach
	}
	side := math.Sqrt(max(grow*grow-reach*reach, 0)) / reach
	if large == sweep {
		side = -side
	}
	center := a.Mid(b).Add(half.Left().Scale(side))
	begin := a.Sub(center).Angle()
	angle := b.Sub(center).Angle() - begin
	if sweep && angle < 0 {
		angle += 2 * math.Pi
	} else if !sweep && angle > 0 {
		angle -= 2 * math.Pi
	}
	along(path, round.After(geometry.Shift(center)).After(geometry.Stretch(grow, grow)), begin, angle, to)
}

// along goes on along the unit circle of a plane, from an angle by another, in
// curves of a quarter circle at most, and ends at to exactly. The handles of such
// curves are 4/3 tan(angle/4) long, which strays by less than 0.03 %.
func along(path *outline.Path, plane geometry.Affine, begin, angle float64, to geometry.Vec2) {
	count := int(max(math.Ceil(math.Abs(angle)/(math.Pi/2)-1e-9), 1))
	part := angle / float64(count)
	handle := 4.0 / 3 * math.Tan(part/4)
	for i := range count {
		a, b := begin+float64(i)*part, begin+float64(i+1)*part
		start, end := geometry.Polar(1, a), geometry.Polar(1, b)
		stop := plane.At(end)
		if i == count-1 {
			stop = to
		}
		path.Curve(plane.At(start.Add(start.Left().Scale(handle))), plane.At(end.Sub(end.Left().Scale(handle))), stop)
	}
}

// ellipse returns a whole ellipse, clockwise on the screen from its right end.
func ellipse(center geometry.Vec2, rx, ry float64) outline.Path {
	var path outline.Path
	start := center.Add(geometry.Vec2{X: rx})
	path.Move(start)
	along(&path, geometry.Shift(center).After(geometry.Stretch(rx, ry)), 0, 2*math.Pi, start)
	path.Close()
	return path
}

// rectangle returns a rectangle with its corners rounded by the half axes rx and ry.
func rectangle(x, y, width, height, rx, ry float64) outline.Path {
	var path outline.Path
	at := func(dx, dy float64) geometry.Vec2 { return geometry.Vec2{X: x + dx, Y: y + dy} }
	if rx <= 0 || ry <= 0 {
		path.Move(at(0, 0))
		path.Line(at(width, 0))
		path.Line(at(width, height))
		path.Line(at(0, height))
		path.Close()
		return path
	}
	size := [3]float64{rx, ry, 0}
	from := at(rx, 0)
	path.Move(from)
	for _, ends := range [4][2]geometry.Vec2{
		{at(width-rx, 0), at(width, ry)},
		{at(width, height-ry), at(width-rx, height)},
		{at(rx, height), at(0, height-ry)},
		{at(0, ry), at(rx, 0)},
	} {
		if ends[0] != from {
			path.Line(ends[0])
		}
		arcTo(&path, ends[0], ends[1], size, false, true)
		from = ends[1]
	}
	path.Close()
	return path
}
