package findings

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"gussetwright/geometry/check"
)

// headLayout puts the sign and the word of a severity beside each other, at the head of
// the row. It is as wide for every severity, so that the messages of all rows begin
// below each other.
type headLayout struct{}

// MinSize is part of fyne.Layout.
func (headLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	widest := float32(0)
	for _, severity := range []check.Severity{check.Error, check.Warning, check.Note} {
		widest = max(widest, fyne.MeasureText(severityName(severity), theme.TextSize(), fyne.TextStyle{Bold: true}).Width)
	}
	// A whole pixel more keeps rounding from making a difference.
	word := widest + 2*theme.InnerPadding() + 1
	return fyne.NewSize(theme.IconInlineSize()+theme.Padding()+word, objects[1].MinSize().Height)
}

// Layout is part of fyne.Layout.
func (headLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	sign, word := objects[0], objects[1]
	side, line := theme.IconInlineSize(), word.MinSize().Height
	sign.Resize(fyne.NewSquareSize(side))
	sign.Move(fyne.NewPos(0, (line-side)/2))
	word.Resize(fyne.NewSize(size.Width-side-theme.Padding(), line))
	word.Move(fyne.NewPos(side+theme.Padding(), 0))
}
