package window

import (
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

// benchWindow returns the window on the demo project, with panes of about 900 × 700.
func benchWindow(b *testing.B) *Window {
	b.Helper()
	app := test.NewTempApp(b)
	set, doc := settings.New(app.Preferences()), document.New()
	set.SetAppearance(settings.Light)
	appearance.Wear(app, set)
	path := filepath.Join(b.TempDir(), "demo.gusset")
	if err := os.WriteFile(path, assets.Demo, 0o644); err != nil {
		b.Fatal(err)
	}
	w := New(app, set, doc, session.New(doc, session.Options{Recovery: b.TempDir()}))
	w.Show(path)
	w.window.Resize(fyne.NewSize(345+2*900+30, 900))
	b.Cleanup(func() { w.keeper.timer.Stop(); w.blank.Close(); w.folded.Close() })
	w.drawn()
	return w
}

// drawn waits until both panes show what was ordered last.
func (w *Window) drawn() {
	ready := func(pictures func() (int, int)) bool {
		ordered, shown := pictures()
		return shown >= ordered
	}
	for !ready(w.blank.Pictures) || !ready(w.folded.Pictures) {
		runtime.Gosched()
	}
}

// measure changes the bag again and again and reports how long it took until both
// panes showed it: the mean as ns/op, and the 95th of a hundred.
func measure(b *testing.B, change func(w *Window, spec bag.Spec)) {
	w := benchWindow(b)
	spec := w.doc.State().Spec
	var took []time.Duration
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		spec.Body.Width = 190 + float64(i%60)
		spec.Body.Gusset = 95 + float64(i%17)
		start := time.Now()
		change(w, spec)
		w.drawn()
		took = append(took, time.Since(start))
	}
	slices.Sort(took)
	b.ReportMetric(float64(took[len(took)*95/100].Microseconds())/1000, "p95-ms")
}

// BenchmarkDrag is one step of a drag: spec to both pictures, with steps, findings and
// status line.
func BenchmarkDrag(b *testing.B) {
	measure(b, func(w *Window, spec bag.Spec) { w.doc.Drag(spec) })
}
