package meeting

import (
	"fmt"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/project"
	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

func TestGoldenPictures(t *testing.T) {
	const tolerance = 0.01
	light := newBench(t, demo(t), 1024, 700)
	geomtest.GoldenPicture(t, "meeting/one.png", light.capture(), tolerance)
	light.keepThree()
	light.typed("2")
	geomtest.GoldenPicture(t, "meeting/variant.png", light.capture(), tolerance)
	night := newBench(t, demo(t), 1920, 1080, dark)
	night.keepThree()
	night.typed("c1")
	geomtest.GoldenPicture(t, "meeting/compared-dark.png", night.capture(), tolerance)
	large := newBench(t, demo(t), 1024, 700, func(s *settings.Settings) { s.SetTextScale(2) })
	large.keepThree()
	large.resize(700, 300, 1200)
	large.typed("c")
	geomtest.GoldenPicture(t, "meeting/large.png", large.capture(), tolerance)
}

func TestGoldenMarkup(t *testing.T) {
	b := newBench(t, demo(t), 1024, 700)
	b.keepThree()
	b.typed("c3")
	geomtest.Golden(t, "meeting/compared.xml", []byte(test.RenderToMarkup(b.window.Canvas())))
}

// ground returns what is seen of a bag from the front, by asking pixel for pixel what lies
// there: how wide its foot is, and how low it stands.
func ground(t *testing.T, b *bench, f *figure) (width, row float64) {
	t.Helper()
	v, _ := b.stage.viewOf(f)
	const finer = 0.25
	for y := float64(v.Height); y > 0; y -= finer {
		first, last := -1.0, 0.0
		for x := 0.0; x < float64(v.Width); x += finer {
			if _, found := v.Pick(x, y); found {
				if last = x; first < 0 {
					first = x
				}
			}
		}
		if first >= 0 {
			return last - first, y
		}
	}
	t.Fatal("no bag is seen")
	return 0, 0
}

// Side by side a mm of every bag takes as many pixels, and all stand on one line. They
// are measured where the nearest edge is, which lies half a depth nearer than the middle.
func TestOneScale(t *testing.T) {
	b := newBench(t, bag.OfSize(190, 100, 250), 1600, 900)
	b.typed("k")
	b.resize(300, 100, 400)
	b.typed("kc")
	b.resize(240, 100, 200)
	b.stage.turn(solid.Front)
	if len(b.stage.bags()) != 3 {
		t.Fatalf("%d bags are seen", len(b.stage.bags()))
	}
	wide, low := ground(t, b, b.stage.present)
	for place, want := range []float64{190, 300} {
		got, row := ground(t, b, b.stage.kept[place])
		if ratio := got / wide; math.Abs(ratio-want/240) > 0.01 {
			t.Errorf("%s is %.3f as wide as the bag, want %.3f", project.Letter(place), ratio, want/240)
		}
		if math.Abs(row-low) > 0.5 {
			t.Errorf("%s stands at row %.2f, the bag at %.2f", project.Letter(place), row, low)
		}
	}
	b.window.Resize(fyne.NewSize(800, 1000)) // now the cards are too narrow, not too low
	v, _ := b.stage.viewOf(b.stage.present)
	scale := v.Scale()
	if v, _ := b.stage.fitted(b.stage.beside); math.Abs(v.Scale()/scale-1) < 0.1 {
		t.Error("the card of the thing for scale is as wide as those of bags, and proves nothing")
	}
	for _, f := range b.stage.seen {
		if v, _ := b.stage.viewOf(f); math.Abs(v.Scale()/scale-1) > 1e-9 {
			t.Errorf("a figure of %v has %g pixels per mm, the bag %g", v.Width, v.Scale(), scale)
		}
	}
	b.typed("c")
	for _, keys := range []string{"1", "2", "0"} {
		b.typed(keys)
		seen := b.stage.bags()[0]
		if v, _ := b.stage.viewOf(seen); keys == "1" {
			scale = v.Scale()
		} else if v.Scale() != scale {
			t.Errorf("key %s: alone at %g pixels per mm, others at %g", keys, v.Scale(), scale)
		}
	}
}

// What stands for scale is seen whole beside a bag that is alone, and beside the others
// on a card of its own.
func TestTheReferenceIsSeenWhole(t *testing.T) {
	for _, width := range []float64{60, 240, 600, 900} {
		b := newBench(t, bag.OfSize(width, 60, 200), 700, 1000) // a screen on its side
		for _, reference := range solid.References()[1:] {
			b.setReference(reference)
			with, _ := b.stage.viewOf(b.stage.present)
			without := with
			without.Reference = solid.NoReference
			edge := edgesDiffer(with, without)
			if !edge.seen || edge.touched {
				t.Errorf("%s beside a bag of %g mm: %+v", reference, width, edge)
			}
		}
		b.typed("kc")
		for _, reference := range solid.References() {
			b.setReference(reference)
			if shown := b.stage.beside.picture.Visible(); shown != (reference != solid.NoReference) {
				t.Errorf("%q stands beside the variants: %v", reference, shown)
			}
		}
	}
}

type difference struct{ seen, touched bool }

// edgesDiffer tells whether two views differ at all, and at the left and right edge.
func edgesDiffer(one, other solid.View) (d difference) {
	var renderer, second solid.Renderer
	one.Look.Shadow, other.Look.Shadow = 0, 0
	a, b := renderer.Draw(one), second.Draw(other)
	for y := range one.Height {
		for x := range one.Width {
			if a.RGBAAt(x, y) != b.RGBAAt(x, y) {
				d.seen = true
				d.touched = d.touched || x == 0 || x == one.Width-1
			}
		}
	}
	return d
}

// One drag turns all that is seen; what is not seen is not drawn.
func TestAllTurnTogether(t *testing.T) {
	b := newBench(t, bag.OfSize(190, 100, 250), 1024, 700)
	b.keepThree()
	b.typed("2")
	b.press(fyne.KeyDelete)
	b.typed("c")
	clear(b.orders)
	before := b.stage.camera
	b.stage.Dragged(&fyne.DragEvent{Dragged: fyne.Delta{DX: 20, DY: 10}})
	b.stage.Dragged(&fyne.DragEvent{Dragged: fyne.Delta{DX: 20}})
	if b.stage.camera.Azimuth >= before.Azimuth || b.stage.camera.Elevation <= before.Elevation {
		t.Errorf("a drag to the right and down turned %+v to %+v", before, b.stage.camera)
	}
	for _, f := range b.stage.all() {
		want := 0
		if f.picture.Visible() {
			want = 2
		}
		if b.orders[f] != want {
			t.Errorf("place %d: %d pictures in two moves, want %d", f.place, b.orders[f], want)
		}
	}
	b.stage.DragEnd()
	for _, f := range b.stage.seen {
		if b.orders[f] != 4 {
			t.Errorf("place %d: %d pictures in all, want a last draft and a fine one", f.place, b.orders[f])
		}
	}
	b.window.Canvas().Focus(b.stage)
	azimuth, now := b.stage.camera.Azimuth, b.now()
	b.press(fyne.KeyLeft)
	if b.stage.camera.Azimuth <= azimuth || b.now() != now {
		t.Error("an arrow on the stage does not turn the bags")
	}
	if b.typed("c"); b.comparing {
		t.Error("letters do nothing on the stage")
	}
}

// While a slider moves, the variants beside the bag are left as they are.
func TestVariantsRestInADrag(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.keepThree()
	b.typed("c")
	b.slide(depth, 0.4)
	clear(b.orders)
	b.slide(depth, 0.42, 0.44)
	if b.orders[b.stage.present] != 2 || len(b.orders) != 1 {
		t.Errorf("pictures of %d figures, %d of the bag", len(b.orders), b.orders[b.stage.present])
	}
	if size := sizeOf(&b.state.Spec); b.stage.present.lines[depth].Text() != size.lines(geometry.Millimetre)[depth] {
		t.Errorf("the card says %q", b.stage.present.lines[depth].Text())
	}
}

// Taps on cards choose.
func TestTapsChoose(t *testing.T) {
	b := newBench(t, bag.OfSize(240, 100, 360), 1024, 700)
	b.keepThree()
	b.typed("c")
	tap := func(f *figure) {
		at := f.border.Position().AddXY(f.border.Size().Width/2, f.border.Size().Height/2)
		b.stage.Tapped(&fyne.PointEvent{Position: at})
	}
	for _, place := range []int{1, 0, none} {
		f := b.stage.present
		if place != none {
			f = b.stage.kept[place]
		}
		if tap(f); b.chosen != place {
			t.Errorf("a tap on place %d chose %d", place, b.chosen)
		}
	}
	b.typed("2")
	if tap(b.stage.beside); b.chosen != 1 {
		t.Error("a tap on the thing for scale chose something")
	}
}

// Nothing is clipped and nothing overlaps, on small screens and large, in any unit, with
// text of the usual size and of twice that.
func TestNothingIsClipped(t *testing.T) {
	for _, screen := range []fyne.Size{{Width: 1024, Height: 700}, {Width: 1366, Height: 768}, {Width: 1920, Height: 1080}} {
		for _, scale := range []float64{1, 2} {
			for _, unit := range geometry.Units() {
				name := fmt.Sprintf("%.0f×%.0f, text %g, %s", screen.Width, screen.Height, scale, unit)
				b := newBench(t, bag.OfSize(233.4, 111.1, 333.3), screen.Width, screen.Height, func(s *settings.Settings) {
					s.SetTextScale(scale)
					s.SetUnit(unit)
				})
				for _, f := range b.stage.all() {
					f.request = func(order) {} // pictures take time, and have a place without
				}
				spec := b.doc.State().Spec
				spec.Name = "A long name of a bag for a house that has one that is even longer"
				b.doc.Set(spec)
				b.setReference(solid.NoReference)
				checkPlaces(t, name, b)
				for _, wide := range []float64{333.3, 444.4, 555.5, 999.9} {
					b.resize(wide, 211.1, 733.3)
					b.typed("k")
				}
				b.typed("4")
				checkPlaces(t, name+", one", b)
				b.setReference(solid.Hand)
				b.resize(222.2, 99.9, 444.4)
				b.typed("c")
				checkPlaces(t, name+", side by side", b)
				b.Say("The proof is in /home/somebody/documents/customers/a long name of a folder/2026/another one/bag-proof.pdf")
				checkPlaces(t, name+", with something said", b)
				if picture := b.stage.present.picture.Size().Height; picture < 0.15*screen.Height {
					t.Errorf("%s: only %.0f pixels are left for the picture", name, picture)
				}
			}
		}
	}
}

// placed is something that is seen, and where.
type placed struct {
	object fyne.CanvasObject
	at     fyne.Position
	size   fyne.Size
}

func (p placed) foot() fyne.Position { return p.at.AddXY(p.size.Width, p.size.Height) }

// holds tells whether something lies within, but for the rounding of letters to pixels.
func (p placed) holds(other placed) bool {
	const slack = 1
	foot, end := other.foot(), p.foot()
	return other.at.X >= p.at.X-slack && other.at.Y >= p.at.Y-slack && foot.X <= end.X+slack && foot.Y <= end.Y+slack
}

func (p placed) overlaps(other placed) bool {
	const slack = 1
	return p.at.X < other.foot().X-slack && other.at.X < p.foot().X-slack && p.at.Y < other.foot().Y-slack && other.at.Y < p.foot().Y-slack
}

// walk visits the texts and buttons that are seen in an object. Texts have the size that
// they need.
func walk(object fyne.CanvasObject, at fyne.Position, visit func(placed)) {
	if !object.Visible() {
		return
	}
	at = at.Add(object.Position())
	var inner []fyne.CanvasObject
	switch object := object.(type) {
	case *canvas.Text:
		if object.Text != "" {
			visit(placed{object, at, object.MinSize()})
		}
	case *button:
		visit(placed{object, at, object.Size()})
	case *fyne.Container:
		inner = object.Objects
	case fyne.Widget:
		inner = test.WidgetRenderer(object).Objects()
	}
	for _, part := range inner {
		walk(part, at, visit)
	}
}

// checkPlaces looks at every text and button that is seen.
func checkPlaces(t *testing.T, name string, b *bench) {
	t.Helper()
	view := placed{b.View, fyne.Position{}, b.Size()}
	var texts, all []placed
	walk(b.View, fyne.Position{}, func(p placed) {
		all = append(all, p)
		if !view.holds(p) {
			t.Errorf("%s: %s at %v, %v large, leaves the view of %v", name, saidBy(p), p.at, p.size, view.size)
		}
		if button, is := p.object.(*button); is {
			if least := button.MinSize(); p.size.Width < least.Width-0.5 || p.size.Height < least.Height-0.5 {
				t.Errorf("%s: the button %q has %v, it needs %v", name, button.Text, p.size, least)
			}
		} else {
			texts = append(texts, p)
		}
	})
	if len(texts) < 9 || len(all)-len(texts) < 4 {
		t.Errorf("%s: only %d texts and %d buttons", name, len(texts), len(all)-len(texts))
	}
	for i, one := range all {
		for _, other := range all[:i] {
			// The letters of a line leave room below them, into which the next may reach.
			if one.overlaps(other) && !(isText(one) && isText(other)) {
				t.Errorf("%s: %s lies on %s", name, saidBy(one), saidBy(other))
			}
		}
	}
	if !b.comparing {
		return
	}
	stage := fyne.CurrentApp().Driver().AbsolutePositionForObject(b.stage)
	for _, f := range b.stage.seen {
		card := placed{f.border, stage.Add(f.border.Position()), f.border.Size()}
		for _, text := range texts {
			if card.overlaps(text) && !card.holds(text) {
				t.Errorf("%s: %s at %v, %v large, leaves its card at %v, %v large", name, saidBy(text), text.at, text.size, card.at, card.size)
			}
		}
	}
}

func isText(p placed) bool {
	_, is := p.object.(*canvas.Text)
	return is
}

func saidBy(p placed) string {
	if text, is := p.object.(*canvas.Text); is {
		return fmt.Sprintf("the text %q", text.Text)
	}
	return fmt.Sprintf("the button %q", p.object.(*button).Text)
}
