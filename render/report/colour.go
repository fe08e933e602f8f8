package report

import (
	"image/color"

	"gussetwright/render/ink"
	"gussetwright/render/scene"
)

// Colour is what a text, a line or an area is coloured with: light of a screen or
// inks of a press. The zero value is no colour: such an area or line is left out.
type Colour struct {
	kind kind
	rgb  scene.RGB
	inks scene.CMYK
}

type kind int

const (
	none kind = iota
	light
	inks
)

// RGB returns a colour by its light on a screen.
func RGB(r, g, b uint8) Colour { return Colour{kind: light, rgb: scene.RGB{R: r, G: g, B: b}} }

// Ink returns a colour by its inks. A file keeps them as they are.
func Ink(mix scene.CMYK) Colour { return Colour{kind: inks, inks: mix} }

// None tells whether it is no colour.
func (c Colour) None() bool { return c.kind == none }

// Inks returns the inks of a colour that was given by them.
func (c Colour) Inks() (mix scene.CMYK, isInk bool) { return c.inks, c.kind == inks }

// Screen returns how the colour looks on a screen, for inks about.
func (c Colour) Screen() scene.RGB {
	if c.kind != inks {
		return c.rgb
	}
	seen := ink.RGB(c.inks.C, c.inks.M, c.inks.Y, c.inks.K)
	return scene.RGB{R: seen.R, G: seen.G, B: seen.B}
}

// or returns the colour, or another where it is none.
func (c Colour) or(other Colour) Colour {
	if c.None() {
		return other
	}
	return c
}

func (c Colour) opaque() color.NRGBA {
	seen := c.Screen()
	return color.NRGBA{R: seen.R, G: seen.G, B: seen.B, A: 255}
}
