package main

import (
	"fmt"
	"strings"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// letter returns a line of text as outlines, its letters the given height in mm and
// spaced apart by more mm, its middle at x and its baseline at y (y down).
func letter(words string, height, spacing, x, y float64) (string, error) {
	face, err := sfnt.Parse(gobold.TTF)
	if err != nil {
		return "", fmt.Errorf("read the face: %w", err)
	}
	const unit = 1000
	var buffer sfnt.Buffer
	scale := height / (0.72 * unit) // capitals are 0.72 of the em
	mm := func(v fixed.Int26_6) float64 { return float64(v) / 64 * scale }
	width := -spacing
	var glyphs []sfnt.GlyphIndex
	var advances []float64
	for _, r := range words {
		glyph, err := face.GlyphIndex(&buffer, r)
		if err != nil {
			return "", fmt.Errorf("find the letter %q: %w", r, err)
		}
		advance, err := face.GlyphAdvance(&buffer, glyph, fixed.I(unit), font.HintingNone)
		if err != nil {
			return "", fmt.Errorf("measure the letter %q: %w", r, err)
		}
		glyphs, advances = append(glyphs, glyph), append(advances, mm(advance))
		width += mm(advance) + spacing
	}
	var path strings.Builder
	at := x - width/2
	for i, glyph := range glyphs {
		outline, err := face.LoadGlyph(&buffer, glyph, fixed.I(unit), nil)
		if err != nil {
			return "", fmt.Errorf("draw the letters of %q: %w", words, err)
		}
		for _, s := range outline {
			path.WriteString([...]string{"M", "L", "Q", "C"}[s.Op])
			for _, p := range s.Args[:[...]int{1, 1, 2, 3}[s.Op]] {
				fmt.Fprintf(&path, "%.3f %.3f ", at+mm(p.X), y+mm(p.Y))
			}
		}
		path.WriteString("Z")
		at += advances[i] + spacing
	}
	return path.String(), nil
}
