package appearance

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
)

// Larger is the theme that is worn, in larger sizes, for views that are read across a
// table or from the back of a room.
type Larger struct{ Factor float32 }

func worn() fyne.Theme { return fyne.CurrentApp().Settings().Theme() }

// Color is part of fyne.Theme.
func (l *Larger) Color(name fyne.ThemeColorName, variant fyne.ThemeVariant) color.Color {
	return worn().Color(name, variant)
}

// Font is part of fyne.Theme.
func (l *Larger) Font(style fyne.TextStyle) fyne.Resource { return worn().Font(style) }

// Icon is part of fyne.Theme.
func (l *Larger) Icon(name fyne.ThemeIconName) fyne.Resource { return worn().Icon(name) }

// Size is part of fyne.Theme. Sizes are whole: the feet of letters are cut off at some
// that are not.
func (l *Larger) Size(name fyne.ThemeSizeName) float32 {
	return float32(math.Round(float64(l.Factor * worn().Size(name))))
}

// Growth says how much larger than in the rest of the window everything may be.
type Growth struct {
	Larger float32 // in a view of the least size
	Most   float32 // how often that in a large one
	Text   float32 // that text, which has a scale of its own already, may reach in the least size
}

// The least size of a view in which everything has room.
const leastWidth, leastHeight = 1024, 700

// For returns the factor for a view of the size, at a text scale of the user.
func (g Growth) For(view fyne.Size, textScale float64) float32 {
	room := min(view.Width/leastWidth, view.Height/leastHeight)
	wanted := g.Larger * min(max(room, 1), g.Most)
	return min(wanted, g.Text*max(room, 0.5)/float32(textScale))
}
