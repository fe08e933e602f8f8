package filestep

import (
	"context"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/app/jobs"
	"gussetwright/app/settings"
	"gussetwright/geometry/bag"
)

// rig is a step in a window. What other goroutines hand to fyne's waits in a queue
// until the test lets it be done.
type rig struct {
	*Step
	t       *testing.T
	app     fyne.App
	doc     *document.Document
	set     *settings.Settings
	project string
	queue   chan func()
}

var day = time.Date(2026, time.March, 31, 12, 0, 0, 0, time.UTC)

// newRig returns a step that writes into folder through write. Progress is shown at
// once when patience is 0.
func newRig(t *testing.T, folder string, write jobs.Writer, patience time.Duration) *rig {
	t.Helper()
	r := &rig{t: t, app: test.NewTempApp(t), doc: document.New(), project: "tea-house", queue: make(chan func(), 1000)}
	r.app.Preferences().SetString(folderKey, folder)
	r.set = settings.New(r.app.Preferences())
	around := surroundings{
		later: func(do func()) { r.queue <- do }, now: func() time.Time { return day }, patience: patience,
	}
	window := test.NewTempWindow(t, nil)
	r.Step = newStep(r.doc, func() string { return r.project }, r.set, window, jobs.New(write), around)
	r.Show()
	window.SetContent(container.NewPadded(r.Step))
	window.Resize(fyne.NewSize(330, 1000))
	t.Cleanup(r.Close)
	r.do() // the picture
	return r
}

// do does the next thing that was handed to fyne's goroutine.
func (r *rig) do() {
	r.t.Helper()
	select {
	case next := <-r.queue:
		next()
	case <-time.After(time.Minute):
		r.t.Fatal("nothing was handed over")
	}
}

// finish waits for the job to end and does all that it handed over.
func (r *rig) finish() {
	r.t.Helper()
	r.runner.Wait()
	for len(r.queue) > 0 {
		r.do()
	}
}

func (r *rig) change(edit func(*bag.Spec)) {
	spec := r.doc.Project().Spec
	edit(&spec)
	r.doc.Set(spec)
}

// held is a writer that tells progress and then waits to be cancelled or let go.
func held(letGo chan struct{}) jobs.Writer {
	return func(ctx context.Context, job export.Job, progress func(float64, string)) ([]string, error) {
		progress(0.4, job.Kinds[1].Name)
		select {
		case <-ctx.Done():
			return nil, ctx.Err()
		case <-letGo:
			return []string{"/somewhere/tea-house.svg"}, nil
		}
	}
}

// untick takes the tick off every kind but some.
func (r *rig) untick(but ...string) {
	for i, check := range r.kinds.checks {
		keep := false
		for _, name := range but {
			keep = keep || r.kinds.all[i].Name == name
		}
		check.SetChecked(keep)
	}
}
