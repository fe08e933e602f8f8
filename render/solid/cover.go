package solid

import (
	"cmp"
	"math"
	"slices"

	"gussetwright/geometry"
)

// coverer covers plane shapes with triangles. It keeps its lists between shapes.
//
// The shape is cut into slabs at the height of every corner and of every crossing of
// two edges. Within a slab the edges run side by side, and what lies between two of
// them is a trapezoid. So holes may cross the border or each other, as they do
// where a crease runs through a hole.
type coverer struct {
	levels     []float64 // from the lowest up
	flanks     []flank
	trapezoids []trapezoid
	corners    []cornerAt // of the trapezoids, by level and x
	order      []int      // of the flanks of one slab
	points     []geometry.Vec2
	triangles  [][3]int
}

// flank is an edge of the shape that is not level. Its ends lie on levels.
type flank struct {
	low, high   geometry.Vec2
	from, to    int     // levels of the ends
	turn        int     // 1 where the shape lies to the right of it, running down; −1 running up
	left, right float64 // x at the lower and the upper level of the slab
	last        int     // trapezoid to the right of it, −1 for none yet
}

// trapezoid lies between two flanks and two levels.
type trapezoid struct {
	right     int   // flank
	from, to  int   // levels
	low, high reach // on the two levels
}

// reach is from one x to another.
type reach struct{ left, right float64 }

// cornerAt is a corner of a trapezoid: at x on a level.
type cornerAt struct {
	level int
	x     float64
}

// cover returns triangles, anticlockwise, over all that the loops wind round once:
// outer borders run anticlockwise and holes clockwise. Where triangles touch they
// share whole edges. The results are good until the next call.
func (c *coverer) cover(loops [][]geometry.Vec2) (points []geometry.Vec2, triangles [][3]int) {
	c.findLevels(loops)
	c.findFlanks(loops)
	c.trapezoids = c.trapezoids[:0]
	for slab := range len(c.levels) - 1 {
		c.fillSlab(slab)
	}
	c.points, c.triangles = nil, nil
	c.findCorners()
	for i := range c.trapezoids {
		c.split(&c.trapezoids[i])
	}
	return c.points, c.triangles
}

// findLevels gathers the heights of the corners and of the crossings of edges.
// Heights closer than the tolerance are one level.
func (c *coverer) findLevels(loops [][]geometry.Vec2) {
	var all []float64
	for i, loop := range loops {
		for k, a := range loop {
			all = append(all, a.Y)
			b := loop[(k+1)%len(loop)]
			for _, other := range loops[i:] {
				all = appendCrossings(all, a, b, other)
			}
		}
	}
	slices.Sort(all)
	c.levels = c.levels[:0]
	for _, y := range all {
		if n := len(c.levels); n == 0 || y-c.levels[n-1] > geometry.Tolerance {
			c.levels = append(c.levels, y)
		}
	}
}

// appendCrossings adds the heights at which the line from a to b crosses a loop.
func appendCrossings(list []float64, a, b geometry.Vec2, loop []geometry.Vec2) []float64 {
	least, most := min(a.X, b.X), max(a.X, b.X)
	low, high := min(a.Y, b.Y), max(a.Y, b.Y)
	along := b.Sub(a)
	p := loop[len(loop)-1]
	for _, q := range loop {
		if max(p.X, q.X) > least && min(p.X, q.X) < most && max(p.Y, q.Y) > low && min(p.Y, q.Y) < high {
			before, after := along.Cross(p.Sub(a)), along.Cross(q.Sub(a))
			from, to := q.Sub(p).Cross(a.Sub(p)), q.Sub(p).Cross(b.Sub(p))
			if before*after < 0 && from*to < 0 {
				list = append(list, a.Y+along.Y*from/(from-to))
			}
		}
		p = q
	}
	return list
}

// levelOf returns the level at a height.
func (c *coverer) levelOf(y float64) int {
	i, found := slices.BinarySearch(c.levels, y)
	if !found {
		i-- // a level stands for the heights a little above it
	}
	return i
}

func (c *coverer) findFlanks(loops [][]geometry.Vec2) {
	c.flanks = c.flanks[:0]
	for _, loop := range loops {
		for i, a := range loop {
			b := loop[(i+1)%len(loop)]
			made := flank{low: b, high: a, from: c.levelOf(b.Y), to: c.levelOf(a.Y), turn: 1, last: -1}
			if made.from > made.to {
				made = flank{low: a, high: b, from: made.to, to: made.from, turn: -1, last: -1}
			}
			if made.from != made.to {
				c.flanks = append(c.flanks, made)
			}
		}
	}
}

// at returns x of a flank on one of its levels.
func (b *flank) at(level int, y float64) float64 {
	switch level {
	case b.from:
		return b.low.X
	case b.to:
		return b.high.X
	}
	return b.low.X + (b.high.X-b.low.X)*(y-b.low.Y)/(b.high.Y-b.low.Y)
}

// fillSlab finds the trapezoids between a level and the next.
func (c *coverer) fillSlab(slab int) {
	c.order = c.order[:0]
	for i := range c.flanks {
		b := &c.flanks[i]
		if b.from <= slab && b.to > slab {
			b.left, b.right = b.at(slab, c.levels[slab]), b.at(slab+1, c.levels[slab+1])
			c.order = append(c.order, i)
		}
	}
	slices.SortFunc(c.order, func(i, k int) int {
		a, b := &c.flanks[i], &c.flanks[k]
		return cmp.Or(cmp.Compare(a.left+a.right, b.left+b.right), cmp.Compare(i, k))
	})
	winding, start := 0, 0
	for _, i := range c.order {
		if winding == 1 {
			c.between(start, i, slab)
		}
		winding += c.flanks[i].turn
		start = i
	}
}

// between adds what lies between two flanks in a slab, or lets the trapezoid below
// it between the same flanks reach up.
func (c *coverer) between(left, right, slab int) {
	l, r := &c.flanks[left], &c.flanks[right]
	if r.left-l.left <= geometry.Tolerance && r.right-l.right <= geometry.Tolerance {
		return
	}
	high := reach{l.right, max(l.right, r.right)}
	if l.last >= 0 {
		if t := &c.trapezoids[l.last]; t.right == right && t.to == slab {
			t.to, t.high = slab+1, high
			return
		}
	}
	l.last = len(c.trapezoids)
	c.trapezoids = append(c.trapezoids, trapezoid{
		right: right, from: slab, to: slab + 1, low: reach{l.left, max(l.left, r.left)}, high: high,
	})
}

// findCorners lists the corners of all trapezoids once.
func (c *coverer) findCorners() {
	c.corners = c.corners[:0]
	for i := range c.trapezoids {
		t := &c.trapezoids[i]
		c.corners = append(c.corners,
			cornerAt{t.from, t.low.left}, cornerAt{t.from, t.low.right}, cornerAt{t.to, t.high.left}, cornerAt{t.to, t.high.right})
	}
	slices.SortFunc(c.corners, compareCorners)
	c.corners = slices.CompactFunc(c.corners, func(a, b cornerAt) bool {
		return a.level == b.level && math.Abs(b.x-a.x) <= geometry.Tolerance
	})
	for _, corner := range c.corners {
		c.points = append(c.points, geometry.Vec2{X: corner.x, Y: c.levels[corner.level]})
	}
}

func compareCorners(a, b cornerAt) int {
	return cmp.Or(cmp.Compare(a.level, b.level), cmp.Compare(a.x, b.x))
}

// chain returns the first and the last of the corners on a level from left to right.
func (c *coverer) chain(level int, r reach) (first, last int) {
	first, _ = slices.BinarySearchFunc(c.corners, cornerAt{level, r.left - geometry.Tolerance}, compareCorners)
	last = first
	for last+1 < len(c.corners) && c.corners[last+1].level == level && c.corners[last+1].x <= r.right {
		last++
	}
	return first, last
}

// split adds the triangles of a trapezoid. Corners of its neighbours on its lower and
// its upper edge are corners of triangles too.
func (c *coverer) split(t *trapezoid) {
	low, lowest := c.chain(t.from, t.low)
	high, highest := c.chain(t.to, t.high)
	share := func(i int, r reach) float64 { return (c.corners[i].x - r.left) / (r.right - r.left) }
	for low < lowest || high < highest {
		if high == highest || low < lowest && share(low+1, t.low) <= share(high+1, t.high) {
			c.triangles = append(c.triangles, [3]int{low, low + 1, high})
			low++
		} else {
			c.triangles = append(c.triangles, [3]int{low, high + 1, high})
			high++
		}
	}
}
