package artcheck

import (
	"cmp"
	"image"
	"math"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/placement"
	"gussetwright/render/artwork"
)

// Of a file only what lies along the edges of its place is looked at, and the patches
// there, so that it is done at once.
const (
	scanned = 3.0 // pixels to the mm at least, if the file has them
	samples = 32  // across and down, for the colours of what is seen
)

// colour is red, green, blue and opacity, premultiplied.
type colour [4]uint8

// scan is a file as it lies on one place, while it is looked at.
type scan struct {
	picture   *image.RGBA
	place     geometry.Rect
	beneath   colour
	toBlank   geometry.Affine // from pixels, y down
	toPixels  geometry.Affine
	pixelArea float64 // mm²
	covers    bool    // the file covers the place

	least   colour // of the ground that is looked at now
	most    colour
	flood   flood   // from the edges of the place
	asked   int     // counts the questions of on
	ends    flood   // from the end of the file
	cut     []patch // by the end of the file
	longest float64 // of those, mm; 0 before they were looked for
}

// newScan returns a scan of a file, and false where the file is flattened to a line.
func newScan(p *placement.Placed, art *artwork.Art, beneath colour) (*scan, bool) {
	back, possible := p.At.Inverse()
	if !possible {
		return nil, false
	}
	s := &scan{place: p.Target, beneath: beneath, picture: art.Levels[0]}
	for _, level := range art.Levels[1:] {
		if float64(level.Rect.Dx()) < scanned*p.At.U.Length() || float64(level.Rect.Dy()) < scanned*p.At.V.Length() {
			break
		}
		s.picture = level
	}
	width, height := float64(s.picture.Rect.Dx()), float64(s.picture.Rect.Dy())
	fromUnit := geometry.Affine{U: geometry.Vec2{X: width}, V: geometry.Vec2{Y: -height}, Origin: geometry.Vec2{Y: height}}
	s.toPixels = fromUnit.After(back)
	s.toBlank, possible = s.toPixels.Inverse()
	s.pixelArea = math.Abs(s.toBlank.Area())
	s.covers = true
	for _, corner := range p.Target.Path().Vertices {
		if _, _, on := s.pixel(geometry.Vec2{X: corner.X, Y: corner.Y}); !on {
			s.covers = false
		}
	}
	return s, possible
}

// pixel returns the pixel at a point of the blank, and false off the file.
func (s *scan) pixel(at geometry.Vec2) (x, y int, on bool) {
	p := s.toPixels.At(at)
	x, y = int(math.Floor(p.X)), int(math.Floor(p.Y))
	return x, y, x >= 0 && y >= 0 && x < s.picture.Rect.Dx() && y < s.picture.Rect.Dy()
}

// at returns the colour of a pixel with what lies beneath it.
func (s *scan) at(x, y int) colour {
	c := colour(s.picture.Pix[y*s.picture.Stride+4*x:])
	if c[3] == 255 || s.beneath[3] == 0 {
		return c
	}
	for i, through := range s.beneath {
		c[i] = uint8(min(int(c[i])+int(through)*(255-int(c[3]))/255, 255))
	}
	return c
}

// grounds returns the plain colours that marks stand on: none where no colour covers a
// good part of what is seen, as in a photograph.
func (s *scan) grounds() []colour {
	counts, all := map[colour]int{}, 0
	seen := s.toPixels.Bounds(s.place)
	left, top := max(seen.Min.X, 0), max(seen.Min.Y, 0)
	right, bottom := min(seen.Max.X, float64(s.picture.Rect.Dx())), min(seen.Max.Y, float64(s.picture.Rect.Dy()))
	for row := range samples {
		for column := range samples {
			p := geometry.Vec2{X: left + (right-left)*(float64(column)+0.5)/samples, Y: top + (bottom-top)*(float64(row)+0.5)/samples}
			blank := s.toBlank.At(p)
			x, y, on := s.pixel(blank)
			if !on || !s.place.Contains(blank) {
				continue
			}
			c := s.at(x, y)
			for i := range c {
				c[i] = c[i]&0xf0 | 8
			}
			counts[c]++
			all++
		}
	}
	most := 0
	var found []colour
	for c, count := range counts {
		most = max(most, count)
		if float64(count) >= groundLeast*float64(all) {
			found = append(found, c)
		}
	}
	if float64(most) < groundShare*float64(all) {
		return nil
	}
	slices.SortFunc(found, func(a, b colour) int { return cmp.Or(counts[b]-counts[a], slices.Compare(a[:], b[:])) })
	return found
}

// begin begins to look at the marks on a colour.
func (s *scan) begin(ground colour) {
	for i, v := range ground {
		s.least[i], s.most[i] = uint8(max(int(v)-contrast, 0)), uint8(min(int(v)+contrast, 255))
	}
	s.cut, s.longest = s.cut[:0], 0
	s.flood.begin(s.picture.Rect.Dy())
}

// far tells whether a pixel is of another colour than the ground.
func (s *scan) far(x, y int) bool {
	c, least, most := s.at(x, y), &s.least, &s.most
	return c[0] < least[0] || c[0] > most[0] || c[1] < least[1] || c[1] > most[1] ||
		c[2] < least[2] || c[2] > most[2] || c[3] < least[3] || c[3] > most[3]
}

// past returns a line past an edge, in pixels.
func (s *scan) past(e edge, away float64) (from, to geometry.Vec2) {
	shift := e.out.Scale(away)
	return s.toPixels.At(e.from.Add(shift)), s.toPixels.At(e.to.Add(shift))
}

// reaches tells whether the file is anywhere along a line past an edge.
func (s *scan) reaches(e edge, away float64) bool {
	_, _, hit := s.whole().Through(s.past(e, away))
	return hit
}

// whole returns where the pixels lie.
func (s *scan) whole() geometry.Rect {
	return geometry.RectAt(0, 0, float64(s.picture.Rect.Dx()), float64(s.picture.Rect.Dy()))
}

// on returns the patches on lines past an edge that are whole in the file, each once.
func (s *scan) on(e edge, lines ...float64) []patch {
	isWhole := func(o *owner) bool { return o != nil && o.whole }
	large := func(around image.Rectangle) bool {
		return float64(around.Dx()*around.Dy())*s.pixelArea > markMost*s.place.Area()
	}
	s.asked++
	var found []patch
	for _, away := range lines {
		var last *owner
		from, to := s.past(e, away)
		s.along(from, to, func(x, y int, goesOn bool) {
			if goesOn && !isWhole(last) {
				return
			}
			if last = s.flood.at(s, x, y, !s.covers, large); isWhole(last) && last.told != s.asked {
				last.told = s.asked
				found = append(found, last.patch)
			}
		})
	}
	return found
}

// along calls look with every second pixel on a line between two of them that is no
// ground; what falls between is too small to be a mark. goesOn tells whether the pixel
// hangs together with the last one.
func (s *scan) along(from, to geometry.Vec2, look func(x, y int, goesOn bool)) {
	enter, leave, hit := s.whole().Through(from, to)
	if !hit {
		return
	}
	way := to.Sub(from)
	from, way = from.Add(way.Scale(enter)), way.Scale(leave-enter)
	steps := max(int(way.Length()/2), 1)
	last, was := image.Point{}, false
	for i := range steps + 1 {
		p := from.Add(way.Scale(float64(i) / float64(steps)))
		x, y := int(math.Floor(p.X)), int(math.Floor(p.Y))
		is := image.Pt(x, y).In(s.picture.Rect) && s.far(x, y)
		if is {
			look(x, y, was && s.far((x+last.X)/2, (y+last.Y)/2))
		}
		last, was = image.Pt(x, y), is
	}
}

// runsOn tells whether the end of a file cuts a patch. Where the file is smaller than its
// place it may end round its letters, and so touch them.
func (s *scan) runsOn(p patch, met border) bool {
	if met.pixels == 0 || s.covers {
		return met.pixels > 0
	}
	if met.sides&(met.sides-1) != 0 {
		return true // from one side to another
	}
	const tangent = 3
	less := min(p.box.Width(), p.box.Height())
	return tangent*float64(met.pixels)*math.Sqrt(s.pixelArea) >= less
}

// cutByFile returns the patches that the end of the file cuts, up to a length at least.
func (s *scan) cutByFile(longest float64) []patch {
	if s.longest >= longest {
		return s.cut
	}
	s.cut, s.longest = s.cut[:0], 2*longest
	s.ends.begin(s.picture.Rect.Dy())
	most := s.longest / math.Sqrt(s.pixelArea)
	enough := func(around image.Rectangle) bool { return float64(max(around.Dx(), around.Dy())) > most }
	right, bottom := float64(s.picture.Rect.Dx())-0.5, float64(s.picture.Rect.Dy())-0.5
	corners := [...]geometry.Vec2{{X: 0.5, Y: 0.5}, {X: right, Y: 0.5}, {X: right, Y: bottom}, {X: 0.5, Y: bottom}}
	for i, from := range corners {
		s.along(from, corners[(i+1)%len(corners)], func(x, y int, goesOn bool) {
			if goesOn {
				return
			}
			known := s.ends.patches
			if o := s.ends.at(s, x, y, true, enough); s.ends.patches > known && !o.whole && !o.patch.box.Empty() {
				s.cut = append(s.cut, o.patch)
			}
		})
	}
	return s.cut
}
