package practice

import (
	"bytes"
	"encoding/xml"
	"image"
	"image/color"
	"image/draw"
	"math"
	"strconv"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
)

// half is half of a diamond as it is found on a printed page.
type half struct {
	base   geometry.Vec2 // the middle of its base, pixels from the upper left
	inward geometry.Vec2
}

// isMark tells how much of a pixel a mark covers, from 0 to 1. Nothing else has its
// colour.
func isMark(c color.RGBA) float64 {
	if int(c.R)-int(c.G) < 20 || int(c.B)-int(c.G) < 20 || math.Abs(float64(255-int(c.R))/79-float64(255-int(c.B))/159) > 0.15 {
		return 0
	}
	return float64(255-int(c.G)) / 255
}

// halvesOn finds the half diamonds on a page by their pixels and the numbers beside
// them by the text that poppler finds.
func halvesOn(t *testing.T, page *image.RGBA, numbers []number) map[string]half {
	t.Helper()
	found := map[string]half{}
	seen := map[image.Point]bool{}
	for y := range page.Rect.Dy() {
		for x := range page.Rect.Dx() {
			if isMark(page.RGBAAt(x, y)) < 0.5 || seen[image.Pt(x, y)] {
				continue
			}
			area, middle, box := flood(page, image.Pt(x, y), seen)
			if area < 0.8*markBase*markHeight/2*perMM*perMM {
				continue // a digit
			}
			h := halfOf(middle, box)
			closest, least := "", math.Inf(1)
			for _, number := range numbers {
				beyond := h.base.Add(h.inward.Scale((markHeight + 2) * perMM))
				if distance := number.middle.Sub(beyond).Length(); distance < least {
					closest, least = number.text, distance
				}
			}
			if least > 4*perMM {
				t.Errorf("a mark at %v has no number", middle)
				continue
			}
			found[closest] = h
		}
	}
	return found
}

// flood returns the area, the middle and the bounds of what belongs to a pixel.
func flood(page *image.RGBA, from image.Point, seen map[image.Point]bool) (area float64, middle geometry.Vec2, box image.Rectangle) {
	open := []image.Point{from}
	seen[from] = true
	for len(open) > 0 {
		p := open[len(open)-1]
		open = open[:len(open)-1]
		part := isMark(page.RGBAAt(p.X, p.Y))
		area += part
		middle = middle.Add(geometry.Vec2{X: float64(p.X) + 0.5, Y: float64(p.Y) + 0.5}.Scale(part))
		box = box.Union(image.Rect(p.X, p.Y, p.X+1, p.Y+1))
		for _, q := range []image.Point{{p.X + 1, p.Y}, {p.X - 1, p.Y}, {p.X, p.Y + 1}, {p.X, p.Y - 1}} {
			if !seen[q] && isMark(page.RGBAAt(q.X, q.Y)) > 0.1 {
				seen[q] = true
				open = append(open, q)
			}
		}
	}
	return area, middle.Scale(1 / area), box
}

// halfOf returns a half whose middle and bounds are known: the middle of a triangle lies
// a third of its height from the base.
func halfOf(middle geometry.Vec2, box image.Rectangle) half {
	center := geometry.Vec2{X: float64(box.Min.X+box.Max.X) / 2, Y: float64(box.Min.Y+box.Max.Y) / 2}
	inward := geometry.Vec2{X: 1}
	if box.Dx() > box.Dy() {
		inward = geometry.Vec2{Y: 1}
	}
	if middle.Sub(center).Dot(inward) > 0 {
		inward = inward.Scale(-1)
	}
	return half{middle.Sub(inward.Scale(markHeight * perMM / 3)), inward}
}

// number is a whole number on a page: that of a mark, or a measure.
type number struct {
	text   string
	middle geometry.Vec2 // pixels from the upper left
}

// numbersOn returns the numbers on each page, as poppler's pdftotext finds them.
func numbersOn(t *testing.T, path string) [][]number {
	t.Helper()
	var pages [][]number
	decoder := xml.NewDecoder(bytes.NewReader(geomtest.Run(t, "pdftotext", "-bbox", path, "-")))
	var at geometry.Vec2
	inWord := false
	for token, _ := decoder.Token(); token != nil; token, _ = decoder.Token() {
		switch token := token.(type) {
		case xml.StartElement:
			inWord = token.Name.Local == "word"
			if token.Name.Local == "page" {
				pages = append(pages, nil)
			}
			if !inWord {
				continue
			}
			var box [4]float64
			for i, a := range token.Attr {
				box[i], _ = strconv.ParseFloat(a.Value, 64)
			}
			at = geometry.Vec2{X: box[0] + box[2], Y: box[1] + box[3]}.Scale(perMM * 25.4 / 72 / 2)
		case xml.CharData:
			if _, err := strconv.Atoi(string(token)); err == nil && inWord {
				pages[len(pages)-1] = append(pages[len(pages)-1], number{string(token), at})
			}
		case xml.EndElement:
			inWord = false
		}
	}
	return pages
}

// joined lays the tiles of a sheet on each other as the marks on them tell, cut along
// their dashed lines, and returns the whole; pages and numbers are those of the sheet.
func joined(t *testing.T, s *sheet, pages []*image.RGBA, numbers [][]number) *image.RGBA {
	t.Helper()
	g := &s.grid
	halves := make([]map[string]half, g.count())
	for i := range halves {
		halves[i] = halvesOn(t, pages[i], numbers[i])
	}
	// Where the upper left corner of each page lies, from that of the first one.
	corner := map[int]geometry.Vec2{0: {}}
	for range g.count() {
		for i := range halves {
			if _, placed := corner[i]; placed {
				continue
			}
			for k := range halves {
				from, placed := corner[k]
				if shift, pairs := between(halves[k], halves[i]); placed && pairs == 2 {
					corner[i] = from.Add(shift)
					break
				}
			}
		}
	}
	window := image.Rect(int(g.window.Min.X*perMM), int((g.paper.Height-g.window.Max.Y)*perMM), int(g.window.Max.X*perMM), int((g.paper.Height-g.window.Min.Y)*perMM))
	size := image.Pt(window.Dx()+int(g.step().X*perMM)*(g.columns-1), window.Dy()+int(g.step().Y*perMM)*(g.rows-1))
	result := image.NewRGBA(image.Rectangle{Max: size})
	for row := g.rows - 1; row >= 0; row-- { // the upper ones over the lower, the right over the left
		for column := range g.columns {
			i := row*g.columns + column
			at, placed := corner[i]
			if !placed {
				t.Fatalf("no marks join tile %d", i+1)
			}
			to := image.Pt(int(math.Round(at.X)), int(math.Round(at.Y)))
			draw.Draw(result, image.Rectangle{Min: to, Max: to.Add(window.Size())}, pages[i], window.Min, draw.Src)
		}
	}
	return result
}

// between returns how far the second of two pages is to be moved so that the halves meet
// whose numbers both have, and how many they are.
func between(first, second map[string]half) (shift geometry.Vec2, pairs int) {
	for number, a := range first {
		if b, both := second[number]; both && a.inward.Add(b.inward).Length() < 1e-9 {
			shift = shift.Add(a.base.Sub(b.base))
			pairs++
		}
	}
	return shift.Scale(1 / math.Max(float64(pairs), 1)), pairs
}

// difference is the mean difference of the channels of two pictures, of 255, moved by
// some pixels against each other. Pixels of marks are left out.
func difference(t *testing.T, a, b *image.RGBA, dx int) float64 {
	t.Helper()
	if a.Rect != b.Rect {
		t.Fatalf("%v and %v pixels", a.Rect, b.Rect)
	}
	sum, count := 0.0, 0.0
	for y := range a.Rect.Dy() {
		for x := range a.Rect.Dx() - dx {
			p, q := a.RGBAAt(x+dx, y), b.RGBAAt(x, y)
			if isMark(p) > 0 {
				continue
			}
			for _, pair := range [3][2]uint8{{p.R, q.R}, {p.G, q.G}, {p.B, q.B}} {
				sum += math.Abs(float64(pair[0]) - float64(pair[1]))
				count++
			}
		}
	}
	return sum / count
}

// The tiles as pdftoppm draws them, laid on each other by their marks, are the drawing
// on one large page: scale, overlap and marks are right.
func TestTilesJoinToTheWhole(t *testing.T) {
	for name, order := range orders(t) {
		if name == "usual" || name == "on Tabloid" {
			continue // much like the others, and drawing takes its time
		}
		t.Run(name, func(t *testing.T) {
			path := written(t, order)
			pages, numbers := rasterised(t, path), numbersOn(t, path)
			next := 1 // after the page with the map
			for _, s := range (maker{order}).whole().sheets() {
				if (s.grid.count() == 1) != (name == "not to be tiled") {
					t.Errorf("%d tiles", s.grid.count())
				}
				got := joined(t, &s, pages[next:], numbers[next:])
				want := whole(t, &s)
				if got.Rect != want.Rect { // paper of inches is no whole number of pixels
					got = got.SubImage(got.Rect.Intersect(want.Rect)).(*image.RGBA)
					want = want.SubImage(got.Rect).(*image.RGBA)
				}
				fair, moved := difference(t, got, want, 0), difference(t, got, want, 2)
				t.Logf("mean difference %.2f, moved by 0.4 mm %.2f", fair, moved)
				if !(fair < 1 && moved > 3*fair) {
					t.Errorf("mean difference %.2f, moved by 0.4 mm %.2f", fair, moved)
				}
				next += s.grid.count()
			}
		})
	}
}
