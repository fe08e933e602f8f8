package welcome

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// tourRenderer puts the ring round the part and the card beside it.
type tourRenderer struct{ tour *Tour }

// Objects is part of fyne.WidgetRenderer.
func (r *tourRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.tour.ring, r.tour.card}
}

// MinSize is part of fyne.WidgetRenderer; the tour takes what the window has.
func (r *tourRenderer) MinSize() fyne.Size { return fyne.NewSize(0, 0) }

// Destroy is part of fyne.WidgetRenderer.
func (r *tourRenderer) Destroy() {}

// Refresh is part of fyne.WidgetRenderer.
func (r *tourRenderer) Refresh() {
	r.colour()
	r.Layout(r.tour.Size())
	r.tour.card.Refresh()
	canvas.Refresh(r.tour.ring)
}

func (r *tourRenderer) colour() {
	r.tour.ring.StrokeColor = theme.Color(theme.ColorNamePrimary)
	r.tour.ring.StrokeWidth = ringWidth
	r.tour.ring.CornerRadius = 2 * theme.Size(theme.SizeNameInputRadius)
}

const ringWidth = 3

// Layout is part of fyne.WidgetRenderer.
func (r *tourRenderer) Layout(size fyne.Size) {
	gap := 2 * theme.Padding()
	card := r.cardSize(size)
	at, extent, found := r.tour.target()
	if !found {
		r.tour.ring.Hide()
		r.tour.card.Move(fyne.NewPos((size.Width-card.Width)/2, (size.Height-card.Height)/2))
		return
	}
	r.tour.ring.Show()
	r.tour.ring.Move(at)
	r.tour.ring.Resize(extent)
	r.tour.card.Move(beside(at, extent, card, size, gap))
}

// cardSize makes the card as wide as reads well and as high as its text needs.
func (r *tourRenderer) cardSize(window fyne.Size) fyne.Size {
	const inLetters = 30
	least := r.tour.card.MinSize().Width
	width := min(max(inLetters*theme.TextSize(), least), window.Width)
	// The height of wrapped text is known once it has its width.
	r.tour.card.Resize(fyne.NewSize(width, r.tour.card.MinSize().Height))
	size := fyne.NewSize(width, r.tour.card.MinSize().Height)
	r.tour.card.Resize(size)
	return size
}

// beside returns where the card lies: on the side of the part where there is most
// room, or over the part where there is room on no side, and always in the window.
func beside(at fyne.Position, part, card, window fyne.Size, gap float32) fyne.Position {
	middle := fyne.NewPos(at.X+(part.Width-card.Width)/2, at.Y+(part.Height-card.Height)/2)
	sides := []struct {
		room, need float32
		place      fyne.Position
	}{
		{window.Width - at.X - part.Width, card.Width + gap, fyne.NewPos(at.X+part.Width+gap, middle.Y)},
		{at.X, card.Width + gap, fyne.NewPos(at.X-card.Width-gap, middle.Y)},
		{window.Height - at.Y - part.Height, card.Height + gap, fyne.NewPos(middle.X, at.Y+part.Height+gap)},
		{at.Y, card.Height + gap, fyne.NewPos(middle.X, at.Y-card.Height-gap)},
	}
	place, spare := middle, float32(0)
	for _, side := range sides {
		if side.room-side.need > spare {
			place, spare = side.place, side.room-side.need
		}
	}
	inside := func(v, most float32) float32 { return max(min(v, most-gap), gap) }
	return fyne.NewPos(inside(place.X, window.Width-card.Width), inside(place.Y, window.Height-card.Height))
}
