package foldedpane

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

// bench is a pane in a window, drawn at once rather than soon.
type bench struct {
	*Pane
	window fyne.Window
	doc    *document.Document
	look   *focus.Focus
	orders []order // every one since the last look
}

// newBench returns a pane of the given size on a bag.
func newBench(t testing.TB, spec bag.Spec, width, height float32, appearances ...settings.Appearance) *bench {
	app := test.NewTempApp(t)
	b := &bench{doc: document.New(), look: focus.New()}
	set := settings.New(app.Preferences())
	set.SetAppearance(settings.Light)
	for _, a := range appearances {
		set.SetAppearance(a)
	}
	app.Settings().SetTheme(appearance.New(set))
	b.doc.Load(project.Project{Spec: spec})
	b.Pane = New(b.doc, b.look, set)
	b.Pane.request = func(o order) {
		b.orders = append(b.orders, o)
		b.Pane.show(b.Pane.artist.draw(o))
	}
	b.window = test.NewTempWindow(t, b.Pane)
	b.window.SetPadded(false)
	b.window.Resize(fyne.NewSize(width, height))
	t.Cleanup(b.Close)
	return b
}

func (b *bench) capture() image.Image { return b.window.Canvas().Capture() }

// centre returns the position on the canvas of the middle of the stage.
func (b *bench) centre() fyne.Position {
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(b.stage)
	return at.Add(b.middle())
}

// demo returns the bag of the demo project.
func demo(t testing.TB) bag.Spec {
	opened, err := project.ReadFrom(bytes.NewReader(assets.Demo))
	if err != nil {
		t.Fatal(err)
	}
	return opened.Spec
}
