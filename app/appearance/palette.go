package appearance

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// The palettes are our own: greys of warm paper, and for the accent the petrol in
// which creases are drawn. Errors are the aubergine of cuts, made redder.
var (
	lightPalette = map[fyne.ThemeColorName]color.Color{
		theme.ColorNameBackground:          rgb(0xF1EDE5),
		theme.ColorNameOverlayBackground:   rgb(0xFBF9F4),
		theme.ColorNameMenuBackground:      rgb(0xFBF9F4),
		theme.ColorNameHeaderBackground:    rgb(0xE7E1D6),
		theme.ColorNameInputBackground:     rgb(0xFDFCF9),
		theme.ColorNameInputBorder:         rgb(0x8C8577),
		theme.ColorNameButton:              rgb(0xE2DBCE),
		theme.ColorNameDisabledButton:      rgb(0xEAE5DB),
		theme.ColorNameDisabled:            rgb(0x69635A),
		theme.ColorNameForeground:          text(0x26231E),
		theme.ColorNamePlaceHolder:         rgb(0x69635A),
		theme.ColorNamePrimary:             rgb(0x0A6B70),
		theme.ColorNameHyperlink:           rgb(0x0A6B70),
		theme.ColorNameForegroundOnPrimary: rgb(0xFFFFFF),
		theme.ColorNameError:               rgb(0x9C1F43),
		theme.ColorNameForegroundOnError:   rgb(0xFFFFFF),
		theme.ColorNameWarning:             rgb(0x8A5200),
		theme.ColorNameForegroundOnWarning: rgb(0xFFFFFF),
		theme.ColorNameSuccess:             rgb(0x4C6516),
		theme.ColorNameForegroundOnSuccess: rgb(0xFFFFFF),
		theme.ColorNameFocus:               rgba(0x0A787D, 0x48),
		theme.ColorNameHover:               rgba(0x26231E, 0x14),
		theme.ColorNamePressed:             rgba(0x26231E, 0x2A),
		theme.ColorNameSelection:           rgba(0x0A787D, 0x3A),
		theme.ColorNameScrollBar:           rgba(0x26231E, 0x8C),
		theme.ColorNameScrollBarBackground: rgb(0xE7E1D6),
		theme.ColorNameSeparator:           rgb(0xCFC7B8),
		theme.ColorNameShadow:              rgba(0x26231E, 0x40),
	}
	darkPalette = map[fyne.ThemeColorName]color.Color{
		theme.ColorNameBackground:          rgb(0x24221F),
		theme.ColorNameOverlayBackground:   rgb(0x2E2B27),
		theme.ColorNameMenuBackground:      rgb(0x2E2B27),
		theme.ColorNameHeaderBackground:    rgb(0x1C1A18),
		theme.ColorNameInputBackground:     rgb(0x1B1917),
		theme.ColorNameInputBorder:         rgb(0x857D71),
		theme.ColorNameButton:              rgb(0x3B3733),
		theme.ColorNameDisabledButton:      rgb(0x2C2925),
		theme.ColorNameDisabled:            rgb(0x9C958A),
		theme.ColorNameForeground:          text(0xEDE8DF),
		theme.ColorNamePlaceHolder:         rgb(0x9C958A),
		theme.ColorNamePrimary:             rgb(0x4DB8BA),
		theme.ColorNameHyperlink:           rgb(0x5CC3C5),
		theme.ColorNameForegroundOnPrimary: rgb(0x0F1F20),
		theme.ColorNameError:               rgb(0xF08AA4),
		theme.ColorNameForegroundOnError:   rgb(0x2A0711),
		theme.ColorNameWarning:             rgb(0xE8AC4E),
		theme.ColorNameForegroundOnWarning: rgb(0x271700),
		theme.ColorNameSuccess:             rgb(0xA9C25E),
		theme.ColorNameForegroundOnSuccess: rgb(0x171D04),
		theme.ColorNameFocus:               rgba(0x4DB8BA, 0x50),
		theme.ColorNameHover:               rgba(0xEDE8DF, 0x16),
		theme.ColorNamePressed:             rgba(0xEDE8DF, 0x2C),
		theme.ColorNameSelection:           rgba(0x4DB8BA, 0x44),
		theme.ColorNameScrollBar:           rgba(0xEDE8DF, 0x80),
		theme.ColorNameScrollBarBackground: rgb(0x1C1A18),
		theme.ColorNameSeparator:           rgb(0x45403A),
		theme.ColorNameShadow:              rgba(0x000000, 0x70),
	}
)

func rgb(hex uint32) color.Color { return rgba(hex, 0xFF) }

func rgba(hex uint32, alpha uint8) color.Color {
	return color.NRGBA{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: alpha}
}

// textAlpha is opaque but for what no screen can show. Menus write their keys in the
// colour of text at 95 % of its opacity, and take of the result only the lower eight of
// sixteen bits: of a wholly opaque colour that leaves 20 %, of this one 78 %.
const textAlpha = 0xFF90

// text returns the colour of text, whose lower eight bits say the same as the upper.
func text(hex uint32) color.Color {
	wide := func(shift int) uint16 { return uint16(hex>>shift&0xFF) * 0x101 }
	return color.RGBA64{R: wide(16), G: wide(8), B: wide(0), A: textAlpha}
}
