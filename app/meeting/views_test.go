package meeting

import (
	"math"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/settings"
	"gussetwright/geometry/bag"
	"gussetwright/render/solid"
)

// However the bags were turned, there is a way back to the first view.
func TestWaysBackToTheFirstView(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	middle := fyne.NewPos(b.stage.Size().Width/2, b.stage.Size().Height/2)
	away := func() {
		b.stage.Dragged(&fyne.DragEvent{Dragged: fyne.Delta{DX: 60, DY: 20}})
		b.stage.DragEnd()
		b.stage.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.Delta{DY: 2 * wheelStep}, PointEvent: fyne.PointEvent{Position: fyne.NewPos(80, 60)}})
		if b.page.aside.view.Text != "Turned" || b.stage.camera.Zoom <= 1 {
			t.Fatalf("turned to %+v, it says %q", b.stage.camera, b.page.aside.view.Text)
		}
	}
	for name, back := range map[string]func(){
		"a double click": func() {
			b.stage.Tapped(&fyne.PointEvent{Position: middle})
			b.stage.Tapped(&fyne.PointEvent{Position: middle})
		},
		"F":          func() { b.typed("f") },
		"opening it": func() { b.Shut(); b.Open(solid.NoReference) },
	} {
		away()
		if back(); b.stage.camera != first.Limited() || b.page.aside.view.Text != "From a corner" {
			t.Errorf("%s leads to %+v, called %q", name, b.stage.camera, b.page.aside.view.Text)
		}
	}
	slow := tap{time.Now(), middle}
	if later := (tap{slow.when.Add(5 * time.Second), middle}); later.isSecond(slow) {
		t.Error("two slow taps are a double tap")
	}
	if elsewhere := (tap{slow.when, middle.AddXY(40, 0)}); elsewhere.isSecond(slow) {
		t.Error("taps far apart are a double tap")
	}
}

// choose opens a list by its button and takes an item.
func choose(t *testing.T, b *bench, button *button, item string) {
	t.Helper()
	test.Tap(button)
	list, is := b.window.Canvas().Focused().(*widget.PopUpMenu)
	if !is {
		t.Fatalf("%q opens no list", button.Text)
	}
	for _, object := range list.Items {
		if row, is := object.(interface {
			fyne.Tappable
			fyne.Widget
		}); is && saysIn(row, item) {
			row.Tapped(&fyne.PointEvent{})
			return
		}
	}
	t.Fatalf("the list has no %q", item)
}

// saysIn tells whether a text is written in a widget.
func saysIn(object fyne.CanvasObject, text string) (found bool) {
	walk(object, fyne.Position{}, func(p placed) { found = found || isText(p) && saidBy(p) == `the text "`+text+`"` })
	return found
}

func TestNamedViews(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.typed("++")
	choose(t, b, b.page.aside.view, "From the side")
	if b.stage.camera != solid.Right.Limited() || b.page.aside.view.Text != "From the side" || b.stage.side != 1 {
		t.Errorf("seen by %+v, called %q", b.stage.camera, b.page.aside.view.Text)
	}
	choose(t, b, b.page.aside.beside, "75 cl bottle")
	if b.stage.reference != solid.Bottle75 || b.page.aside.beside.Text != "75 cl bottle" {
		t.Errorf("beside it stands %q", b.stage.reference)
	}
}

// The letters of the lists are those of the page.
func TestListsAreAsLargeAsThePage(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1920, 1080)
	test.Tap(b.page.aside.beside)
	list := b.window.Canvas().Focused().(*widget.PopUpMenu)
	texts := 0
	walk(list, fyne.Position{}, func(p placed) {
		if isText(p) {
			texts++
			if want := fyne.MeasureText("Hand", b.page.theme.Size(theme.SizeNameText), fyne.TextStyle{}).Height; p.size.Height < want-1 {
				t.Errorf("%s is %g high, letters of the page %g", saidBy(p), p.size.Height, want)
			}
		}
	})
	if texts < len(solid.References()) {
		t.Errorf("the list has %d texts", texts)
	}
}

// The wheel zooms at the pointer; cards keep their bags in their middles.
func TestZooming(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.setReference(solid.NoReference)
	shown := func() *solid.View {
		v, _ := b.stage.viewOf(b.stage.present)
		return &v
	}
	// The middle of the bag, which lies where the stage has its middle, goes away from a
	// pointer at the left as far as the picture grows.
	const from = 100
	before := shown().Scale()
	pos := fyne.NewPos(b.stage.Size().Width/2-from, b.stage.Size().Height/2)
	b.stage.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.Delta{DY: wheelStep}, PointEvent: fyne.PointEvent{Position: pos}})
	after := shown()
	moved := after.Camera.Shift.X * halfOf(b.stage.Size())
	if math.Abs(after.Scale()/before-zoomStep) > 1e-6 || math.Abs(moved-from*(zoomStep-1)) > 0.5 {
		t.Errorf("one step of the wheel: %g times as large, moved by %g", after.Scale()/before, moved)
	}
	for range 40 {
		b.typed("-")
	}
	if got := shown().Scale() / before; math.Abs(got-leastZoom) > 1e-6 {
		t.Errorf("zoomed out to %g of the whole", got)
	}
	b.typed("fkc")
	b.stage.Scrolled(&fyne.ScrollEvent{Scrolled: fyne.Delta{DY: wheelStep}, PointEvent: fyne.PointEvent{Position: fyne.NewPos(9, 9)}})
	if v, _ := b.stage.viewOf(b.stage.kept[0]); v.Camera.Shift.X != 0 || v.Camera.Shift.Y != 0 || b.stage.camera.Zoom != zoomStep {
		t.Errorf("on a card: %+v", v.Camera)
	}
}

// places returns where the buttons are that are seen.
func places(b *bench) map[*button]fyne.Position {
	at := map[*button]fyne.Position{}
	walk(b.View, fyne.Position{}, func(p placed) {
		if button, is := p.object.(*button); is {
			at[button] = p.at
		}
	})
	return at
}

// Whatever is said in a line, no button moves.
func TestButtonsStayWhereTheyAre(t *testing.T) {
	for _, screen := range []fyne.Size{{Width: 1024, Height: 700}, {Width: 1440, Height: 900}, {Width: 1920, Height: 1080}} {
		b := newBench(t, bag.OfSize(240, 100, 360), screen.Width, screen.Height)
		b.keepThree()
		before := places(b)
		for _, said := range []func(){
			func() { b.Say("Something short.") }, func() { b.typed("k") }, func() { b.typed("k") }, func() { b.tooLarge() },
			func() { b.Say("") }, func() { b.typed("0") }, func() { b.set.SetAppearance(settings.Dark) },
		} {
			said()
			for button, at := range places(b) {
				if was, seen := before[button]; seen && was != at {
					t.Errorf("%v: with %q the button %q went from %v to %v", screen, b.said, button.Text, was, at)
				}
			}
		}
	}
}

// Title, stage and sliders begin on one line, and the captions of the cards too.
func TestEdgesAreInLine(t *testing.T) {
	b := newBench(t, demo(t), 1024, 700)
	b.keepThree()
	b.typed("c")
	driver := fyne.CurrentApp().Driver()
	left := driver.AbsolutePositionForObject(b.page.title.text).X
	for name, object := range map[string]fyne.CanvasObject{
		"the stage": b.stage, "the keep button": b.page.keep, "the track": b.dials[width].slider.track, "the first card": b.stage.seen[0].border,
	} {
		if at := driver.AbsolutePositionForObject(object).X; math.Abs(float64(at-left)) > 0.5 {
			t.Errorf("%s begins at %g, the title at %g", name, at, left)
		}
	}
	large := newBench(t, demo(t), 1024, 700, func(s *settings.Settings) { s.SetTextScale(2) })
	large.keepThree()
	large.typed("c")
	if wide := large.stage.present.name; wide.HeightFor(wide.Size().Width) <= large.stage.kept[0].name.Size().Height {
		t.Error("all names have one line, which proves little")
	}
	checkCaptions(t, b)
	checkCaptions(t, large)
}

// checkCaptions looks whether names and sizes on the cards begin on one line each.
func checkCaptions(t *testing.T, b *bench) {
	t.Helper()
	for _, f := range b.stage.seen {
		if f.name.Text() == "" || f.name.Position().Y != b.stage.seen[0].name.Position().Y {
			t.Errorf("%q is named at %g", f.name.Text(), f.name.Position().Y)
		}
		if f != b.stage.beside && f.lines[0].Position().Y != b.stage.present.lines[0].Position().Y {
			t.Errorf("the size of %q begins at %g", f.name.Text(), f.lines[0].Position().Y)
		}
	}
}

// At the size that is chosen the toolkit does not round the height of the letters down.
func TestLettersKeepTheirFeet(t *testing.T) {
	test.NewTempApp(t)
	changed := 0
	for wanted := float32(20); wanted < 60; wanted++ {
		got := withFeet(wanted, fyne.TextStyle{Bold: true})
		height := float64(fyne.MeasureText("g", got, fyne.TextStyle{Bold: true}).Height)
		if got > wanted || got < wanted-3 || math.Round(height) < height {
			t.Errorf("size %g became %g, %g high", wanted, got, height)
		}
		if got != wanted {
			changed++
		}
	}
	if changed == 0 {
		t.Error("every size has its feet, and the function no use")
	}
}

// The name of the bag becomes smaller before it is cut off.
func TestTheTitleIsCutLast(t *testing.T) {
	b := newBench(t, demo(t), 1024, 700)
	text := b.page.title.text
	name := b.doc.State().Spec.Name
	large := text.TextSize
	if heading := b.page.theme.Size(theme.SizeNameHeadingText); text.Text != name || large > heading || large < heading-3 {
		t.Errorf("with room it is %q, %g high", text.Text, text.TextSize)
	}
	b.window.Resize(fyne.NewSize(620, 700))
	if text.Text != name || text.TextSize >= large {
		t.Errorf("with less room it is %q, %g high", text.Text, text.TextSize)
	}
	spec := b.doc.State().Spec
	for range 5 {
		spec.Name += " and " + name
	}
	b.doc.Set(spec)
	if text.Text == spec.Name || text.MinSize().Width > b.page.title.Size().Width || text.TextSize < b.page.theme.Size(theme.SizeNameText)-3 {
		t.Errorf("a name without an end is %q, %g wide in %g", text.Text, text.MinSize().Width, b.page.title.Size().Width)
	}
}
