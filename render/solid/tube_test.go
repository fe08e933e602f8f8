package solid

import (
	"math"
	"slices"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
)

// cordsOf returns the first cord of a bag with a kind of handle, which is the front handle,
// and the corners of its tiles.
func cordsOf(t *testing.T, kind bag.HandleKind) (bag.Spec, *fold.Cord, []geometry.Vec3) {
	t.Helper()
	spec := geomtest.WorkedExample()
	spec.Handle.Kind, spec.Handle.Eyelets = kind, false
	if err := spec.Validate(); err != nil {
		t.Fatal(err)
	}
	laid := blank.Lay(spec)
	body := fold.Standing(&laid)
	longest := slices.MaxFunc(body.Cords, func(a, b fold.Cord) int { return len(a.Path) - len(b.Path) })
	var m Model
	m.addTiles(&longest)
	var points []geometry.Vec3
	for i := range m.tiles {
		points = append(points, m.tiles[i].corners[:]...)
	}
	return spec, &longest, points
}

// From the side a rope goes into its hole as a ring does that is as thick: no part of it
// is outside of that ring, and in every direction some part reaches its rim. The ring is
// found from the ends of the path alone.
func TestRopeBendsIntoItsHole(t *testing.T) {
	_, cord, points := cordsOf(t, bag.HandleRope)
	mouth, up := cord.Path[1], geometry.Vec3{Z: 1}
	hole := mouth.Sub(cord.Path[0]).Unit() // out of the bag
	if math.Abs(hole.Dot(cord.Out)) < 0.99 || cord.Path[2].Sub(mouth).Unit().Dot(up) < 0.99 {
		t.Fatal("the handle does not come out of a hole and go up")
	}
	bend := min(bendRadius*cord.Deep, 0.95*mouth.Sub(cord.Path[0]).Length())
	middle := mouth.Sub(hole.Scale(bend)).Add(up.Scale(bend))
	rim := bend + cord.Deep
	reached := map[int]bool{}
	const sectors = 6 // of the quarter below and outside of the middle
	for _, p := range points {
		out, down := p.Sub(middle).Dot(hole), -p.Sub(middle).Dot(up)
		if out < -geometry.Tolerance || down < -geometry.Tolerance {
			continue
		}
		far := math.Hypot(out, down)
		if far > rim+geometry.Tolerance {
			t.Errorf("the rope reaches %.3f mm out and %.3f mm down from the middle of its bend, %.3f mm; want at most %.3f", out, down, far, rim)
		}
		if far > 0.99*rim {
			reached[int(math.Atan2(down, out)/(math.Pi/2)*sectors)] = true
		}
	}
	for sector := range sectors {
		if !reached[sector] {
			t.Errorf("the bend is flat between %d and %d degrees", 90*sector/sectors, 90*(sector+1)/sectors)
		}
	}
}

// A ribbon draws together: at the paper it is no wider than its hole, though it is twice
// that above. A tape, which goes through slits, and a rope stay as they are.
func TestRibbonGoesThroughItsHole(t *testing.T) {
	spec, cord, points := cordsOf(t, bag.HandleRibbon)
	mouth, across := cord.Path[1], geometry.Vec3{X: 1}
	// width is how wide the cord is at most between two heights over the hole.
	width := func(points []geometry.Vec3, from, to float64) (most float64) {
		for _, p := range points {
			if off := p.Sub(mouth); off.Z >= from && off.Z <= to && math.Abs(off.X) < 15 {
				most = max(most, 2*math.Abs(off.Dot(across)))
			}
		}
		return most
	}
	hole := spec.Handle.HoleDiameter
	if at := width(points, -5, 2*cord.Deep); at > hole || at < 0.7*hole {
		t.Errorf("at its hole of %g mm the ribbon is %.2f mm wide", hole, at)
	}
	if above := width(points, 5, 30); math.Abs(above-2*cord.Wide) > 0.01 {
		t.Errorf("above it is %.2f mm wide, want %.2f", above, 2*cord.Wide)
	}
	for _, kind := range []bag.HandleKind{bag.HandleRope, bag.HandleTape, bag.HandleTwisted, bag.HandleStrip} {
		_, cord, _ := cordsOf(t, kind)
		if path, gathers := gathered(cord.Path, cord); len(gathers) > 0 || len(path) != len(cord.Path) {
			t.Errorf("a %s draws together", kind)
		}
	}
}

// The rim of an eyelet has no gap where its path ends: each point of its first section is
// one of its last.
func TestRingsAreWhole(t *testing.T) {
	ring := fold.Cord{Out: geometry.Vec3{Y: -1}, Wide: 1.3, Deep: 0.65, Stuff: fold.Metal}
	for step := range 29 {
		sin, cos := math.Sincos(2 * math.Pi * float64(step) / 28)
		ring.Path = append(ring.Path, geometry.Vec3{X: 3 * cos, Z: 3 * sin})
	}
	var m Model
	m.addTiles(&ring)
	last := m.tiles[len(m.tiles)-tubeSides:]
	for _, tile := range m.tiles[:tubeSides] {
		least := math.Inf(1)
		for k := range last {
			for _, corner := range last[k].corners {
				least = min(least, corner.Sub(tile.corners[0]).Length())
			}
		}
		if least > geometry.Tolerance {
			t.Errorf("the ring is open by %.3f mm at %v", least, tile.corners[0])
		}
	}
}

// Bends take what room there is, one for each corner, and leave the ends of a path, its
// arcs and what goes back on itself as they are.
func TestBendsHaveRoom(t *testing.T) {
	at := func(x, y float64) geometry.Vec3 { return geometry.Vec3{X: x, Y: y} }
	for name, c := range map[string]struct {
		path   []geometry.Vec3
		radius float64
		corner bool // is left as it is
	}{
		"a right angle":            {[]geometry.Vec3{at(0, 0), at(10, 0), at(10, 10)}, 2, false},
		"wider than there is room": {[]geometry.Vec3{at(0, 0), at(1, 0), at(1, 10)}, 5, false},
		"two close corners":        {[]geometry.Vec3{at(0, 0), at(10, 0), at(10, 1), at(0, 1)}, 5, false},
		"a piece of an arc":        {[]geometry.Vec3{at(0, 0), at(10, 0), at(20, 3)}, 2, true},
		"back on itself":           {[]geometry.Vec3{at(0, 0), at(10, 0), at(0, 0.5)}, 2, true},
		"a piece of no length":     {[]geometry.Vec3{at(0, 0), at(10, 0), at(10, 0), at(10, 10)}, 2, true},
	} {
		got := bent(c.path, c.radius)
		if last := len(c.path) - 1; got[0] != c.path[0] || got[len(got)-1] != c.path[last] {
			t.Errorf("%s: the ends are %v and %v", name, got[0], got[len(got)-1])
		}
		if slices.Contains(got, c.path[1]) != c.corner {
			t.Errorf("%s: the corner is there: %v", name, !c.corner)
		}
		for i := 1; i < len(got)-1 && !c.corner; i++ {
			before, after := got[i].Sub(got[i-1]), got[i+1].Sub(got[i])
			if turn := math.Acos(min(before.Unit().Dot(after.Unit()), 1)); !(turn < sharpest) || before.Length() == 0 {
				t.Errorf("%s: at %v the path still turns by %.2f, after %.3f mm", name, got[i], turn, before.Length())
			}
		}
	}
}
