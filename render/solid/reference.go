package solid

import (
	"math"
	"slices"
	"sync"

	"gussetwright/geometry"
	"gussetwright/geometry/fold"
)

// Reference is a well-known thing that stands beside the bag for scale.
type Reference string

// The references. The sizes without a source are values from memory.
const (
	NoReference Reference = ""
	Can33       Reference = "can"    // a 33 cl can, 66 mm wide and 115 mm high
	Hand        Reference = "hand"   // the hand of a grown person, 190 mm long, on a stand
	SheetA4     Reference = "a4"     // 210 × 297 mm, ISO 216
	Bottle75    Reference = "bottle" // a 75 cl wine bottle, 76 mm wide and 300 mm high
	Person      Reference = "person" // a person 1.70 m tall, standing
)

// References returns all references: none first, then from the lowest to the tallest.
func References() []Reference {
	return []Reference{NoReference, Can33, Hand, SheetA4, Bottle75, Person}
}

// things makes each reference once.
var things = map[Reference]func() *thing{
	Can33:    sync.OnceValue(func() *thing { return newThing(can33()) }),
	Hand:     sync.OnceValue(func() *thing { return newThing(hand()) }),
	SheetA4:  sync.OnceValue(func() *thing { return newThing(sheetA4()) }),
	Bottle75: sync.OnceValue(func() *thing { return newThing(bottle75()) }),
	Person:   sync.OnceValue(func() *thing { return newThing(person()) }),
}

// thing is a reference by itself: it stands on the origin and looks to the front.
type thing struct {
	object
	least, greatest geometry.Vec3 // the box around it
}

func newThing(made object) *thing {
	t := &thing{object: made}
	t.least, t.greatest = made.bounds()
	return t
}

// besideGap is how far the reference stands from the bag, in mm.
const besideGap = 45

// object is something that is not part of the bag.
type object struct {
	surfaces []surface
	tiles    []tile
}

// SideFor returns the side of the bag, in quarter turns from its front, beside which
// a thing is seen from an azimuth in radians: to the left of the viewer, where the bag
// does not hide it.
func SideFor(azimuth float64) int {
	const slack = 1e-9 // the isometric view lies between two sides; it takes the front
	return int(math.Ceil(azimuth/(math.Pi/2)-0.5-slack)) & 3
}

// standing returns the motion that brings the thing to where it stands: to the left of
// the bag, in line with its front, or the same seen from another side.
func (t *thing) standing(m *Model, side int) func(geometry.Vec3) geometry.Vec3 {
	middle, size := m.least.Mid(m.greatest), m.greatest.Sub(m.least)
	across, deep := size.X, size.Y
	if side&1 == 1 {
		across, deep = deep, across
	}
	beside := geometry.Vec3{X: -across/2 - besideGap - t.greatest.X, Y: -deep / 2}
	about := geometry.Vec3{X: middle.X, Y: middle.Y}
	return func(p geometry.Vec3) geometry.Vec3 { return about.Add(quarterTurns(p.Add(beside), side)) }
}

// place returns the thing where it stands, or nil when there is none.
func (r Reference) place(m *Model, side int) *object {
	made, known := things[r]
	if !known {
		return nil
	}
	t := made()
	return t.moved(t.standing(m, side))
}

// box returns the box around the thing where it stands. It tells whether there is one.
func (r Reference) box(m *Model, side int) (least, greatest geometry.Vec3, any bool) {
	made, known := things[r]
	if !known {
		return least, greatest, false
	}
	t := made()
	motion := t.standing(m, side)
	least, greatest = spanned(motion(t.least), motion(t.greatest))
	return least, greatest, true
}

// Frame returns the cylinder around the thing alone, where it stands at a side of an
// empty Model; none for NoReference.
func (r Reference) Frame(side int) Frame {
	least, greatest, any := r.box(&Model{}, side)
	if !any {
		return Frame{}
	}
	return frameOf(least, greatest)
}

// quarterTurns turns v about the z axis.
func quarterTurns(v geometry.Vec3, n int) geometry.Vec3 {
	for range n & 3 {
		v.X, v.Y = -v.Y, v.X
	}
	return v
}

// moved returns the object after a motion.
func (o *object) moved(motion func(geometry.Vec3) geometry.Vec3) *object {
	nowhere := motion(geometry.Vec3{})
	turn := func(v geometry.Vec3) geometry.Vec3 { return motion(v).Sub(nowhere) }
	to := &object{slices.Clone(o.surfaces), slices.Clone(o.tiles)}
	for i := range to.surfaces {
		s := &to.surfaces[i]
		s.pose = fold.Pose{Origin: motion(s.pose.Origin), Right: turn(s.pose.Right), Up: turn(s.pose.Up)}
		s.normal, s.middle = turn(s.normal), motion(s.middle)
		s.loops = slices.Clone(s.loops)
		for k, loop := range s.loops {
			s.loops[k] = make([]geometry.Vec3, len(loop))
			for j, p := range loop {
				s.loops[k][j] = motion(p)
			}
		}
	}
	for i := range to.tiles {
		t := &to.tiles[i]
		t.normal = turn(t.normal)
		for j := range t.corners {
			t.corners[j] = motion(t.corners[j])
		}
	}
	return to
}

// outlines returns polygons that together throw the shadow of the object.
func (o *object) outlines() [][]geometry.Vec3 {
	var list [][]geometry.Vec3
	for i := range o.surfaces {
		list = append(list, o.surfaces[i].loops[0])
	}
	for i := range o.tiles {
		list = append(list, o.tiles[i].corners[:])
	}
	return list
}

// bounds returns the box around the object.
func (o *object) bounds() (least, greatest geometry.Vec3) {
	least = geometry.Vec3{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}
	greatest = least.Scale(-1)
	for _, outline := range o.outlines() {
		for _, p := range outline {
			least, _ = spanned(least, p)
			_, greatest = spanned(greatest, p)
		}
	}
	return least, greatest
}

// spanned returns the box of which two corners are given.
func spanned(a, b geometry.Vec3) (least, greatest geometry.Vec3) {
	return geometry.Vec3{X: min(a.X, b.X), Y: min(a.Y, b.Y), Z: min(a.Z, b.Z)},
		geometry.Vec3{X: max(a.X, b.X), Y: max(a.Y, b.Y), Z: max(a.Z, b.Z)}
}

// sheetA4 stands upright on its short edge, the middle of that at the origin.
func sheetA4() object {
	const width, height = 210.0, 297.0
	pose := fold.Pose{Origin: geometry.Vec3{X: -width / 2}, Right: geometry.Vec3{X: 1}, Up: geometry.Vec3{Z: 1}}
	at := func(x, y float64) geometry.Vec3 { return pose.At(geometry.Vec2{X: x, Y: y}) }
	s := quad(at(0, 0), at(width, 0), at(width, height), at(0, height), sheet)
	s.pose = pose
	return object{surfaces: []surface{s}}
}
