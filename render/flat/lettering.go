package flat

import (
	"math"
	"sync"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

type glyphKey struct {
	letter rune
	bold   bool
}

// glyph is a letter one em high, y down from the baseline.
type glyph struct {
	advance float64
	curves  []curve
}

// curve is a piece of an outline: a parabola with its control point, which for a
// straight piece lies on its start.
type curve struct {
	from, control, to point
	straight          bool
}

// leastLetter is the height of lettering in pixels below which it cannot be read.
const leastLetter = 2

// shareBefore is how much of a label stands before its point.
var shareBefore = map[scene.Anchor]float64{scene.Start: 0, scene.Middle: 0.5, scene.End: 1}

// write adds a label to the raster.
func (p *Painter) write(label scene.Label) {
	size := label.Size * p.view.Scale
	if size < leastLetter {
		return
	}
	x, y := p.view.At(label.At)
	length := typeface.Advance(label.Text, size, label.Bold)
	if p.outside([]point{{x, y}}, length+size) {
		return
	}
	sin, cos := math.Sincos(label.Turn)
	// A baseline between two rows of pixels would blur the feet of all letters.
	switch {
	case math.Abs(sin) < 1e-9:
		y = math.Round(y)
	case math.Abs(cos) < 1e-9:
		x = math.Round(x)
	}
	gone := -length * shareBefore[label.Anchor]
	for _, letter := range label.Text {
		g := p.glyph(glyphKey{letter, label.Bold})
		p.letter(g, point{x + gone*cos, y - gone*sin}, size*cos, size*sin)
		gone += g.advance * size
	}
}

// letter adds a glyph with its foot at a point; along and up turn and size it.
func (p *Painter) letter(g *glyph, at point, along, up float64) {
	if p.outside([]point{at}, 2*(math.Abs(along)+math.Abs(up))) {
		return
	}
	place := func(q point) point { return point{at.x + q.x*along + q.y*up, at.y - q.x*up + q.y*along} }
	steps := 2 + int((math.Abs(along)+math.Abs(up))/24)
	for i := range g.curves {
		c := &g.curves[i]
		last, end := place(c.from), place(c.to)
		if !c.straight {
			control, start := place(c.control), last
			for step := 1; step < steps; step++ {
				t := float64(step) / float64(steps)
				u := 1 - t
				next := point{
					u*u*start.x + 2*t*u*control.x + t*t*end.x,
					u*u*start.y + 2*t*u*control.y + t*t*end.y,
				}
				p.raster.edge(next.x, next.y, last.x, last.y)
				last = next
			}
		}
		// Outlines of letters run the other way round than quad.
		p.raster.edge(end.x, end.y, last.x, last.y)
	}
}

var fonts = sync.OnceValue(func() map[bool]*sfnt.Font {
	return map[bool]*sfnt.Font{false: parse(goregular.TTF), true: parse(gobold.TTF)}
})

// parse reads a face that is part of the program. One that cannot be read is a
// fault of the build, found by the first test that paints a label.
func parse(data []byte) *sfnt.Font {
	face, err := sfnt.Parse(data)
	if err != nil {
		panic("read the built-in lettering: " + err.Error())
	}
	return face
}

// glyph returns the outline of a letter, from the cache once it was asked for.
func (p *Painter) glyph(key glyphKey) *glyph {
	if known := p.glyphs[key]; known != nil {
		return known
	}
	if p.glyphs == nil {
		p.glyphs = map[glyphKey]*glyph{}
	}
	face := typeface.Of(key.bold)
	index, _ := face.Glyph(key.letter)
	made := &glyph{advance: face.Width(index), curves: readCurves(fonts()[key.bold], sfnt.GlyphIndex(index))}
	p.glyphs[key] = made
	return made
}

// readCurves returns the outline of a glyph, one em high. A glyph that cannot be
// read is blank.
func readCurves(face *sfnt.Font, index sfnt.GlyphIndex) []curve {
	em := float64(face.UnitsPerEm())
	segments, err := face.LoadGlyph(&sfnt.Buffer{}, index, fixed.I(int(em)), nil)
	if err != nil {
		return nil
	}
	at := func(v fixed.Point26_6) point { return point{float64(v.X) / 64 / em, float64(v.Y) / 64 / em} }
	var curves []curve
	var last point
	for _, s := range segments {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			last = at(s.Args[0])
		case sfnt.SegmentOpLineTo:
			curves = append(curves, curve{last, last, at(s.Args[0]), true})
			last = at(s.Args[0])
		case sfnt.SegmentOpQuadTo:
			curves = append(curves, curve{last, at(s.Args[0]), at(s.Args[1]), false})
			last = at(s.Args[1])
		}
	}
	return curves
}
