package welcome

import (
	"math"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/appearance"
	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
)

var usual = fyne.NewSize(1440, 860)

// fewPixels is the share of a picture that may differ: letters are placed to a
// part of a pixel by rounding.
const fewPixels = 0.002

func TestStartPictures(t *testing.T) {
	for name, look := range map[string]settings.Appearance{"light": settings.Light, "dark": settings.Dark} {
		page, _, window := start(t, look, 1, usual)
		geomtest.GoldenPicture(t, "welcome/start-"+name+".png", window.Canvas().Capture(), fewPixels)
		page.size.entries[0].entry.SetText("24 cl")
		page.size.entries[1].entry.SetText("100")
		page.size.entries[2].entry.SetText("2 m")
		page.size.submit()
		window.Resize(fyne.NewSize(1024, 720))
		window.Resize(fyne.NewSize(1024, 700)) // wrapped text knows its height once it has its width
		geomtest.GoldenPicture(t, "welcome/start-small-"+name+".png", window.Canvas().Capture(), fewPixels)
	}
	_, _, window := start(t, settings.Light, 1.6, usual)
	geomtest.GoldenPicture(t, "welcome/start-large-text.png", window.Canvas().Capture(), fewPixels)
}

func TestSizeIsReadInAnyUnit(t *testing.T) {
	tests := []struct {
		unit  geometry.Unit
		texts [3]string
		want  [3]float64 // mm; an inch is 25.4 mm
	}{
		{geometry.Millimetre, [3]string{"240", "100", "360"}, [3]float64{240, 100, 360}},
		{geometry.Millimetre, [3]string{"24 cm", "4 in", "2*180"}, [3]float64{240, 101.6, 360}},
		{geometry.Inch, [3]string{"9 1/2", "4", "14,5"}, [3]float64{241.3, 101.6, 368.3}},
		{geometry.Centimetre, [3]string{"24", "0", "36"}, [3]float64{240, 0, 360}},
	}
	for _, test := range tests {
		page, did, _ := start(t, settings.Light, 1, usual)
		page.set.SetUnit(test.unit)
		for i, text := range test.texts {
			page.size.entries[i].entry.SetText(text)
		}
		page.size.submit()
		if !slices.Equal(did.names, []string{"size"}) {
			t.Errorf("%v: did %v", test.texts, did.names)
			continue
		}
		for i := range test.want {
			if math.Abs(did.size[i]-test.want[i]) > 1e-9 {
				t.Errorf("%v %s: got %v, want %v", test.texts, test.unit, did.size, test.want)
				break
			}
		}
	}
}

func TestWrongSizeIsToldAtTheEntry(t *testing.T) {
	tests := []struct {
		texts [3]string
		wrong int
		says  string
	}{
		{[3]string{"", "100", "360"}, 0, "there is no number"},
		{[3]string{"240", "10 cl", "360"}, 1, "mm, cm, m or in"},
		{[3]string{"240", "100", "39"}, 2, "at least 40 mm: a lower bag holds nothing"},
		{[3]string{"10 m", "100", "360"}, 0, "at most 1000 mm: wider blanks fit no press sheet"},
		{[3]string{"240", "-1", "360"}, 1, "at least 0 mm"},
		{[3]string{"240", "5", "360"}, 1, "too narrow to be creased down its middle"},
	}
	for _, test := range tests {
		page, did, window := start(t, settings.Light, 1, usual)
		for i, text := range test.texts {
			page.size.entries[i].entry.SetText(text)
		}
		page.size.submit()
		if len(did.names) > 0 {
			t.Errorf("%v: did %v", test.texts, did.names)
		}
		for i, one := range page.size.entries {
			if i != test.wrong && one.complaint.Visible() {
				t.Errorf("%v: entry %d says %q", test.texts, i, one.complaint.Text)
			}
		}
		one := page.size.entries[test.wrong]
		if !one.complaint.Visible() || !strings.Contains(one.complaint.Text, test.says) {
			t.Errorf("%v: entry %d says %q, want %q", test.texts, test.wrong, one.complaint.Text, test.says)
		}
		if window.Canvas().Focused() != fyne.Focusable(one.entry) {
			t.Errorf("%v: the focus is not at the wrong entry", test.texts)
		}
		one.entry.SetText([]string{"240", "100", "360"}[test.wrong])
		page.size.submit()
		if one.complaint.Visible() || !slices.Equal(did.names, []string{"size"}) {
			t.Errorf("%v: after mending, did %v and says %q", test.texts, did.names, one.complaint.Text)
		}
	}
}

// Enter goes from width to depth to height and then begins the bag.
func TestSizeByKeyboard(t *testing.T) {
	page, did, window := start(t, settings.Light, 1, usual)
	window.Canvas().Focus(page.size.entries[0].entry)
	for _, text := range []string{"240", "100", "360"} {
		entry := window.Canvas().Focused().(*sizeEntry)
		test.Type(entry, text)
		entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	}
	if did.size != [3]float64{240, 100, 360} {
		t.Errorf("got %v after %v", did.size, did.names)
	}
}

func TestButtonsDoWhatTheySay(t *testing.T) {
	_, did, window := start(t, settings.Light, 1, usual)
	for _, text := range []string{"Begin with the product", "Open the demo", "Open a project…", "Take the tour", "winter.gusset"} {
		button := buttonOf(window.Content(), text)
		if button == nil {
			t.Errorf("no button %q", text)
			continue
		}
		test.Tap(button)
	}
	if want := []string{"product", "demo", "open", "tour", "recent"}; !slices.Equal(did.names, want) {
		t.Errorf("did %v, want %v", did.names, want)
	}
	if did.path != "/home/ada/bags/book shop/winter.gusset" {
		t.Errorf("opened %q", did.path)
	}
}

func TestForgottenFilesAreNotListed(t *testing.T) {
	page, did, window := start(t, settings.Light, 1, usual)
	if buttonOf(window.Content(), "winter.gusset") == nil {
		t.Fatal("a recent file is not listed")
	}
	page.set.ForgetRecent("/home/ada/bags/market-day.gusset")
	page.set.ForgetRecent("/home/ada/bags/book shop/winter.gusset")
	window.SetContent(NewStart(page.set, did.actions()))
	if buttonOf(window.Content(), "winter.gusset") != nil {
		t.Error("a forgotten file is still listed")
	}
}

// buttonOf returns the button with a text in what is shown.
func buttonOf(object fyne.CanvasObject, text string) *appearance.Button {
	var found *appearance.Button
	for _, o := range test.LaidOutObjects(object) {
		if button, is := o.(*appearance.Button); is && button.Text == text {
			found = button
		}
	}
	return found
}
