package blankpane

import (
	"bytes"
	"image"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/focus"
	"gussetwright/app/project"
	"gussetwright/app/settings"
	"gussetwright/assets"
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
