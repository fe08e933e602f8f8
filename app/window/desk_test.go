package window

import (
	"testing"

	"fyne.io/fyne/v2"
)

// A window that is opened again stands as it was closed.
func TestSplitsAreRemembered(t *testing.T) {
	app := newApp(t)
	first := openedIn(t, app, demoFile(t), t.TempDir())
	first.desk.all.SetOffset(0.4)
	first.desk.panes.SetOffset(0.3)
	first.desk.findings.SetOffset(0.7)
	first.window.Resize(fyne.NewSize(1300, 800))
	first.close()

	second := openedIn(t, app, demoFile(t), t.TempDir())
	if second.desk.all.Offset != 0.4 || second.desk.panes.Offset != 0.3 || second.desk.findings.Offset != 0.7 {
		t.Errorf("the splits stand at %g, %g and %g, want 0.4, 0.3 and 0.7",
			second.desk.all.Offset, second.desk.panes.Offset, second.desk.findings.Offset)
	}
	if size := second.set.WindowSize(); size.Width != first.window.Canvas().Size().Width {
		t.Errorf("the window is %v", size)
	}
}

// A split that was dragged to the very end leaves room for what is behind it, on any
// screen, to be dragged back.
func TestSplitsLeaveRoom(t *testing.T) {
	app := newApp(t)
	for _, key := range []string{"split-steps", "split-panes", "split-findings"} {
		app.Preferences().SetFloat(key, 1)
	}
	w := openedIn(t, app, demoFile(t), t.TempDir())
	w.window.Resize(fyne.NewSize(1024, 700))
	for name, part := range map[string]fyne.CanvasObject{"blank": w.blank, "folded bag": w.folded, "findings": w.findings} {
		if size := part.Size(); size.Width < 60 || size.Height < 20 {
			t.Errorf("the %s has %v left", name, size)
		}
	}
}
