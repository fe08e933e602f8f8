package geometry

import "math"

// Vertex is a corner of a path together with the shape of the edge that leaves
// it. Bulge is the tangent of a quarter of the angle that the edge turns
// through: 0 for a straight edge, 1 for a half circle to the left, negative for
// an arc to the right.
type Vertex struct {
	Vec2
	Bulge float64
}

// Path is a chain of straight and circular edges. A closed path returns from its
// last vertex to its first; an outline runs anticlockwise, with the paper on its
// left.
type Path struct {
	Vertices []Vertex
	Closed   bool
}

// Edge is one edge of a path.
type Edge struct {
	From, To Vec2
	Bulge    float64
}

// Arc is a part of a circle: it starts in the direction Start seen from Center
// and turns through Sweep (radians, positive anticlockwise).
type Arc struct {
	Center       Vec2
	Radius       float64
	Start, Sweep float64
}

// Polygon returns the closed path with straight edges through the points.
func Polygon(points ...Vec2) Path {
	path := Path{Vertices: make([]Vertex, len(points)), Closed: true}
	for i, p := range points {
		path.Vertices[i].Vec2 = p
	}
	return path
}

// Circle returns the closed path of a circle, anticlockwise, as two half circles.
func Circle(center Vec2, radius float64) Path {
	return Path{Closed: true, Vertices: []Vertex{
		{Vec2{center.X + radius, center.Y}, 1}, {Vec2{center.X - radius, center.Y}, 1},
	}}
}

// AsCircle returns centre and radius when the path is a full circle.
func (p Path) AsCircle() (center Vec2, radius float64, ok bool) {
	if !p.Closed || len(p.Vertices) != 2 || p.Vertices[0].Bulge != 1 || p.Vertices[1].Bulge != 1 {
		return Vec2{}, 0, false
	}
	a, b := p.Vertices[0].Vec2, p.Vertices[1].Vec2
	return a.Mid(b), b.Sub(a).Length() / 2, true
}

// Len returns the number of edges.
func (p Path) Len() int {
	if p.Closed || len(p.Vertices) == 0 {
		return len(p.Vertices)
	}
	return len(p.Vertices) - 1
}

// Edge returns the edge that leaves vertex i.
func (p Path) Edge(i int) Edge {
	from := p.Vertices[i]
	to := p.Vertices[(i+1)%len(p.Vertices)]
	return Edge{from.Vec2, to.Vec2, from.Bulge}
}

// Area returns the signed area: positive for an anticlockwise path. Circular
// edges count exactly, as the polygon of the chords plus circle segments of
// area (θ − sin θ)·r²/2.
func (p Path) Area() float64 {
	if len(p.Vertices) == 0 {
		return 0
	}
	origin := p.Vertices[0].Vec2
	sum := 0.0
	for i := range p.Vertices {
		sum += p.Edge(i).AreaFrom(origin)
	}
	return sum
}

// Length returns the sum of the lengths of all edges.
func (p Path) Length() float64 {
	sum := 0.0
	for i := range p.Len() {
		sum += p.Edge(i).Length()
	}
	return sum
}

// Bounds returns the smallest rectangle around the path, arcs included.
func (p Path) Bounds() Rect {
	if len(p.Vertices) == 0 {
		return Rect{}
	}
	box := Rect{p.Vertices[0].Vec2, p.Vertices[0].Vec2}
	for i := range p.Len() {
		box = box.Union(p.Edge(i).Bounds())
	}
	return box
}

// Translate returns the path moved by d.
func (p Path) Translate(d Vec2) Path {
	moved := Path{Vertices: make([]Vertex, len(p.Vertices)), Closed: p.Closed}
	for i, v := range p.Vertices {
		moved.Vertices[i] = Vertex{v.Add(d), v.Bulge}
	}
	return moved
}

// Contains tells whether point lies inside the closed path. Arcs are taken as
// their chords, which is exact enough to tell on which panel a mark stands.
func (p Path) Contains(point Vec2) bool {
	inside := false
	for i := range p.Vertices {
		a, b := p.Edge(i).From, p.Edge(i).To
		if (a.Y > point.Y) == (b.Y > point.Y) {
			continue
		}
		if point.X < a.X+(point.Y-a.Y)*(b.X-a.X)/(b.Y-a.Y) {
			inside = !inside
		}
	}
	return inside
}

// Arc returns the circle that the edge follows. The edge must not be straight.
func (e Edge) Arc() Arc {
	sweep := 4 * math.Atan(e.Bulge)
	chord := e.To.Sub(e.From)
	radius := chord.Length() * (1 + e.Bulge*e.Bulge) / (4 * math.Abs(e.Bulge))
	// The centre stands on the perpendicular of the chord, to the left for a
	// turn of less than half a circle to the left.
	toCenter := chord.Left().Scale((1 - e.Bulge*e.Bulge) / (4 * e.Bulge))
	center := e.From.Mid(e.To).Add(toCenter)
	return Arc{center, radius, e.From.Sub(center).Angle(), sweep}
}

// AreaFrom returns the signed area between the edge and the point origin: that
// of the triangle over the chord and, for an arc, of the circle segment as well.
// Over the edges of a closed path the areas sum to that of the path.
func (e Edge) AreaFrom(origin Vec2) float64 {
	area := e.From.Sub(origin).Cross(e.To.Sub(origin)) / 2
	if e.Bulge != 0 {
		arc := e.Arc()
		area += arc.Radius * arc.Radius * (arc.Sweep - math.Sin(arc.Sweep)) / 2
	}
	return area
}

// Length returns the length along the edge.
func (e Edge) Length() float64 {
	if e.Bulge == 0 {
		return e.To.Sub(e.From).Length()
	}
	arc := e.Arc()
	return arc.Radius * math.Abs(arc.Sweep)
}

// Bounds returns the smallest rectangle around the edge.
func (e Edge) Bounds() Rect {
	box := Rect{e.From, e.From}.Union(Rect{e.To, e.To})
	if e.Bulge == 0 {
		return box
	}
	arc := e.Arc()
	for quarter := range 4 {
		angle := float64(quarter) * math.Pi / 2
		if arc.Passes(angle) {
			p := arc.Center.Add(Polar(arc.Radius, angle))
			box = box.Union(Rect{p, p})
		}
	}
	return box
}

// Passes tells whether the arc goes through the direction angle seen from its centre.
func (a Arc) Passes(angle float64) bool {
	turned := math.Mod(angle-a.Start, 2*math.Pi)
	if a.Sweep >= 0 {
		if turned < 0 {
			turned += 2 * math.Pi
		}
		return turned <= a.Sweep
	}
	if turned > 0 {
		turned -= 2 * math.Pi
	}
	return turned >= a.Sweep
}

// At returns the point at the share t, from 0 at the start to 1 at the end.
func (a Arc) At(t float64) Vec2 {
	return a.Center.Add(Polar(a.Radius, a.Start+t*a.Sweep))
}
