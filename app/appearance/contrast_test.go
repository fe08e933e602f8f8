package appearance

import (
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

var palettes = map[string]map[fyne.ThemeColorName]color.Color{"light": lightPalette, "dark": darkPalette}

// grounds are the colours on which text stands.
var grounds = []fyne.ThemeColorName{
	theme.ColorNameBackground, theme.ColorNameOverlayBackground, theme.ColorNameMenuBackground,
	theme.ColorNameHeaderBackground, theme.ColorNameInputBackground,
}

// WCAG 2.2, success criterion 1.4.3: text has a contrast of at least 4.5 to 1
// (value from memory). Text of what cannot be used is exempt, but the toolkit writes
// asides in its colour too.
func TestTextCanBeRead(t *testing.T) {
	const least = 4.5
	for name, palette := range palettes {
		for _, text := range []fyne.ThemeColorName{
			theme.ColorNameForeground, theme.ColorNamePlaceHolder, theme.ColorNameDisabled, theme.ColorNamePrimary,
			theme.ColorNameHyperlink, theme.ColorNameError, theme.ColorNameWarning, theme.ColorNameSuccess,
		} {
			for _, ground := range grounds {
				atLeast(t, name, least, palette, text, palette[ground], string(ground))
			}
		}
		for text, ground := range map[fyne.ThemeColorName]fyne.ThemeColorName{
			theme.ColorNameForegroundOnPrimary: theme.ColorNamePrimary,
			theme.ColorNameForegroundOnError:   theme.ColorNameError,
			theme.ColorNameForegroundOnWarning: theme.ColorNameWarning,
			theme.ColorNameForegroundOnSuccess: theme.ColorNameSuccess,
		} {
			atLeast(t, name, least, palette, text, palette[ground], string(ground))
		}
		atLeast(t, name, least, palette, theme.ColorNameForeground, palette[theme.ColorNameButton], "button")
	}
}

// The same where a veil lies over the ground: under the pointer, pressed, selected
// or holding the focus.
func TestTextUnderAVeilCanBeRead(t *testing.T) {
	for name, palette := range palettes {
		for _, veil := range []fyne.ThemeColorName{
			theme.ColorNameHover, theme.ColorNamePressed, theme.ColorNameSelection, theme.ColorNameFocus,
		} {
			for _, ground := range append(grounds, theme.ColorNameButton) {
				veiled := over(palette[veil], palette[ground])
				atLeast(t, name, 4.5, palette, theme.ColorNameForeground, veiled, string(veil)+" over "+string(ground))
			}
		}
	}
}

// WCAG 2.2, success criterion 1.4.11: what shows where a control is has a contrast
// of at least 3 to 1 (value from memory).
func TestControlsCanBeSeen(t *testing.T) {
	for name, palette := range palettes {
		for _, ground := range []fyne.ThemeColorName{theme.ColorNameBackground, theme.ColorNameInputBackground, theme.ColorNameOverlayBackground} {
			for _, part := range []fyne.ThemeColorName{theme.ColorNameInputBorder, theme.ColorNamePrimary} {
				atLeast(t, name, 3, palette, part, palette[ground], string(ground))
			}
			bar := over(palette[theme.ColorNameScrollBar], palette[theme.ColorNameScrollBarBackground])
			if got := contrast(bar, palette[theme.ColorNameScrollBarBackground]); got < 3 {
				t.Errorf("%s: scroll bar %.2f to 1, want 3", name, got)
			}
		}
	}
}

// The formulas give what WCAG states of them: black on white is 21 to 1, and a
// colour on itself 1 to 1. #767676 on white is the lightest grey that passes 4.5
// (a value often quoted, from memory).
func TestContrastFormula(t *testing.T) {
	white := rgb(0xFFFFFF)
	for hex, want := range map[uint32]float64{0x000000: 21, 0xFFFFFF: 1, 0x767676: 4.54} {
		if got := contrast(rgb(hex), white); math.Abs(got-want) > 0.005 {
			t.Errorf("%06X on white: %.3f, want %.2f", hex, got, want)
		}
	}
	if got := over(rgba(0x000000, 0x80), white); math.Abs(float64(got.(color.NRGBA).R)-127) > 1 {
		t.Errorf("half black over white is %v", got)
	}
}

func atLeast(t *testing.T, palette string, least float64, colours map[fyne.ThemeColorName]color.Color, text fyne.ThemeColorName, ground color.Color, where string) {
	t.Helper()
	if got := contrast(colours[text], ground); got < least {
		t.Errorf("%s: %s on %s has a contrast of %.2f to 1, want %.1f", palette, text, where, got, least)
	}
}

// contrast returns the ratio of relative luminances as WCAG 2.2 defines it.
func contrast(a, b color.Color) float64 {
	light, dark := luminance(a), luminance(b)
	if light < dark {
		light, dark = dark, light
	}
	return (light + 0.05) / (dark + 0.05)
}

func luminance(c color.Color) float64 {
	n := color.NRGBAModel.Convert(c).(color.NRGBA)
	linear := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(n.R) + 0.7152*linear(n.G) + 0.0722*linear(n.B)
}

// over returns the colour seen where a translucent one lies over another.
func over(veil, ground color.Color) color.Color {
	v := color.NRGBAModel.Convert(veil).(color.NRGBA)
	g := color.NRGBAModel.Convert(ground).(color.NRGBA)
	share := float64(v.A) / 255
	mix := func(a, b uint8) uint8 { return uint8(math.Round(share*float64(a) + (1-share)*float64(b))) }
	return color.NRGBA{R: mix(v.R, g.R), G: mix(v.G, g.G), B: mix(v.B, g.B), A: 0xFF}
}
