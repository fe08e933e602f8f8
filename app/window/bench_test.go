package window

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/session"
	"gussetwright/app/settings"
	"gussetwright/assets"
	"gussetwright/geometry/bag"
)

// benchWindow returns the window on the demo project, with panes of about 900 × 700,
// and what is to be done on its goroutine.
func benchWindow(b *testing.B) (*Window, chan func()) {
	b.Helper()
	app := test.NewTempApp(b)
	set, doc := settings.New(app.Preferences()), document.New()
	set.SetAppearance(settings.Light)
	appearance.Wear(app, set)
	path := filepath.Join(b.TempDir(), "demo.gusset")
	if err := os.WriteFile(path, assets.Demo, 0o644); err != nil {
		b.Fatal(err)
	}
	later := make(chan func(), 1000)
	w := newWindow(app, set, doc, session.New(doc, session.Options{Recovery: b.TempDir()}), func(do func()) { later <- do })
	w.Show(path)
	for w.doc.State().Snapshot.Opening() {
		(<-later)()
	}
	w.window.Resize(fyne.NewSize(345+2*900+30, 900))
	b.Cleanup(func() { w.keeper.timer.Stop(); w.closeArtwork(); w.blank.Close(); w.folded.Close() })
	w.drawn()
	return w, later
}

// pictures returns the numbers of the last pictures of both panes: of those that were
// ordered, and of those that are shown.
func (w *Window) pictures() (ordered, shown [2]int) {
	ordered[0], shown[0] = w.blank.Pictures()
	ordered[1], shown[1] = w.folded.Pictures()
	return ordered, shown
}

// drawn waits until both panes show what was ordered last.
func (w *Window) drawn() {
	for {
		ordered, shown := w.pictures()
		if shown[0] >= ordered[0] && shown[1] >= ordered[1] {
			return
		}
		runtime.Gosched()
	}
}

// newer waits until both panes show a picture that was ordered after others.
func (w *Window) newer(others [2]int) {
	for {
		if _, shown := w.pictures(); shown[0] > others[0] && shown[1] > others[1] {
			return
		}
		runtime.Gosched()
	}
}

// another returns the bag in another size than before for every next number from 1.
func another(spec bag.Spec, number int) bag.Spec {
	spec.Body.Width = 190 + float64(number%60)
	spec.Body.Gusset = 95 + float64(number%17)
	return spec
}

// times is how long something took, again and again.
type times []time.Duration

// report reports the median and the 95th of a hundred, in milliseconds.
func (t times) report(b *testing.B, what string) {
	slices.Sort(t)
	for _, percent := range []int{50, 95} {
		at := t[len(t)*percent/100]
		b.ReportMetric(float64(at.Microseconds())/1000, fmt.Sprintf("%sp%d-ms", what, percent))
	}
}

// BenchmarkDrag is one step of a drag: spec to both pictures, with steps, findings and
// status line.
func BenchmarkDrag(b *testing.B) {
	w, _ := benchWindow(b)
	spec := w.doc.State().Spec
	var took times
	b.ReportAllocs()
	for i := 1; b.Loop(); i++ {
		start := time.Now()
		w.doc.Drag(another(spec, i))
		w.drawn()
		took = append(took, time.Since(start))
	}
	took.report(b, "")
}

// BenchmarkChange is a single change, as by Enter or by undo: to the first picture in
// both panes, and on to the fine ones, after which nothing is drawn any more.
func BenchmarkChange(b *testing.B) {
	w, _ := benchWindow(b)
	spec := w.doc.State().Spec
	var first, fine times
	b.ReportAllocs()
	for i := 1; b.Loop(); i++ {
		before, _ := w.pictures()
		start := time.Now()
		w.doc.Set(another(spec, i))
		w.newer(before)
		first = append(first, time.Since(start))
		w.drawn()
		fine = append(fine, time.Since(start))
	}
	first.report(b, "first-")
	fine.report(b, "fine-")
}
