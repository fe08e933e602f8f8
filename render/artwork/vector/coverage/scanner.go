// Package coverage finds how much of each pixel lies inside outlines, by the
// non-zero or the even-odd rule.
//
// The scanners at hand (golang.org/x/image/vector, and rasterx, which draws through
// it) add up signed areas: where outlines overlap in a pixel they are too dark or
// cancel out, and they know no even-odd rule, which logos need. This one walks the
// edges row by row, so both rules hold wherever edges cross.
package coverage

import (
	"cmp"
	"image"
	"math"
	"slices"

	"gussetwright/geometry"
)

// Scanner gathers the edges of outlines and then tells what they cover. The zero
// value covers nothing; Reset makes it ready. It serves one goroutine.
type Scanner struct {
	// Stop, where it is set, is asked before each row whether to give up.
	Stop func() bool

	area   image.Rectangle
	edges  []edge
	active []int32
	cuts   []float32
	spans  []span
	row    row
}

// edge runs down from (x0, y0) to (x1, y1), in pixels from the corner of the area.
type edge struct {
	x0, y0, x1, y1 float32
	sign           int32 // 1 where the outline runs down, −1 where it runs up
}

// at returns where the edge crosses a level.
func (e *edge) at(y float32) float32 {
	if y >= e.y1 {
		return e.x1
	}
	return e.x0 + (e.x1-e.x0)*((y-e.y0)/(e.y1-e.y0))
}

// span is an edge within a band of a row.
type span struct {
	top, bottom float32 // x at the top and the bottom of the band
	sign        int32
}

// Reset empties the scanner; pixels outside of the area are not told of.
func (s *Scanner) Reset(area image.Rectangle) {
	s.area, s.edges = area, s.edges[:0]
	s.row.reset(area.Dx())
}

// Area returns what Reset was given.
func (s *Scanner) Area() image.Rectangle { return s.area }

// Polygon adds a closed outline, in pixels, y down.
func (s *Scanner) Polygon(corners []geometry.Vec2) {
	for i, to := range corners {
		from := corners[len(corners)-1]
		if i > 0 {
			from = corners[i-1]
		}
		s.edge(from.X-float64(s.area.Min.X), from.Y-float64(s.area.Min.Y), to.X-float64(s.area.Min.X), to.Y-float64(s.area.Min.Y))
	}
}

// edge adds an edge, cut to the rows of the area.
func (s *Scanner) edge(x0, y0, x1, y1 float64) {
	if sum := x0 + y0 + x1 + y1; y0 == y1 || sum-sum != 0 {
		return // level, or not a number
	}
	sign := int32(1)
	if y0 > y1 {
		x0, y0, x1, y1, sign = x1, y1, x0, y0, -1
	}
	height := float64(s.area.Dy())
	if y1 <= 0 || y0 >= height {
		return
	}
	slope := (x1 - x0) / (y1 - y0)
	if y0 < 0 {
		x0, y0 = x0-y0*slope, 0
	}
	if y1 > height {
		x1, y1 = x1+(height-y1)*slope, height
	}
	s.sideways(x0, y0, x1, y1, sign)
}

// sideways cuts an edge to the columns of the area. What lies left of it counts at
// its left side; what lies right of it covers nothing and is left out, so that a
// row may end inside an outline.
func (s *Scanner) sideways(x0, y0, x1, y1 float64, sign int32) {
	width := float64(s.area.Dx())
	if x0 >= width && x1 >= width {
		return
	}
	if x0 <= 0 && x1 <= 0 {
		s.add(0, y0, 0, y1, sign)
		return
	}
	for _, border := range [2]float64{0, width} {
		if min(x0, x1) < border && border < max(x0, x1) {
			y := y0 + (border-x0)/(x1-x0)*(y1-y0)
			s.sideways(x0, y0, border, y, sign)
			s.sideways(border, y, x1, y1, sign)
			return
		}
	}
	s.add(x0, y0, x1, y1, sign)
}

func (s *Scanner) add(x0, y0, x1, y1 float64, sign int32) {
	if e := (edge{float32(x0), float32(y0), float32(x1), float32(y1), sign}); e.y0 < e.y1 {
		s.edges = append(s.edges, e)
	}
}

// Scan hands over the runs of equally covered pixels from top to bottom and left to
// right, with the share of them that is covered, up to 1, and empties the scanner.
func (s *Scanner) Scan(evenOdd bool, run func(y, from, to int, cover float32)) {
	slices.SortFunc(s.edges, func(a, b edge) int { return cmp.Compare(a.y0, b.y0) })
	s.active = s.active[:0]
	next := 0
	for y := 0; y < s.area.Dy(); y++ {
		top, bottom := float32(y), float32(y+1)
		s.active = slices.DeleteFunc(s.active, func(i int32) bool { return s.edges[i].y1 <= top })
		for ; next < len(s.edges) && s.edges[next].y0 < bottom; next++ {
			s.active = append(s.active, int32(next))
		}
		if len(s.active) == 0 {
			if next == len(s.edges) {
				break
			}
			y = int(s.edges[next].y0) - 1
			continue
		}
		if s.Stop != nil && s.Stop() {
			break
		}
		s.bands(top, bottom, evenOdd)
		s.row.hand(func(from, to int, cover float32) {
			run(y+s.area.Min.Y, from+s.area.Min.X, to+s.area.Min.X, cover)
		})
	}
	s.edges = s.edges[:0]
}

// mostCuts is how many ends of edges a row may have to be cut into bands there. A
// row with more is looked at on samples levels.
const mostCuts = 12

// samples is how many levels of a row are looked at where edges cross.
const samples = 16

// bands goes through a row in bands within which no edge begins or ends.
func (s *Scanner) bands(top, bottom float32, evenOdd bool) {
	s.cuts = append(s.cuts[:0], top, bottom)
	for _, i := range s.active {
		for _, y := range [2]float32{s.edges[i].y0, s.edges[i].y1} {
			if y > top && y < bottom && !slices.Contains(s.cuts, y) {
				s.cuts = append(s.cuts, y)
			}
		}
		if len(s.cuts) > mostCuts+2 {
			s.sampled(top, bottom, evenOdd)
			return
		}
	}
	slices.Sort(s.cuts)
	for i := 1; i < len(s.cuts); i++ {
		s.band(s.cuts[i-1], s.cuts[i], evenOdd)
	}
}

// stray is by how much of a pixel two edges may cross and still count as beside
// each other.
const stray = 1.0 / 1024

// band adds what is covered between two levels: exactly where no edges cross.
func (s *Scanner) band(top, bottom float32, evenOdd bool) {
	s.spans = s.spans[:0]
	for _, i := range s.active {
		if e := &s.edges[i]; e.y0 <= top && e.y1 >= bottom {
			s.spans = append(s.spans, span{e.at(top), e.at(bottom), e.sign})
		}
	}
	sortSpans(s.spans)
	for i := 1; i < len(s.spans); i++ {
		if before, after := s.spans[i-1], s.spans[i]; before.top > after.top+stray || before.bottom > after.bottom+stray {
			s.sampled(top, bottom, evenOdd)
			return
		}
	}
	s.cover(bottom-top, evenOdd)
}

// sampled looks at single levels between two others.
func (s *Scanner) sampled(top, bottom float32, evenOdd bool) {
	count := max(int(math.Ceil(float64(samples*(bottom-top)))), 1)
	height := (bottom - top) / float32(count)
	for sample := range count {
		y := top + (float32(sample)+0.5)*height
		s.spans = s.spans[:0]
		for _, i := range s.active {
			if e := &s.edges[i]; e.y0 <= y && e.y1 > y {
				x := e.at(y)
				s.spans = append(s.spans, span{x, x, e.sign})
			}
		}
		sortSpans(s.spans)
		s.cover(height, evenOdd)
	}
}

// cover adds what lies between the spans, which are in order.
func (s *Scanner) cover(height float32, evenOdd bool) {
	winding := int32(0)
	for _, span := range s.spans {
		before := winding
		if evenOdd {
			winding ^= 1
		} else {
			winding += span.sign
		}
		switch {
		case before == 0 && winding != 0:
			s.row.add(span.top, span.bottom, height)
		case before != 0 && winding == 0:
			s.row.add(span.top, span.bottom, -height)
		}
	}
}

// fewSpans is up to where sorting by insertion is faster: spans come nearly sorted.
const fewSpans = 24

func sortSpans(spans []span) {
	if len(spans) > fewSpans {
		slices.SortFunc(spans, func(a, b span) int { return cmp.Compare(a.top+a.bottom, b.top+b.bottom) })
		return
	}
	for i := 1; i < len(spans); i++ {
		for j := i; j > 0 && spans[j-1].top+spans[j-1].bottom > spans[j].top+spans[j].bottom; j-- {
			spans[j-1], spans[j] = spans[j], spans[j-1]
		}
	}
}
