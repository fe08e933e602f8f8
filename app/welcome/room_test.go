package welcome

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/settings"
)

// small is a screen that is common where bags are taught.
var small = fyne.NewSize(1024, 700)

// settle lays the page out until it stands still, as the window does with every picture.
func settle(page *Start, window fyne.Window, size fyne.Size) {
	for range 4 {
		window.Resize(size.AddWidthHeight(1, 0))
		window.Resize(size)
		page.scroll.Refresh()
	}
}

// At every text size the page fits a small screen, and each label ends before its entry.
func TestPageFitsASmallScreen(t *testing.T) {
	for _, scale := range []float64{1, 1.3, 1.6, 1.8, 2} {
		page, _, window := start(t, settings.Light, scale, small)
		page.set.AddRecent("/home/ada/" + "a-name-that-somebody-has-made-as-long-as-a-name-of-a-file-can-be-made-and-then-some.gusset")
		page = NewStart(page.set, page.actions)
		window.SetContent(page)
		settle(page, window, small)
		if least := page.MinSize(); least.Width > small.Width {
			t.Errorf("text size %g: the page takes a width of %g, want at most %g", scale, least.Width, small.Width)
		}
		driver := fyne.CurrentApp().Driver()
		for _, object := range test.LaidOutObjects(page) {
			box, is := object.(*fyne.Container)
			if !is {
				continue
			}
			if _, is := box.Layout.(labelled); !is {
				continue
			}
			label, entry := box.Objects[0], box.Objects[1]
			end := driver.AbsolutePositionForObject(label).X + label.MinSize().Width
			if begin := driver.AbsolutePositionForObject(entry).X; end > begin {
				t.Errorf("text size %g: %q ends at %g, its entry begins at %g", scale, label.(*widget.Label).Text, end, begin)
			}
		}
	}
}

// What the tab key reaches is in sight, whole.
func TestFocusComesIntoSight(t *testing.T) {
	for _, scale := range []float64{1, 1.6, 2} {
		page, _, window := start(t, settings.Light, scale, small)
		settle(page, window, small)
		driver, seen := fyne.CurrentApp().Driver(), 0
		for range 12 {
			window.Canvas().FocusNext()
			object, is := window.Canvas().Focused().(fyne.CanvasObject)
			if !is {
				t.Fatal("nothing has the focus")
			}
			top := driver.AbsolutePositionForObject(object).Y
			if bottom := top + object.Size().Height; top < 0 || bottom > small.Height {
				t.Errorf("text size %g: what has the focus lies from %g to %g of %g", scale, top, bottom, small.Height)
			}
			if page.scroll.Offset.Y > 0 {
				seen++
			}
		}
		if scale == 2 && seen == 0 {
			t.Error("the page is never moved, so the test shows nothing")
		}
	}
}
