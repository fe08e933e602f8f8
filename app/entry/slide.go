package entry

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// slide is the slider of a number entry. It takes no focus, as the arrow keys of
// the entry do the same: the tab key goes from entry to entry.
type slide struct {
	widget.BaseWidget

	low, high, value float64
	moved            func(float64) // with every step of a drag
	ended            func()

	dragging, hovered bool
	track, filled     *canvas.Rectangle
	thumb             *canvas.Circle
	ends              [2]*canvas.Text // what it covers
	oneEnd, bothEnds  gauge
}

func newSlide(moved func(float64), ended func()) *slide {
	s := &slide{
		moved: moved, ended: ended, high: 1,
		track: canvas.NewRectangle(color.Transparent), filled: canvas.NewRectangle(color.Transparent),
		thumb: canvas.NewCircle(color.Transparent),
		ends:  [2]*canvas.Text{canvas.NewText("", color.Transparent), canvas.NewText("", color.Transparent)},
	}
	s.ExtendBaseWidget(s)
	return s
}

// cover changes what the slider covers, and the texts of its ends.
func (s *slide) cover(low, high float64, lowText, highText string) {
	if low == s.low && high == s.high && lowText == s.ends[0].Text && highText == s.ends[1].Text {
		return
	}
	s.low, s.high = low, high
	s.ends[0].Text, s.ends[1].Text = lowText, highText
	s.Refresh()
}

// set moves the thumb without telling anyone.
func (s *slide) set(value float64) {
	if value != s.value {
		s.value = value
		s.place()
	}
}

// share is where the thumb stands, from 0 to 1.
func (s *slide) share() float32 {
	if s.high <= s.low {
		return 0
	}
	return float32(min(max((s.value-s.low)/(s.high-s.low), 0), 1))
}

// beyond tells whether the value is one that the slider does not cover.
func (s *slide) beyond() bool {
	const noise = 1e-6
	return s.value < s.low-noise || s.value > s.high+noise
}

// Dragged moves the thumb to the pointer.
func (s *slide) Dragged(e *fyne.DragEvent) {
	s.dragging = true
	s.to(e.Position.X)
}

// DragEnd lets the thumb go.
func (s *slide) DragEnd() {
	if s.dragging {
		s.dragging = false
		s.ended()
	}
}

// Tapped moves the thumb to the pointer.
func (s *slide) Tapped(e *fyne.PointEvent) {
	s.to(e.Position.X)
	s.ended()
}

func (s *slide) to(x float32) {
	room := s.room()
	if room <= 0 {
		return
	}
	share := min(max((x-s.radius())/room, 0), 1)
	s.moved(s.low + float64(share)*(s.high-s.low))
}

// MouseIn lights the thumb up.
func (s *slide) MouseIn(*desktop.MouseEvent) { s.hover(true) }

// MouseMoved is part of desktop.Hoverable.
func (s *slide) MouseMoved(*desktop.MouseEvent) {}

// MouseOut takes the light away.
func (s *slide) MouseOut() { s.hover(false) }

func (s *slide) hover(on bool) {
	s.hovered = on
	s.Refresh()
}

// Cursor tells that the thumb moves sideways.
func (s *slide) Cursor() desktop.Cursor { return desktop.HResizeCursor }

func (s *slide) radius() float32 { return s.Theme().Size(theme.SizeNameInlineIcon) * 0.4 }

// room is how far the thumb can move.
func (s *slide) room() float32 { return s.Size().Width - 2*s.radius() }

// endHeight is the height of the texts of the ends.
func (s *slide) endHeight() float32 {
	return s.oneEnd.of("0", s.Theme().Size(theme.SizeNameCaptionText), fyne.TextStyle{}).Height
}

// MinSize returns the size of a slider of some use, with the texts of its ends.
func (s *slide) MinSize() fyne.Size {
	icon, letters := s.Theme().Size(theme.SizeNameInlineIcon), s.Theme().Size(theme.SizeNameCaptionText)
	ends := s.bothEnds.of(s.ends[0].Text+"  "+s.ends[1].Text, letters, fyne.TextStyle{}).Width
	return fyne.NewSize(max(icon*2.4, ends), 2*s.radius()+s.endHeight())
}

// place puts the thumb on the track, and the texts of the ends below it.
func (s *slide) place() {
	size, radius, room := s.Size(), s.radius(), s.room()
	if room <= 0 {
		return
	}
	const thick = 4
	height := s.endHeight()
	middle, x := (size.Height-height)/2, radius+s.share()*room
	s.track.Move(fyne.NewPos(radius, middle-thick/2))
	s.track.Resize(fyne.NewSize(room, thick))
	s.filled.Move(fyne.NewPos(radius, middle-thick/2))
	s.filled.Resize(fyne.NewSize(x-radius, thick))
	if s.beyond() {
		radius *= 0.6 // a small thumb: the value lies beyond the end
	}
	s.thumb.Resize(fyne.NewSquareSize(2 * radius))
	s.thumb.Move(fyne.NewPos(x-radius, middle-radius))
	for i, end := range s.ends {
		width := end.MinSize().Width
		end.Resize(fyne.NewSize(width, height))
		end.Move(fyne.NewPos(float32(i)*(size.Width-width), middle+s.radius()))
	}
}

// CreateRenderer is part of fyne.Widget.
func (s *slide) CreateRenderer() fyne.WidgetRenderer {
	r := &slideRenderer{s}
	r.colour()
	return r
}

type slideRenderer struct{ s *slide }

func (r *slideRenderer) colour() {
	th, variant := r.s.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	r.s.track.FillColor = th.Color(theme.ColorNameInputBorder, variant)
	r.s.track.CornerRadius, r.s.filled.CornerRadius = 2, 2
	r.s.filled.FillColor = th.Color(theme.ColorNamePrimary, variant)
	r.s.thumb.FillColor = th.Color(theme.ColorNameBackground, variant)
	r.s.thumb.StrokeColor = th.Color(theme.ColorNamePrimary, variant)
	r.s.thumb.StrokeWidth = 2
	if r.s.hovered || r.s.dragging {
		r.s.thumb.FillColor = r.s.thumb.StrokeColor
	}
	for _, end := range r.s.ends {
		end.Color, end.TextSize = th.Color(theme.ColorNamePlaceHolder, variant), th.Size(theme.SizeNameCaptionText)
	}
}

func (r *slideRenderer) Layout(fyne.Size)   { r.s.place() }
func (r *slideRenderer) MinSize() fyne.Size { return r.s.MinSize() }
func (r *slideRenderer) Destroy()           {}
func (r *slideRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.s.track, r.s.filled, r.s.thumb, r.s.ends[0], r.s.ends[1]}
}

func (r *slideRenderer) Refresh() {
	r.colour()
	r.s.place()
	canvas.Refresh(r.s)
}
