package findings

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/focus"
	"gussetwright/app/settings"
)

// At every text size the first finding is seen whole, however little of the window the
// strip was given, and its texts do not lie over each other.
func TestFirstFindingIsSeenWhole(t *testing.T) {
	for _, width := range []float32{360, 520, 690, 900} {
		for _, scale := range []float64{1, 1.3, 1.6, 2} {
			app := test.NewTempApp(t)
			set, doc := settings.New(app.Preferences()), document.New()
			set.SetTextScale(scale)
			appearance.Wear(app, set)
			strip := New(doc, focus.New(), set)
			spec := doc.State().Spec
			spec.Body.SeamFlap = 10
			doc.Set(spec)
			split := container.NewVSplit(container.NewStack(), strip)
			split.Offset = 1
			window := test.NewTempWindow(t, split)
			window.SetPadded(false)
			for range 3 { // the texts know their height once they have their width
				window.Resize(fyne.NewSize(width+1, 640))
				window.Resize(fyne.NewSize(width, 640))
				split.Refresh()
			}
			first := strip.rows[0]
			if most := mostLetters * theme.TextSize(); first.MinSize().Height > most {
				continue // more than any window has room for
			}
			bottom := first.Position().Y + first.MinSize().Height + theme.Padding()
			if room := strip.scroll.Size().Height; bottom > room+1 {
				t.Errorf("width %g, text size %g: the first finding ends at %g of %g", width, scale, bottom, room)
			}
			apart := theme.TextSize() // between the first lines of texts below each other
			if r := first; r.message.Position().Y > 0 && (r.message.Position().Y < r.kind.Position().Y+apart || r.remedy.Position().Y < r.message.Position().Y+apart) {
				t.Errorf("width %g, text size %g: message at %g, remedy at %g", width, scale, r.message.Position().Y, r.remedy.Position().Y)
			}
		}
	}
}

// However much there is to tell, the strip takes no more than a small window has for it.
func TestStripMakesNoWindowLarger(t *testing.T) {
	app := test.NewTempApp(t)
	set, doc := settings.New(app.Preferences()), document.New()
	set.SetTextScale(2)
	appearance.Wear(app, set)
	strip := New(doc, focus.New(), set)
	spec := doc.State().Spec
	spec.Body.SeamFlap = 10
	doc.Set(spec)
	told := fyne.MeasureText(strip.title.Text, theme.TextSize(), strip.title.TextStyle).Width
	const room = 350 // beside the steps in a window of 1024
	if told < room {
		t.Fatalf("%q takes no more than %d", strip.title.Text, room)
	}
	if least := strip.MinSize().Width; least > room {
		t.Errorf("the strip takes %g, want at most %d", least, room)
	}
}
