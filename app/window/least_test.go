package window

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/appearance"
	"gussetwright/app/settings"
)

// At every text size that can be chosen the window fits a small screen, at every step, in
// the views for meetings and lessons, and where a bag is begun.
func TestWindowFitsASmallScreen(t *testing.T) {
	const width, height = 1024, 700
	for _, scale := range []float64{1, 1.3, 1.6, 1.8, 2} {
		app := newApp(t)
		set := settings.New(app.Preferences())
		set.SetTextScale(scale)
		app.Settings().SetTheme(appearance.New(set))
		w := openedIn(t, app, demoFile(t), t.TempDir())
		fits := func(page string) {
			t.Helper()
			w.window.Resize(fyne.NewSize(width, height))
			// The window has an empty edge, and the menu above it.
			menu := fyne.MeasureText("File", theme.TextSize(), fyne.TextStyle{}).Height + 2*theme.Padding()
			least := w.layers.MinSize().AddWidthHeight(2*theme.Padding(), 2*theme.Padding()+menu)
			if least.Width > width || least.Height > height {
				t.Errorf("text size %g, %s: the window takes %g × %g, want at most %d × %d", scale, page, least.Width, least.Height, width, height)
			}
		}
		for step := 1; step <= 8; step++ {
			w.goToStep(step)
			fits(fmt.Sprint("step ", step))
		}
		w.startTour()
		fits("tour")
		w.tour.Leave()
		w.toggleMeeting()
		fits("meeting")
		w.toggleMeeting()
		w.toggleLesson()
		fits("lesson")
		w.toggleLesson()
		w.showHelp()
		fits("help")
		w.goToStep(1)
		w.showWelcome()
		fits("ways to begin")
	}
}

// Text that was made larger on the page of the ways to begin is larger at the desk too,
// and on the other pages.
func TestTextSizeReachesPagesThatComeLater(t *testing.T) {
	changed := opened(t, "")
	changed.set.SetTextScale(1.6)
	changed.openDemo()
	fresh := openedLarge(t, 1.6)
	same := func(page string) {
		t.Helper()
		got, want := textSizes(changed.layers), textSizes(fresh.layers)
		both := 0
		for text, size := range got {
			if want[text] == 0 {
				continue // a line that ends elsewhere
			}
			both++
			if size != want[text] {
				t.Errorf("%s: %q is %g high, want %g", page, text, size, want[text])
			}
		}
		if both < 20 {
			t.Fatalf("%s: only %d texts are seen in both windows", page, both)
		}
	}
	same("desk")
	for _, w := range []*Window{changed, fresh} {
		w.goToStep(4)
	}
	same("step 4")
	changed.set.SetTextScale(1.2)
	changed.showWelcome()
	changed.set.SetTextScale(1.6)
	changed.showPage(nil)
	same("desk, after another change")
}

// openedLarge returns the window on the demo, with a text size from the beginning.
func openedLarge(t *testing.T, scale float64) *Window {
	t.Helper()
	app := newApp(t)
	settings.New(app.Preferences()).SetTextScale(scale)
	w := openedIn(t, app, "", t.TempDir())
	w.openDemo()
	return w
}

// textSizes returns how large the texts below an object are written.
func textSizes(object fyne.CanvasObject) map[string]float32 {
	sizes := map[string]float32{}
	for _, o := range test.LaidOutObjects(object) {
		if text, is := o.(*canvas.Text); is && text.Text != "" {
			sizes[text.Text] = text.TextSize
		}
	}
	return sizes
}
