package solid

import (
	"math"

	"gussetwright/geometry"
)

// ring is where the side of something that is turned about an axis bends: its radius and
// its height, in mm.
type ring struct{ radius, height float64 }

// can33 is a cylinder drawn in at both ends, the lid a little below the rim.
func can33() object {
	return object{tiles: turned(metal, []ring{
		{0, 2}, {22, 2}, {25, 0}, {27, 1}, {33, 9}, {33, 101}, {27, 112}, {27, 115}, {25.5, 115}, {25, 111}, {0, 111},
	})}
}

// bottle75 is a wine bottle with high shoulders: a straight body, a round shoulder, a
// neck and the capsule over it, which has another colour.
func bottle75() object {
	glassRings := []ring{{0, 6}, {24, 5}, {33, 0}, {36, 2}, {38, 8}, {38, 186}}
	const shoulder, low, high = 12, 186.0, 226.0 // steps; mm
	for step := 1; step <= shoulder; step++ {
		share := float64(step) / shoulder
		smooth := share * share * (3 - 2*share)
		glassRings = append(glassRings, ring{38 - 23.5*smooth, low + (high-low)*share})
	}
	glassRings = append(glassRings, ring{14, 248})
	capsule := []ring{{14.6, 246}, {14.2, 284}, {15.2, 286}, {15.2, 293}, {14.6, 299}, {13.5, 300}, {0, 300}}
	return object{tiles: append(turned(glass, glassRings), turned(foil, capsule)...)}
}

// turned covers something that is turned about the z axis with tiles.
func turned(of stuff, profile []ring) (tiles []tile) {
	const sides = 56
	at := func(step int, r ring) geometry.Vec3 {
		sin, cos := math.Sincos(2 * math.Pi * float64(step) / sides)
		return geometry.Vec3{X: r.radius * cos, Y: r.radius * sin, Z: r.height}
	}
	for i := range len(profile) - 1 {
		low, high := profile[i], profile[i+1]
		for step := range sides {
			t := tile{stuff: of, corners: [4]geometry.Vec3{at(step, low), at(step+1, low), at(step+1, high), at(step, high)}}
			t.normal = t.slope()
			tiles = append(tiles, t)
		}
	}
	return tiles
}
