package quotestep

import (
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// fact is a line of a table of facts: what it is, and the numbers with their units. One
// without a value is the head of those that follow.
type fact struct{ name, value string }

// facts is a table to read: names at the left, values beside them.
type facts struct {
	widget.BaseWidget

	rows []*factRow
	used int
	word float32 // width of the longest word of all names
	grow func()
}

type factRow struct {
	head, name, value *entry.Text
	rule              *canvas.Rectangle // above a head
}

func newFacts() *facts {
	f := &facts{}
	f.ExtendBaseWidget(f)
	return f
}

// OnGrow sets what is called when the height of the table has changed.
func (f *facts) OnGrow(grow func()) { f.grow = grow }

// set shows other facts. Rows are used again.
func (f *facts) set(list []fact) {
	width := f.Size().Width
	before := f.HeightFor(width)
	for len(f.rows) < len(list) {
		f.rows = append(f.rows, &factRow{
			head: entry.NewText("", entry.Style{Colour: theme.ColorNameForeground, Size: theme.SizeNameCaptionText, Bold: true}),
			name: entry.NewText("", entry.Muted), value: entry.NewText("", entry.Small), rule: canvas.NewRectangle(color.Transparent),
		})
	}
	f.used = len(list)
	for i := range list {
		f.rows[i].set(list[i])
	}
	f.measure()
	if f.HeightFor(width) != before && f.grow != nil {
		f.grow()
	}
	f.Refresh()
}

func (r *factRow) set(f fact) {
	head, name := "", f.name
	if f.value == "" {
		head, name = f.name, ""
	}
	r.head.SetText(head)
	r.name.SetText(name)
	r.value.SetText(f.value)
}

func (f *facts) padding() float32 { return f.Theme().Size(theme.SizeNamePadding) }

// measure finds the longest word of the names.
func (f *facts) measure() {
	f.word = 0
	size := f.Theme().Size(theme.SizeNameCaptionText)
	for _, row := range f.rows[:f.used] {
		for _, word := range strings.Fields(row.name.Text()) {
			// A whole pixel more keeps rounding from breaking it.
			f.word = max(f.word, fyne.MeasureText(word, size, fyne.TextStyle{}).Width+1)
		}
	}
}

// nameWidth is the width of the names, in which no word is broken unless it takes more
// than half, and valueLeft where the values begin.
func (f *facts) nameWidth(width float32) float32 {
	const share = 0.36
	return max(min(max(width*share-f.padding(), f.word), width/2), 1)
}

func (f *facts) valueLeft(width float32) float32 { return f.nameWidth(width) + 2*f.padding() }

func (f *facts) rowHeight(i int, width float32) float32 {
	r := f.rows[i]
	if r.value.Text() == "" {
		height := r.head.HeightFor(width) + f.padding()
		if i > 0 {
			height += 1.5 * f.padding()
		}
		return height
	}
	return max(r.name.HeightFor(f.nameWidth(width)), r.value.HeightFor(width-f.valueLeft(width))) + 0.75*f.padding()
}

// HeightFor returns the height at a width.
func (f *facts) HeightFor(width float32) float32 {
	sum := float32(0)
	for i := range f.rows[:f.used] {
		sum += f.rowHeight(i, width)
	}
	return sum
}

// CreateRenderer is part of fyne.Widget.
func (f *facts) CreateRenderer() fyne.WidgetRenderer { return &factsRenderer{f} }

type factsRenderer struct{ f *facts }

func (r *factsRenderer) Layout(size fyne.Size) {
	f, top := r.f, float32(0)
	for i, row := range f.rows[:f.used] {
		height := f.rowHeight(i, size.Width)
		headHeight := row.head.HeightFor(size.Width)
		row.rule.Hidden = i == 0 || row.value.Text() != ""
		row.rule.Move(fyne.NewPos(0, top+0.5*f.padding()))
		row.rule.Resize(fyne.NewSize(size.Width, 1))
		row.head.Move(fyne.NewPos(0, top+height-headHeight-0.5*f.padding()))
		row.head.Resize(fyne.NewSize(size.Width, headHeight))
		row.name.Move(fyne.NewPos(0, top))
		row.name.Resize(fyne.NewSize(f.nameWidth(size.Width), height))
		row.value.Move(fyne.NewPos(f.valueLeft(size.Width), top))
		row.value.Resize(fyne.NewSize(size.Width-f.valueLeft(size.Width), height))
		top += height
	}
}

func (r *factsRenderer) MinSize() fyne.Size {
	return fyne.NewSize(30*r.f.padding(), r.f.HeightFor(r.f.Size().Width))
}

func (r *factsRenderer) Objects() []fyne.CanvasObject {
	var objects []fyne.CanvasObject
	for _, row := range r.f.rows[:r.f.used] {
		objects = append(objects, row.rule, row.head, row.name, row.value)
	}
	return objects
}
func (r *factsRenderer) Destroy() {}

func (r *factsRenderer) Refresh() {
	r.f.measure()
	colour := r.f.Theme().Color(theme.ColorNameSeparator, fyne.CurrentApp().Settings().ThemeVariant())
	for _, row := range r.f.rows[:r.f.used] {
		row.rule.FillColor = colour
		for _, object := range []fyne.CanvasObject{row.rule, row.head, row.name, row.value} {
			object.Refresh()
		}
	}
	r.Layout(r.f.Size())
	canvas.Refresh(r.f)
}
