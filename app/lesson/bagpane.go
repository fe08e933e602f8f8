package lesson

import (
	"image/color"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/foldedpane"
	"gussetwright/app/toolrow"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/render/solid"
)

// bagPane shows the bag as it is folded: to turn it, and to come closer. It takes the
// keys only when it was gone to by the Tab key, so that after a drag the arrows still
// go from stage to stage.
type bagPane struct {
	widget.BaseWidget
	view   *View
	figure *figure
	camera solid.Camera // the user's; from where it looks counts once the bag was turned
	turned bool         // by the user, else every stage is seen from where it is seen best
	notice *chip        // that the motion is drawn, that it ends here, that the bag is an old one
	views  *button      // opens the list of usual places to look from
	ring   *canvas.Rectangle

	turning  bool
	shifting bool // a drag moves the picture instead of turning the bag
}

func newBagPane(view *View) *bagPane {
	p := &bagPane{view: view, camera: solid.Isometric, notice: newChip(), ring: canvas.NewRectangle(color.Transparent)}
	p.figure = newFigure(newFolder(), p.refine)
	p.views = newButton(view, "", theme.MenuDropDownIcon(), p.openViews)
	p.views.IconPlacement = widget.ButtonIconTrailingText
	p.notice.say("")
	p.ring.Hide()
	p.showView()
	p.ExtendBaseWidget(p)
	return p
}

// draw orders a draft of what is to be seen now; when nothing moves any more a fine
// picture follows it.
func (p *bagPane) draw() { p.order(draft) }

func (p *bagPane) order(samples int) {
	if !p.view.open {
		return
	}
	o := p.view.order()
	o.samples, o.camera, o.look = samples, p.seen(), foldedpane.Look()
	p.figure.draw(o)
}

// refine follows the last draft by a fine picture, unless more is to come.
func (p *bagPane) refine(m made) {
	if m.samples == draft && !p.turning && !p.view.moving() {
		p.order(fine)
	}
}

// seen is the camera of the picture.
func (p *bagPane) seen() solid.Camera {
	camera := p.camera
	if !p.turned {
		best := p.view.course.camera(p.view.player.at)
		camera.Azimuth, camera.Elevation = best.Azimuth, best.Elevation
	}
	return camera
}

// turn looks at the bag from somewhere else, in all stages from now on.
func (p *bagPane) turn(camera solid.Camera) {
	p.turned = true
	p.shift(camera)
}

// shift moves the picture or makes it larger.
func (p *bagPane) shift(camera solid.Camera) {
	p.camera = camera.Limited()
	p.showView()
	p.draw()
}

// letGo lets every stage be seen from where it is seen best, whole.
func (p *bagPane) letGo() {
	p.turned = false
	p.shift(solid.Isometric)
}

// stepView is what looking from where each stage is seen best is called.
func stepView() string { return lang.L("View of the step") }

// viewName is what from where the bag is seen is called.
func (p *bagPane) viewName() string {
	if !p.turned {
		return stepView()
	}
	return foldedpane.ViewName(p.camera)
}

// showView says on the button from where the bag is seen.
func (p *bagPane) showView() {
	p.views.Say(p.viewName(), theme.MenuDropDownIcon(), widget.MediumImportance)
	if p.Size().Width > 0 {
		p.arrange()
	}
}

// openViews opens the list of places to look from.
func (p *bagPane) openViews() {
	own := fyne.NewMenuItem(stepView(), p.letGo)
	own.Checked = !p.turned
	items := []*fyne.MenuItem{own, fyne.NewMenuItemSeparator()}
	for _, v := range foldedpane.NamedViews() {
		item := fyne.NewMenuItem(v.Name, func() { p.turn(v.Camera) })
		item.Checked = v.Name == p.viewName()
		items = append(items, item)
	}
	toolrow.OpenList(p.views, items)
}

// tell says what is special about what is seen.
func (p *bagPane) tell() {
	v, text := p.view, ""
	switch {
	case v.state.Err != nil:
		reason, _, _ := strings.Cut(words.MeasuredError(v.state.Err, v.set.Unit()), "\n")
		text = lang.L("This cannot be drawn. You see the last bag that could.") + " " + reason
	case v.course.stuck(v.player.at.stage):
		text = lang.L("It ends here")
	case v.course.Stages[v.player.at.stage].Schematic:
		text = lang.L("Drawn, not reckoned")
	}
	p.notice.say(text)
	p.arrange()
}

// MouseDown is part of desktop.Mouseable.
func (p *bagPane) MouseDown(ev *desktop.MouseEvent) {
	p.shifting = ev.Modifier&fyne.KeyModifierShift != 0
}

// MouseUp is part of desktop.Mouseable.
func (p *bagPane) MouseUp(*desktop.MouseEvent) { p.shifting = false }

// Dragged is part of fyne.Draggable: it turns the bag, or with shift moves the picture.
func (p *bagPane) Dragged(ev *fyne.DragEvent) {
	p.turning = true
	if !p.shifting {
		p.turn(foldedpane.Turned(p.seen(), ev.Dragged))
		return
	}
	camera := p.camera
	by := geometry.Vec2{X: float64(ev.Dragged.DX), Y: -float64(ev.Dragged.DY)}
	camera.Shift = camera.Shift.Add(by.Scale(1 / p.half()))
	p.shift(camera)
}

// DragEnd is part of fyne.Draggable.
func (p *bagPane) DragEnd() {
	p.turning = false
	p.draw()
}

// Tapped is part of fyne.Tappable; without it there is no DoubleTapped.
func (p *bagPane) Tapped(*fyne.PointEvent) {}

// DoubleTapped is part of fyne.DoubleTappable.
func (p *bagPane) DoubleTapped(*fyne.PointEvent) { p.fit() }

// fit shows the whole bag from where it is seen now.
func (p *bagPane) fit() {
	p.shift(solid.Camera{Azimuth: p.camera.Azimuth, Elevation: p.camera.Elevation, Zoom: 1})
}

// half is half the lesser side of the picture, in which shifts are measured.
func (p *bagPane) half() float64 {
	size := p.figure.picture.Size()
	return max(float64(min(size.Width, size.Height))/2, 1)
}

// Scrolled is part of fyne.Scrollable: the wheel zooms at the pointer.
func (p *bagPane) Scrolled(ev *fyne.ScrollEvent) {
	const wheelStep, zoomStep = 25, 1.2
	size := p.figure.picture.Size()
	steps := min(max(float64(ev.Scrolled.DY)/wheelStep, -4), 4)
	at := geometry.Vec2{X: float64(ev.Position.X - size.Width/2), Y: float64(size.Height/2 - ev.Position.Y)}.Scale(1 / p.half())
	camera := p.camera
	camera.Zoom = min(max(camera.Zoom*math.Pow(zoomStep, steps), solid.LeastZoom), solid.GreatestZoom)
	camera.Shift = at.Add(camera.Shift.Sub(at).Scale(camera.Zoom / p.camera.Zoom))
	p.shift(camera)
}

// FocusGained is part of fyne.Focusable.
func (p *bagPane) FocusGained() { p.light(true) }

// FocusLost is part of fyne.Focusable.
func (p *bagPane) FocusLost() { p.light(false) }

func (p *bagPane) light(on bool) {
	p.ring.Hidden = !on
	p.ring.Refresh()
}

// TypedRune is part of fyne.Focusable.
func (p *bagPane) TypedRune(letter rune) { p.view.TypedRune(letter) }

// TypedKey is part of fyne.Focusable. Arrows turn the bag the way they point.
func (p *bagPane) TypedKey(key *fyne.KeyEvent) {
	if turned, isArrow := foldedpane.TurnedByKey(p.seen(), key.Name); isArrow {
		p.turn(turned)
		return
	}
	p.view.TypedKey(key)
}

// arrange puts what lies over the picture in its place.
func (p *bagPane) arrange() {
	pad := p.Theme().Size(theme.SizeNamePadding)
	size, least := p.Size(), p.views.MinSize()
	put(p.views, size.Width-least.Width-pad, pad, least.Width, least.Height)
	beside, below := size.Width-least.Width-3*pad, size.Width-2*pad
	if p.notice.MinSize().Width <= beside {
		put(p.notice, pad, pad, p.notice.MinSize().Width, p.notice.MinSize().Height)
		return
	}
	wide := max(min(p.notice.MinSize().Width, below), 1)
	put(p.notice, pad, least.Height+2*pad, wide, p.notice.heightFor(wide))
}

// CreateRenderer is part of fyne.Widget.
func (p *bagPane) CreateRenderer() fyne.WidgetRenderer {
	r := &bagPaneRenderer{p}
	r.colour()
	return r
}

type bagPaneRenderer struct{ p *bagPane }

func (r *bagPaneRenderer) colour() {
	r.p.ring.StrokeColor = r.p.Theme().Color(theme.ColorNamePrimary, fyne.CurrentApp().Settings().ThemeVariant())
	r.p.ring.StrokeWidth = 2
}

// Layout is part of fyne.WidgetRenderer.
func (r *bagPaneRenderer) Layout(size fyne.Size) {
	r.p.figure.picture.Resize(size)
	r.p.ring.Resize(size)
	r.p.arrange()
	r.p.draw()
}

// MinSize is part of fyne.WidgetRenderer.
func (r *bagPaneRenderer) MinSize() fyne.Size { return fyne.NewSize(1, 1) }

// Destroy is part of fyne.WidgetRenderer.
func (r *bagPaneRenderer) Destroy() {}

// Objects is part of fyne.WidgetRenderer.
func (r *bagPaneRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.p.figure.picture, r.p.notice, r.p.views, r.p.ring}
}

// Refresh is part of fyne.WidgetRenderer. fyne asks for it when the theme changes.
func (r *bagPaneRenderer) Refresh() {
	r.colour()
	r.p.views.Refresh()
	r.p.notice.Refresh()
	r.p.arrange()
	r.p.draw()
}
