package meeting

import (
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// heading is the name of the bag. Where there is little room its letters become smaller
// before it is cut off.
type heading struct {
	widget.BaseWidget

	whole string
	text  *canvas.Text // what of it is seen
}

func newHeading() *heading {
	h := &heading{text: canvas.NewText("", color.Black)}
	h.text.TextStyle.Bold = true
	h.ExtendBaseWidget(h)
	return h
}

// set changes the name.
func (h *heading) set(name string) {
	if name != h.whole {
		h.whole = name
		h.Refresh()
	}
}

// fit makes the text as large as it has room for.
func (h *heading) fit(width float32) {
	letters, least := h.Theme().Size(theme.SizeNameHeadingText), h.Theme().Size(theme.SizeNameText)
	wide := func(text string, letters float32) float32 {
		return fyne.MeasureText(text, letters, h.text.TextStyle).Width
	}
	if needed := wide(h.whole, letters); needed > width {
		letters = max(float32(math.Floor(float64(letters*width/needed))), least)
	}
	letters = withFeet(letters, h.text.TextStyle)
	shown := h.whole
	for cut := []rune(h.whole); len(cut) > 0 && wide(shown, letters) > width; shown = string(cut) + "…" {
		cut = cut[:len(cut)-1]
	}
	h.text.Text, h.text.TextSize = shown, letters
	h.text.Color = h.Theme().Color(theme.ColorNameForeground, fyne.CurrentApp().Settings().ThemeVariant())
}

// withFeet returns the size itself or one a little smaller, at which letters keep their
// feet: the toolkit draws a text onto whole pixels, as many as its height comes nearest to.
func withFeet(letters float32, style fyne.TextStyle) float32 {
	const tries = 4
	for less := range tries {
		size := letters - float32(less)
		height := float64(fyne.MeasureText("g", size, style).Height)
		if math.Round(height) >= height {
			return size
		}
	}
	return letters
}

// MinSize leaves the width to the page.
func (h *heading) MinSize() fyne.Size {
	return fyne.NewSize(1, fyne.MeasureText("Mg", h.Theme().Size(theme.SizeNameHeadingText), h.text.TextStyle).Height)
}

// CreateRenderer is part of fyne.Widget.
func (h *heading) CreateRenderer() fyne.WidgetRenderer { return &headingRenderer{h} }

type headingRenderer struct{ h *heading }

func (r *headingRenderer) Layout(size fyne.Size) {
	r.h.fit(size.Width)
	least := r.h.text.MinSize()
	top := math.Floor(float64(size.Height-least.Height) / 2) // whole, or the feet of letters are cut off
	put(r.h.text, fyne.NewPos(0, float32(top)), least)
}

func (r *headingRenderer) MinSize() fyne.Size           { return r.h.MinSize() }
func (r *headingRenderer) Destroy()                     {}
func (r *headingRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.h.text} }

// Refresh takes over another name or theme.
func (r *headingRenderer) Refresh() {
	r.Layout(r.h.Size())
	r.h.text.Refresh()
}
