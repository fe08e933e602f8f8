// Package appearance is how the window looks: colours, lettering, sizes and icons.
package appearance

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/settings"
)

// look is the theme of the program. It follows the settings as they change.
type look struct {
	set   *settings.Settings
	scale float32
	fixed *fyne.ThemeVariant // chosen by the user; nil follows the desktop
}

// New returns the theme that follows set. A window that is open shows a change
// once the theme is set again; Wear does so.
func New(set *settings.Settings) fyne.Theme {
	l := &look{set: set}
	l.read()
	set.Listen(l.read)
	return l
}

// Wear puts the theme on the app and puts it on again whenever the appearance or
// the text scale is changed.
func Wear(app fyne.App, set *settings.Settings) {
	worn := New(set)
	app.Settings().SetTheme(worn)
	appearance, scale := set.Appearance(), set.TextScale()
	set.Listen(func() {
		if appearance == set.Appearance() && scale == set.TextScale() {
			return
		}
		appearance, scale = set.Appearance(), set.TextScale()
		putOn(app, worn)
	})
}

// putOn gives all that is in the windows a theme. With larger text the menu takes more of a
// window, and padding too.
func putOn(app fyne.App, worn fyne.Theme) {
	windows := app.Driver().AllWindows()
	drawing(windows, func() { app.Settings().SetTheme(worn) })
	for _, w := range windows {
		Fill(w)
	}
}

// Fill has the content of a window take the room that the menu leaves. Where the menu takes
// more, or is gone, the toolkit leaves the content as high as it was.
func Fill(w fyne.Window) {
	if canvas, can := w.Canvas().(interface{ Resize(fyne.Size) }); can {
		canvas.Resize(w.Canvas().Size())
	}
}

// drawing does something as if the first of the windows were being drawn. With another
// theme the toolkit deletes the pictures of all text; while nothing is drawn the graphics
// library does not know whose they are and keeps them, some 4 MB with every change.
func drawing(windows []fyne.Window, do func()) {
	if len(windows) > 0 {
		if drawn, can := windows[0].(interface{ RunWithContext(func()) }); can {
			drawn.RunWithContext(do)
			return
		}
	}
	do()
}

// read takes what is needed out of the settings, as colours and sizes are asked
// for thousands of times a second.
func (l *look) read() {
	l.scale = float32(l.set.TextScale())
	l.fixed = nil
	switch l.set.Appearance() {
	case settings.Light:
		light := theme.VariantLight
		l.fixed = &light
	case settings.Dark:
		dark := theme.VariantDark
		l.fixed = &dark
	}
}

// Color returns a colour. variant is that of the desktop and counts only where the
// user has not chosen.
func (l *look) Color(name fyne.ThemeColorName, variant fyne.ThemeVariant) color.Color {
	if l.fixed != nil {
		variant = *l.fixed
	}
	palette := lightPalette
	if variant == theme.VariantDark {
		palette = darkPalette
	}
	if found, known := palette[name]; known {
		return found
	}
	return theme.DefaultTheme().Color(name, variant)
}

// Icon returns the icon of that name.
func (l *look) Icon(name fyne.ThemeIconName) fyne.Resource {
	return theme.DefaultTheme().Icon(name)
}

// Size returns a size in the units of fyne, scaled as the user likes it.
func (l *look) Size(name fyne.ThemeSizeName) float32 {
	size, known := sizes[name]
	if !known {
		size = theme.DefaultTheme().Size(name)
	}
	return size * l.scale
}

// sizes are a little tighter than usual, for many entries have to be seen at once.
var sizes = map[fyne.ThemeSizeName]float32{
	theme.SizeNameText:            13,
	theme.SizeNameCaptionText:     11,
	theme.SizeNameSubHeadingText:  16,
	theme.SizeNameHeadingText:     22,
	theme.SizeNameInlineIcon:      18,
	theme.SizeNameInnerPadding:    7,
	theme.SizeNameInputRadius:     3,
	theme.SizeNameSelectionRadius: 2,
}
