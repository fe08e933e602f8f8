package entry

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// head is the line above an entry: the label at the left and the limits at the
// right, or below it where both do not fit.
type head struct {
	widget.BaseWidget
	label, limits *Text
}

func newHead(label, limits *Text) *head {
	h := &head{label: label, limits: limits}
	h.ExtendBaseWidget(h)
	return h
}

// fitsBeside tells whether label and limits share a line.
func (h *head) fitsBeside(width float32) bool {
	return h.label.OneLine()+h.limits.OneLine()+2*h.Theme().Size(theme.SizeNamePadding) <= width
}

// HeightFor returns the height at a width.
func (h *head) HeightFor(width float32) float32 {
	if h.fitsBeside(width) {
		return h.label.HeightFor(width)
	}
	return h.label.HeightFor(width) + h.limits.HeightFor(width)
}

// CreateRenderer is part of fyne.Widget.
func (h *head) CreateRenderer() fyne.WidgetRenderer { return &headRenderer{h} }

type headRenderer struct{ h *head }

func (r *headRenderer) Layout(size fyne.Size) {
	label, limits := r.h.label, r.h.limits
	height := label.HeightFor(size.Width)
	limitsHeight := limits.HeightFor(size.Width)
	label.Move(fyne.NewPos(0, 0))
	label.Resize(fyne.NewSize(size.Width, height))
	if r.h.fitsBeside(size.Width) {
		// A whole pixel more keeps rounding from breaking the line.
		width := limits.OneLine() + 1
		limits.Move(fyne.NewPos(size.Width-width, (height-limitsHeight)*0.75))
		limits.Resize(fyne.NewSize(width, limitsHeight))
		return
	}
	limits.Move(fyne.NewPos(0, height))
	limits.Resize(fyne.NewSize(size.Width, limitsHeight))
}

func (r *headRenderer) MinSize() fyne.Size {
	return fyne.NewSize(max(r.h.label.MinSize().Width, r.h.limits.MinSize().Width), r.h.HeightFor(r.h.Size().Width))
}

func (r *headRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.h.label, r.h.limits}
}
func (r *headRenderer) Destroy() {}

func (r *headRenderer) Refresh() {
	r.h.label.Refresh()
	r.h.limits.Refresh()
	r.Layout(r.h.Size())
}

// row is the line to type in with its unit behind it, and a slider in what is left
// of the width, or below where nothing is left.
type row struct {
	widget.BaseWidget
	line  *typing
	unit  *Text
	slide *slide
	edge  *canvas.Rectangle

	longest, longestUnit gauge
}

func newRow(line *typing, unit *Text, slide *slide) *row {
	r := &row{line: line, unit: unit, slide: slide, edge: newFrame()}
	r.ExtendBaseWidget(r)
	return r
}

// frame shows or hides the red edge.
func (r *row) frame(on bool) {
	if r.edge.Visible() == on {
		return
	}
	r.edge.Hidden = !on
	colourFrame(r.edge, r.Theme())
	r.edge.Refresh()
	canvas.Refresh(r)
}

// lineWidth holds a length in inches with its decimals.
func (r *row) lineWidth() float32 {
	th := r.Theme()
	size := r.longest.of("1000.000", th.Size(theme.SizeNameText), fyne.TextStyle{})
	return size.Width + 2*th.Size(theme.SizeNameInnerPadding)
}

// unitWidth holds the longest unit, so that the sliders stand below each other.
func (r *row) unitWidth() float32 {
	return r.longestUnit.of("g/m²", r.Theme().Size(theme.SizeNameCaptionText), fyne.TextStyle{}).Width + 1
}

// head is the width of the line and its unit.
func (r *row) head() float32 {
	return r.lineWidth() + r.unitWidth() + 2*r.Theme().Size(theme.SizeNamePadding)
}

// fitsBeside tells whether there is room for the slider behind the line.
func (r *row) fitsBeside(width float32) bool {
	return r.head()+r.slide.MinSize().Width <= width
}

// HeightFor returns the height at a width.
func (r *row) HeightFor(width float32) float32 {
	height := r.line.MinSize().Height
	if !r.fitsBeside(width) {
		height += r.slide.MinSize().Height
	}
	return height
}

// CreateRenderer is part of fyne.Widget.
func (r *row) CreateRenderer() fyne.WidgetRenderer {
	colourFrame(r.edge, r.Theme())
	return &rowRenderer{r}
}

type rowRenderer struct{ r *row }

func (r *rowRenderer) Layout(size fyne.Size) {
	height, padding := r.r.line.MinSize().Height, r.r.Theme().Size(theme.SizeNamePadding)
	line, unit := r.r.lineWidth(), r.r.unitWidth()
	r.r.line.Resize(fyne.NewSize(line, height))
	r.r.edge.Resize(fyne.NewSize(line, height))
	unitHeight := r.r.unit.HeightFor(unit)
	r.r.unit.Move(fyne.NewPos(line+padding, (height-unitHeight)/2))
	r.r.unit.Resize(fyne.NewSize(unit, unitHeight))
	if r.r.fitsBeside(size.Width) {
		left := r.r.head()
		r.r.slide.Move(fyne.NewPos(left, 0))
		r.r.slide.Resize(fyne.NewSize(size.Width-left, height))
		return
	}
	r.r.slide.Move(fyne.NewPos(0, height))
	r.r.slide.Resize(fyne.NewSize(size.Width, r.r.slide.MinSize().Height))
}

func (r *rowRenderer) MinSize() fyne.Size {
	return fyne.NewSize(r.r.head(), r.r.HeightFor(r.r.Size().Width))
}
func (r *rowRenderer) Destroy() {}
func (r *rowRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.r.line, r.r.unit, r.r.slide, r.r.edge}
}

func (r *rowRenderer) Refresh() {
	colourFrame(r.r.edge, r.r.Theme())
	r.r.line.Refresh()
	r.r.unit.Refresh()
	r.r.slide.Refresh()
	r.Layout(r.r.Size())
}
