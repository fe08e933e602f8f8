package turntable

import (
	"fmt"
	"image/color"
	"math"
	"strings"
)

// The grounds of text, as in the style sheet.
var (
	lightPage = color.RGBA{0xfa, 0xf9, 0xf6, 255}
	darkPage  = color.RGBA{0x1d, 0x1b, 0x19, 255}
)

// leastContrast is what text needs against its ground (WCAG 2.2, success criterion
// 1.4.3).
const leastContrast = 4.5

// themed fills the colours of a page into its style sheet. In the dark the ground
// keeps its hue and the accent becomes light enough to be read.
func themed(style string, ground, accent color.RGBA) string {
	white, black := color.RGBA{255, 255, 255, 255}, color.RGBA{0, 0, 0, 255}
	return strings.NewReplacer(
		"LIGHT_ABOVE", hex(mixed(ground, white, 0.45)), "LIGHT_BELOW", hex(mixed(ground, black, 0.08)),
		"LIGHT_ACCENT", hex(readable(accent, lightPage, black)),
		"DARK_ABOVE", hex(mixed(ground, black, 0.72)), "DARK_BELOW", hex(mixed(ground, black, 0.86)),
		"DARK_ACCENT", hex(readable(accent, darkPage, white)),
	).Replace(style)
}

// readable returns the colour, moved toward another until it can be read on a ground.
func readable(c, ground, toward color.RGBA) color.RGBA {
	const steps = 20
	for step := range steps {
		if moved := mixed(c, toward, float64(step)/steps); contrast(moved, ground) >= leastContrast {
			return moved
		}
	}
	return toward
}

// contrast returns the contrast ratio of two colours, 1 to 21 (WCAG 2.2, definition of
// contrast ratio).
func contrast(a, b color.RGBA) float64 {
	lighter, darker := luminance(a), luminance(b)
	if lighter < darker {
		lighter, darker = darker, lighter
	}
	return (lighter + 0.05) / (darker + 0.05)
}

// luminance returns the relative luminance of a colour (WCAG 2.2, definition of
// relative luminance).
func luminance(c color.RGBA) float64 {
	linear := func(v uint8) float64 {
		share := float64(v) / 255
		if share <= 0.04045 {
			return share / 12.92
		}
		return math.Pow((share+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

// mixed returns the colour at a share of the way from a to b.
func mixed(a, b color.RGBA, share float64) color.RGBA {
	at := func(x, y uint8) uint8 { return uint8(math.Round(float64(x) + (float64(y)-float64(x))*share)) }
	return color.RGBA{at(a.R, b.R), at(a.G, b.G), at(a.B, b.B), 255}
}

func hex(c color.RGBA) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }
