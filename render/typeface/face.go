package typeface

import (
	"fmt"
	"sync"
	"unicode"

	"github.com/tdewolff/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// Missing is shown in place of a character that a face lacks.
const Missing = '?'

// Face is one weight of the typeface.
type Face struct {
	name string
	sfnt *font.SFNT
}

// Metrics are the measures of a face as shares of the em square, y up from the
// baseline.
type Metrics struct {
	Ascent, Descent, CapHeight float64
	Left, Bottom, Right, Top   float64 // the box that holds every glyph
	Stem                       float64 // width of the upright stem of a capital T
}

var (
	regular = sync.OnceValue(func() *Face { return parse("GoRegular", goregular.TTF) })
	bold    = sync.OnceValue(func() *Face { return parse("Go-Bold", gobold.TTF) })
)

// Regular returns the face for running text.
func Regular() *Face { return regular() }

// Bold returns the face for headings.
func Bold() *Face { return bold() }

// Of returns the bold face or the regular one.
func Of(isBold bool) *Face {
	if isBold {
		return Bold()
	}
	return Regular()
}

// parse reads a face that is part of the program. One that cannot be read is a
// fault of the build, found by the first test that asks for it.
func parse(name string, data []byte) *Face {
	sfnt, err := font.ParseSFNT(data, 0)
	if err != nil {
		panic(fmt.Sprintf("read the built-in face %s: %v", name, err))
	}
	return &Face{name, sfnt}
}

// Advance returns the length of a line of text in the unit of size, which is the
// height of the em square.
func Advance(text string, size float64, isBold bool) float64 {
	return Of(isBold).Advance(text, size)
}

// Name returns the PostScript name of the face.
func (f *Face) Name() string { return f.name }

// Glyph returns the glyph that stands for the character, and the character that
// is then seen: Missing when the face lacks r or r is a control character.
func (f *Face) Glyph(r rune) (glyph uint16, shown rune) {
	if !unicode.IsControl(r) {
		if glyph = f.sfnt.GlyphIndex(r); glyph != 0 {
			return glyph, r
		}
	}
	return f.sfnt.GlyphIndex(Missing), Missing
}

// Width returns how far the pen moves over the glyph, as a share of the em square.
func (f *Face) Width(glyph uint16) float64 {
	return f.em(float64(f.sfnt.GlyphAdvance(glyph)))
}

// Advance returns the length of a line of text in the unit of size, which is the
// height of the em square.
func (f *Face) Advance(text string, size float64) float64 {
	units := 0
	for _, r := range text {
		glyph, _ := f.Glyph(r)
		units += int(f.sfnt.GlyphAdvance(glyph))
	}
	return f.em(float64(units)) * size
}

// Metrics returns the measures of the face.
func (f *Face) Metrics() Metrics {
	head, os2 := f.sfnt.Head, f.sfnt.OS2
	return Metrics{
		Ascent:    f.em(float64(f.sfnt.Hhea.Ascender)),
		Descent:   f.em(float64(f.sfnt.Hhea.Descender)),
		CapHeight: f.em(float64(os2.SCapHeight)),
		Left:      f.em(float64(head.XMin)),
		Bottom:    f.em(float64(head.YMin)),
		Right:     f.em(float64(head.XMax)),
		Top:       f.em(float64(head.YMax)),
		Stem:      f.stem(),
	}
}

// stem measures the foot of the capital T, as the face does not state the width
// of its stems.
func (f *Face) stem() float64 {
	contour, err := f.sfnt.Glyf.Contour(f.sfnt.GlyphIndex('T'))
	if err != nil {
		return 0
	}
	var feet []int16
	for i, y := range contour.YCoordinates {
		if y == 0 {
			feet = append(feet, contour.XCoordinates[i])
		}
	}
	if len(feet) != 2 {
		return 0
	}
	return f.em(float64(max(feet[0], feet[1]) - min(feet[0], feet[1])))
}

func (f *Face) em(units float64) float64 { return units / float64(f.sfnt.Head.UnitsPerEm) }
