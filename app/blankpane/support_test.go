package blankpane

import (
	"bytes"
	"image"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/focus"
	"gussetwright/app/project"
	"gussetwright/app/settings"
	"gussetwright/assets"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// bench is a pane in a window, painted at once rather than soon.
type bench struct {
	*Pane
	window fyne.Window
	doc    *document.Document
	look   *focus.Focus
	set    *settings.Settings
}

// newBench returns a pane of the given size on a bag.
func newBench(t testing.TB, spec bag.Spec, width, height float32, appearances ...settings.Appearance) *bench {
	app := test.NewTempApp(t)
	b := &bench{doc: document.New(), look: focus.New(), set: settings.New(app.Preferences())}
	for _, a := range appearances {
		b.set.SetAppearance(a)
	}
	appearance.Wear(app, b.set)
	app.Settings().SetTheme(appearance.New(b.set))
	b.doc.Load(project.Project{Spec: spec})
	b.Pane = New(b.doc, b.look, b.set)
	b.Pane.request = func(o order) { b.Pane.show(b.Pane.artist.paint(o)) }
	b.window = test.NewTempWindow(t, b.Pane)
	b.window.SetPadded(false)
	b.window.Resize(fyne.NewSize(width, height))
	t.Cleanup(b.Close)
	return b
}

func (b *bench) capture() image.Image { return b.window.Canvas().Capture() }

// demo returns the bag of the demo project.
func demo(t testing.TB) bag.Spec {
	opened, err := project.ReadFrom(bytes.NewReader(assets.Demo))
	if err != nil {
		t.Fatal(err)
	}
	return opened.Spec
}

// sized returns the default bag in another size.
func sized(width, gusset, height float64) bag.Spec {
	spec := bag.Default()
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height = width, gusset, height
	spec.Derive(func(string) bool { return false })
	return spec
}

// pixel returns where a point of a piece is seen.
func (b *bench) pixel(piece int, x, y float64) fyne.Position {
	return position(b.view.screen(b.desk.at(piece, geometry.Vec2{X: x, Y: y})))
}

func (b *bench) hoverAt(at fyne.Position) {
	b.surface.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}})
}

func (b *bench) down(at fyne.Position, button desktop.MouseButton) {
	b.hoverAt(at)
	b.surface.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: button})
}

func (b *bench) up(at fyne.Position, button desktop.MouseButton) {
	b.surface.MouseUp(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: button})
	if b.surface.drag != nil {
		b.surface.DragEnd()
	}
}

func (b *bench) click(at fyne.Position) {
	b.down(at, desktop.MouseButtonPrimary)
	b.up(at, desktop.MouseButtonPrimary)
}

// dragTo moves the pressed pointer in some steps, as a hand does.
func (b *bench) dragTo(from, to fyne.Position) {
	const steps = 5
	last := from
	for i := 1; i <= steps; i++ {
		share := float32(i) / steps
		at := fyne.NewPos(from.X+(to.X-from.X)*share, from.Y+(to.Y-from.Y)*share)
		b.surface.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: at}, Dragged: fyne.NewDelta(at.X-last.X, at.Y-last.Y)})
		last = at
	}
}

func (b *bench) key(name fyne.KeyName) { b.surface.TypedKey(&fyne.KeyEvent{Name: name}) }

func near(a, b fyne.Position) bool {
	return math.Abs(float64(a.X-b.X)) < 0.01 && math.Abs(float64(a.Y-b.Y)) < 0.01
}
