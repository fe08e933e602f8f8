package window

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// typeWidth types into the entry of the face width, without Enter.
func typeWidth(t *testing.T, w *Window, text string) {
	t.Helper()
	w.goToStep(stepBag)
	for range 50 {
		w.window.Canvas().FocusNext()
		entry, ok := w.window.Canvas().Focused().(interface {
			fyne.Focusable
			SelectedText() string
		})
		if ok && entry.SelectedText() == "190" {
			test.Type(entry, text)
			return
		}
	}
	t.Fatal("no entry shows the face width")
}

// What is being typed is work that closing asks about.
func TestTypingIsAskedAboutBeforeClosing(t *testing.T) {
	w := opened(t, demoFile(t))
	closed := false
	w.window.SetOnClosed(func() { closed = true })
	typeWidth(t, w, "231")
	w.close()
	if closed || !strings.Contains(w.bar.Text(), "Save the changes") {
		t.Fatalf("closed %v, the bar says %q", closed, w.bar.Text())
	}
	if width := w.doc.State().Spec.Body.Width; width != 231 {
		t.Errorf("the bag is %g mm wide, want 231 as typed", width)
	}
}

// What cannot be read is no work: it keeps no window open.
func TestUnreadableTypingDoesNotKeepTheWindowOpen(t *testing.T) {
	w := opened(t, demoFile(t))
	closed := false
	w.window.SetOnClosed(func() { closed = true })
	typeWidth(t, w, "wide")
	w.close()
	if !closed {
		t.Errorf("the window stays open; the bar says %q", w.bar.Text())
	}
}
