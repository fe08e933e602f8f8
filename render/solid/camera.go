package solid

import (
	"math"

	"gussetwright/geometry"
)

// Camera looks at the middle of the scene from some way off.
type Camera struct {
	// Azimuth turns the camera round the bag, in radians: 0 sees the front, π/2
	// the right gusset.
	Azimuth float64
	// Elevation lifts the camera, in radians from −π/2, seen from below, to π/2,
	// seen from above.
	Elevation float64
	// Zoom is 1 when the whole scene fits into the picture from any side.
	Zoom float64
	// Shift moves the picture to the right and up, as a share of half its lesser side.
	Shift geometry.Vec2
}

// The least and the greatest zoom.
const (
	LeastZoom    = 0.4
	GreatestZoom = 12
)

// isometricElevation is that of a corner of a cube seen along its diagonal.
var isometricElevation = math.Atan(math.Sqrt2 / 2)

// The usual cameras.
var (
	Front     = Camera{Zoom: 1}
	Right     = Camera{Azimuth: math.Pi / 2, Zoom: 1}
	Back      = Camera{Azimuth: math.Pi, Zoom: 1}
	Left      = Camera{Azimuth: -math.Pi / 2, Zoom: 1}
	Top       = Camera{Elevation: math.Pi / 2, Zoom: 1}
	Below     = Camera{Elevation: -math.Pi / 2, Zoom: 1}
	Isometric = Camera{Azimuth: math.Pi / 4, Elevation: isometricElevation, Zoom: 1}
)

// Limited returns the camera brought back within its limits: the elevation never
// passes straight above or below, so the picture never flips.
func (c Camera) Limited() Camera {
	c.Azimuth = math.Remainder(c.Azimuth, 2*math.Pi)
	c.Elevation = min(max(c.Elevation, -math.Pi/2), math.Pi/2)
	c.Zoom = min(max(c.Zoom, LeastZoom), GreatestZoom)
	c.Shift.X = min(max(c.Shift.X, -c.Zoom), c.Zoom)
	c.Shift.Y = min(max(c.Shift.Y, -c.Zoom), c.Zoom)
	return c
}

// remoteness is the distance of the camera from the middle of the scene, in radii
// of a ball around it: a mild perspective.
const remoteness = 5.5

// fill is the share of the picture that the scene may take at zoom 1.
const fill = 0.95

// lens carries points of space to pixels.
type lens struct {
	eye, right, up, toward geometry.Vec3
	focal                  float64 // pixels
	x, y                   float64 // pixel that lies straight ahead
	near                   float64 // mm ahead of the eye; nothing closer is drawn
}

// newLens takes in a frame. Width and height are those of the picture in pixels.
func newLens(c Camera, frame Frame, width, height int) lens {
	c = c.Limited()
	sinA, cosA := math.Sincos(c.Azimuth)
	sinE, cosE := math.Sincos(c.Elevation)
	l := lens{
		right:  geometry.Vec3{X: cosA, Y: sinA},
		up:     geometry.Vec3{X: -sinA * sinE, Y: cosA * sinE, Z: cosE},
		toward: geometry.Vec3{X: -sinA * cosE, Y: cosA * cosE, Z: -sinE},
	}
	frame.Radius = max(frame.Radius, 1)
	// Seen from any side the frame lies within a ball, and to both sides within its
	// own radius, even the end that leans toward the camera.
	ball := math.Hypot(frame.Radius, frame.Rise)
	distance := remoteness * ball
	l.near = ball / 100
	l.eye = frame.Middle.Sub(l.toward.Scale(distance))
	upright := math.Sqrt(distance*distance-ball*ball) / ball
	closest := distance - frame.Rise*math.Abs(sinE)
	sideways := math.Sqrt(closest*closest-frame.Radius*frame.Radius) / frame.Radius
	l.focal = c.Zoom * fill * min(float64(height)/2*upright, float64(width)/2*sideways)
	half := float64(min(width, height)) / 2
	l.x = float64(width)/2 + c.Shift.X*half
	l.y = float64(height)/2 - c.Shift.Y*half
	return l
}

// seen returns a point as seen by the camera: X to the right, Y up, Z ahead, in mm.
func (l *lens) seen(p geometry.Vec3) geometry.Vec3 {
	d := p.Sub(l.eye)
	return geometry.Vec3{X: d.Dot(l.right), Y: d.Dot(l.up), Z: d.Dot(l.toward)}
}

// pixel returns where a point seen ahead of the camera falls on the picture.
func (l *lens) pixel(seen geometry.Vec3) (x, y float64) {
	share := l.focal / seen.Z
	return l.x + seen.X*share, l.y - seen.Y*share
}

// ray returns the direction that falls on a pixel, one mm ahead long.
func (l *lens) ray(x, y float64) geometry.Vec3 {
	return l.toward.Add(l.right.Scale((x - l.x) / l.focal)).Add(l.up.Scale((l.y - y) / l.focal))
}

// scaled returns the lens of a picture with n times as many pixels each way.
func (l lens) scaled(n float64) lens {
	l.focal, l.x, l.y = l.focal*n, l.x*n, l.y*n
	return l
}
