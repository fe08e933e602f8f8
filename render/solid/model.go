package solid

import (
	"math"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
)

// material is what a surface is made of.
type material int

const (
	printed material = iota // paper of the blank, its print side and its reverse
	edge                    // the cut edge of paper
	card                    // loose cards and patches
	sheet                   // the sheet that stands beside the bag for scale
)

// surface is a plane shape in space with holes.
type surface struct {
	panel    string
	piece    int
	material material
	loops    [][]geometry.Vec3 // the border anticlockwise seen from the normal, holes clockwise
	pose     fold.Pose
	normal   geometry.Vec3
	middle   geometry.Vec3
	turnedIn bool    // its print side, not its reverse, looks to the inside of the bag
	finest   float64 // drawn only where a mm takes at least this many pixels
	crease   *crease // of a strip that joins two layers at a fold, or nil
}

// crease is where a strip at a fold lies on the blank: its corners in their order.
type crease struct {
	piece   int
	corners [4]geometry.Vec2
}

// stroke is an edge of the paper that is drawn as a fine line.
type stroke struct{ from, to, normal geometry.Vec3 }

// Model is a bag made ready to be drawn. The zero value is no bag, for pictures of a
// Reference alone.
type Model struct {
	body            fold.Body
	surfaces        []surface
	strokes         []stroke
	brims           []brim
	height          float64 // of the paper above the ground, mm
	walls           float64 // mm, height of the faces and gussets, however they lie now
	least, greatest geometry.Vec3
	tiles           []tile // of the cords
	made            int    // counts the bodies that it has been
	room            room
}

// room is memory that a model takes from body to body.
type room struct {
	corners []geometry.Vec3
	loops   [][]geometry.Vec3
	at      map[rimKey][2]int
}

// loop returns room for a loop of n corners.
func (r *room) loop(n int) []geometry.Vec3 {
	if len(r.corners)+n > cap(r.corners) {
		r.corners = make([]geometry.Vec3, 0, max(2*cap(r.corners), 64*n))
	}
	from := len(r.corners)
	r.corners = r.corners[:from+n]
	return r.corners[from : from+n : from+n]
}

// list returns room for n loops.
func (r *room) list(n int) [][]geometry.Vec3 {
	if len(r.loops)+n > cap(r.loops) {
		r.loops = make([][]geometry.Vec3, 0, max(2*cap(r.loops), 64*n))
	}
	from := len(r.loops)
	r.loops = r.loops[:from+n]
	return r.loops[from : from+n : from+n]
}

// holeSteps is the number of chords to a half circle of a hole.
const holeSteps = 14

// NewModel makes a bag ready to be drawn.
func NewModel(body fold.Body) *Model {
	m := &Model{}
	m.Refold(body)
	return m
}

// Refold makes the model another bag, or the same one folded further, in the memory
// of the last: a motion of many pictures leaves next to no garbage. Nobody may be
// drawing the model or asking it meanwhile.
func (m *Model) Refold(body fold.Body) {
	m.body = body
	m.made++
	m.least, m.greatest = body.Bounds()
	m.height, m.strokes, m.tiles = 0, m.strokes[:0], m.tiles[:0]
	m.walls = wallsOf(&body)
	m.surfaces = slices.Grow(m.surfaces[:0], 4*len(body.Facets))
	m.room.corners, m.room.loops = m.room.corners[:0], m.room.loops[:0]
	for i := range body.Facets {
		f := &body.Facets[i]
		s := m.newSurface(f, printed)
		s.turnedIn = f.Row() == blank.RowTurnIn
		m.surfaces = append(m.surfaces, s)
		for _, p := range f.Points {
			m.height = max(m.height, p.Z)
		}
	}
	for i := range body.Cards {
		c := &body.Cards[i]
		m.surfaces = append(m.surfaces, m.newSurface(c, card))
		for k, p := range c.Points {
			m.strokes = append(m.strokes, stroke{p, c.Points[(k+1)%len(c.Points)], c.Pose.Out()})
		}
	}
	m.addEdges()
	for i := range body.Cords {
		m.addTiles(&body.Cords[i])
	}
}

// wallsOf returns how high the faces and gussets of a bag are on the blank.
func wallsOf(body *fold.Body) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for i := range body.Facets {
		if body.Facets[i].Row() != blank.RowBody {
			continue
		}
		for _, c := range body.Facets[i].Corners {
			low, high = min(low, c.Y), max(high, c.Y)
		}
	}
	return max(high-low, 1)
}

func (m *Model) newSurface(f *fold.Facet, of material) surface {
	s := surface{panel: f.Panel, piece: f.Piece, material: of, pose: f.Pose, normal: f.Pose.Out()}
	s.loops = m.room.list(1 + len(f.Openings))
	s.loops[0] = f.Points
	for k, o := range f.Openings {
		outline := o.Outline(holeSteps)
		loop := m.room.loop(len(outline))
		for i, p := range outline {
			loop[i] = f.Pose.At(p)
		}
		s.loops[k+1] = loop
	}
	s.middle = middleOf(f.Points)
	return s
}

// quad returns the surface of four corners in a plane, anticlockwise seen from
// where it is lit.
func quad(a, b, c, d geometry.Vec3, of material) surface {
	return (&room{corners: make([]geometry.Vec3, 0, 4), loops: make([][]geometry.Vec3, 0, 1)}).quad(a, b, c, d, of)
}

// quad is the function of that name in memory of the room.
func (r *room) quad(a, b, c, d geometry.Vec3, of material) surface {
	right := b.Sub(a).Unit()
	normal := c.Sub(a).Cross(d.Sub(b)).Unit()
	corners, loops := r.loop(4), r.list(1)
	corners[0], corners[1], corners[2], corners[3] = a, b, c, d
	loops[0] = corners
	return surface{
		piece: -1, material: of, loops: loops,
		pose:   fold.Pose{Origin: a, Right: right, Up: normal.Cross(right)},
		normal: normal, middle: a.Mid(c),
	}
}

func middleOf(points []geometry.Vec3) geometry.Vec3 {
	var sum geometry.Vec3
	for _, p := range points {
		sum = sum.Add(p)
	}
	return sum.Scale(1 / float64(len(points)))
}

// Frame is an upright cylinder in space that the camera takes in from any side.
type Frame struct {
	Middle geometry.Vec3
	Radius float64 // mm
	Rise   float64 // mm, half of its height
}

// Frame returns the cylinder around the bag and whatever stands beside it at a side.
func (m *Model) Frame(beside Reference, side int) Frame {
	least, greatest := m.least, m.greatest
	if low, high, any := beside.box(m, side); any {
		least, _ = spanned(least, low)
		_, greatest = spanned(greatest, high)
	}
	return frameOf(least, greatest)
}

// frameOf returns the cylinder around a box.
func frameOf(least, greatest geometry.Vec3) Frame {
	across := geometry.Vec2{X: greatest.X - least.X, Y: greatest.Y - least.Y}
	return Frame{least.Mid(greatest), across.Length() / 2, (greatest.Z - least.Z) / 2}
}

// rim is an edge of a facet: where it is on the blank, to find what hangs on it.
type rim struct{ x1, y1, x2, y2 int64 }

func rimOf(a, b geometry.Vec2) rim {
	const fine = 1e4 // a ten-thousandth of a mm
	at := func(v float64) int64 { return int64(math.Round(v * fine)) }
	return rim{at(a.X), at(a.Y), at(b.X), at(b.Y)}
}

type rimKey struct {
	piece int
	rim
}

// addEdges finds what joins at each edge of each facet. A cut edge shows the
// thickness of the paper; at a fold that lies several layers apart a strip joins the
// two sides; and edges that show get a fine line.
func (m *Model) addEdges() {
	if m.room.at == nil {
		m.room.at = make(map[rimKey][2]int, 8*len(m.body.Facets))
	}
	at := m.room.at
	clear(at)
	for i := range m.body.Facets {
		f := &m.body.Facets[i]
		for c, a := range f.Corners {
			at[rimKey{f.Piece, rimOf(a, f.Corners[(c+1)%len(f.Corners)])}] = [2]int{i, c}
		}
	}
	m.brims = m.brims[:0]
	for i := range m.body.Facets {
		f := &m.body.Facets[i]
		for c, a := range f.Corners {
			next := (c + 1) % len(f.Corners)
			other, folded := at[rimKey{f.Piece, rimOf(f.Corners[next], a)}]
			switch {
			case !folded:
				m.brims = append(m.brims, brim{facet: i, corner: c, back: -1})
				m.cutEdge(f, f.Points[c], f.Points[next])
			case other[0] > i:
				if f.Pose.Out().Dot(m.body.Facets[other[0]].Pose.Out()) < -doubled {
					m.brims = append(m.brims, brim{i, c, other[0], other[1]})
				}
				m.foldEdge(f, &m.body.Facets[other[0]], c, other[1])
			}
		}
		for _, loop := range m.surfaces[i].loops[1:] {
			m.holeEdge(f, loop)
		}
	}
}

// cutEdge adds the thickness of the paper along a cut.
func (m *Model) cutEdge(f *fold.Facet, a, b geometry.Vec3) {
	inward := f.Pose.Out().Scale(-m.body.Caliper)
	if b.Sub(a).Length() > geometry.Tolerance {
		m.surfaces = append(m.surfaces, m.room.quad(b, a, a.Add(inward), b.Add(inward), edge))
		m.strokes = append(m.strokes, stroke{a, b, f.Pose.Out()})
	}
}

// holeEdge adds the thickness of the paper around a hole, for close looks.
func (m *Model) holeEdge(f *fold.Facet, outline []geometry.Vec3) {
	inward := f.Pose.Out().Scale(-m.body.Caliper)
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if b.Sub(a).Length() < geometry.Tolerance {
			continue
		}
		s := m.room.quad(b, a, a.Add(inward), b.Add(inward), edge)
		s.finest = 0.4 / m.body.Caliper
		m.surfaces = append(m.surfaces, s)
		m.strokes = append(m.strokes, stroke{a, b, f.Pose.Out()})
	}
}

// gentle is the cosine of the bend, 20°, up to which facets of one panel show no line
// where they meet.
const gentle = 0.94

// foldEdge joins two facets at a crease: edge c of f is edge d of g.
func (m *Model) foldEdge(f, g *fold.Facet, c, d int) {
	a, b := f.Points[c], f.Points[(c+1)%len(f.Points)]
	far, near := g.Points[d], g.Points[(d+1)%len(g.Points)] // far beside b, near beside a
	bent := f.Pose.Out().Dot(g.Pose.Out()) < 1-1e-6
	if f.Panel == g.Panel && f.Pose.Out().Dot(g.Pose.Out()) > gentle {
		bent = false // paper that bends, or a crease hardly begun
	}
	if bent {
		m.strokes = append(m.strokes, stroke{a, b, f.Pose.Out()})
	}
	across := near.Sub(a)
	if across.Length() < m.body.Caliper/100 {
		return
	}
	strip := m.room.quad(b, a, near, far, edge)
	flush := func(n geometry.Vec3) bool { return math.Abs(strip.normal.Dot(n)) > 0.999 }
	if strip.normal != (geometry.Vec3{}) && !flush(f.Pose.Out()) && !flush(g.Pose.Out()) {
		start, end := f.Corners[c], f.Corners[(c+1)%len(f.Corners)]
		strip.crease = &crease{f.Piece, [4]geometry.Vec2{end, start, start, end}}
		m.surfaces = append(m.surfaces, strip)
		m.strokes = append(m.strokes, stroke{far, near, g.Pose.Out()})
	}
}
