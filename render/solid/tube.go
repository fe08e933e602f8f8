package solid

import (
	"math"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/fold"
)

// tile is a small piece of a round surface, seen from outside only.
type tile struct {
	corners [4]geometry.Vec3 // anticlockwise seen from outside
	normal  geometry.Vec3    // of the round surface at its middle
	stuff   stuff
}

// slope returns the direction that the tile itself looks to.
func (t *tile) slope() geometry.Vec3 {
	return t.corners[2].Sub(t.corners[0]).Cross(t.corners[3].Sub(t.corners[1])).Unit()
}

// stuff is what a round surface is made of.
type stuff int

const (
	textile stuff = iota
	paperCord
	metal
	plaster // the hand and the person beside the bag
	glass   // the bottle beside the bag
	foil    // over its cork
)

// tubeSides is the number of tiles round a cord.
const tubeSides = 12

// section is an elliptical section of a tube.
type section struct {
	center     geometry.Vec3
	wide, deep float64 // mm, half of the whole
}

// addTiles covers a cord.
func (m *Model) addTiles(cord *fold.Cord) {
	of := textile
	switch cord.Stuff {
	case fold.Paper:
		of = paperCord
	case fold.Metal:
		of = metal
	}
	sections := make([]section, len(cord.Path))
	for i, p := range cord.Path {
		sections[i] = section{p, cord.Wide, cord.Deep}
	}
	closed := len(cord.Path) > 2 && cord.Path[0].Near(cord.Path[len(cord.Path)-1])
	m.tiles = m.room.tube(m.tiles, sections, cord.Out, of, tubeSides, !closed)
}

// tube covers the hull of sections along a path with tiles. The sections reach deep
// along out and wide at right angles to that and to the path. capped closes the ends
// with domes.
func tube(sections []section, out geometry.Vec3, of stuff, sides int, capped bool) []tile {
	var r room
	return r.tube(nil, sections, out, of, sides, capped)
}

// tube is the function of that name in memory of the room. It adds to tiles.
func (r *room) tube(tiles []tile, sections []section, out geometry.Vec3, of stuff, sides int, capped bool) []tile {
	if capped {
		sections = domed(sections)
	}
	n := len(sections)
	rings, normals := r.list(n), r.list(n)
	wideWays := wideWaysOf(sections, out)
	for i, s := range sections {
		wideWay := wideWays[i]
		deepWay := alongAt(sections, i).Cross(wideWay).Unit()
		rings[i], normals[i] = r.loop(sides), r.loop(sides)
		for k := range sides {
			sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(sides))
			rings[i][k] = s.center.Add(wideWay.Scale(s.wide * cos)).Add(deepWay.Scale(s.deep * sin))
			normals[i][k] = wideWay.Scale(s.deep * cos).Add(deepWay.Scale(s.wide * sin)).Unit()
		}
	}
	tiles = slices.Grow(tiles, (n-1)*sides)
	for i := range n - 1 {
		for k := range sides {
			next := (k + 1) % sides
			t := tile{corners: [4]geometry.Vec3{rings[i][k], rings[i+1][k], rings[i+1][next], rings[i][next]}, stuff: of}
			t.normal = normals[i][k].Add(normals[i+1][k]).Add(normals[i+1][next]).Add(normals[i][next]).Unit()
			slope := t.slope()
			if slope.Dot(t.normal) < 0 {
				t.corners[1], t.corners[3] = t.corners[3], t.corners[1]
				slope = slope.Scale(-1)
			}
			if capped && slope.Dot(t.normal) < 0.95 {
				t.normal = slope // a dome slants more than its section says
			}
			tiles = append(tiles, t)
		}
	}
	return tiles
}

// domed adds round ends to a tube.
func domed(sections []section) []section {
	n := len(sections)
	dome := func(end, inner section) []section {
		away := end.center.Sub(inner.center).Unit()
		var list []section
		for _, angle := range []float64{30, 60, 80, 90} {
			sin, cos := math.Sincos(angle * math.Pi / 180)
			list = append(list, section{end.center.Add(away.Scale(end.deep * sin)), end.wide*cos + 1e-6, end.deep*cos + 1e-6})
		}
		return list
	}
	head, tail := dome(sections[0], sections[1]), dome(sections[n-1], sections[n-2])
	all := make([]section, 0, n+len(head)+len(tail))
	for i := len(head) - 1; i >= 0; i-- {
		all = append(all, head[i])
	}
	return append(append(all, sections...), tail...)
}

// alongAt returns the direction of the path at a section.
func alongAt(sections []section, i int) geometry.Vec3 {
	before, after := sections[max(i-1, 0)].center, sections[min(i+1, len(sections)-1)].center
	return after.Sub(before).Unit()
}

// wideWaysOf returns the directions in which the sections are wide. Where the path
// runs along out, as it does through a hole, a section takes that of its neighbour.
func wideWaysOf(sections []section, out geometry.Vec3) []geometry.Vec3 {
	ways := make([]geometry.Vec3, len(sections))
	last := anyAcross(out)
	if n := len(sections); n > 2 {
		if way := out.Cross(sections[n/2].center.Sub(sections[n/2-1].center)); way.Length() > geometry.Tolerance {
			last = way.Unit()
		}
	}
	settle := func(i int) {
		if ways[i] != (geometry.Vec3{}) {
			last = ways[i]
		} else {
			ways[i] = last
		}
	}
	for i := range sections {
		if way := out.Cross(alongAt(sections, i)); way.Length() > 0.2 {
			ways[i] = way.Unit()
		}
	}
	for i := len(sections) - 1; i >= 0; i-- {
		if i >= len(sections)/2 {
			continue
		}
		settle(i)
	}
	for i := range sections {
		settle(i)
	}
	return ways
}

// anyAcross returns some unit vector at right angles to v.
func anyAcross(v geometry.Vec3) geometry.Vec3 {
	if math.Abs(v.X) < 0.7 {
		return v.Cross(geometry.Vec3{X: 1}).Unit()
	}
	return v.Cross(geometry.Vec3{Y: 1}).Unit()
}

// fillTile paints a tile where nothing nearer is drawn yet.
func (c *canvas) fillTile(l *lens, t *tile, colour packed) {
	slope := t.slope()
	offset := t.corners[0].Mid(t.corners[2]).Sub(l.eye)
	k := slope.Dot(offset)
	if !(k < 0) {
		return
	}
	n := l.over(slope)
	p := paint{nearness: affine{n.base / k, n.x / k, n.y / k}, colour: colour, shade: 256}
	c.scan.begin()
	p.least, p.most = c.trace(l, t.corners[:])
	c.scan.fill(c.width, anyTurn, func(row, left, right int) { c.plain(&p, row, left, right) })
}
