package packing

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
)

// Layers of the packed bag, in calipers from the back toward the viewer. What lies on
// the inside of a part, such as its turn-in, moves with it.
var layers = [...]float64{
	back: 0, backHalf: 5.5, frontHalf: 6.5, front: 12, strip: 13, smallTriangle: 15.5, baseTriangle: 17, base: 23,
}

// pressing is the moment from which the layers, which the net does not part, are moved
// apart.
const pressing = 0.6

// sheet is a facet of the standing bag on the half bag that it belongs to.
type sheet struct {
	facet   *fold.Facet
	mirror  bool            // on the right half
	part    part            // base, or any other for what is on the net
	outline []geometry.Vec2 // on the net, anticlockwise
	box     geometry.Rect   // of the outline
	depth   float64         // mm, of a layer on the inside
	blank   geometry.Affine // from the net to the blank
}

// sheetsOf puts the facets of the standing bag on the net, those of faces in two.
func (m *Motion) sheetsOf(body *fold.Body) []sheet {
	var sheets []sheet
	for i := range body.Facets {
		f := &body.Facets[i]
		if f.Row() == blank.RowBase {
			sheets = append(sheets, sheet{facet: f, part: base})
			continue
		}
		for _, mirror := range []bool{false, true} {
			if s, any := m.sheetOf(f, mirror); any {
				sheets = append(sheets, s)
			}
		}
	}
	return sheets
}

// sheetOf returns what of a facet lies on one half of the bag.
func (m *Motion) sheetOf(f *fold.Facet, mirror bool) (sheet, bool) {
	unroll, depth, here := m.wall(f, mirror)
	if !here {
		return sheet{}, false
	}
	s := sheet{facet: f, mirror: mirror, depth: depth}
	corner := func(c geometry.Vec2) geometry.Vec2 { return unroll(f.Pose.At(c)) }
	origin := corner(geometry.Vec2{})
	net := geometry.Affine{
		U: corner(geometry.Vec2{X: 1}).Sub(origin), V: corner(geometry.Vec2{Y: 1}).Sub(origin), Origin: origin,
	}
	s.blank, _ = net.Inverse()
	outline := make([]geometry.Vec2, len(f.Corners))
	for i, c := range f.Corners {
		outline[i] = net.At(c)
	}
	if net.Area() < 0 {
		for i, j := 0, len(outline)-1; i < j; i, j = i+1, j-1 {
			outline[i], outline[j] = outline[j], outline[i]
		}
	}
	half := m.laid.Spec.Body.Width / 2 / m.laid.Spec.Body.Gusset
	least, most := m.course.net.width-half, m.course.net.width+1+half
	s.outline = cut(outline, geometry.Vec2{X: least, Y: 1}, geometry.Vec2{X: least})
	s.outline = cut(s.outline, geometry.Vec2{X: most}, geometry.Vec2{X: most, Y: 1})
	if len(s.outline) < 3 {
		return sheet{}, false
	}
	s.box = boxOf(s.outline)
	return s, true
}

// boxOf returns the bounds of points.
func boxOf(points []geometry.Vec2) geometry.Rect {
	box := geometry.Rect{Min: points[0], Max: points[0]}
	for _, p := range points[1:] {
		box = box.Union(geometry.Rect{Min: p, Max: p})
	}
	return box
}

// wall returns how the wall that a facet of the standing bag lies on is unrolled, how
// far the facet lies on its inside, and whether it is a wall of this half of the bag.
func (m *Motion) wall(f *fold.Facet, mirror bool) (unroll func(geometry.Vec3) geometry.Vec2, depth float64, here bool) {
	b := &m.laid.Spec.Body
	edge := m.course.net.width
	side := func(p geometry.Vec3) float64 {
		if mirror {
			return b.Width - p.X
		}
		return p.X
	}
	middle := f.Points[0].Mid(f.Points[len(f.Points)/2])
	put := func(x func(geometry.Vec3) float64) func(geometry.Vec3) geometry.Vec2 {
		return func(p geometry.Vec3) geometry.Vec2 { return geometry.Vec2{X: x(p), Y: p.Z / b.Gusset} }
	}
	switch {
	case math.Abs(f.Pose.Out().X) > 0.5:
		across := func(p geometry.Vec3) float64 { return edge + 1 - p.Y/b.Gusset }
		return put(across), side(middle), side(middle) < b.Width/2
	case middle.Y < b.Gusset/2:
		return put(func(p geometry.Vec3) float64 { return edge + 1 + side(p)/b.Gusset }), middle.Y, true
	default:
		return put(func(p geometry.Vec3) float64 { return edge - side(p)/b.Gusset }), b.Gusset - middle.Y, true
	}
}

// Body returns the bag at a moment, from 0, standing, to 1, packed flat. Moments are
// spaced by the way of the corner that goes farthest. A base card is taken out before.
//
// Facets are parts of panels that are plane at that moment: their corners wander on
// the blank, and there are not as many of them at every moment.
func (m *Motion) Body(moment float64) fold.Body {
	m.set(moment)
	body := fold.Body{Caliper: m.standing.Caliper, Facets: make([]fold.Facet, 0, 4*len(m.sheets))}
	share := min(max((moment-pressing)/(1-pressing), 0), 1)
	press := share * share * (3 - 2*share) * body.Caliper
	frames := m.frames()
	for i := range m.sheets {
		s := &m.sheets[i]
		if s.part == base {
			body.Facets = append(body.Facets, m.swung(s.facet, press))
			continue
		}
		for k := range frames {
			if f, any := m.bent(s, &frames[k], press); any {
				body.Facets = append(body.Facets, f)
			}
		}
	}
	for _, cord := range m.standing.Cords {
		body.Cords = append(body.Cords, m.carried(cord, frames, press))
	}
	return body
}

// frame is how a triangle of the net lies in space.
type frame struct {
	part    part
	corners [3]geometry.Vec2 // on the net, anticlockwise
	box     geometry.Rect
	origin  geometry.Vec3 // of the place 0, 0
	x, y    geometry.Vec3 // of a step of 1 along x and y
	out     geometry.Vec3 // on the print side
	area    float64       // on the blank, D²
}

// leastArea is the area below which a triangle is left out, in D².
const leastArea = 1e-7

// frames returns the triangles of the net at the moment that is set.
func (m *Motion) frames() []frame {
	frames := make([]frame, 0, len(m.fields))
	for _, t := range m.fields {
		if t.part == base {
			continue
		}
		a, b, c := m.now.places[t.corners[0]], m.now.places[t.corners[1]], m.now.places[t.corners[2]]
		p, q, r := m.now.points[t.corners[0]], m.now.points[t.corners[1]], m.now.points[t.corners[2]]
		u, v := b.Sub(a), c.Sub(a)
		area := u.Cross(v)
		if area < leastArea {
			continue
		}
		along, across := q.Sub(p), r.Sub(p)
		f := frame{part: t.part, corners: [3]geometry.Vec2{a, b, c}, area: area / 2}
		f.x = along.Scale(v.Y / area).Sub(across.Scale(u.Y / area))
		f.y = across.Scale(u.X / area).Sub(along.Scale(v.X / area))
		f.origin = p.Sub(f.x.Scale(a.X)).Sub(f.y.Scale(a.Y))
		f.out = f.x.Cross(f.y).Unit()
		f.box = boxOf(f.corners[:])
		frames = append(frames, f)
	}
	return frames
}

func (f *frame) at(p geometry.Vec2) geometry.Vec3 {
	return f.origin.Add(f.x.Scale(p.X)).Add(f.y.Scale(p.Y))
}

// bent returns the part of a sheet that lies on a triangle of the net.
func (m *Motion) bent(s *sheet, f *frame, press float64) (fold.Facet, bool) {
	outline := f.share(s)
	if len(outline) < 3 {
		return fold.Facet{}, false
	}
	scale := m.laid.Spec.Body.Gusset
	shift := f.out.Scale(-s.depth).Sub(geometry.Vec3{Y: layers[f.part] * press})
	space := func(p geometry.Vec3) geometry.Vec3 {
		p = p.Scale(scale).Add(shift)
		if s.mirror {
			p.X = m.laid.Spec.Body.Width - p.X
		}
		return p
	}
	facet := fold.Facet{Panel: s.facet.Panel, Piece: s.facet.Piece}
	facet.Corners = make([]geometry.Vec2, len(outline))
	facet.Points = make([]geometry.Vec3, len(outline))
	backward := s.blank.Area() < 0
	for i, p := range outline {
		at := i
		if backward {
			at = len(outline) - 1 - i
		}
		facet.Corners[at], facet.Points[at] = s.blank.At(p), space(f.at(p))
	}
	facet.Openings = openingsIn(s.facet.Openings, facet.Corners)
	right, up := m.rightOf(s, f)
	facet.Pose = poseOf(&facet, right, up)
	return facet, true
}

// openingsIn returns the openings that reach into a facet with the given corners.
func openingsIn(openings []fold.Opening, corners []geometry.Vec2) []fold.Opening {
	if len(openings) == 0 {
		return nil
	}
	box := boxOf(corners)
	var within []fold.Opening
	for _, o := range openings {
		reach := geometry.Rect{Min: o.From, Max: o.From}.Union(geometry.Rect{Min: o.To, Max: o.To}).Inset(-o.Radius)
		if reach.Min.X < box.Max.X && reach.Max.X > box.Min.X && reach.Min.Y < box.Max.Y && reach.Max.Y > box.Min.Y {
			within = append(within, o)
		}
	}
	return within
}

// rightOf returns the direction in space of the x axis of the blank and that of y, of
// a sheet on a triangle.
func (m *Motion) rightOf(s *sheet, f *frame) (right, up geometry.Vec3) {
	net, _ := s.blank.Inverse()
	right = f.x.Scale(net.U.X).Add(f.y.Scale(net.U.Y))
	up = f.x.Scale(net.V.X).Add(f.y.Scale(net.V.Y))
	if s.mirror {
		right.X, up.X = -right.X, -up.X
	}
	return right, up
}

// poseOf returns the pose of a facet whose axes lie along right and, nearly, up.
func poseOf(f *fold.Facet, right, up geometry.Vec3) fold.Pose {
	pose := fold.Pose{Right: right.Unit()}
	pose.Up = up.Sub(pose.Right.Scale(up.Dot(pose.Right))).Unit()
	pose.Origin = f.Points[0].Sub(pose.At(f.Corners[0]))
	return pose
}

// share returns the part of a sheet within the triangle, or nothing.
func (f *frame) share(s *sheet) []geometry.Vec2 {
	const touch = 1e-6
	box := &s.box
	if box.Min.X > f.box.Max.X-touch || box.Max.X < f.box.Min.X+touch || box.Min.Y > f.box.Max.Y-touch || box.Max.Y < f.box.Min.Y+touch {
		return nil
	}
	outline := s.outline
	for k, a := range f.corners {
		if outline = cut(outline, a, f.corners[(k+1)%3]); len(outline) < 3 {
			return nil
		}
	}
	area := 0.0
	for i := 2; i < len(outline); i++ {
		area += outline[i-1].Sub(outline[0]).Cross(outline[i].Sub(outline[0]))
	}
	if area < leastArea {
		return nil
	}
	return outline
}

// cut returns the part of an outline to the left of the line from a to b.
func cut(outline []geometry.Vec2, a, b geometry.Vec2) []geometry.Vec2 {
	along := b.Sub(a)
	kept := make([]geometry.Vec2, 0, len(outline)+1)
	for i, p := range outline {
		q := outline[(i+1)%len(outline)]
		left, next := along.Cross(p.Sub(a)), along.Cross(q.Sub(a))
		if left >= 0 {
			kept = append(kept, p)
		}
		if left > 0 && next < 0 || left < 0 && next > 0 {
			kept = append(kept, p.Add(q.Sub(p).Scale(left/(left-next))))
		}
	}
	return kept
}

// swung returns a facet of the base, swung up about the base crease of the back.
func (m *Motion) swung(f *fold.Facet, press float64) fold.Facet {
	hinge := geometry.Vec3{Y: m.laid.Spec.Body.Gusset}
	axis := geometry.Vec3{X: 1}
	turned := *f
	turned.Pose.Right = f.Pose.Right.Turn(axis, -m.now.swing)
	turned.Pose.Up = f.Pose.Up.Turn(axis, -m.now.swing)
	turned.Pose.Origin = hinge.Add(f.Pose.Origin.Sub(hinge).Turn(axis, -m.now.swing)).Sub(geometry.Vec3{Y: layers[base] * press})
	turned.Points = make([]geometry.Vec3, len(f.Corners))
	for i, c := range f.Corners {
		turned.Points[i] = turned.Pose.At(c)
	}
	return turned
}

// carried returns a cord, which goes with the middle of the face that holds it.
func (m *Motion) carried(cord fold.Cord, frames []frame, press float64) fold.Cord {
	b := &m.laid.Spec.Body
	low, depth := math.Inf(1), 0.0
	for _, p := range cord.Path {
		low = min(low, p.Z)
		depth += p.Y / float64(len(cord.Path))
	}
	place := geometry.Vec2{X: m.course.net.width - b.Width/2/b.Gusset + 1e-6, Y: min(low, b.Height) / b.Gusset}
	of, start := back, b.Gusset
	if depth < b.Gusset/2 {
		of, start = front, 0
		place.X = m.course.net.width + 1 + b.Width/2/b.Gusset - 1e-6
	}
	way := geometry.Vec3{}
	for _, f := range frames {
		if f.part == of && f.holds(place) {
			p := f.at(place).Scale(b.Gusset)
			way = geometry.Vec3{Y: p.Y - start - layers[of]*press, Z: p.Z - place.Y*b.Gusset}
			break
		}
	}
	moved := cord
	moved.Path = make([]geometry.Vec3, len(cord.Path))
	for i, p := range cord.Path {
		moved.Path[i] = p.Add(way)
	}
	return moved
}

func (f *frame) holds(p geometry.Vec2) bool {
	for k, a := range f.corners {
		if f.corners[(k+1)%3].Sub(a).Cross(p.Sub(a)) < -1e-9 {
			return false
		}
	}
	return true
}
