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
	path := cord.Path
	closed := len(path) > 2 && path[0].Near(path[len(path)-1])
	var gathers []gather
	if !closed {
		path, gathers = gathered(path, cord)
		path = bent(path, bendRadius*cord.Deep)
	}
	sections := make([]section, len(path))
	for i, p := range path {
		sections[i] = section{p, cord.Wide * narrowest(gathers, p), cord.Deep}
	}
	m.tiles = m.room.tube(m.tiles, sections, cord.Out, of, tubeSides, !closed)
}

// Of the bends of a cord.
const (
	bendRadius = 1.2  // of its half depth: the inside of the bend just does not crease
	sharpest   = 0.5  // radians; a smaller turn is a piece of an arc already
	backward   = 2.8  // radians; a larger turn is no bend, the cord lies back on itself
	bendPiece  = 0.25 // radians, about, of each piece of a bend
)

// bent returns a path with arcs in the place of its corners, of a radius or what the
// pieces beside a corner have room for: so a rope comes out of its hole.
func bent(path []geometry.Vec3, radius float64) []geometry.Vec3 {
	last := len(path) - 1
	round := make([]geometry.Vec3, 0, len(path)+24)
	for i, corner := range path {
		if i == 0 || i == last {
			round = append(round, corner)
			continue
		}
		// Each corner takes no more than its half of a piece, and all but the end of the
		// first and the last.
		room := func(from, to int, way geometry.Vec3) float64 {
			if from == 0 || to == last {
				return 0.95 * way.Length()
			}
			return 0.48 * way.Length()
		}
		before, after := corner.Sub(path[i-1]), path[i+1].Sub(corner)
		most := min(room(i-1, i, before), room(i, i+1, after))
		round = appendBend(round, corner, before.Unit(), after.Unit(), radius, most)
	}
	return round
}

// appendBend adds the arc of a corner between two directions. It begins and ends no
// farther from the corner than most.
func appendBend(path []geometry.Vec3, corner, before, after geometry.Vec3, radius, most float64) []geometry.Vec3 {
	cos := min(max(before.Dot(after), -1), 1)
	turn := math.Acos(cos)
	if !(turn > sharpest && turn < backward) {
		return append(path, corner)
	}
	reach := min(radius*math.Tan(turn/2), most)
	radius = reach / math.Tan(turn/2)
	start, inward := corner.Sub(before.Scale(reach)), after.Sub(before.Scale(cos)).Unit()
	pieces := math.Ceil(turn / bendPiece)
	for step := range int(pieces) + 1 {
		sin, cos := math.Sincos(turn * float64(step) / pieces)
		path = append(path, start.Add(before.Scale(radius*sin)).Add(inward.Scale(radius*(1-cos))))
	}
	return path
}

// gather is where a ribbon draws together to go through a hole: at the mouth of the hole
// it is narrow, so far along the way from there as wide as it is.
type gather struct {
	mouth, way geometry.Vec3
	length     float64 // mm
}

// Of the gathers of a ribbon, which is wider than its hole (values by looking).
const (
	flattest    = 2.0 // a cord so many times as wide as deep is a ribbon
	gatherWidth = 0.5 // of the ribbon, at the hole
	gatherReach = 2.5 // half widths of the ribbon
)

// gathered returns where a ribbon draws together at its ends, and its path with the
// points at which it begins to. A tape through slits, whose ends lie along the face, does
// not, nor does a rope.
func gathered(path []geometry.Vec3, cord *fold.Cord) ([]geometry.Vec3, []gather) {
	last := len(path) - 1
	if last < 3 || cord.Wide < flattest*cord.Deep {
		return path, nil
	}
	at := func(end, mouth, next geometry.Vec3) (gather, bool) {
		const through = 0.9 // of the direction of the hole
		way := next.Sub(mouth)
		g := gather{mouth: mouth, way: way.Unit(), length: min(gatherReach*cord.Wide, 0.45*way.Length())}
		return g, math.Abs(mouth.Sub(end).Unit().Dot(cord.Out)) > through && math.Abs(g.way.Dot(cord.Out)) < through
	}
	var gathers []gather
	path = slices.Clone(path)
	if g, does := at(path[last], path[last-1], path[last-2]); does {
		gathers, path = append(gathers, g), slices.Insert(path, last-1, g.mouth.Add(g.way.Scale(g.length)))
	}
	if g, does := at(path[0], path[1], path[2]); does {
		gathers, path = append(gathers, g), slices.Insert(path, 2, g.mouth.Add(g.way.Scale(g.length)))
	}
	return path, gathers
}

// narrowest returns the share of its width that a ribbon has at a point.
func narrowest(gathers []gather, at geometry.Vec3) float64 {
	share := 1.0
	for _, g := range gathers {
		off := at.Sub(g.mouth)
		if off.Length() <= g.length+geometry.Tolerance {
			gone := min(max(off.Dot(g.way)/g.length, 0), 1)
			share = min(share, gatherWidth+(1-gatherWidth)*gone)
		}
	}
	return share
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

// alongAt returns the direction of the path at a section. Both ends of a ring have one.
func alongAt(sections []section, i int) geometry.Vec3 {
	last := len(sections) - 1
	before, after := max(i-1, 0), min(i+1, last)
	if last > 1 && sections[0].center.Near(sections[last].center) {
		before, after = (i-1+last)%last, (i+1)%last
	}
	return sections[after].center.Sub(sections[before].center).Unit()
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
