package window

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gussetwright/app/notice"
	"gussetwright/app/project"
)

// slowDisk holds what a window writes until the test lets it through.
type slowDisk struct {
	held   []func()
	remind func()
}

func slow(w *Window) *slowDisk {
	d := &slowDisk{}
	w.saver.run = func(work, then func()) {
		d.held = append(d.held, func() { work(); then() })
	}
	w.saver.remind = func(say func()) func() {
		d.remind = say
		return func() {}
	}
	return d
}

// letGo writes the first of what is held.
func (d *slowDisk) letGo(t *testing.T) {
	t.Helper()
	if len(d.held) == 0 {
		t.Fatal("nothing is being written")
	}
	first := d.held[0]
	d.held = d.held[1:]
	first()
}

// While a slow disk takes what is saved the window goes on: the bag can be changed, the
// bar tells what goes on, and closing waits.
func TestSavingDoesNotStopTheWindow(t *testing.T) {
	w := opened(t, demoFile(t))
	path, closed := w.file.Path(), false
	w.window.SetOnClosed(func() { closed = true })
	disk := slow(w)
	widen(w)
	w.save()
	w.save() // impatience: saved once more after that, with nothing new
	widen(w)
	if w.bar.Visible() || !w.doc.State().Dirty {
		t.Errorf("the bar says %q, dirty %t", w.bar.Text(), w.doc.State().Dirty)
	}
	disk.remind()
	if !strings.Contains(w.bar.Text(), "Saving…") {
		t.Errorf("the bar says %q", w.bar.Text())
	}
	w.close()
	if closed || len(disk.held) != 1 {
		t.Fatalf("closed %t while %d files are written", closed, len(disk.held))
	}
	disk.letGo(t)
	if saved, err := project.Open(path); err != nil || saved.Spec.Body.Width != 200 {
		t.Errorf("saved width %g, %v", saved.Spec.Body.Width, err)
	}
	if w.bar.Visible() {
		t.Errorf("the bar still says %q", w.bar.Text())
	}
	disk.letGo(t)
	if saved, err := project.Open(path); err != nil || saved.Spec.Body.Width != 210 || w.doc.State().Dirty {
		t.Errorf("saved width %g, %v, dirty %t", saved.Spec.Body.Width, err, w.doc.State().Dirty)
	}
	if !closed || len(disk.held) != 0 {
		t.Errorf("closed %t, %d files are still written", closed, len(disk.held))
	}
}

// What is changed while the bag is saved to be closed is asked about as well.
func TestEditsWhileSavingToClose(t *testing.T) {
	w := opened(t, demoFile(t))
	closed := false
	w.window.SetOnClosed(func() { closed = true })
	disk := slow(w)
	widen(w)
	w.close()
	answer(t, w, "Save")
	widen(w)
	disk.letGo(t)
	if closed || !strings.Contains(w.bar.Text(), "Save the changes") {
		t.Fatalf("closed %t, the bar says %q", closed, w.bar.Text())
	}
	answer(t, w, "Save")
	disk.letGo(t)
	if saved, err := project.Open(w.file.Path()); !closed || err != nil || saved.Spec.Body.Width != 210 {
		t.Errorf("closed %t, saved width %g, %v", closed, saved.Spec.Body.Width, err)
	}
}

// A slow disk gets one copy at a time, and the next holds all that changed meanwhile.
func TestCopiesDoNotPileUp(t *testing.T) {
	w := opened(t, demoFile(t))
	disk := slow(w)
	for range 5 {
		widen(w)
		w.keeper.keep()
	}
	if len(disk.held) != 1 {
		t.Fatalf("%d copies are being written", len(disk.held))
	}
	disk.letGo(t)
	w.keeper.keep()
	disk.letGo(t)
	w.keeper.keep()
	if len(disk.held) != 0 {
		t.Error("a copy of what did not change")
	}
}

// A copy that cannot be kept is told of once, not in the place of a question, and again
// only after it could be kept meanwhile.
func TestFailingCopyIsToldOnce(t *testing.T) {
	blocked := filepath.Join(t.TempDir(), "recovery")
	w := openedIn(t, newApp(t), demoFile(t), blocked)
	block := func() {
		t.Helper()
		if err := os.RemoveAll(blocked); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(blocked, nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	keep := func() {
		widen(w)
		w.keeper.keep()
	}
	block()
	w.bar.Say(notice.Ask, "Which?", notice.Answer{Label: "This"})
	keep()
	if w.bar.Text() != "Which?" {
		t.Errorf("the question was replaced by %q", w.bar.Text())
	}
	w.escape()
	if !strings.Contains(w.bar.Text(), "save the bag yourself") {
		t.Errorf("the bar says %q", w.bar.Text())
	}
	w.escape()
	keep()
	if w.bar.Visible() {
		t.Errorf("said again: %q", w.bar.Text())
	}
	if err := os.Remove(blocked); err != nil {
		t.Fatal(err)
	}
	keep()
	block()
	keep()
	if !w.bar.Visible() {
		t.Error("the second failure is not told")
	}
}

// Of two windows on one file the second to save is asked, and may take the work of the
// first.
func TestOtherVersionCanBeOpened(t *testing.T) {
	path := demoFile(t)
	first := opened(t, path)
	second := openedIn(t, newApp(t), path, t.TempDir())
	widen(first)
	first.save()
	widen(second)
	widen(second)
	second.save()
	if saved, err := project.Open(path); err != nil || saved.Spec.Body.Width != 200 {
		t.Fatalf("saved width %g, %v", saved.Spec.Body.Width, err)
	}
	answer(t, second, "Open the other, drop mine")
	if state := second.doc.State(); state.Dirty || state.Spec.Body.Width != 200 {
		t.Errorf("width %g, dirty %t", state.Spec.Body.Width, state.Dirty)
	}
	widen(second)
	second.save()
	if saved, err := project.Open(path); err != nil || saved.Spec.Body.Width != 210 || second.bar.Visible() {
		t.Errorf("saved width %g, %v; the bar says %q", saved.Spec.Body.Width, err, second.bar.Text())
	}
}

// A file that was removed is written anew without a word; where its folder is gone,
// another name is offered.
func TestFileAndFolderRemoved(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "inner")
	path := filepath.Join(folder, "bag.gusset")
	w := opened(t, demoFile(t))
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := w.file.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	widen(w)
	w.save()
	if _, err := project.Open(path); err != nil || w.bar.Visible() {
		t.Errorf("%v; the bar says %q", err, w.bar.Text())
	}
	if err := os.RemoveAll(folder); err != nil {
		t.Fatal(err)
	}
	widen(w)
	w.save()
	if !strings.Contains(w.bar.Text(), "the folder "+folder+" is not there") || len(w.bar.Answers()) != 2 || w.bar.Answers()[0].Text != "Save as…" {
		t.Errorf("the bar says %q", w.bar.Text())
	}
	if !w.doc.State().Dirty {
		t.Error("the bag counts as saved")
	}
}
