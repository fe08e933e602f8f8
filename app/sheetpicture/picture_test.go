package sheetpicture

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/appearance"
	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/sheet"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// Blanks with a zigzag edge lie head to tail with their teeth in each other: here a
// sheet is so low that their boxes would not lie above each other.
func TestGoldenHeadToTail(t *testing.T) {
	test.NewTempApp(t)
	spec := bag.Default()
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height, spec.Body.Seams = 120, 70, 110, bag.SeamsOne
	spec.Body.Top, spec.Body.ZigzagPitch, spec.Body.ZigzagDepth = bag.TopZigzag, 10, 8
	spec.Sheet.Gap, spec.Sheet.Width = 0, 900
	laid := blank.Lay(spec)
	spec.Sheet.Height = 12 + 5 + 2*laid.Pieces[0].Height - 6
	art := artOf(spec)
	if !art.Plan.Nested || art.Plan.Up() != 4 {
		t.Fatalf("%d-up, nested: %v", art.Plan.Up(), art.Plan.Nested)
	}
	var a artist
	geomtest.GoldenPicture(t, "sheetpicture/head-to-tail.png", a.paint(art, lookOf(test.Theme()), 500, 260, 12, 1), 0.002)
}

// artOf returns what the picture of a bag shows.
func artOf(spec bag.Spec) Art {
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	return Art{&plan, &laid, func(mm float64) string { return geometry.FormatNumber(mm, 1) + " mm" }}
}

// Creases end short of the numbers: between and round their digits there are none.
func TestCreasesEndShortOfNumbers(t *testing.T) {
	look := lookIn(t, settings.Light)
	spec := bag.Default()
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height, spec.Body.Seams = 80, 40, 120, bag.SeamsOne
	spec.Body.SeamFlap = 10 // half of it from the middle of the blank runs a crease
	spec.Sheet.Width, spec.Sheet.Height = 1000, 700
	art := artOf(spec)
	var a artist
	creased := func(picture *image.RGBA) (pixels, numbers int) {
		crease := look.palette().Ink[inCrease]
		for _, item := range a.names {
			label := item.(scene.Label)
			middle, foot := a.view.At(label.At)
			half := typeface.Advance(label.Text, a.letter, label.Bold)/2 + 2
			numbers++
			for y := int(foot - 0.7*a.letter); y <= int(foot); y++ {
				for x := int(middle - half); x <= int(middle+half); x++ {
					if color.NRGBA(picture.RGBAAt(x, y)) == crease {
						pixels++
					}
				}
			}
		}
		return pixels, numbers
	}
	if pixels, numbers := creased(a.paint(art, look, 300, 222, 11, 1)); pixels > 0 || numbers != art.Plan.Up() {
		t.Errorf("%d pixels of creases in the places of %d numbers of %d", pixels, numbers, art.Plan.Up())
	}
}

// Numbers and words have a contrast of 4.5 to 1 with blanks and with the colour of every
// bag of a form, in light windows and dark ones: WCAG 2.2, success criterion 1.4.3 (value
// from memory).
func TestNumbersAreReadOnEveryBlank(t *testing.T) {
	for _, appears := range []settings.Appearance{settings.Light, settings.Dark} {
		look := lookIn(t, appears)
		grounds := map[string]color.NRGBA{"a blank": look.blank}
		for i := range itemColours {
			grounds["bag "+strconv.Itoa(i+1)] = itemColour(&look, i)
		}
		for name, ground := range grounds {
			if got := contrast(look.ink, ground); got < 4.5 {
				t.Errorf("%s: on %s the contrast is %.2f", appears, name, got)
			}
		}
	}
}

// lookIn returns the colours of a light or a dark window.
func lookIn(t *testing.T, appears settings.Appearance) look {
	app := test.NewTempApp(t)
	set := settings.New(app.Preferences())
	set.SetAppearance(appears)
	appearance.Wear(app, set)
	return lookOf(app.Settings().Theme())
}

// contrast is the contrast ratio of WCAG 2.2 (formula from memory).
func contrast(a, b color.NRGBA) float64 {
	luminance := func(c color.NRGBA) float64 {
		light := func(v uint8) float64 {
			if s := float64(v) / 255; s > 0.04045 {
				return math.Pow((s+0.055)/1.055, 2.4)
			}
			return float64(v) / 255 / 12.92
		}
		return 0.2126*light(c.R) + 0.7152*light(c.G) + 0.0722*light(c.B)
	}
	p, q := luminance(a)+0.05, luminance(b)+0.05
	return max(p/q, q/p)
}

// The blank that does not fit is drawn so that what passes the usable part is what the
// plan says it lacks.
func TestMissingBlankLacksWhatThePlanSays(t *testing.T) {
	random := rand.New(rand.NewPCG(6, 7))
	tried := 0
	for tried < 300 {
		spec := bag.Default()
		spec.Body.Seams = bag.SeamsOne
		spec.Sheet.Width, spec.Sheet.Height = 200+600*random.Float64(), 200+600*random.Float64()
		spec.Sheet.GripperEdge = []bag.GripperEdge{bag.GripperLong, bag.GripperShort}[random.IntN(2)]
		spec.Sheet.Grain = []bag.SheetGrain{bag.GrainEither, bag.GrainAlongWidth, bag.GrainAlongHeight}[random.IntN(3)]
		spec.Sheet.GrainRule = []bag.GrainRule{bag.GrainRequired, bag.GrainPreferred, bag.GrainFree}[random.IntN(3)]
		a := artist{art: artOf(spec)}
		missing, misses := a.missing()
		if misses != (a.art.Plan.Up() == 0) {
			t.Fatalf("%d-up, missing: %v", a.art.Plan.Up(), misses)
		}
		if !misses {
			continue
		}
		tried++
		over := missing.Box(0).Max.Sub(a.art.Plan.Usable.Max)
		got := geometry.Vec2{X: max(over.X, 0), Y: max(over.Y, 0)}
		if !got.Near(a.art.Plan.TooLong) {
			t.Errorf("sheet %+v: drawn over by %v, lacking %v", spec.Sheet, got, a.art.Plan.TooLong)
		}
	}
}

// A picture holds all of what it shows for sheets of any shape, also with no room.
func TestPictureOfAnySheet(t *testing.T) {
	for _, c := range []struct{ width, height, gripper, side, tail, gap float64 }{
		{2000, 100, 12, 5, 5, 6}, {100, 2000, 12, 5, 5, 6}, {100, 100, 40, 50, 50, 50}, {2000, 2000, 0, 0, 0, 0},
	} {
		spec := bag.Default()
		spec.Body.Width, spec.Body.Gusset, spec.Body.Height, spec.Body.Seams = 40, 20, 60, bag.SeamsOne
		spec.Sheet.Width, spec.Sheet.Height = c.width, c.height
		spec.Sheet.Gripper, spec.Sheet.Side, spec.Sheet.Tail, spec.Sheet.Gap = c.gripper, c.side, c.tail, c.gap
		test.NewTempApp(t)
		var a artist
		for _, size := range []image.Point{{300, 222}, {1, 1}, {17, 400}} {
			picture := a.paint(artOf(spec), lookOf(test.Theme()), size.X, size.Y, 11, 1)
			if picture.Rect.Size() != size {
				t.Errorf("the picture is %v, want %v", picture.Rect.Size(), size)
			}
		}
		for _, corner := range []geometry.Vec2{{}, {X: c.width, Y: c.height}} {
			a.paint(artOf(spec), lookOf(test.Theme()), 300, 222, 11, 1)
			if x, y := a.view.At(corner); x < 0 || y < 0 || x > 300 || y > 222 {
				t.Errorf("sheet %g × %g: its corner lies at %g, %g", c.width, c.height, x, y)
			}
		}
	}
}

// The picture is shown larger by a click or by Enter, and Escape ends that.
func TestPictureIsEnlarged(t *testing.T) {
	test.NewTempApp(t)
	picture := New(func(entry.Explained) {})
	window := test.NewTempWindow(t, picture)
	window.Resize(fyne.NewSize(1200, 800))
	picture.Set(artOf(bag.Default()))
	for name, open := range map[string]func(){
		"a click": func() { test.Tap(picture) },
		"Enter":   func() { picture.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn}) },
	} {
		open()
		overlay := window.Canvas().Overlays().Top()
		if overlay == nil || !overlay.Visible() {
			t.Fatalf("%s shows nothing", name)
		}
		large, ok := window.Canvas().Focused().(*Picture)
		if !ok || large == picture || large.Size().Height < 600 {
			t.Fatalf("after %s the focus is at %v", name, window.Canvas().Focused())
		}
		other := bag.Default()
		other.Sheet.Width = 720
		if picture.Set(artOf(other)); large.art.Plan.Sheet.Width != 720 {
			t.Errorf("after %s the enlarged picture stays at another sheet", name)
		}
		large.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		if window.Canvas().Overlays().Top() != nil {
			t.Fatalf("after %s Escape closes nothing", name)
		}
	}
}

// BenchmarkSheetPicture is the picture as each step of a drag paints it.
func BenchmarkSheetPicture(b *testing.B) {
	test.NewTempApp(b)
	few, many := bag.Default(), bag.Default()
	many.Body.Width, many.Body.Gusset, many.Body.Height = 60, 30, 80
	many.Sheet.Width, many.Sheet.Height = 1000, 700
	for name, spec := range map[string]bag.Spec{"one": few, "many": many} {
		art, look := artOf(spec), lookOf(test.Theme())
		b.Run(name, func(b *testing.B) {
			var a artist
			b.ReportAllocs()
			b.ReportMetric(float64(art.Plan.Up()), "up")
			for b.Loop() {
				a.paint(art, look, 300, 222, 11, 1)
			}
		})
	}
}
