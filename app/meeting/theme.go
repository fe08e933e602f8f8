package meeting

import (
	"image/color"

	"fyne.io/fyne/v2"
)

// large is the theme of the program in larger sizes, to be read across a table.
type large struct{ factor float32 }

func worn() fyne.Theme { return fyne.CurrentApp().Settings().Theme() }

// Color is part of fyne.Theme.
func (l *large) Color(name fyne.ThemeColorName, variant fyne.ThemeVariant) color.Color {
	return worn().Color(name, variant)
}

// Font is part of fyne.Theme.
func (l *large) Font(style fyne.TextStyle) fyne.Resource { return worn().Font(style) }

// Icon is part of fyne.Theme.
func (l *large) Icon(name fyne.ThemeIconName) fyne.Resource { return worn().Icon(name) }

// Size is part of fyne.Theme.
func (l *large) Size(name fyne.ThemeSizeName) float32 { return l.factor * worn().Size(name) }

// The smallest view in which everything has room, with text this much larger than usual.
const (
	leastWidth, leastHeight = 1024, 700
	mostText                = 1.6
)

// factorFor returns how much larger than in the rest of the window everything is in a
// view of the size. Text has a scale of its own there already.
func factorFor(view fyne.Size, textScale float64) float32 {
	const larger, mostGrowth = 1.25, 1.6
	room := min(view.Width/leastWidth, view.Height/leastHeight)
	wanted := larger * min(max(room, 1), mostGrowth)
	return min(wanted, mostText*max(room, 0.5)/float32(textScale))
}
