package steps

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// explanation stands at the foot of a page and says what the entry with the focus
// is and why it has its limits. It stands there and not below the entry, so that no
// entry moves away from under the pointer when the focus goes from one to another.
type explanation struct {
	widget.BaseWidget

	column *entry.Column
	title  *entry.Text
	text   *entry.Text
	scroll *container.Scroll
	ground *canvas.Rectangle
	rule   *canvas.Rectangle
	shown  entry.Explained
}

func newExplanation() *explanation {
	e := &explanation{
		title: entry.NewText("", entry.Style{Colour: theme.ColorNameForeground, Size: theme.SizeNameCaptionText, Bold: true}),
		text:  entry.NewText("", entry.Small), rule: canvas.NewRectangle(color.Transparent),
		ground: canvas.NewRectangle(color.Transparent),
	}
	e.column = entry.NewColumn(0.5, e.title, e.text)
	e.column.SetInset(2)
	e.column.OnGrow(func() {})
	e.scroll = container.NewVScroll(e.column)
	e.ExtendBaseWidget(e)
	return e
}

// about explains an entry, or nothing.
func (e *explanation) about(entry entry.Explained) {
	e.shown = entry
	title, text := "", ""
	if entry != nil {
		title, text = entry.Explanation()
	}
	e.title.SetText(title)
	e.text.SetText(text)
	e.Refresh()
}

// HeightFor returns the height at a width.
func (e *explanation) HeightFor(width float32) float32 {
	if e.shown == nil {
		return 0
	}
	return e.column.HeightFor(width) + 1
}

// CreateRenderer is part of fyne.Widget.
func (e *explanation) CreateRenderer() fyne.WidgetRenderer {
	r := &explanationRenderer{e}
	r.colour()
	return r
}

type explanationRenderer struct{ e *explanation }

func (r *explanationRenderer) colour() {
	th, variant := r.e.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	r.e.rule.FillColor = th.Color(theme.ColorNameSeparator, variant)
	r.e.ground.FillColor = th.Color(theme.ColorNameBackground, variant)
}

func (r *explanationRenderer) Layout(size fyne.Size) {
	r.e.ground.Resize(size)
	r.e.rule.Resize(fyne.NewSize(size.Width, 1))
	r.e.column.Resize(fyne.NewSize(size.Width, r.e.column.HeightFor(size.Width)))
	r.e.column.Arrange()
	r.e.scroll.Move(fyne.NewPos(0, 1))
	r.e.scroll.Resize(fyne.NewSize(size.Width, max(size.Height-1, 0)))
}
func (r *explanationRenderer) MinSize() fyne.Size { return fyne.NewSize(0, 0) }
func (r *explanationRenderer) Objects() []fyne.CanvasObject {
	if r.e.shown == nil {
		return nil
	}
	return []fyne.CanvasObject{r.e.ground, r.e.rule, r.e.scroll}
}
func (r *explanationRenderer) Destroy() {}

func (r *explanationRenderer) Refresh() {
	r.colour()
	r.e.ground.Refresh()
	r.e.rule.Refresh()
	r.e.column.Refresh()
	r.Layout(r.e.Size())
	r.e.scroll.Refresh()
	canvas.Refresh(r.e)
}
