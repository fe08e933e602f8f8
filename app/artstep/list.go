package artstep

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/document"
)

// list shows the pieces of artwork, the topmost first. It is one stop for the tab key:
// the arrow keys choose, Delete removes, and with Alt the arrow keys change the order.
type list struct {
	widget.BaseWidget

	step    *Step
	rows    []*row
	chosen  int // row
	over    int // row under the pointer, or −1
	focused bool
	chosenGround, overGround,
	bar, ring *canvas.Rectangle
	grow func()
}

func newList(step *Step) *list {
	l := &list{step: step, over: -1}
	for _, ground := range []**canvas.Rectangle{&l.chosenGround, &l.overGround, &l.bar, &l.ring} {
		*ground = canvas.NewRectangle(color.Transparent)
		(*ground).Hide()
	}
	l.ExtendBaseWidget(l)
	return l
}

// OnGrow sets what is called when the height of the list has changed.
func (l *list) OnGrow(grow func()) { l.grow = grow }

// grown lays the list out anew where its height has changed.
func (l *list) grown() {
	if l.grow != nil {
		l.grow()
	}
	l.Refresh()
}

// index returns the piece of a row, or the row of a piece.
func (l *list) index(row int) int { return len(l.rows) - 1 - row }

// show shows the pieces of a state. Only what changed is touched.
func (l *list) show(state document.State, chosen int) {
	count := len(state.Spec.Artwork)
	resized := count != len(l.rows)
	for len(l.rows) < count {
		l.rows = append(l.rows, newRow())
	}
	l.rows = l.rows[:count]
	width := l.Size().Width
	for i, row := range l.rows {
		before := row.heightFor(l, width)
		row.show(state, l.index(i), l.step.unfollowed(state, l.index(i)))
		resized = resized || row.heightFor(l, width) != before
	}
	l.chosen = l.index(chosen)
	if resized {
		l.over = -1
		l.grown()
	}
	l.light()
}

// Explanation says what the keys do.
func (l *list) Explanation() (title, text string) {
	return lang.L("Artwork on the bag"), lang.L("The arrow keys choose a piece, with Alt they bring it forward or send it back, and Delete takes it out. What stands higher in the list lies on top.")
}

// Tapped chooses the row under the pointer.
func (l *list) Tapped(e *fyne.PointEvent) {
	if on := fyne.CurrentApp().Driver().CanvasForObject(l); on != nil {
		on.Focus(l)
	}
	if row := l.rowAt(e.Position.Y); row >= 0 {
		l.step.Choose(l.index(row))
	}
}

// Cursor tells that rows can be clicked.
func (l *list) Cursor() desktop.Cursor { return desktop.PointerCursor }

// MouseIn looks anew which files are followed, of which nobody tells, and lights the row
// under the pointer up.
func (l *list) MouseIn(e *desktop.MouseEvent) {
	l.step.Follow(l.step.doc.State())
	l.MouseMoved(e)
}

// MouseMoved lights the row under the pointer up.
func (l *list) MouseMoved(e *desktop.MouseEvent) {
	if over := l.rowAt(e.Position.Y); over != l.over {
		l.over = over
		l.light()
	}
}

// MouseOut is part of desktop.Hoverable.
func (l *list) MouseOut() {
	l.over = -1
	l.light()
}

// FocusGained is part of fyne.Focusable.
func (l *list) FocusGained() {
	l.focused = true
	l.step.Follow(l.step.doc.State())
	l.step.focused(l)
}

// FocusLost is part of fyne.Focusable.
func (l *list) FocusLost() {
	l.focused = false
	l.light()
}

// TypedRune is part of fyne.Focusable.
func (l *list) TypedRune(rune) {}

// TypedKey chooses or removes.
func (l *list) TypedKey(key *fyne.KeyEvent) {
	to := l.chosen
	switch key.Name {
	case fyne.KeyUp:
		to--
	case fyne.KeyDown:
		to++
	case fyne.KeyHome:
		to = 0
	case fyne.KeyEnd:
		to = len(l.rows) - 1
	case fyne.KeyDelete, fyne.KeyBackspace:
		l.step.remove()
		return
	}
	if to != l.chosen && to >= 0 && to < len(l.rows) {
		l.step.Choose(l.index(to))
	}
}

// TypedShortcut takes the arrow keys with Alt, which come as a shortcut.
func (l *list) TypedShortcut(shortcut fyne.Shortcut) {
	custom, is := shortcut.(*desktop.CustomShortcut)
	if !is || custom.Modifier != fyne.KeyModifierAlt {
		return
	}
	switch custom.KeyName {
	case fyne.KeyUp:
		l.step.order(1)
	case fyne.KeyDown:
		l.step.order(-1)
	}
}

// rowAt returns the row at a height, or −1.
func (l *list) rowAt(y float32) int {
	top := float32(0)
	for i, row := range l.rows {
		height := row.heightFor(l, l.Size().Width)
		if y >= top && y < top+height {
			return i
		}
		top += height
	}
	return -1
}

// HeightFor returns the height at a width.
func (l *list) HeightFor(width float32) float32 {
	sum := float32(0)
	for _, row := range l.rows {
		sum += row.heightFor(l, width)
	}
	return sum
}

// MinSize returns the least width and the height at the present one.
func (l *list) MinSize() fyne.Size {
	l.ExtendBaseWidget(l)
	return fyne.NewSize(3*l.Theme().Size(theme.SizeNameText), l.HeightFor(l.Size().Width))
}

// light puts grounds under the rows that are chosen and pointed at.
func (l *list) light() {
	l.place()
	for shape, visible := range map[*canvas.Rectangle]bool{
		l.chosenGround: len(l.rows) > 0, l.bar: len(l.rows) > 0, l.overGround: l.over >= 0,
		l.ring: l.focused && len(l.rows) > 0,
	} {
		if shape.Visible() != visible {
			shape.Hidden = !visible
			shape.Refresh()
		}
	}
}

// place puts rows and grounds where they belong.
func (l *list) place() {
	width, top := l.Size().Width, float32(0)
	for i, row := range l.rows {
		height := row.heightFor(l, width)
		row.place(l, fyne.NewPos(0, top), width)
		area := fyne.NewSize(width, height)
		if i == l.over {
			put(l.overGround, fyne.NewPos(0, top), area)
		}
		if i == l.chosen {
			put(l.chosenGround, fyne.NewPos(0, top), area)
			put(l.ring, fyne.NewPos(0, top), area)
			put(l.bar, fyne.NewPos(0, top), fyne.NewSize(l.Theme().Size(theme.SizeNamePadding)*0.75, height))
		}
		top += height
	}
}

func put(object fyne.CanvasObject, at fyne.Position, size fyne.Size) {
	object.Move(at)
	object.Resize(size)
}

// CreateRenderer is part of fyne.Widget.
func (l *list) CreateRenderer() fyne.WidgetRenderer {
	r := &listRenderer{l}
	r.colour()
	return r
}

type listRenderer struct{ l *list }

func (r *listRenderer) colour() {
	th, variant := r.l.Theme(), fyne.CurrentApp().Settings().ThemeVariant()
	r.l.chosenGround.FillColor = th.Color(theme.ColorNameSelection, variant)
	r.l.overGround.FillColor = th.Color(theme.ColorNameHover, variant)
	r.l.bar.FillColor = th.Color(theme.ColorNamePrimary, variant)
	r.l.ring.StrokeColor, r.l.ring.StrokeWidth = th.Color(theme.ColorNamePrimary, variant), 1
	for _, row := range r.l.rows {
		row.colour(th, variant)
	}
}

func (r *listRenderer) Layout(fyne.Size)   { r.l.place() }
func (r *listRenderer) MinSize() fyne.Size { return r.l.MinSize() }
func (r *listRenderer) Destroy()           {}

func (r *listRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.l.chosenGround, r.l.overGround, r.l.bar, r.l.ring}
	for _, row := range r.l.rows {
		objects = append(objects, row.objects()...)
	}
	return objects
}

func (r *listRenderer) Refresh() {
	r.colour()
	r.l.place()
	for _, object := range r.Objects() {
		object.Refresh()
	}
	canvas.Refresh(r.l)
}
