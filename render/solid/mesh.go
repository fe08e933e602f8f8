package solid

import (
	"cmp"
	"math"
	"slices"

	"gussetwright/geometry"
)

// Mesh is a bag as triangles, for those who draw it by other means than this
// package, such as a graphics card.
type Mesh struct {
	Vertices []Vertex
	Groups   []Group // by piece, skin and place, each at most once
	Lines    []Line  // edges of the paper
	Height   float64 // of the paper above the ground, mm
	Frame    Frame   // around the whole bag
}

// Vertex is a corner of triangles.
type Vertex struct {
	At     geometry.Vec3 // mm, as in package fold
	Normal geometry.Vec3 // unit vector toward the side that is seen
	Place  geometry.Vec2 // on the blank in mm, for paper of the blank; otherwise zero
}

// Group is all triangles that are painted alike.
type Group struct {
	Skin   Skin
	Piece  int  // of the blank, for its two sides and folds; −1 otherwise
	Inside bool // looks to the inside of the bag, where less light comes toward the base
	// Triangles holds the vertices of each triangle, anticlockwise seen from the
	// side that is seen. What shows from two sides is there twice, once for each.
	Triangles [][3]int
}

// Line is an edge of the paper: a straight line in space, in mm. Normal stands on
// the print side of the paper that it borders.
type Line struct{ From, To, Normal geometry.Vec3 }

// Mesh returns the bag as triangles. What stands beside it for scale is left out.
func (m *Model) Mesh() Mesh {
	b := mesher{groups: map[groupKey]int{}}
	b.mesh.Height, b.mesh.Frame = m.height, m.Frame(NoReference, 0)
	for i := range m.surfaces {
		b.surface(&m.surfaces[i])
	}
	b.tiles(m.tiles)
	b.mesh.Lines = make([]Line, len(m.strokes))
	for i, s := range m.strokes {
		b.mesh.Lines[i] = Line{s.from, s.to, s.normal}
	}
	slices.SortFunc(b.mesh.Groups, func(a, b Group) int {
		return cmp.Or(cmp.Compare(a.Piece, b.Piece), cmp.Compare(a.Skin, b.Skin), compareBools(a.Inside, b.Inside))
	})
	return b.mesh
}

func compareBools(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// groupKey is what the triangles of a group have in common.
type groupKey struct {
	skin   Skin
	piece  int
	inside bool
}

// mesher gathers a mesh.
type mesher struct {
	mesh   Mesh
	groups map[groupKey]int // index into the groups of the mesh
	cover  coverer
}

func (b *mesher) group(key groupKey) *Group {
	i, known := b.groups[key]
	if !known {
		i = len(b.mesh.Groups)
		b.groups[key] = i
		b.mesh.Groups = append(b.mesh.Groups, Group{Skin: key.skin, Piece: key.piece, Inside: key.inside})
	}
	return &b.mesh.Groups[i]
}

// surface adds both sides of a plane shape.
func (b *mesher) surface(s *surface) {
	front := groupKey{PrintSide, s.piece, s.turnedIn}
	back := groupKey{ReverseSide, s.piece, !s.turnedIn}
	switch s.material {
	case edge:
		key, places := groupKey{CutEdge, -1, false}, []geometry.Vec2(nil)
		if s.crease != nil {
			key, places = groupKey{FoldedEdge, s.crease.piece, false}, s.crease.corners[:]
		}
		b.side(s.loops[0], places, s.normal, key, false, quadTriangles)
		b.side(s.loops[0], places, s.normal, key, true, quadTriangles)
		return
	case card:
		front = groupKey{CardSide, -1, true}
		back = front
	}
	places, triangles := b.cover.cover(s.flat())
	corners := make([]geometry.Vec3, len(places))
	for i, p := range places {
		corners[i] = s.pose.At(p)
	}
	if s.material == card {
		places = nil
	}
	b.side(corners, places, s.normal, front, false, triangles)
	b.side(corners, places, s.normal, back, true, triangles)
}

var quadTriangles = [][3]int{{0, 1, 2}, {0, 2, 3}}

// flat returns the loops of a surface in its plane.
func (s *surface) flat() [][]geometry.Vec2 {
	loops := make([][]geometry.Vec2, len(s.loops))
	for i, loop := range s.loops {
		loops[i] = make([]geometry.Vec2, len(loop))
		for k, p := range loop {
			d := p.Sub(s.pose.Origin)
			loops[i][k] = geometry.Vec2{X: d.Dot(s.pose.Right), Y: d.Dot(s.pose.Up)}
		}
	}
	return loops
}

// side adds triangles as they are seen from the side of the normal, or from the
// other one. places may be nil.
func (b *mesher) side(corners []geometry.Vec3, places []geometry.Vec2, normal geometry.Vec3, key groupKey, turned bool, triangles [][3]int) {
	if turned {
		normal = normal.Scale(-1)
	}
	first := len(b.mesh.Vertices)
	for i, p := range corners {
		v := Vertex{At: p, Normal: normal}
		if places != nil {
			v.Place = places[i]
		}
		b.mesh.Vertices = append(b.mesh.Vertices, v)
	}
	g := b.group(key)
	for _, t := range triangles {
		if turned {
			t[1], t[2] = t[2], t[1]
		}
		g.Triangles = append(g.Triangles, [3]int{first + t[0], first + t[1], first + t[2]})
	}
}

// tiles adds round surfaces. Tiles of one stuff that meet at a point share a vertex
// there, whose normal is the mean of theirs, so that they look round.
func (b *mesher) tiles(tiles []tile) {
	type corner struct {
		of      Skin
		x, y, z int64
	}
	const fine = 1e4 // a ten-thousandth of a mm
	at := func(v float64) int64 { return int64(math.Round(v * fine)) }
	known := map[corner]int{}
	first := len(b.mesh.Vertices)
	for i := range tiles {
		t := &tiles[i]
		skin := skinOf(t.stuff)
		var around [4]int
		for k, p := range t.corners {
			key := corner{skin, at(p.X), at(p.Y), at(p.Z)}
			index, met := known[key]
			if !met {
				index = len(b.mesh.Vertices)
				known[key] = index
				b.mesh.Vertices = append(b.mesh.Vertices, Vertex{At: p})
			}
			b.mesh.Vertices[index].Normal = b.mesh.Vertices[index].Normal.Add(t.normal)
			around[k] = index
		}
		g := b.group(groupKey{skin, -1, false})
		for _, q := range quadTriangles {
			corners := [3]int{around[q[0]], around[q[1]], around[q[2]]}
			if corners[0] != corners[1] && corners[1] != corners[2] && corners[2] != corners[0] {
				g.Triangles = append(g.Triangles, corners)
			}
		}
	}
	for i := first; i < len(b.mesh.Vertices); i++ {
		b.mesh.Vertices[i].Normal = b.mesh.Vertices[i].Normal.Unit()
	}
}

// Grade returns how light the triangles of the group are on the ground and at the
// height of the paper, beside what the lights give. Between them the light grows
// evenly.
func (g *Group) Grade() (ground, top float64) {
	switch {
	case g.Skin > CardSide || g.Skin == CutEdge || g.Skin == FoldedEdge:
		return 1, 1
	case g.Inside:
		return insideBelow, insideAbove
	}
	return outsideFoot, 1
}
