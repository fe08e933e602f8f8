package artcheck

import (
	"image"

	"gussetwright/geometry"
)

// Bounds that keep looking at a file short. What goes beyond is left to the eye.
const (
	filledMost  = 300_000 // pixels
	patchesMost = 500
)

// owner is what pixels that were looked at belong to.
type owner struct {
	patch patch
	whole bool // in the file, and no larger than a mark
	told  int  // the question that it answered last
}

// patch is an area of another colour than what lies around it.
type patch struct {
	box    geometry.Rect // on the blank, mm
	pixels int
}

func (p patch) longer() float64 { return max(p.box.Width(), p.box.Height()) }

// border is where a patch meets the end of the file beyond its place: on which sides, a bit
// each, and with how many pixels.
type border struct {
	sides  uint8
	pixels int
}

// span is a part of a row of pixels, from left to before right.
type span struct{ y, left, right int }

// run is a span of a row with what it belongs to.
type run struct {
	left, right int
	owner       *owner
}

// flood finds all that hangs together in a picture. Patches are few, so each row keeps
// the runs of pixels that were filled and not an owner for each pixel.
type flood struct {
	rows    [][]run
	waiting []span
	filled  []span // by the last patch
	total   int    // pixels
	patches int
}

func (f *flood) begin(height int) {
	f.total, f.patches = 0, 0
	if f.rows == nil {
		f.rows = make([][]run, height)
	}
	for y := range f.rows {
		f.rows[y] = f.rows[y][:0]
	}
}

// ownerOf returns what a pixel belongs to, nil where nobody looked.
func (f *flood) ownerOf(x, y int) *owner {
	for _, r := range f.rows[y] {
		if x >= r.left && x < r.right {
			return r.owner
		}
	}
	return nil
}

// at returns what a pixel that is no ground belongs to, after filling its patch if nobody
// did; nil where too much was filled already. Filling ends early in patches that enough
// says are too large, that ran on before, or that meet the end of the file where that
// must not be.
func (f *flood) at(s *scan, x, y int, mayMeet bool, enough func(image.Rectangle) bool) *owner {
	if found := f.ownerOf(x, y); found != nil {
		return found
	}
	if f.patches == patchesMost || f.total > filledMost {
		return nil
	}
	f.patches++
	o := &owner{}
	met, ended := f.fill(s, x, y, o, mayMeet, enough)
	if !ended {
		return o
	}
	o.whole = !s.runsOn(o.patch, met)
	return o
}

func (f *flood) fill(s *scan, x, y int, o *owner, mayMeet bool, enough func(image.Rectangle) bool) (met border, ended bool) {
	f.waiting, f.filled = append(f.waiting[:0], span{y, x, x + 1}), f.filled[:0]
	around := image.Rect(x, y, x+1, y+1)
	for len(f.waiting) > 0 {
		seeds := f.waiting[len(f.waiting)-1]
		f.waiting = f.waiting[:len(f.waiting)-1]
		for x := seeds.left; x < seeds.right; x++ {
			if !s.far(x, seeds.y) {
				continue
			}
			switch f.ownerOf(x, seeds.y) {
			case nil:
			case o:
				continue
			default:
				return met, false
			}
			one := f.row(s, x, seeds.y, o)
			x = one.right
			around = around.Union(image.Rect(one.left, one.y, one.right, one.y+1))
			met = s.meets(one, met)
			o.patch.pixels += one.right - one.left
			if f.total > filledMost || !mayMeet && met.pixels > 0 || enough(around) {
				return met, false
			}
			for _, y := range [2]int{one.y - 1, one.y + 1} {
				if y >= 0 && y < len(f.rows) {
					f.waiting = append(f.waiting, span{y, max(one.left-1, 0), min(one.right+1, s.picture.Rect.Dx())})
				}
			}
		}
	}
	o.patch.box = s.onBlank(f.filled[0])
	for _, one := range f.filled[1:] {
		o.patch.box = o.patch.box.Union(s.onBlank(one))
	}
	return met, true
}

// row fills a row from a pixel to both sides.
func (f *flood) row(s *scan, x, y int, o *owner) span {
	one := span{y, x, x + 1}
	for one.left > 0 && s.far(one.left-1, y) {
		one.left--
	}
	for one.right < s.picture.Rect.Dx() && s.far(one.right, y) {
		one.right++
	}
	f.rows[y] = append(f.rows[y], run{one.left, one.right, o})
	f.total += one.right - one.left
	f.filled = append(f.filled, one)
	return one
}

// onBlank returns where a span lies.
func (s *scan) onBlank(one span) geometry.Rect {
	return s.toBlank.Bounds(geometry.RectAt(float64(one.left), float64(one.y), float64(one.right-one.left), 1))
}

// meets adds what of a span lies at the end of the file and beyond the place.
func (s *scan) meets(one span, met border) border {
	add := func(x int, side uint8) {
		at := s.toBlank.At(geometry.Vec2{X: float64(x) + 0.5, Y: float64(one.y) + 0.5})
		if !s.place.Inset(near).Contains(at) {
			met.sides |= side
			met.pixels++
		}
	}
	if one.left == 0 {
		add(0, 1)
	}
	if one.right == s.picture.Rect.Dx() {
		add(one.right-1, 2)
	}
	for x := one.left; x < one.right && one.y == 0; x++ {
		add(x, 4)
	}
	for x := one.left; x < one.right && one.y == s.picture.Rect.Dy()-1; x++ {
		add(x, 8)
	}
	return met
}
