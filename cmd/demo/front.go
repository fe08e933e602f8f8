package main

import (
	"fmt"
	"math"
	"strings"
)

// ink is a printed colour, and what programs show that do not know printing inks.
type ink struct {
	screen     string
	c, m, y, k int // percent
}

var (
	celadon = ink{"#cfe3cb", 22, 4, 26, 0}
	cream   = ink{"#fbf3dc", 1, 4, 16, 0}
	mist    = ink{"#a9c9b4", 38, 8, 36, 2}
	moss    = ink{"#5f9382", 65, 22, 50, 10}
	pine    = ink{"#24544c", 82, 36, 58, 42}
	rust    = ink{"#b4532a", 12, 75, 88, 14}
)

// fill returns the style that fills with an ink: its screen colour first, which
// readers keep that cannot read what follows.
func (i ink) fill() string {
	return fmt.Sprintf(`style="fill:%s;fill:device-cmyk(%d%% %d%% %d%% %d%%)"`, i.screen, i.c, i.m, i.y, i.k)
}

// drawFront draws the moor for a face of the given size in mm, with bleed: hills that
// run past the edges, a low sun, a quill that is a tea leaf, and the name.
func drawFront(width, height, bleed float64) ([]byte, error) {
	name, err := letter("QUILLMOOR", 17.5, 2.2, width/2, 162)
	if err != nil {
		return nil, err
	}
	house, err := letter("TEA HOUSE", 6.5, 3.4, width/2, 175)
	if err != nil {
		return nil, err
	}
	var t text
	t.line(`<svg xmlns="http://www.w3.org/2000/svg" width="%gmm" height="%gmm" viewBox="%g %g %g %g">`,
		width+2*bleed, height+2*bleed, -bleed, -bleed, width+2*bleed, height+2*bleed)
	t.line(`<rect x="%g" y="%g" width="%g" height="%g" %s/>`, -bleed, -bleed, width+2*bleed, height+2*bleed, celadon.fill())
	t.line(`<circle cx="%g" cy="98" r="43" %s/>`, width/2, cream.fill())
	for i, hill := range []struct {
		ink
		level, swing, phase float64
	}{{mist, 196, 7, 0.4}, {moss, 211, 9, 2.6}, {pine, 229, 6, 4.4}} {
		t.line(`<path d="%s" %s/>`, ridge(width, height, bleed, hill.level, hill.swing, hill.phase+float64(i)), hill.fill())
	}
	t.line(`<g transform="translate(%g 98) rotate(24)">%s</g>`, width/2, quill())
	t.line(`<path d="%s" %s/>`, name, pine.fill())
	t.line(`<path d="%s" %s/>`, house, rust.fill())
	t.line(`</svg>`)
	return t.Bytes(), nil
}

// ridge returns the outline of a hill that fills the face below a wavy line.
func ridge(width, height, bleed, level, swing, phase float64) string {
	var path strings.Builder
	fmt.Fprintf(&path, "M%g %g", -bleed, height+bleed)
	const steps = 72
	for i := range steps + 1 {
		x := -bleed + (width+2*bleed)*float64(i)/steps
		y := level + swing*math.Sin(phase+2*math.Pi*x/width) + swing/3*math.Sin(2.3*phase+4*math.Pi*x/width)
		fmt.Fprintf(&path, "L%.2f %.2f", x, y)
	}
	fmt.Fprintf(&path, "L%g %gZ", width+bleed, height+bleed)
	return path.String()
}

// quill returns a leaf with the barbs of a feather, upright about the origin.
func quill() string {
	var t text
	t.line(`<path d="M0 -34C15 -22 15 8 1 26L0 40L-1 26C-15 8 -15 -22 0 -34Z" %s/>`, pine.fill())
	for i := range 6 {
		y := -20.0 + 7*float64(i)
		t.line(`<path d="M0.4 %g L%.1f %.1f L%.1f %.1f L0.4 %gZ" %s/>`, y+4, 9.5-0.4*float64(i), y-3, 9.9-0.4*float64(i), y-1.6, y+5.4, cream.fill())
		t.line(`<path d="M-0.4 %g L%.1f %.1f L%.1f %.1f L-0.4 %gZ" %s/>`, y+4, -9.5+0.4*float64(i), y-3, -9.9+0.4*float64(i), y-1.6, y+5.4, cream.fill())
	}
	t.line(`<path d="M-0.6 -30L0.6 -30L0.6 26L-0.6 26Z" %s/>`, cream.fill())
	return t.String()
}
