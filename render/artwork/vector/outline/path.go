// Package outline holds paths of lines and cubic curves, and turns them into what a
// scanner of pixels takes: chains of short lines, and the polygons that a pen
// leaves. Units and axes are those of the points that are given.
package outline

import (
	"iter"
	"math"
	"slices"

	"gussetwright/geometry"
)

// Step is what a path does next.
type Step uint8

// The steps of a path, with how many points each takes.
const (
	Move  Step = iota // one point: where a new part begins
	Line              // one point
	Curve             // three points: two controls and the end
	Close             // none: a line back to where the part began
)

// points is how many points each step takes.
var points = [...]int{Move: 1, Line: 1, Curve: 3, Close: 0}

// Path is a list of steps, kept apart from their points to be short in memory.
// The zero value is an empty path. A path that was handed on must not change.
type Path struct {
	Steps  []Step
	Points []geometry.Vec2
}

// Move begins a new part.
func (p *Path) Move(to geometry.Vec2) { p.add(Move, to) }

// Line goes straight on. The path has begun before.
func (p *Path) Line(to geometry.Vec2) { p.add(Line, to) }

// Curve goes on along a cubic Bézier curve. The path has begun before.
func (p *Path) Curve(leave, arrive, to geometry.Vec2) { p.add(Curve, leave, arrive, to) }

// Close goes back to where the part began. What follows begins with Move.
func (p *Path) Close() { p.add(Close) }

func (p *Path) add(step Step, at ...geometry.Vec2) {
	p.Steps = append(p.Steps, step)
	p.Points = append(p.Points, at...)
}

// Flat tells whether the path has no inside: each part of it lies on a line.
func (p Path) Flat() bool {
	var start, along geometry.Vec2
	for step, points := range p.All() {
		if step == Move {
			start, along = points[0], geometry.Vec2{}
			continue
		}
		for _, q := range points {
			way := q.Sub(start)
			if along == (geometry.Vec2{}) {
				along = way
			}
			const straight = 1e-12 // of the lengths: what rounding leaves
			if math.Abs(along.Cross(way)) > straight*along.Length()*way.Length() {
				return false
			}
		}
	}
	return true
}

// Dotted returns the path with parts that have no length stretched along x, so that
// they have a direction.
func (p Path) Dotted(length float64) Path {
	var made Path
	var part Path // the current one
	hand := func() {
		if n := len(part.Steps); n > 1 && !slices.ContainsFunc(part.Points, func(q geometry.Vec2) bool { return q != part.Points[0] }) {
			from := part.Points[0]
			part = Path{}
			part.Move(from)
			part.Line(from.Add(geometry.Vec2{X: length}))
		}
		made = Path{append(made.Steps, part.Steps...), append(made.Points, part.Points...)}
		part = Path{}
	}
	for step, points := range p.All() {
		if step == Move {
			hand()
		}
		part.add(step, points...)
	}
	hand()
	return made
}

// Empty tells whether the path has no steps.
func (p Path) Empty() bool { return len(p.Steps) == 0 }

// All runs through the steps, each with its points.
func (p Path) All() iter.Seq2[Step, []geometry.Vec2] {
	return func(yield func(Step, []geometry.Vec2) bool) {
		at := 0
		for _, step := range p.Steps {
			next := at + points[step]
			if !yield(step, p.Points[at:next:next]) {
				return
			}
			at = next
		}
	}
}

// Moved returns the path with every point moved.
func (p Path) Moved(by geometry.Affine) Path {
	moved := Path{p.Steps, make([]geometry.Vec2, len(p.Points))}
	for i, point := range p.Points {
		moved.Points[i] = by.At(point)
	}
	return moved
}

// Joined returns a path with the parts of both.
func (p Path) Joined(q Path) Path {
	return Path{slices.Concat(p.Steps, q.Steps), slices.Concat(p.Points, q.Points)}
}

// Bounds returns the smallest upright rectangle around the path after it was moved,
// and false for an empty path. Curves count with where they run, not with their
// controls.
func (p Path) Bounds(by geometry.Affine) (geometry.Rect, bool) {
	box := nothing
	var at geometry.Vec2
	for step, points := range p.All() {
		switch step {
		case Move, Line:
			at = by.At(points[0])
			box = reach(box, at)
		case Curve:
			leave, arrive, to := by.At(points[0]), by.At(points[1]), by.At(points[2])
			box = reach(box, to)
			for _, share := range turns(at, leave, arrive, to) {
				box = reach(box, Along(at, leave, arrive, to, share))
			}
			at = to
		}
	}
	return box, box.Min.X <= box.Max.X
}

var nothing = geometry.Rect{
	Min: geometry.Vec2{X: math.Inf(1), Y: math.Inf(1)}, Max: geometry.Vec2{X: math.Inf(-1), Y: math.Inf(-1)},
}

func reach(box geometry.Rect, p geometry.Vec2) geometry.Rect {
	return box.Union(geometry.Rect{Min: p, Max: p})
}

// Along returns the point of a cubic curve at a share of its parameter, 0 to 1.
func Along(from, leave, arrive, to geometry.Vec2, share float64) geometry.Vec2 {
	rest := 1 - share
	a, b, c, d := rest*rest*rest, 3*rest*rest*share, 3*rest*share*share, share*share*share
	return geometry.Vec2{
		X: a*from.X + b*leave.X + c*arrive.X + d*to.X,
		Y: a*from.Y + b*leave.Y + c*arrive.Y + d*to.Y,
	}
}

// turns returns where a curve runs level or upright, which is where it may reach
// farther than its ends: the zeros of the derivative in x and in y.
func turns(from, leave, arrive, to geometry.Vec2) []float64 {
	var found []float64
	for _, v := range [2][4]float64{{from.X, leave.X, arrive.X, to.X}, {from.Y, leave.Y, arrive.Y, to.Y}} {
		low, high := min(v[0], v[3]), max(v[0], v[3])
		if v[1] >= low && v[1] <= high && v[2] >= low && v[2] <= high {
			continue
		}
		a, b, c := v[3]-3*v[2]+3*v[1]-v[0], 2*(v[2]-2*v[1]+v[0]), v[1]-v[0]
		root := math.Sqrt(b*b - 4*a*c)
		// The second form holds where a is zero or nearly so.
		for _, share := range [4]float64{(-b + root) / (2 * a), (-b - root) / (2 * a), 2 * c / (-b + root), 2 * c / (-b - root)} {
			if share > 0 && share < 1 {
				found = append(found, share)
			}
		}
	}
	return found
}

// Rectangle tells whether the path is a single upright rectangle, and which.
func (p Path) Rectangle(by geometry.Affine) (geometry.Rect, bool) {
	steps := p.Steps
	if n := len(steps); n > 0 && steps[n-1] == Close {
		steps = steps[:n-1]
	}
	corners := p.Points
	if len(steps) == 5 && len(corners) == 5 && corners[4] == corners[0] {
		steps, corners = steps[:4], corners[:4]
	}
	if !slices.Equal(steps, []Step{Move, Line, Line, Line}) {
		return geometry.Rect{}, false
	}
	box, _ := p.Bounds(by)
	for i, corner := range corners {
		a, b := by.At(corner), by.At(corners[(i+1)%4])
		onX := a.X == box.Min.X || a.X == box.Max.X
		onY := a.Y == box.Min.Y || a.Y == box.Max.Y
		if !onX || !onY || (a.X == b.X) == (a.Y == b.Y) {
			return geometry.Rect{}, false
		}
	}
	return box, true
}
