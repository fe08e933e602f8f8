package entry_test

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/document"
	"gussetwright/geometry"
)

// slider returns the slider of the entry.
func (d *desk) slider(t *testing.T) fyne.Draggable {
	t.Helper()
	for _, object := range test.LaidOutObjects(d.number) {
		slider, drags := object.(fyne.Draggable)
		// What is typed is dragged over too, and takes the focus.
		if _, types := object.(fyne.Focusable); drags && !types && object.Size().Width > 50 && object.Position().X > 0 {
			return slider
		}
	}
	t.Fatal("no slider")
	return nil
}

// A drag of the slider shows every place on its way, and is one step.
func TestSliderDrag(t *testing.T) {
	d := at(t, "bag.width_mm")
	slider := d.slider(t)
	var seen []float64
	d.doc.Listen(func(document.State) { seen = append(seen, d.value()) })
	width := slider.(fyne.CanvasObject).Size().Width
	for x := width / 2; x < width*0.8; x += 4 {
		slider.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(x, 10)}})
		if !d.doc.State().Dragging {
			t.Fatal("the document knows nothing of the drag")
		}
		if d.number.Text() != geometry.FormatNumber(d.value(), 2) {
			t.Errorf("%v is shown as %q", d.value(), d.number.Text())
		}
	}
	slider.DragEnd()
	if len(seen) < 8 {
		t.Errorf("only %d places seen on the way: %v", len(seen), seen)
	}
	for i, value := range seen {
		if value < 80 || value > 500 || value != math.Trunc(value) || i > 0 && value < seen[i-1] {
			t.Errorf("the drag went by %v", seen)
			break
		}
	}
	if d.steps() != 1 || d.doc.State().Dragging {
		t.Errorf("%d steps to undo, want 1", d.steps())
	}
	d.doc.Undo()
	if d.value() != 240 {
		t.Errorf("value %v after undo, want 240", d.value())
	}
}

// pull drags the thumb to a place and lets it go.
func pull(slider fyne.Draggable, x float32) {
	slider.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(x, 10)}})
	slider.DragEnd()
}

// thumb returns the middle of the thumb of a slider.
func thumb(t *testing.T, slider fyne.Draggable) float32 {
	t.Helper()
	for _, object := range test.WidgetRenderer(slider.(fyne.Widget)).Objects() {
		if circle, is := object.(*canvas.Circle); is {
			return circle.Position().X + circle.Size().Width/2
		}
	}
	t.Fatal("no thumb")
	return 0
}

// ends returns what stands below the ends of a slider.
func ends(slider fyne.Draggable) (low, high string) {
	for _, object := range test.WidgetRenderer(slider.(fyne.Widget)).Objects() {
		if text, is := object.(*canvas.Text); is {
			low, high = high, text.Text
		}
	}
	return low, high
}

// The ends of the slider give the values that are printed below them, as often as it is
// pulled there.
func TestSliderEndsAtWhatIsPrinted(t *testing.T) {
	for _, path := range []string{"bag.width_mm", "bag.gusset_mm", "bag.seam_relief_mm", "paper.caliper_um", "run.quantity", "sheet.gripper_mm", "product.weight_g"} {
		d := at(t, path)
		slider := d.slider(t)
		low, high := ends(slider)
		width := slider.(fyne.CanvasObject).Size().Width
		for x, want := range map[float32]string{0: low, width: high} {
			for range 3 {
				pull(slider, x)
			}
			if got := d.number.Text(); got != strings.ReplaceAll(want, "\u00a0", "") { // a text has its digits in groups
				t.Errorf("%s: the slider ends at %s, and %s is printed there", path, got, want)
			}
		}
		if lowNow, highNow := ends(slider); lowNow != low || highNow != high {
			t.Errorf("%s: after that %s to %s is printed, before it was %s to %s", path, lowNow, highNow, low, high)
		}
	}
}

// The thumb stays where it is let go, and a value has one place on the slider however it
// got there.
func TestThumbStays(t *testing.T) {
	for _, unit := range geometry.Units() {
		d := at(t, "bag.width_mm")
		d.set.SetUnit(unit)
		slider := d.slider(t)
		width := slider.(fyne.CanvasObject).Size().Width
		for x := float32(10); x < width-10; x += 7 {
			pull(slider, x)
			if got := thumb(t, slider); math.Abs(float64(got-x)) > 1.5 {
				t.Errorf("in %s the thumb was let go at %g and stands at %g", unit, x, got)
			}
		}
		place, value, text := thumb(t, slider), d.value(), d.number.Text()
		for _, between := range []string{"31 mm", "999 mm", "240 mm"} {
			d.typeIn(between)
			d.tap(fyne.KeyReturn)
		}
		d.typeIn(text)
		d.tap(fyne.KeyReturn)
		if got := thumb(t, slider); math.Abs(d.value()-value) > 0.02 || math.Abs(float64(got-place)) > 0.1 {
			t.Errorf("in %s %v stood at %g, and stands at %g now", unit, value, place, got)
		}
	}
}

// A value beyond the slider can be typed; the thumb waits at the end, smaller than else,
// and brings it back when it is pulled.
func TestValueBeyondTheSlider(t *testing.T) {
	d := at(t, "bag.width_mm")
	slider := d.slider(t)
	size := func() float32 {
		for _, object := range test.WidgetRenderer(slider.(fyne.Widget)).Objects() {
			if circle, is := object.(*canvas.Circle); is {
				return circle.Size().Width
			}
		}
		return 0
	}
	width, usual := slider.(fyne.CanvasObject).Size().Width, size()
	d.typeIn("900")
	d.tap(fyne.KeyReturn)
	if d.value() != 900 || thumb(t, slider) < width*0.9 || size() >= usual {
		t.Errorf("900 is taken as %v, with a thumb of %g at %g of %g", d.value(), size(), thumb(t, slider), width)
	}
	pull(slider, width/2)
	if d.value() < 200 || d.value() > 400 || size() != usual {
		t.Errorf("pulled back it is %v, with a thumb of %g", d.value(), size())
	}
}

// The arrow keys go on from where the thumb was let go.
func TestArrowsAfterTheSlider(t *testing.T) {
	d := at(t, "bag.width_mm")
	pull(d.slider(t), 40)
	before := d.value()
	focused := d.window.Canvas().Focused()
	if focused != d.line {
		t.Fatalf("the focus is on %v", focused)
	}
	focused.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	if d.value() != before+1 {
		t.Errorf("an arrow up makes %v of %v", d.value(), before)
	}
}

// Other usual values change the ends and no value.
func TestSetReach(t *testing.T) {
	d := at(t, "bag.width_mm")
	d.number.SetReach(200, 300)
	slider := d.slider(t)
	if low, high := ends(slider); low != "200" || high != "300" || d.value() != 240 || d.steps() != 0 {
		t.Errorf("the ends are %s and %s, the value is %v after %d steps", low, high, d.value(), d.steps())
	}
	width := slider.(fyne.CanvasObject).Size().Width
	if got := thumb(t, slider); got > width/2 || got < width/4 {
		t.Errorf("240 stands at %g of %g", got, width)
	}
}

// A click on the slider is one step as well.
func TestSliderClick(t *testing.T) {
	d := at(t, "bag.width_mm")
	slider := d.slider(t)
	test.TapAt(slider.(fyne.Tappable), fyne.NewPos(slider.(fyne.CanvasObject).Size().Width*0.9, 10))
	if d.value() <= 240 || d.steps() != 1 {
		t.Errorf("value %v after %d steps, want more than 240 after 1", d.value(), d.steps())
	}
}
