package entry_test

import (
	"math"
	"testing"

	"fyne.io/fyne/v2"
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
		// Half to double of 240, in whole millimetres.
		if value < 120 || value > 480 || value != math.Trunc(value) || i > 0 && value < seen[i-1] {
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

// A thumb that is left at the end of the slider gets room to go on: every value
// within the limits can be reached.
func TestSliderReachesTheLimits(t *testing.T) {
	for _, path := range []string{"bag.width_mm", "bag.gusset_mm", "bag.seam_relief_mm", "paper.caliper_um", "run.quantity", "sheet.gripper_mm"} {
		d := at(t, path)
		slider := d.slider(t)
		width := slider.(fyne.CanvasObject).Size().Width
		end := map[float32]float64{0: d.field.Least, width: d.field.Most}
		for _, x := range []float32{width, 0} {
			for range 60 {
				slider.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(x, 10)}})
				slider.DragEnd()
			}
			if got := d.value(); got != end[x] {
				t.Errorf("%s: the slider ends at %v, want %v", path, got, end[x])
			}
		}
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
