package appearance

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Ring is the sign of the focus on a button: a line within its edge, in the colour of its
// words. The toolkit tints the button alone, which nobody sees where it has the colour of
// the accent already.
type Ring struct{ on bool }

// Show says whether the button has the focus; the button is to be refreshed then.
func (r *Ring) Show(on bool) { r.on = on }

// Round returns the renderer of a button with the ring in it. drawn is the one that the
// toolkit made for the button.
func (r *Ring) Round(button *widget.Button, drawn fyne.WidgetRenderer) fyne.WidgetRenderer {
	ringed := &ringed{WidgetRenderer: drawn, ring: r, button: button, line: canvas.NewRectangle(color.Transparent)}
	ringed.show()
	return ringed
}

type ringed struct {
	fyne.WidgetRenderer

	ring   *Ring
	button *widget.Button
	line   *canvas.Rectangle
}

// ringWidth is how wide the line of the ring is, and how far from the edge of the button,
// at the usual text size.
const ringWidth = 2

func (r *ringed) width() float32 {
	return ringWidth * max(r.button.Theme().Size(theme.SizeNameText)/sizes[theme.SizeNameText], 1)
}

func (r *ringed) show() {
	r.line.StrokeColor = r.button.Theme().Color(wordsOn(r.button.Importance), fyne.CurrentApp().Settings().ThemeVariant())
	r.line.StrokeWidth = r.width()
	r.line.CornerRadius = r.button.Theme().Size(theme.SizeNameInputRadius)
}

// wordsOn returns the colour of the words on a button.
func wordsOn(importance widget.Importance) fyne.ThemeColorName {
	switch importance {
	case widget.HighImportance:
		return theme.ColorNameForegroundOnPrimary
	case widget.DangerImportance:
		return theme.ColorNameForegroundOnError
	case widget.WarningImportance:
		return theme.ColorNameForegroundOnWarning
	case widget.SuccessImportance:
		return theme.ColorNameForegroundOnSuccess
	}
	return theme.ColorNameForeground
}

// Layout is part of fyne.WidgetRenderer.
func (r *ringed) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	inset := r.width()
	r.line.Move(fyne.NewPos(inset, inset))
	r.line.Resize(size.SubtractWidthHeight(2*inset, 2*inset))
}

// Objects is part of fyne.WidgetRenderer.
func (r *ringed) Objects() []fyne.CanvasObject {
	objects := r.WidgetRenderer.Objects()
	if !r.ring.on || r.button.Disabled() {
		return objects
	}
	return append(objects[:len(objects):len(objects)], r.line)
}

// Refresh is part of fyne.WidgetRenderer.
func (r *ringed) Refresh() {
	r.show()
	r.WidgetRenderer.Refresh()
	r.Layout(r.button.Size())
	r.line.Refresh()
}

// Button is a button with a ring while it has the focus.
type Button struct {
	widget.Button

	OnFocus func() // is called when the button gains the focus; may be nil
	ring    Ring
}

// NewButton returns a button of usual importance.
func NewButton(text string, tapped func()) *Button {
	b := &Button{}
	b.Text, b.OnTapped = text, tapped
	b.ExtendBaseWidget(b)
	return b
}

// CreateRenderer is part of fyne.Widget.
func (b *Button) CreateRenderer() fyne.WidgetRenderer {
	return b.ring.Round(&b.Button, b.Button.CreateRenderer())
}

// FocusGained is part of fyne.Focusable.
func (b *Button) FocusGained() {
	b.ring.Show(true)
	b.Button.FocusGained()
	if b.OnFocus != nil {
		b.OnFocus()
	}
}

// FocusLost is part of fyne.Focusable.
func (b *Button) FocusLost() {
	b.ring.Show(false)
	b.Button.FocusLost()
}
