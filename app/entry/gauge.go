package entry

import "fyne.io/fyne/v2"

// gauge keeps how large a text is: every layout asks many times, and the toolkit takes
// long to look up even what it has measured before.
type gauge struct {
	text    string
	letters float32
	style   fyne.TextStyle
	size    fyne.Size
}

// of returns how large a text is in letters of a size.
func (g *gauge) of(text string, letters float32, style fyne.TextStyle) fyne.Size {
	if g.text != text || g.letters != letters || g.style != style {
		*g = gauge{text, letters, style, fyne.MeasureText(text, letters, style)}
	}
	return g.size
}
