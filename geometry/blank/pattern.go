package blank

import (
	"cmp"
	"math"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// Pattern is a piece as a graph: points joined by edges that meet only at their
// ends, and the faces between them. It is the ideal sheet without thickness, so
// the seam relief is left out and holes are not part of it.
type Pattern struct {
	Name   string
	Points []geometry.Vec2
	Edges  []PatternEdge
	Faces  [][]int // indices into Points, anticlockwise
}

// PatternEdge joins two points of a pattern.
type PatternEdge struct {
	A, B int // indices into Points
	Kind Kind
	Role Role
	Fold Fold
}

// arcSteps is the number of chords that stand for a curved cut.
const arcSteps = 4

// Patterns returns the crease pattern of each piece of the bag.
func Patterns(spec bag.Spec) []Pattern {
	seams := seams(spec)
	spec.Body.SeamRelief = 0
	spec.Body.Seams = bag.SeamsOne
	if seams == 2 {
		spec.Body.Seams = bag.SeamsTwo
	}
	laid := Lay(spec)
	patterns := make([]Pattern, len(laid.Pieces))
	for i := range laid.Pieces {
		patterns[i] = newPattern(&laid.Pieces[i])
	}
	return patterns
}

func newPattern(piece *Piece) Pattern {
	pattern := Pattern{Name: piece.Name}
	lines := straightLines(piece)
	for i, line := range lines {
		pattern.split(line, lines, i)
	}
	pattern.traceFaces()
	return pattern
}

// straightLines returns the cuts of the outline and the creases, curved cuts as chords.
func straightLines(piece *Piece) []Line {
	var lines []Line
	for _, line := range piece.Lines {
		if line.Role.IsCutOut() {
			continue
		}
		if line.Bulge == 0 {
			lines = append(lines, line)
			continue
		}
		arc := line.Arc()
		for step := range arcSteps {
			chord := line
			chord.Edge = geometry.Edge{From: arc.At(float64(step) / arcSteps), To: arc.At(float64(step+1) / arcSteps)}
			lines = append(lines, chord)
		}
	}
	return lines
}

// split adds a line to the pattern, broken at every point where another line
// meets it.
func (p *Pattern) split(line Line, all []Line, self int) {
	along := line.To.Sub(line.From)
	stops := []float64{0, 1}
	for i, other := range all {
		if i == self {
			continue
		}
		stops = append(stops, meetings(line.Edge, other.Edge)...)
	}
	slices.Sort(stops)
	last := p.point(line.From)
	for _, t := range stops[1:] {
		next := p.point(line.From.Add(along.Scale(t)))
		if next != last {
			p.Edges = append(p.Edges, PatternEdge{last, next, line.Kind, line.Role, line.Fold})
			last = next
		}
	}
}

// meetings returns where along edge a, from 0 to 1, edge b crosses or touches it.
func meetings(a, b geometry.Edge) []float64 {
	along, other := a.To.Sub(a.From), b.To.Sub(b.From)
	length := along.Length()
	slack := geometry.Tolerance / length
	var stops []float64
	keep := func(t float64) {
		if t > slack && t < 1-slack {
			stops = append(stops, t)
		}
	}
	for _, end := range []geometry.Vec2{b.From, b.To} {
		off := end.Sub(a.From)
		if math.Abs(along.Cross(off)) <= geometry.Tolerance*length {
			keep(off.Dot(along) / (length * length))
		}
	}
	turn := along.Cross(other)
	if math.Abs(turn) <= 1e-12*length*other.Length() {
		return stops
	}
	gap := b.From.Sub(a.From)
	if u := gap.Cross(along) / turn; u > 0 && u < 1 {
		keep(gap.Cross(other) / turn)
	}
	return stops
}

// point returns the index of the point at v, adding it when it is new.
func (p *Pattern) point(v geometry.Vec2) int {
	for i, known := range p.Points {
		if known.Near(v) {
			return i
		}
	}
	p.Points = append(p.Points, v)
	return len(p.Points) - 1
}

// Around returns the edges at a point in the order of their directions,
// anticlockwise from the x axis, each as the point at its other end.
func (p *Pattern) Around(point int) []Spoke {
	var spokes []Spoke
	for i, edge := range p.Edges {
		far := -1
		switch point {
		case edge.A:
			far = edge.B
		case edge.B:
			far = edge.A
		default:
			continue
		}
		angle := p.Points[far].Sub(p.Points[point]).Angle()
		spokes = append(spokes, Spoke{Edge: i, Far: far, Angle: angle})
	}
	slices.SortFunc(spokes, func(a, b Spoke) int { return cmp.Compare(a.Angle, b.Angle) })
	return spokes
}

// Spoke is an edge seen from one of its ends.
type Spoke struct {
	Edge  int     // index into Edges
	Far   int     // the point at the other end
	Angle float64 // direction in radians, −π to π
}

// Interior tells whether a point lies within the paper: none of its edges is cut.
func (p *Pattern) Interior(point int) bool {
	for _, edge := range p.Edges {
		if edge.Kind == Cut && (edge.A == point || edge.B == point) {
			return false
		}
	}
	return true
}

// traceFaces walks round every face: at each point the walk turns to the next
// edge clockwise, which keeps the face on its left.
func (p *Pattern) traceFaces() {
	around := make([][]Spoke, len(p.Points))
	for i := range p.Points {
		around[i] = p.Around(i)
	}
	walked := map[[2]int]bool{}
	for _, edge := range p.Edges {
		for _, start := range [][2]int{{edge.A, edge.B}, {edge.B, edge.A}} {
			if walked[start] {
				continue
			}
			face := walkFace(start, around, walked)
			if p.area(face) > 0 {
				p.Faces = append(p.Faces, face)
			}
		}
	}
}

func walkFace(start [2]int, around [][]Spoke, walked map[[2]int]bool) []int {
	var face []int
	for step := start; !walked[step]; {
		walked[step] = true
		face = append(face, step[0])
		spokes := around[step[1]]
		back := slices.IndexFunc(spokes, func(s Spoke) bool { return s.Far == step[0] })
		next := spokes[(back+len(spokes)-1)%len(spokes)]
		step = [2]int{step[1], next.Far}
	}
	return face
}

func (p *Pattern) area(face []int) float64 {
	corners := make([]geometry.Vec2, len(face))
	for i, point := range face {
		corners[i] = p.Points[point]
	}
	return geometry.Polygon(corners...).Area()
}
