package solid

import (
	"math"

	"gussetwright/geometry"
)

// lights are where light comes from. They stay with the viewer: the bag turns under
// them as on a turntable, so it is well lit from every side.
type lights struct{ main, fill geometry.Vec3 }

// lightsFor returns the lights for a camera at an azimuth in radians: the main one
// from the left, in front and above, and a weaker one from behind on the right, which
// keeps what is turned away from the first apart.
func lightsFor(azimuth float64) lights {
	sin, cos := math.Sincos(azimuth)
	turn := func(x, y, z float64) geometry.Vec3 {
		return geometry.Vec3{X: x*cos - y*sin, Y: x*sin + y*cos, Z: z}.Unit()
	}
	return lights{main: turn(-0.52, -0.66, 0.72), fill: turn(0.6, 0.75, 0.25)}
}

const (
	ambient      = 0.79
	mainStrength = 0.29
	fillStrength = 0.10
	skyStrength  = 0.03 // more for what looks up, less for what looks down
)

// brightness returns how light a surface with the given normal is, at most 1.
func (l lights) brightness(normal geometry.Vec3) float64 {
	b := ambient + skyStrength*normal.Z
	b += mainStrength * max(normal.Dot(l.main), 0)
	b += fillStrength * max(normal.Dot(l.fill), 0)
	return min(b, 1)
}

// round returns how light a round thing is, which takes more shade than paper.
func (l lights) round(normal geometry.Vec3) float64 {
	return min(0.52+0.06*normal.Z+0.5*max(normal.Dot(l.main), 0)+0.14*max(normal.Dot(l.fill), 0), 1)
}

// gleam returns how light polished metal with the given normal is, seen along
// toward: streaks where it mirrors the lights.
func (l lights) gleam(normal, toward geometry.Vec3) float64 {
	streak := func(light geometry.Vec3, sharpness float64) float64 {
		between := light.Sub(toward)
		between.Z *= 0.3 // the lights are tall, so that upright walls catch them
		return math.Pow(max(normal.Dot(between.Unit()), 0), sharpness)
	}
	return min(0.5+0.08*normal.Z+0.14*l.round(normal)+0.34*streak(l.main, 22)+0.2*streak(l.fill, 14), 1)
}

// Paper within the bag gets less light toward the base.
const (
	insideBelow = 0.74
	insideAbove = 0.97
	outsideFoot = 0.95 // and the foot of the bag outside a little less than its top
)
