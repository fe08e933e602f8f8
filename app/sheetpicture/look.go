package sheetpicture

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"gussetwright/render/flat"
	"gussetwright/render/scene"
)

// look is the colours of the picture of a sheet.
type look struct {
	ground, paper, ink, muted, accent, blank, wrong color.NRGBA
}

// lookOf returns the colours of a theme.
func lookOf(th fyne.Theme) look {
	variant := fyne.CurrentApp().Settings().ThemeVariant()
	of := func(name fyne.ThemeColorName) color.NRGBA {
		return color.NRGBAModel.Convert(th.Color(name, variant)).(color.NRGBA)
	}
	look := look{
		ground: of(theme.ColorNameBackground), paper: of(theme.ColorNameInputBackground), ink: of(theme.ColorNameForeground),
		muted: of(theme.ColorNamePlaceHolder), accent: of(theme.ColorNamePrimary), wrong: of(theme.ColorNameError),
	}
	look.blank = between(look.paper, look.accent, 0.16)
	return look
}

// between returns the opaque colour at a share of the way from one to another.
func between(from, to color.NRGBA, share float64) color.NRGBA {
	at := func(a, b uint8) uint8 { return uint8(float64(a) + (float64(b)-float64(a))*share + 0.5) }
	return color.NRGBA{at(from.R, to.R), at(from.G, to.G), at(from.B, to.B), 255}
}

// faint returns a colour that lets through what lies below it.
func faint(c color.NRGBA, share float64) color.NRGBA {
	c.A = uint8(share*255 + 0.5)
	return c
}

// The roles that stand for the colours of lines and letters.
const (
	inInk    = scene.Legend
	inMuted  = scene.Dimensions
	inWrong  = scene.Cutting
	inCrease = scene.Creasing
)

// palette returns the colours of lines and letters.
func (l *look) palette() *flat.Palette {
	return &flat.Palette{Ink: map[scene.Role]color.NRGBA{
		inInk: l.ink, inMuted: l.muted, inWrong: l.wrong, inCrease: between(l.blank, l.accent, 0.45),
	}}
}

// overCreases returns the colours of lettering on blanks: creases end short of it.
func (l *look) overCreases() *flat.Palette {
	palette := l.palette()
	palette.Halo, palette.Calm = l.blank, true
	return palette
}
