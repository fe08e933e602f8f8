package page

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf/object"
)

// Box is the box of the page that is placed (ISO 32000-1, 14.11.2).
type Box string

// The boxes of a page that can be placed.
const (
	BleedBox Box = "BleedBox"
	TrimBox  Box = "TrimBox"
	CropBox  Box = "CropBox"
	MediaBox Box = "MediaBox"
)

// point is the length of a point in millimetres: an inch has 72.
const point = 25.4 / 72

// boxes are the rectangles of a page in its own units, each within the media.
type boxes struct {
	placed, trim, bleed, media geometry.Rect
	box                        Box
	turn                       int     // clockwise, in degrees: 0, 90, 180 or 270
	unit                       float64 // length of a unit in points
}

// readBoxes chooses what is placed. Artwork made with bleed states a BleedBox, and
// the bleed must come along; printer's marks around it must not. Where the BleedBox
// and the TrimBox are the whole sheet, as many programs write them without being
// asked, what a reader shows counts.
func (s *source) readBoxes(page object.Dict) (boxes, error) {
	b := boxes{turn: s.turn(page), unit: 1, box: MediaBox}
	if unit, is := s.number(page.Get("UserUnit")); is && unit > 0 && unit <= 75_000 {
		b.unit = unit
	}
	media, hasMedia := s.rect(s.inherited(page, "MediaBox"))
	crop, hasCrop := s.rect(s.inherited(page, "CropBox"))
	if !hasMedia {
		media = crop
	}
	crop, hasCrop = within(crop, media, hasCrop)
	if !hasCrop {
		crop = media
	}
	bleed, hasBleed := s.rect(page.Get("BleedBox"))
	bleed, hasBleed = within(bleed, media, hasBleed)
	trim, hasTrim := s.rect(page.Get("TrimBox"))
	trim, hasTrim = within(trim, media, hasTrim)
	if hasBleed && hasTrim && !around(bleed, trim) {
		hasBleed = false
	}
	b.media, b.placed = media, crop
	switch {
	case hasBleed && (!same(bleed, media) || hasTrim && !same(trim, bleed)):
		b.placed, b.box = bleed, BleedBox
	case hasTrim && !same(trim, media):
		b.placed, b.box = trim, TrimBox
	case !same(crop, media):
		b.box = CropBox
	}
	b.trim, b.bleed = b.placed, b.placed
	if hasTrim && around(b.placed, trim) {
		b.trim = trim
	}
	return b, b.check()
}

// check refuses pages that have no size, or an impossible one.
func (b boxes) check() error {
	width, height := b.placed.Width(), b.placed.Height()
	scale := b.unit * point
	switch {
	case !(width > 0 && height > 0) || min(width, height)*scale < leastLength:
		return phrase.Errorf("the %s of the page is %.4g × %.4g mm; give the page a size in the program that made it", b.box, width*scale, height*scale)
	case max(width, height) > mostUnits || max(width, height)*scale > mostLength:
		return phrase.Errorf("the %s of the page is %.6g × %.6g mm, and PDF files go up to %d mm; make the page smaller",
			b.box, width*scale, height*scale, int(min(mostUnits*scale, mostLength)))
	}
	return nil
}

// tolerance is by how much boxes that are meant to be the same may differ, in points.
const tolerance = 0.01

func same(a, b geometry.Rect) bool { return around(a, b) && around(b, a) }

func around(outer, inner geometry.Rect) bool {
	return outer.Min.X <= inner.Min.X+tolerance && outer.Min.Y <= inner.Min.Y+tolerance &&
		outer.Max.X >= inner.Max.X-tolerance && outer.Max.Y >= inner.Max.Y-tolerance
}

// within cuts a box to the media; a box that then has no area counts as not stated.
func within(box, media geometry.Rect, stated bool) (geometry.Rect, bool) {
	cut := geometry.Rect{
		Min: geometry.Vec2{X: max(box.Min.X, media.Min.X), Y: max(box.Min.Y, media.Min.Y)},
		Max: geometry.Vec2{X: min(box.Max.X, media.Max.X), Y: min(box.Max.Y, media.Max.Y)},
	}
	return cut, stated && !cut.Empty()
}

// rect reads a box, whose corners may stand in any order.
func (s *source) rect(o object.Object) (geometry.Rect, bool) {
	list := s.array(o)
	if len(list) != 4 {
		return geometry.Rect{}, false
	}
	var v [4]float64
	for i := range v {
		n, is := s.number(list[i])
		if !is || math.Abs(n) > 1e6 {
			return geometry.Rect{}, false
		}
		v[i] = n
	}
	r := geometry.Rect{
		Min: geometry.Vec2{X: min(v[0], v[2]), Y: min(v[1], v[3])},
		Max: geometry.Vec2{X: max(v[0], v[2]), Y: max(v[1], v[3])},
	}
	return r, !r.Empty()
}

// inherited returns an entry of a page, or of the nodes of the page tree above it.
func (s *source) inherited(page object.Dict, key object.Name) object.Object {
	for range deepestTree {
		if v := s.resolve(page.Get(key)); v != nil && v != object.Object(object.Null{}) {
			return v
		}
		if page = s.dict(page.Get("Parent")); page == nil {
			break
		}
	}
	return nil
}

func (s *source) turn(page object.Dict) int {
	turn := s.whole(s.inherited(page, "Rotate"), 0) % 360
	return (turn + 360) % 360 / 90 * 90
}

// upright returns the motion from units of the page to points with the placed area
// upright and its lower left corner at the origin.
func (b boxes) upright() geometry.Affine {
	var turned geometry.Affine
	switch r := b.placed; b.turn {
	case 90:
		turned = geometry.Affine{U: geometry.Vec2{Y: -1}, V: geometry.Vec2{X: 1}, Origin: geometry.Vec2{X: -r.Min.Y, Y: r.Max.X}}
	case 180:
		turned = geometry.Affine{U: geometry.Vec2{X: -1}, V: geometry.Vec2{Y: -1}, Origin: geometry.Vec2{X: r.Max.X, Y: r.Max.Y}}
	case 270:
		turned = geometry.Affine{U: geometry.Vec2{Y: 1}, V: geometry.Vec2{X: -1}, Origin: geometry.Vec2{X: r.Max.Y, Y: -r.Min.X}}
	default:
		turned = geometry.Shift(geometry.Vec2{X: -r.Min.X, Y: -r.Min.Y})
	}
	return geometry.Stretch(b.unit, b.unit).After(turned)
}

// millimetres returns where a rectangle of the page lies, upright.
func (b boxes) millimetres(r geometry.Rect) geometry.Rect {
	return geometry.Stretch(point, point).After(b.upright()).Bounds(r)
}
