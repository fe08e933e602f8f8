package steps

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/keyrelay"
	"gussetwright/app/steppage"
	"gussetwright/geometry/check"
)

// stepNames returns the names of the steps in the order of the job.
func stepNames() [stepCount]string {
	return [stepCount]string{
		lang.L("Product"), lang.L("Bag"), lang.L("Carry"), lang.L("Paper"), lang.L("Sheet"), lang.L("Artwork"), lang.L("Quote"), lang.L("Files"),
	}
}

// list is the list of steps: one stop for the tab key, the arrow keys go up and
// down.
type list struct {
	widget.BaseWidget

	chosen  int
	focused bool
	choose  func(int)

	names  [stepCount]*entry.Text
	bold   [stepCount]*entry.Text
	signs  [stepCount]*widget.Icon
	marks  [stepCount]check.Severity
	ground *canvas.Rectangle // behind the chosen step
	bar    *canvas.Rectangle // at its left edge
	ring   *canvas.Rectangle // round it while the list has the focus
}

func newList(choose func(int)) *list {
	l := &list{
		choose: choose,
		ground: canvas.NewRectangle(color.Transparent), bar: canvas.NewRectangle(color.Transparent), ring: canvas.NewRectangle(color.Transparent),
	}
	for i, name := range stepNames() {
		l.names[i] = entry.NewText(name, entry.Plain)
		l.bold[i] = entry.NewText(name, entry.Heading)
		l.signs[i] = widget.NewIcon(nil)
		l.signs[i].Hide()
	}
	l.ExtendBaseWidget(l)
	return l
}

// mark shows the worst that is found in each step.
func (l *list) mark(marks [stepCount]check.Severity) {
	for i, severity := range marks {
		if severity == l.marks[i] {
			continue
		}
		l.marks[i] = severity
		l.signs[i].Hidden = severity == ""
		if severity != "" {
			l.signs[i].SetResource(entry.Sign(severity))
		}
		l.signs[i].Refresh()
	}
}

func (l *list) set(step int) {
	l.chosen = step
	l.Refresh()
}

// Tapped chooses the step under the pointer.
func (l *list) Tapped(e *fyne.PointEvent) {
	if canvas := fyne.CurrentApp().Driver().CanvasForObject(l); canvas != nil {
		canvas.Focus(l)
	}
	if i := int(e.Position.Y / l.rowHeight()); i >= 0 && i < stepCount {
		l.choose(i)
	}
}

// Cursor tells that the steps can be clicked.
func (l *list) Cursor() desktop.Cursor { return desktop.PointerCursor }

// FocusGained is part of fyne.Focusable.
func (l *list) FocusGained() {
	l.focused = true
	l.Refresh()
}

// FocusLost is part of fyne.Focusable.
func (l *list) FocusLost() {
	l.focused = false
	l.Refresh()
}

// TypedRune is part of fyne.Focusable.
func (l *list) TypedRune(rune) {}

// TypedKey goes up and down.
func (l *list) TypedKey(key *fyne.KeyEvent) {
	keyrelay.ToWindow(l, key)
	if to := steppage.RowAfter(key.Name, l.chosen, stepCount); to != l.chosen {
		l.choose(to)
	}
}

func (l *list) rowHeight() float32 {
	return l.names[0].HeightFor(1000) + 4*l.Theme().Size(theme.SizeNamePadding)
}

func (l *list) signSize() float32 { return l.Theme().Size(theme.SizeNameInlineIcon) * 0.9 }

// CreateRenderer is part of fyne.Widget.
func (l *list) CreateRenderer() fyne.WidgetRenderer {
	r := &listRenderer{l: l, objects: []fyne.CanvasObject{l.ground, l.bar, l.ring}}
	for i := range stepCount {
		r.objects = append(r.objects, l.names[i], l.bold[i], l.signs[i])
	}
	r.colour()
	return r
}

type listRenderer struct {
	l       *list
	objects []fyne.CanvasObject
}

func (r *listRenderer) colour() {
	l, th, variant := r.l, r.l.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	l.ground.FillColor = th.Color(theme.ColorNameSelection, variant)
	l.bar.FillColor = th.Color(theme.ColorNamePrimary, variant)
	l.ring.StrokeColor = th.Color(theme.ColorNamePrimary, variant)
	l.ring.StrokeWidth = 1
	l.ring.Hidden = !l.focused
	for i := range stepCount {
		l.names[i].Hidden = i == l.chosen
		l.bold[i].Hidden = i != l.chosen
	}
}

func (r *listRenderer) Layout(size fyne.Size) {
	l, height, padding := r.l, r.l.rowHeight(), r.l.Theme().Size(theme.SizeNamePadding)
	top := float32(l.chosen) * height
	for _, box := range []*canvas.Rectangle{l.ground, l.ring} {
		box.Move(fyne.NewPos(0, top))
		box.Resize(fyne.NewSize(size.Width, height))
	}
	l.bar.Move(fyne.NewPos(0, top))
	l.bar.Resize(fyne.NewSize(padding*0.75, height))
	sign := l.signSize()
	for i := range stepCount {
		y := float32(i) * height
		room := fyne.NewSize(size.Width-sign-4*padding, height)
		for _, name := range []*entry.Text{l.names[i], l.bold[i]} {
			name.Move(fyne.NewPos(2*padding, y+2*padding))
			name.Resize(fyne.NewSize(room.Width, height-4*padding))
		}
		l.signs[i].Move(fyne.NewPos(size.Width-sign-padding, y+(height-sign)/2))
		l.signs[i].Resize(fyne.NewSquareSize(sign))
	}
}

func (r *listRenderer) MinSize() fyne.Size {
	widest := float32(0)
	for _, name := range r.l.bold {
		widest = max(widest, name.OneLine())
	}
	padding := r.l.Theme().Size(theme.SizeNamePadding)
	// A whole pixel more keeps rounding from breaking a name.
	return fyne.NewSize(widest+1+r.l.signSize()+4*padding, stepCount*r.l.rowHeight())
}

func (r *listRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *listRenderer) Destroy()                     {}

func (r *listRenderer) Refresh() {
	r.colour()
	for _, object := range r.objects {
		object.Refresh()
	}
	r.Layout(r.l.Size())
	canvas.Refresh(r.l)
}
