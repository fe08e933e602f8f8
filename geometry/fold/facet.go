package fold

import (
	"math"
	"strings"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
)

// Pose is where a plane part of the blank lies in space: the point (0, 0) of the
// blank lies at Origin, its x axis along Right and its y axis along Up. The two
// are unit vectors at right angles.
type Pose struct{ Origin, Right, Up geometry.Vec3 }

// At returns where a point of the blank lies.
func (p Pose) At(v geometry.Vec2) geometry.Vec3 {
	return p.Origin.Add(p.Right.Scale(v.X)).Add(p.Up.Scale(v.Y))
}

// Out returns the unit vector that stands on the print side.
func (p Pose) Out() geometry.Vec3 { return p.Right.Cross(p.Up) }

// Move returns the pose shifted by d.
func (p Pose) Move(d geometry.Vec3) Pose {
	p.Origin = p.Origin.Add(d)
	return p
}

// Sink returns the pose shifted by d to the reverse side.
func (p Pose) Sink(d float64) Pose { return p.Move(p.Out().Scale(-d)) }

// Turn returns the pose turned about the line from a to b on the blank by an
// angle in radians, as a right hand turns whose thumb points from a to b. What
// lies to the right of a line that runs up the blank moves away from a viewer of
// the print side for positive angles: a mountain fold.
func (p Pose) Turn(a, b geometry.Vec2, angle float64) Pose {
	from := p.At(a)
	return p.about(from, p.At(b).Sub(from).Unit(), angle)
}

// about returns the pose turned about an axis through a point of space by an angle in
// radians, as a right hand turns whose thumb lies along the axis, a unit vector.
func (p Pose) about(point, axis geometry.Vec3, angle float64) Pose {
	return Pose{
		Origin: point.Add(p.Origin.Sub(point).Turn(axis, angle)),
		Right:  p.Right.Turn(axis, angle),
		Up:     p.Up.Turn(axis, angle),
	}
}

// through returns the pose that carries a to A, b to the ray from A through B, and
// c to the half plane of C beyond that ray. Neither the three points of the blank
// nor those of space may lie on one line.
func through(a, b, c geometry.Vec2, A, B, C geometry.Vec3) Pose {
	along, right := b.Sub(a).Unit(), B.Sub(A).Unit()
	across := C.Sub(A)
	up := across.Sub(right.Scale(across.Dot(right))).Unit()
	if along.Cross(c.Sub(a)) < 0 {
		up = up.Scale(-1)
	}
	left := along.Left()
	pose := Pose{
		Right: right.Scale(along.X).Add(up.Scale(left.X)),
		Up:    right.Scale(along.Y).Add(up.Scale(left.Y)),
	}
	pose.Origin = A.Sub(pose.At(a))
	return pose
}

// Opening is a hole in the paper: a slot with round ends around the line from From
// to To on the blank, a circle when both are one point.
type Opening struct {
	From, To geometry.Vec2
	Radius   float64 // mm
}

// Holds tells whether the point of the blank lies within the opening.
func (o Opening) Holds(p geometry.Vec2) bool {
	along := o.To.Sub(o.From)
	share := 0.0
	if length := along.Dot(along); length > 0 {
		share = min(max(p.Sub(o.From).Dot(along)/length, 0), 1)
	}
	return p.Sub(o.From.Add(along.Scale(share))).Length() <= o.Radius
}

// Outline returns the border of the opening as a polygon with steps corners to
// each half circle, clockwise, as the border of a hole runs.
func (o Opening) Outline(steps int) []geometry.Vec2 {
	along := o.To.Sub(o.From).Angle()
	corners := make([]geometry.Vec2, 0, 2*steps+2)
	for end, center := range []geometry.Vec2{o.To, o.From} {
		start := along + math.Pi/2 - float64(end)*math.Pi
		for step := range steps + 1 {
			corners = append(corners, center.Add(geometry.Polar(o.Radius, start-math.Pi*float64(step)/float64(steps))))
		}
	}
	return corners
}

// Facet is a plane part of a panel where it lies in space.
type Facet struct {
	Panel string // as on the blank; "" for a loose card
	Piece int    // index into the pieces of the blank; −1 for a loose card
	Pose  Pose
	// Corners are the corners on the blank, anticlockwise seen from the print
	// side, and Points the same in space.
	Corners  []geometry.Vec2
	Points   []geometry.Vec3
	Openings []Opening
}

// newFacet carries a polygon of the blank to its place. The openings are those of
// the whole piece; the facet takes those that reach into it.
func newFacet(panel string, piece int, corners []geometry.Vec2, pose Pose, openings []Opening) Facet {
	f := Facet{Panel: panel, Piece: piece, Pose: pose, Corners: corners}
	f.Points = make([]geometry.Vec3, len(corners))
	for i, c := range corners {
		f.Points[i] = pose.At(c)
	}
	if len(openings) == 0 {
		return f
	}
	box := boundsOf(corners)
	for _, o := range openings {
		reach := geometry.Rect{Min: o.From, Max: o.From}.Union(geometry.Rect{Min: o.To, Max: o.To}).Inset(-o.Radius)
		if reach.Min.X < box.Max.X && reach.Max.X > box.Min.X && reach.Min.Y < box.Max.Y && reach.Max.Y > box.Min.Y {
			f.Openings = append(f.Openings, o)
		}
	}
	return f
}

// Row returns the row of the panel that the facet is part of.
func (f *Facet) Row() blank.Row {
	for _, row := range []blank.Row{blank.RowBase, blank.RowTurnIn} {
		if strings.HasSuffix(f.Panel, string(row)) {
			return row
		}
	}
	return blank.RowBody
}

// Contains tells whether the facet covers a point of the blank: within its corners
// and not in a hole.
func (f *Facet) Contains(p geometry.Vec2) bool {
	for _, o := range f.Openings {
		if o.Holds(p) {
			return false
		}
	}
	inside := false
	last := f.Corners[len(f.Corners)-1]
	for _, c := range f.Corners {
		if (c.Y > p.Y) != (last.Y > p.Y) && p.X < c.X+(p.Y-c.Y)*(last.X-c.X)/(last.Y-c.Y) {
			inside = !inside
		}
		last = c
	}
	return inside
}

// Cord is what the hand holds, or a part of it: a band with an elliptic section
// along a path.
type Cord struct {
	Path []geometry.Vec3
	// Out stands on the plane of the path. The section reaches Deep along it on both
	// sides and Wide at right angles to it and to the path.
	Out        geometry.Vec3
	Wide, Deep float64 // mm, half of the whole
	Stuff      Stuff
}

// Stuff is what a cord is made of.
type Stuff int

// The stuffs of cords.
const (
	Textile Stuff = iota // rope and ribbon
	Paper                // twisted cord and flat strip
	Metal                // eyelets
)

// Body is a bag in space.
type Body struct {
	Facets  []Facet // the paper of the blank
	Cards   []Facet // loose cards that can be seen, lying on x and y of their own
	Cords   []Cord  // handles, knots and eyelets
	Caliper float64 // mm
}

// Bounds returns the least and the greatest coordinates of everything.
func (b *Body) Bounds() (least, greatest geometry.Vec3) {
	least = geometry.Vec3{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}
	greatest = least.Scale(-1)
	reach := func(p geometry.Vec3, margin float64) {
		least = geometry.Vec3{X: min(least.X, p.X-margin), Y: min(least.Y, p.Y-margin), Z: min(least.Z, p.Z-margin)}
		greatest = geometry.Vec3{X: max(greatest.X, p.X+margin), Y: max(greatest.Y, p.Y+margin), Z: max(greatest.Z, p.Z+margin)}
	}
	for i := range b.Facets {
		for _, p := range b.Facets[i].Points {
			reach(p, 0)
		}
	}
	for _, cord := range b.Cords {
		for _, p := range cord.Path {
			reach(p, max(cord.Wide, cord.Deep))
		}
	}
	return least, greatest
}

func boundsOf(corners []geometry.Vec2) geometry.Rect {
	box := geometry.Rect{Min: corners[0], Max: corners[0]}
	for _, c := range corners {
		box = box.Union(geometry.Rect{Min: c, Max: c})
	}
	return box
}
