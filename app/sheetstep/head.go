package sheetstep

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// rankHead is the line of heads above the numbers of a ranking.
type rankHead struct {
	widget.BaseWidget
	owner *ranking
}

func newRankHead(owner *ranking) *rankHead {
	h := &rankHead{owner: owner}
	h.ExtendBaseWidget(h)
	return h
}

// setHeads changes the heads and returns whether that is a change.
func (r *ranking) setHeads(heads []string) bool {
	same := slices.EqualFunc(heads, r.heads, func(text string, head *canvas.Text) bool { return text == head.Text })
	if same {
		return false
	}
	r.heads = nil
	for _, text := range heads {
		r.heads = append(r.heads, canvas.NewText(text, nil))
	}
	r.head.Refresh()
	return true
}

// columnWidths are the widths of the columns of numbers. They are measured anew only
// for other rows or letters.
func (r *ranking) columnWidths() []float32 {
	th := r.Theme()
	letter := th.Size(theme.SizeNameText)
	if r.widths != nil && r.measured == letter {
		return r.widths
	}
	r.measured, r.widths = letter, make([]float32, len(r.heads))
	for i, head := range r.heads {
		least := fyne.MeasureText(head.Text, th.Size(theme.SizeNameCaptionText), fyne.TextStyle{}).Width
		for _, row := range r.shown.fit {
			if i < len(row.cells) {
				least = max(least, fyne.MeasureText(row.cells[i], letter, fyne.TextStyle{Bold: true}).Width)
			}
		}
		r.widths[i] = least + 2*th.Size(theme.SizeNamePadding)
	}
	return r.widths
}

// numbers is the width of all columns of numbers.
func (r *ranking) numbers() float32 {
	sum := float32(0)
	for _, width := range r.columnWidths() {
		sum += width
	}
	return sum
}

// narrow tells whether the numbers stand below the names, as they do not fit beside
// them.
func (r *ranking) narrow(width float32) bool {
	th := r.Theme()
	name := fyne.MeasureText("100 × 70 cm", th.Size(theme.SizeNameText), fyne.TextStyle{Bold: true}).Width
	return r.numbers()+name+4*th.Size(theme.SizeNamePadding) > width
}

// placeCell puts a number, or its head, to the right end of its column.
func (r *ranking) placeCell(cell *canvas.Text, i int, top, width float32) {
	right := width - r.Theme().Size(theme.SizeNamePadding)
	for _, column := range r.columnWidths()[min(i+1, len(r.heads)):] {
		right -= column
	}
	size := cell.MinSize()
	cell.Move(fyne.NewPos(right-size.Width, top))
	cell.Resize(size)
}

// HeightFor returns the height at any width.
func (h *rankHead) HeightFor(float32) float32 {
	return fyne.MeasureText("Mg", h.Theme().Size(theme.SizeNameCaptionText), fyne.TextStyle{}).Height
}

// CreateRenderer is part of fyne.Widget.
func (h *rankHead) CreateRenderer() fyne.WidgetRenderer {
	shown := &rankHeadRenderer{h}
	shown.colour()
	return shown
}

type rankHeadRenderer struct{ h *rankHead }

func (s *rankHeadRenderer) colour() {
	th, variant := s.h.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	for _, head := range s.h.owner.heads {
		head.Color, head.TextSize = th.Color(theme.ColorNamePlaceHolder, variant), th.Size(theme.SizeNameCaptionText)
	}
}

func (s *rankHeadRenderer) Layout(size fyne.Size) {
	for i, head := range s.h.owner.heads {
		s.h.owner.placeCell(head, i, 0, size.Width)
	}
}
func (s *rankHeadRenderer) MinSize() fyne.Size { return fyne.NewSize(0, s.h.HeightFor(0)) }
func (s *rankHeadRenderer) Objects() []fyne.CanvasObject {
	var objects []fyne.CanvasObject
	for _, head := range s.h.owner.heads {
		objects = append(objects, head)
	}
	return objects
}
func (s *rankHeadRenderer) Destroy() {}

func (s *rankHeadRenderer) Refresh() {
	s.colour()
	s.Layout(s.h.Size())
	canvas.Refresh(s.h)
}
