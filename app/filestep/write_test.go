package filestep

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"gussetwright/app/export"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
)

func names(t *testing.T, folder string) (all []string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	for _, entry := range entries {
		all = append(all, entry.Name())
	}
	return all
}

func TestWritesWhatIsTicked(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "made anew")
	r := newRig(t, folder, export.Write, long)
	r.untick("svg", "fold")
	if got, want := said(r.list), "• tea-house.svg\n• tea-house.fold"; got != want {
		t.Errorf("the list says\n%s, want\n%s", got, want)
	}
	test.Tap(r.button)
	if !r.button.Disabled() || r.running.Visible() {
		t.Error("while writing the button works, or progress is shown at once")
	}
	r.finish()
	if got := names(t, folder); !slices.Equal(got, []string{"tea-house.fold", "tea-house.svg"}) {
		t.Errorf("the folder holds %q", got)
	}
	if r.result.words.Text() != "Files written: 2" || !r.result.Visible() || !r.result.open.Visible() {
		t.Errorf("the result says %q", r.result.words.Text())
	}
	if r.button.Disabled() || r.running.Visible() || r.result.failure.Text() != "" {
		t.Error("after writing the button does not work, progress is shown or an error is")
	}
	saysOfBoth := func(what string) {
		t.Helper()
		if got, want := said(r.list), "• tea-house.svg – "+what+"\n• tea-house.fold – "+what; got != want {
			t.Errorf("the list says\n%s, want\n%s", got, want)
		}
	}
	saysOfBoth("written")
	r.change(func(s *bag.Spec) { s.Body.Width += 10 })
	saysOfBoth("replaces the file that is there")
}

// The files are the same bytes as those of a batch export of the bag, with the day
// of its last change.
func TestWritesWhatBatchWrites(t *testing.T) {
	folder, other := t.TempDir(), t.TempDir()
	r := newRig(t, folder, export.Write, long)
	r.doc.MarkSavedOn("2026-01-02")
	r.untick("dieline", "dxf")
	r.button.OnTapped()
	r.finish()
	saved := time.Date(2026, time.January, 2, 0, 0, 0, 0, time.UTC)
	written, err := export.Write(context.Background(), export.Job{Folder: other, Project: "tea-house", Snapshot: r.doc.State().Snapshot, Date: saved, Kinds: r.kinds.chosen()}, func(float64, string) {})
	if err != nil || len(written) != 2 {
		t.Fatalf("written %q, %v", written, err)
	}
	for _, path := range written {
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile(filepath.Join(folder, filepath.Base(path)))
		if err != nil || string(got) != string(want) {
			t.Errorf("%s differs, %v", filepath.Base(path), err)
		}
	}
}

func TestProgressAndCancel(t *testing.T) {
	r := newRig(t, "/files/bags", held(nil), 0)
	test.Tap(r.button)
	r.do() // progress and that patience is at its end, in either order
	r.do()
	if !r.running.Visible() || r.running.bar.Value != 0.4 || r.running.what.Text() != "Template for artwork" {
		t.Errorf("progress shown: %t, %g of %q", r.running.Visible(), r.running.bar.Value, r.running.what.Text())
	}
	r.choicesChanged()
	if !r.button.Disabled() {
		t.Error("the button works while files are written")
	}
	test.Tap(r.running.cancel)
	if !r.running.cancel.Disabled() {
		t.Error("cancelling can be asked for twice")
	}
	r.finish()
	if r.running.Visible() || r.button.Disabled() || r.result.open.Visible() || r.result.words.Text() != "Cancelled. Nothing was written." {
		t.Errorf("after cancelling: %q", r.result.words.Text())
	}
	test.Tap(r.button)
	if r.result.Visible() || r.running.cancel.Disabled() {
		t.Error("the next time begins with what is left of the last")
	}
}

// A bar that would be shown after the end is not.
func TestLateProgressIsNotShown(t *testing.T) {
	letGo := make(chan struct{})
	close(letGo)
	r := newRig(t, "/files/bags", held(letGo), long)
	test.Tap(r.button)
	r.finish()
	r.running.reveal()
	if r.running.Visible() {
		t.Error("progress is shown after the end")
	}
}

func TestErrorIsShownWithRemedy(t *testing.T) {
	blocked := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(blocked, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	r := newRig(t, blocked, export.Write, long)
	r.untick("svg")
	test.Tap(r.button)
	r.finish()
	if !strings.Contains(r.result.failure.Text(), blocked) || !strings.HasPrefix(r.result.remedy.Text(), "Choose another folder") {
		t.Errorf("error %q, remedy %q", r.result.failure.Text(), r.result.remedy.Text())
	}
	if r.result.failure.Severity() != check.Error || r.result.open.Visible() || r.button.Disabled() {
		t.Error("no sign of an error, a folder to open, or no second try")
	}
	r.folder.entry.SetText(filepath.Join(filepath.Dir(blocked), "folder"))
	test.Tap(r.button)
	r.finish()
	if r.result.failure.Text() != "" || r.result.words.Text() != "Files written: 1" {
		t.Errorf("the second try: %q, %q", r.result.failure.Text(), r.result.words.Text())
	}
}

// What was written before an error is said, and can be looked at.
func TestFilesBeforeAnError(t *testing.T) {
	folder := t.TempDir()
	half := func(context.Context, export.Job, func(float64, string)) ([]string, error) {
		return []string{filepath.Join(folder, "tea-house.svg")}, errors.New("export: the disk is gone")
	}
	r := newRig(t, folder, half, long)
	test.Tap(r.button)
	r.finish()
	if r.result.words.Text() != "Files written before that: 1" || !r.result.open.Visible() {
		t.Errorf("the result says %q", r.result.words.Text())
	}
	if r.result.failure.Text() != "export: the disk is gone" || r.result.remedy.Text() != "" {
		t.Errorf("error %q, remedy %q", r.result.failure.Text(), r.result.remedy.Text())
	}
}

func TestWarnsOfErrorFindingsAndWritesAllTheSame(t *testing.T) {
	folder := t.TempDir()
	r := newRig(t, folder, export.Write, long)
	r.untick("svg")
	if r.warning.Text() != "" {
		t.Errorf("warns of the default bag: %q", r.warning.Text())
	}
	r.change(func(s *bag.Spec) { s.Handle.Drop = 4 })
	if !check.HasError(r.doc.State().Snapshot.Findings) {
		t.Fatal("the bag has no error")
	}
	if r.warning.Severity() != check.Warning || !strings.Contains(r.warning.Text(), "cannot be made") {
		t.Errorf("warning %q", r.warning.Text())
	}
	test.Tap(r.button)
	r.finish()
	if got := names(t, folder); len(got) != 1 {
		t.Errorf("written: %q", got)
	}
}
