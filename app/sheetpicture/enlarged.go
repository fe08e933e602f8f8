package sheetpicture

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// enlarged shows the picture of a sheet over most of the window, until a click beside
// it, a click on it or Escape closes it.
type enlarged struct {
	over    *widget.PopUp
	picture *Picture
}

// open shows a picture large on the canvas that it is on.
func (e *enlarged) open(from *Picture) {
	on := fyne.CurrentApp().Driver().CanvasForObject(from)
	if on == nil {
		return
	}
	e.picture = newPicture(e.close, func(entry.Explained) {})
	e.picture.show(from.art)
	const share = 0.86
	room := on.Size()
	width := min(room.Width*share, room.Height*share/e.picture.HeightFor(1))
	e.picture.least = fyne.NewSize(width, e.picture.HeightFor(width))
	e.over = widget.NewPopUp(e.picture, on)
	least := e.over.MinSize()
	e.over.ShowAtPosition(fyne.NewPos((room.Width-least.Width)/2, (room.Height-least.Height)/2))
	on.Focus(e.picture)
}

// show shows another sheet in it.
func (e *enlarged) show(art Art) {
	if e.over != nil && e.over.Visible() {
		e.picture.show(art)
	}
}

func (e *enlarged) close() {
	if e.over != nil {
		e.over.Hide()
		e.over = nil
	}
}
