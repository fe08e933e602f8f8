package solid

import (
	"math"

	"gussetwright/geometry"
)

// Hit is what lies under a pixel.
type Hit struct {
	Panel   string
	Place   Place
	Reverse bool // seen from the reverse side
}

// Pick returns the panel and the place on the blank under a pixel of the view. It
// looks through holes and past handles, cards and what stands beside the bag. ok is
// false where there is no paper.
func (v *View) Pick(x, y float64) (hit Hit, ok bool) {
	l := v.lens()
	ray := l.ray(x, y)
	nearest := math.Inf(1)
	for i := range v.Model.body.Facets {
		f := &v.Model.body.Facets[i]
		out := f.Pose.Out()
		offset := f.Pose.Origin.Sub(l.eye)
		distance := out.Dot(offset) / out.Dot(ray)
		if !(distance >= l.near && distance < nearest) {
			continue
		}
		on := ray.Scale(distance).Sub(offset)
		at := geometry.Vec2{X: on.Dot(f.Pose.Right), Y: on.Dot(f.Pose.Up)}
		if f.Contains(at) {
			nearest, ok = distance, true
			hit = Hit{f.Panel, Place{f.Piece, at}, out.Dot(ray) > 0}
		}
	}
	return hit, ok
}

// distance returns how far a point lies outside of a polygon, 0 within.
func distance(corners []geometry.Vec2, p geometry.Vec2) float64 {
	if geometry.Polygon(corners...).Contains(p) {
		return 0
	}
	least := math.Inf(1)
	a := corners[len(corners)-1]
	for _, b := range corners {
		along := b.Sub(a)
		share := 0.0
		if length := along.Dot(along); length > 0 {
			share = min(max(p.Sub(a).Dot(along)/length, 0), 1)
		}
		least = min(least, p.Sub(a.Add(along.Scale(share))).Length())
		a = b
	}
	return least
}

// Where returns where a place on the blank lies in space: on the facet that covers
// it, or the closest one.
func (m *Model) Where(place Place) (geometry.Vec3, bool) {
	best, found := -1, false
	least := 0.0
	for i := range m.body.Facets {
		f := &m.body.Facets[i]
		if f.Piece != place.Piece {
			continue
		}
		if away := distance(f.Corners, place.At); !found || away < least {
			best, least, found = i, away, true
		}
	}
	if !found {
		return geometry.Vec3{}, false
	}
	return m.body.Facets[best].Pose.At(place.At), true
}
