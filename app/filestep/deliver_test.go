package filestep

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"gussetwright/app/export"
	"gussetwright/app/jobs"
	"gussetwright/geometry/bag"
)

// delivered waits for a delivery.
func (r *rig) delivered(kind string) (result jobs.Result) {
	r.Deliver(kind, func(came jobs.Result) { result = came })
	r.finish()
	return result
}

func TestDeliversWhatIsNotTicked(t *testing.T) {
	folder := t.TempDir()
	r := newRig(t, folder, export.Write, long)
	r.untick("fold")
	result := r.delivered("svg")
	if want := []string{filepath.Join(folder, "tea-house.svg")}; result.Err != nil || !slices.Equal(result.Paths, want) {
		t.Errorf("delivered %q, %v, want %q", result.Paths, result.Err, want)
	}
	if got := names(t, folder); !slices.Equal(got, []string{"tea-house.svg"}) {
		t.Errorf("the folder holds %q", got)
	}
	if r.button.Disabled() || r.result.Visible() {
		t.Error("the step shows a result of its own, or cannot write any more")
	}
	r.untick("svg")
	if !strings.Contains(said(r.list), "replaces") {
		t.Errorf("the list does not know of the file: %q", said(r.list))
	}
	test.Tap(r.button)
	if r.question.box.Visible() {
		t.Error("asks about a file that was delivered from here")
	}
	r.finish()
}

func TestDeliveriesThatCannotBe(t *testing.T) {
	r := newRig(t, t.TempDir(), export.Write, long)
	if result := r.delivered("hologram"); result.Err == nil {
		t.Error("an unknown kind is delivered")
	}
	r.change(func(s *bag.Spec) { s.Body.Width = -1 })
	if result := r.delivered("svg"); result.Err == nil {
		t.Error("a bag that cannot be drawn is delivered")
	}
	r.doc.Undo()
	r.folder.entry.SetText("  ")
	if result := r.delivered("svg"); result.Err == nil || !strings.Contains(result.Err.Error(), "no folder") {
		t.Errorf("without a folder: %v", result.Err)
	}
}

// One job at a time: a delivery waits for nothing and stops nothing.
func TestDeliveryWhileFilesAreWritten(t *testing.T) {
	letGo := make(chan struct{})
	r := newRig(t, t.TempDir(), held(letGo), long)
	r.write()
	var second jobs.Result
	r.Deliver("svg", func(came jobs.Result) { second = came })
	if second.Err != jobs.ErrBusy {
		t.Errorf("the second job: %v", second.Err)
	}
	close(letGo)
	r.finish()
	if r.runner.Busy() {
		t.Error("the first job did not end")
	}
}
