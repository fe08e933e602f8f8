package solid

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/fold"
)

// Reference is a well-known thing that stands beside the bag for scale.
type Reference string

// The references.
const (
	NoReference Reference = ""
	SheetA4     Reference = "a4"   // 210 × 297 mm, ISO 216
	Can33       Reference = "can"  // a 33 cl can, 66 mm wide and 115 mm high
	Hand        Reference = "hand" // the hand of a grown person, 190 mm long
)

// References returns all references, none first.
func References() []Reference { return []Reference{NoReference, SheetA4, Can33, Hand} }

// besideGap is how far the reference stands from the bag, in mm.
const besideGap = 45

// object is a thing that is not part of the bag.
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

// place returns the thing where it stands: to the left of the bag, in line with its
// front, or the same seen from another side. It is nil when there is none.
func (r Reference) place(m *Model, side int) *object {
	var made object
	var width float64
	switch r {
	case SheetA4:
		made, width = sheetA4(), 210
	case Can33:
		made, width = can33(), 66
	case Hand:
		made, width = hand(), 90
	default:
		return nil
	}
	middle, size := m.least.Mid(m.greatest), m.greatest.Sub(m.least)
	across, deep := size.X, size.Y
	if side&1 == 1 {
		across, deep = deep, across
	}
	beside := geometry.Vec3{X: -across/2 - besideGap - width/2, Y: -deep / 2}
	about := geometry.Vec3{X: middle.X, Y: middle.Y}
	made.change(func(p geometry.Vec3) geometry.Vec3 { return about.Add(quarterTurns(p.Add(beside), side)) })
	return &made
}

// Frame returns the cylinder around the thing alone, where it stands at a side of an
// empty Model; none for NoReference.
func (r Reference) Frame(side int) Frame {
	object := r.place(&Model{}, side)
	if object == nil {
		return Frame{}
	}
	return frameOf(object.bounds())
}

// quarterTurns turns v about the z axis.
func quarterTurns(v geometry.Vec3, n int) geometry.Vec3 {
	for range n & 3 {
		v.X, v.Y = -v.Y, v.X
	}
	return v
}

// change carries the thing by a motion.
func (o *object) change(motion func(geometry.Vec3) geometry.Vec3) {
	turn := func(v geometry.Vec3) geometry.Vec3 { return motion(v).Sub(motion(geometry.Vec3{})) }
	for i := range o.surfaces {
		s := &o.surfaces[i]
		s.pose = fold.Pose{Origin: motion(s.pose.Origin), Right: turn(s.pose.Right), Up: turn(s.pose.Up)}
		s.normal, s.middle = turn(s.normal), motion(s.middle)
		for _, loop := range s.loops {
			for j := range loop {
				loop[j] = motion(loop[j])
			}
		}
	}
	for i := range o.tiles {
		t := &o.tiles[i]
		t.normal = turn(t.normal)
		for j := range t.corners {
			t.corners[j] = motion(t.corners[j])
		}
	}
}

// outlines returns polygons that together throw the shadow of the thing.
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

func (o *object) bounds() (least, greatest geometry.Vec3) {
	least = geometry.Vec3{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}
	greatest = least.Scale(-1)
	for _, outline := range o.outlines() {
		for _, p := range outline {
			least = geometry.Vec3{X: min(least.X, p.X), Y: min(least.Y, p.Y), Z: min(least.Z, p.Z)}
			greatest = geometry.Vec3{X: max(greatest.X, p.X), Y: max(greatest.Y, p.Y), Z: max(greatest.Z, p.Z)}
		}
	}
	return least, greatest
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

// can33 stands on the origin: a cylinder drawn in at both ends, the lid a little
// below the rim.
func can33() object {
	const sides = 56
	profile := [][2]float64{ // radius and height in mm
		{0, 2}, {22, 2}, {25, 0}, {27, 1}, {33, 9}, {33, 101}, {27, 112}, {27, 115}, {25.5, 115}, {25, 111}, {0, 111},
	}
	var o object
	at := func(step int, radius, height float64) geometry.Vec3 {
		sin, cos := math.Sincos(2 * math.Pi * float64(step) / sides)
		return geometry.Vec3{X: radius * cos, Y: radius * sin, Z: height}
	}
	for i := range len(profile) - 1 {
		low, high := profile[i], profile[i+1]
		for step := range sides {
			t := tile{stuff: metal, corners: [4]geometry.Vec3{
				at(step, low[0], low[1]), at(step+1, low[0], low[1]), at(step+1, high[0], high[1]), at(step, high[0], high[1]),
			}}
			t.normal = t.corners[2].Sub(t.corners[0]).Cross(t.corners[3].Sub(t.corners[1])).Unit()
			o.tiles = append(o.tiles, t)
		}
	}
	return o
}

// hand stands upright on its wrist, fingers up and the palm to the front: a palm
// and five fingers, each a tube.
func hand() object {
	limb := func(sections ...section) []tile {
		return tube(smooth(sections), geometry.Vec3{Y: -1}, figure, 36, true)
	}
	at := func(x, z, wide, deep float64) section {
		return section{geometry.Vec3{X: x, Z: z}, wide, deep}
	}
	var o object
	o.tiles = append(o.tiles, limb(
		at(0, 14, 26, 14), at(0, 34, 31, 15), at(-1, 60, 38, 15), at(-1, 84, 40, 13), at(-1, 100, 37, 11))...)
	for _, finger := range []struct{ x, z, lean, tip, radius float64 }{
		{-30, 88, -9, 159, 7.2}, {-10.5, 94, -2, 183, 8.2}, {10, 94, 3, 190, 8.6}, {29, 89, 8, 178, 8.2},
	} {
		middle := (finger.z + finger.tip) / 2
		o.tiles = append(o.tiles, limb(
			at(finger.x, finger.z, finger.radius, finger.radius),
			at(finger.x+finger.lean*0.5, middle, finger.radius, finger.radius*0.95),
			at(finger.x+finger.lean, finger.tip-finger.radius*0.85, finger.radius*0.85, finger.radius*0.8))...)
	}
	o.tiles = append(o.tiles, limb(
		at(20, 36, 14, 12), at(43, 66, 11, 10.5), at(57, 92, 9.5, 9), at(62, 112, 8.5, 8))...)
	return o
}

// smooth lays more sections between the given ones, on curves through them (of
// Catmull and Rom, 1974).
func smooth(sections []section) []section {
	const steps = 5
	var finer []section
	for i := range len(sections) - 1 {
		p0, p1 := sections[max(i-1, 0)], sections[i]
		p2, p3 := sections[i+1], sections[min(i+2, len(sections)-1)]
		for step := range steps {
			t := float64(step) / steps
			w0, w1 := t*(t*(2-t)-1)/2, (t*t*(3*t-5)+2)/2
			w2, w3 := t*(t*(4-3*t)+1)/2, t*t*(t-1)/2
			finer = append(finer, section{
				center: p0.center.Scale(w0).Add(p1.center.Scale(w1)).Add(p2.center.Scale(w2)).Add(p3.center.Scale(w3)),
				wide:   p0.wide*w0 + p1.wide*w1 + p2.wide*w2 + p3.wide*w3,
				deep:   p0.deep*w0 + p1.deep*w1 + p2.deep*w2 + p3.deep*w3,
			})
		}
	}
	return append(finer, sections[len(sections)-1])
}
