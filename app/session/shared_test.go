package session

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/app/wholefile"
)

// Two windows add to one file as fast as they can. Whoever comes second is refused and
// reads the file again, so no addition is ever lost.
func TestTwoWindowsOnOneFileLoseNothing(t *testing.T) {
	for ending, additions := range map[string]int{".gusset": 8, ".json": 40} {
		path := filepath.Join(t.TempDir(), "bag"+ending)
		first := start(t, t.TempDir())
		must(t)(first.SaveAs(path))
		before := first.width()
		var all sync.WaitGroup
		for range 2 {
			b := start(t, t.TempDir())
			all.Go(func() { add(t, b, path, additions) })
		}
		all.Wait()
		open(t, first, path)
		if got := first.width() - before; got != float64(2*additions) {
			t.Errorf("%s: %g additions are in the file, want %d", ending, got, 2*additions)
		}
	}
}

// add widens the bag at path as often as it is told, a millimetre each time.
func add(t *testing.T, b *bench, path string, additions int) {
	for done := 0; done < additions; {
		if _, err := b.Open(path); err != nil {
			t.Error(err)
			return
		}
		b.setWidth(b.width() + 1)
		var changed *ChangedError
		switch err := b.Save(); {
		case err == nil:
			done++
		case errors.As(err, &changed) || errors.Is(err, wholefile.ErrBusy):
		default:
			t.Error(err)
			return
		}
	}
}

// The file changes while ours is written to a slow drive.
func TestChangedWhileSaving(t *testing.T) {
	for _, ending := range []string{".gusset", ".json"} {
		path := filepath.Join(t.TempDir(), "bag"+ending)
		b := start(t, t.TempDir())
		must(t)(b.SaveAs(path))
		b.setWidth(300)
		task := b.BeginSave()
		other := start(t, t.TempDir())
		open(t, other, path)
		other.setWidth(400)
		must(t)(other.Save())
		task.Write()
		var changed *ChangedError
		if err := task.End(); !errors.As(err, &changed) || !b.Dirty() {
			t.Errorf("%s: error %v, dirty %t", ending, err, b.Dirty())
		}
		if saved, err := project.Open(path); err != nil || saved.Spec.Body.Width != 400 {
			t.Errorf("%s: width %g, %v", ending, saved.Spec.Body.Width, err)
		}
		if err := b.SaveAs(path); !errors.As(err, &changed) {
			t.Errorf("%s: saved over it under its own name: %v", ending, err)
		}
		must(t)(b.Overwrite())
	}
}

// What is changed while a slow drive is written to is not saved and says so.
func TestEditsWhileSaving(t *testing.T) {
	recovery := t.TempDir()
	b := start(t, recovery)
	path := demo(t, t.TempDir())
	open(t, b, path)
	b.setWidth(300)
	must(t)(b.Autosave())
	task := b.BeginSave()
	b.setWidth(310)
	task.Write()
	must(t)(task.End())
	if saved, err := project.Open(path); err != nil || saved.Spec.Body.Width != 300 {
		t.Errorf("saved width %g, %v", saved.Spec.Body.Width, err)
	}
	if !b.Dirty() || b.width() != 310 {
		t.Errorf("dirty %t, width %g", b.Dirty(), b.width())
	}
	must(t)(b.Autosave())
	b.doc.Undo()
	if b.Dirty() {
		t.Error("what was saved counts as unsaved")
	}
	b.doc.Redo()
	must(t)(b.Autosave())
	b.crash()
	next := start(t, recovery)
	if _, err := next.Restore(recoverable(t, next, 1)[0]); err != nil || next.width() != 310 {
		t.Errorf("restored width %g, %v", next.width(), err)
	}
	must(t)(next.Save())
}

// Another bag is opened while the first is still being saved.
func TestOpenedWhileSaving(t *testing.T) {
	b := start(t, t.TempDir())
	first, second := demo(t, t.TempDir()), withArtwork(t, t.TempDir())
	open(t, b, first)
	b.setWidth(300)
	task := b.BeginSave()
	open(t, b, second)
	task.Write()
	must(t)(task.End())
	if b.Path() != second || b.Dirty() || b.width() == 300 {
		t.Errorf("open is %s, dirty %t, width %g", b.Path(), b.Dirty(), b.width())
	}
	if saved, err := project.Open(first); err != nil || saved.Spec.Body.Width != 300 {
		t.Errorf("saved width %g, %v", saved.Spec.Body.Width, err)
	}
}

// While a copy is being written no other is begun, and what changed meanwhile is in
// the next.
func TestCopiesDoNotPileUp(t *testing.T) {
	recovery := t.TempDir()
	b := start(t, recovery)
	b.setWidth(300)
	task := b.BeginAutosave()
	for width := range 50 {
		b.setWidth(301 + float64(width))
		if b.BeginAutosave() != nil {
			t.Fatal("a second copy was begun")
		}
	}
	task.Write()
	must(t)(task.End())
	must(t)(b.Autosave())
	if b.BeginAutosave() != nil {
		t.Error("a copy of what did not change was begun")
	}
	b.crash()
	next := start(t, recovery)
	if _, err := next.Restore(recoverable(t, next, 1)[0]); err != nil || next.width() != 350 {
		t.Errorf("restored width %g, %v", next.width(), err)
	}
}

// A copy that comes after its bag was saved, left or closed is not written any more.
func TestCopyThatComesTooLate(t *testing.T) {
	for name, end := range map[string]func(b *bench) error{
		"saved":  func(b *bench) error { return b.Save() },
		"left":   func(b *bench) error { b.New(); return nil },
		"closed": func(b *bench) error { return b.Close() },
	} {
		recovery := t.TempDir()
		b := start(t, recovery)
		open(t, b, demo(t, t.TempDir()))
		b.setWidth(300)
		task := b.BeginAutosave()
		must(t)(end(b))
		task.Write()
		must(t)(task.End())
		if left := names(t, recovery); len(left) > 0 {
			t.Errorf("%s: left %q", name, left)
		}
	}
}

// Work of another window on the same file is told of when the file is opened.
func TestOpenedElsewhere(t *testing.T) {
	recovery, path := t.TempDir(), demo(t, t.TempDir())
	first, second := start(t, recovery), start(t, recovery)
	open(t, first, path)
	opening := func(path string) string {
		notes, err := second.Open(path)
		must(t)(err)
		return fmt.Sprint(notes)
	}
	if notes := opening(path); notes != "[]" {
		t.Errorf("nothing is unsaved, but: %s", notes)
	}
	first.setWidth(300)
	must(t)(first.Autosave())
	if notes := opening(path); !strings.Contains(notes, "Another window has changes") {
		t.Errorf("notes %s", notes)
	}
	if notes := opening(demo(t, t.TempDir())); notes != "[]" {
		t.Errorf("another file: %s", notes)
	}
	must(t)(first.Save())
	if notes := opening(path); notes != "[]" {
		t.Errorf("saved meanwhile: %s", notes)
	}
	first.setWidth(310)
	must(t)(first.Autosave())
	first.crash()
	if notes := opening(path); notes != "[]" {
		t.Errorf("left by a crash, which is offered instead: %s", notes)
	}
}

// The clock goes backwards from one session to the next: the copies are offered in the
// order of the sessions all the same.
func TestClockGoesBackwards(t *testing.T) {
	recovery := t.TempDir()
	for i := range 3 {
		crashed := start(t, recovery)
		crashed.setWidth(300 + float64(i))
		must(t)(crashed.Autosave())
		when := time.Now().Add(-time.Duration(i) * time.Hour)
		must(t)(os.Chtimes(filepath.Join(crashed.copies.mine, copyName), when, when))
		crashed.crash()
	}
	b := start(t, recovery)
	for i, left := range recoverable(t, b, 3) {
		if _, saved, err := readCopy(left.folder); err != nil || saved.Spec.Body.Width != 302-float64(i) {
			t.Errorf("copy %d: width %g, %v", i, saved.Spec.Body.Width, err)
		}
	}
	_, err := b.Restore(recoverable(t, b, 3)[2]) // the oldest is taken up and is the newest then
	must(t)(err)
	b.setWidth(310)
	must(t)(b.Autosave())
	b.crash()
	again := start(t, recovery)
	if _, err := again.Restore(recoverable(t, again, 3)[0]); err != nil || again.width() != 310 {
		t.Errorf("the newest has the width %g, %v", again.width(), err)
	}
}

// A bag that is saved on a day before that of its file gets the day of the clock, and
// opens; nothing else asks for the time.
func TestSavingWithAClockThatWentBack(t *testing.T) {
	path := demo(t, t.TempDir())
	now := time.Date(2026, time.November, 25, 0, 0, 0, 0, time.UTC)
	doc := document.New()
	s := New(doc, Options{Recovery: t.TempDir(), Now: func() time.Time { return now }})
	_, err := s.Open(path)
	must(t)(err)
	for _, year := range []int{2026, 1970} {
		now = time.Date(year, time.January, 1, 0, 0, 0, 0, time.UTC)
		spec := doc.State().Spec
		spec.Body.Width++
		doc.Set(spec)
		must(t)(s.Save())
		saved, err := project.Open(path)
		if err != nil || saved.Spec.Date != now.Format(time.DateOnly) || s.Dirty() || saved.Spec.Body.Width != spec.Body.Width {
			t.Errorf("date %q, width %g, dirty %t, %v", saved.Spec.Date, saved.Spec.Body.Width, s.Dirty(), err)
		}
	}
	must(t)(s.Close())
}

// A drag that goes on while a slow drive is written to goes on after it, and makes the
// bag unsaved; one that stands still since saving began is saved, as a step.
func TestDragWhileSaving(t *testing.T) {
	for _, test := range []struct {
		goesOn bool
		undo   string
	}{{true, ""}, {false, "Face width"}} {
		b := start(t, t.TempDir())
		path := demo(t, t.TempDir())
		open(t, b, path)
		drag := func(mm float64) {
			spec := b.doc.State().Spec
			spec.Body.Width = mm
			b.doc.Drag(spec)
		}
		drag(300)
		task := b.BeginSave()
		if test.goesOn {
			drag(310)
		}
		task.Write()
		must(t)(task.End())
		state := b.doc.State()
		if state.Dirty != test.goesOn || state.Dragging != test.goesOn || state.Undo.Label != test.undo {
			t.Errorf("goes on %t: dirty %t, dragging %t, undo %q", test.goesOn, state.Dirty, state.Dragging, state.Undo.Label)
		}
		if saved, err := project.Open(path); err != nil || saved.Spec.Body.Width != 300 {
			t.Errorf("saved width %g, %v", saved.Spec.Body.Width, err)
		}
	}
}
