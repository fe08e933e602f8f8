package solid

import (
	"math"

	"gussetwright/geometry"
)

// limb is a rounded part of a body along a path through sections. Wide is to the sides
// where the path rises.
func limb(of stuff, out geometry.Vec3, sections ...section) []tile {
	tiles := tube(smooth(sections), out, of, limbSides, true)
	for i := range tiles { // sections of so different sizes say little about how the side slants
		tiles[i].normal = tiles[i].slope()
	}
	return tiles
}

// limbSides is the number of tiles round a limb.
const limbSides = 36

// front is the direction that figures look to.
var front = geometry.Vec3{Y: -1}

// upright returns a section of something upright in the plane of the figure.
func upright(x, z, wide, deep float64) section {
	return section{geometry.Vec3{X: x, Z: z}, wide, deep}
}

// hand is the hand of a shop window: upright on a round stand, the palm to the front. From
// the wrist at 36 mm to the tip of the middle finger it is 190 mm long.
func hand() object {
	const wrist = 36.0
	o := object{tiles: turned(textile, []ring{{0, 0}, {40, 0}, {42, 2}, {42, 6}, {40, 9}, {0, 9}})}
	add := func(sections ...section) { o.tiles = append(o.tiles, limb(plaster, front, sections...)...) }
	at := func(x, z, wide, deep float64) section { return upright(x, wrist+z, wide, deep) }
	add(at(0, 22-wrist, 26, 19), at(0, -10, 26, 19), at(0, 0, 26.5, 18), at(0, 22, 32, 17), at(-1, 50, 39, 16), at(-1.5, 76, 41.5, 14),
		at(-1.5, 92, 40.5, 12), at(-1.5, 99, 39, 10.5))
	for _, finger := range []struct{ x, z, lean, tip, radius float64 }{
		{-32.5, 88, -9, 152, 7.6}, {-12, 96, -2.5, 181, 8.9}, {9.5, 97, 2, 190, 9.3}, {30, 93, 6.5, 178, 9},
	} {
		sections := []section{at(finger.x, finger.z-12, finger.radius, finger.radius)}
		for _, joint := range []struct{ share, swell float64 }{{0.2, 1}, {0.42, 0.94}, {0.55, 0.97}, {0.68, 0.88}, {0.8, 0.89}} {
			z := finger.z + joint.share*(finger.tip-finger.z)
			sections = append(sections, at(finger.x+joint.share*finger.lean, z, joint.swell*finger.radius, 0.93*joint.swell*finger.radius))
		}
		tip := 0.74 * finger.radius
		add(append(sections, at(finger.x+finger.lean, finger.tip-tip, 0.8*finger.radius, tip))...)
	}
	thumb := []section{at(18, 14, 17, 13), at(32, 36, 16, 13), at(46, 60, 12.5, 11), at(55, 78, 10.5, 9.5), at(60.5, 92, 10.3, 9), at(64, 106, 8.6, 7.4)}
	for i := range thumb {
		thumb[i].center.Y = -7 + float64(i) // it begins before the palm
	}
	add(thumb...)
	return o
}

// person is a figure without features in a coat, 1.70 m tall, arms at its sides. The proportions are
// those of a grown person, from memory.
func person() object {
	var o object
	add := func(sections ...section) { o.tiles = append(o.tiles, limb(plaster, front, sections...)...) }
	add(upright(0, 585, 40, 8), upright(0, 590, 158, 116), upright(0, 600, 171, 127), upright(0, 760, 172, 124), upright(0, 920, 165, 116), upright(0, 1060, 138, 100), upright(0, 1190, 150, 108),
		upright(0, 1300, 166, 112), upright(0, 1360, 164, 98), upright(0, 1400, 148, 82), upright(0, 1428, 108, 68),
		upright(0, 1450, 70, 58), upright(0, 1480, 55, 53), upright(0, 1520, 54, 54))
	o.tiles = append(o.tiles, ball(geometry.Vec3{Y: -14, Z: 1588}, 76, 96, 112)...)
	for _, side := range []float64{-1, 1} {
		add(upright(side*64, 70, 32, 38), upright(side*64, 120, 34, 40), upright(side*70, 320, 50, 56), upright(side*74, 470, 50, 56),
			upright(side*78, 620, 62, 68), upright(side*80, 680, 64, 70))
		sole := geometry.Vec3{X: side * 66, Y: 22, Z: 36}
		o.tiles = append(o.tiles, limb(plaster, geometry.Vec3{Z: 1},
			section{sole, 32, 36}, section{sole.Add(geometry.Vec3{X: side * 4, Y: -70, Z: -4}), 38, 32},
			section{sole.Add(geometry.Vec3{X: side * 10, Y: -150, Z: -14}), 42, 22})...)
		add(upright(side*158, 1376, 46, 48), upright(side*172, 1340, 46, 50), upright(side*188, 1220, 40, 44), upright(side*204, 1080, 36, 38),
			section{geometry.Vec3{X: side * 210, Y: -10, Z: 980}, 34, 37}, section{geometry.Vec3{X: side * 214, Y: -22, Z: 840}, 23, 27})
		add(section{geometry.Vec3{X: side * 214, Y: -22, Z: 835}, 20, 27}, section{geometry.Vec3{X: side * 216, Y: -26, Z: 770}, 17, 41},
			section{geometry.Vec3{X: side * 215, Y: -32, Z: 700}, 14, 34}, section{geometry.Vec3{X: side * 213, Y: -36, Z: 672}, 11, 22})
	}
	return o
}

// ball covers an ellipsoid with tiles: half as wide, as deep and as high as the lengths.
func ball(middle geometry.Vec3, wide, deep, high float64) []tile {
	const steps = 22
	var sections []section
	for step := range steps + 1 {
		sin, cos := math.Sincos(math.Pi * float64(step) / steps)
		sections = append(sections, section{middle.Add(geometry.Vec3{Z: -high * cos}), wide*sin + 1e-6, deep*sin + 1e-6})
	}
	tiles := tube(sections, front, plaster, limbSides, false)
	for i := range tiles {
		at := tiles[i].corners[0].Mid(tiles[i].corners[2]).Sub(middle)
		tiles[i].normal = geometry.Vec3{X: at.X / (wide * wide), Y: at.Y / (deep * deep), Z: at.Z / (high * high)}.Unit()
	}
	return tiles
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
