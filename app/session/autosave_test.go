package session

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"gussetwright/geometry/bag"
)

func TestAutosaveKeepsACopyWhileThereIsUnsavedWork(t *testing.T) {
	recovery := filepath.Join(t.TempDir(), "not there yet")
	b := start(t, recovery)
	want := func(what string, copies int) {
		t.Helper()
		must(t)(b.Autosave())
		if got := names(t, recovery); len(got) != copies {
			t.Errorf("%s: %q, want %d", what, got, copies)
		}
	}
	want("nothing changed", 0)
	b.setWidth(300)
	want("changed", 1)
	b.doc.Undo()
	want("undone", 0)
	b.doc.Redo()
	want("done again", 1)
	must(t)(b.SaveAs(filepath.Join(t.TempDir(), "x.gusset")))
	if got := names(t, recovery); len(got) != 0 {
		t.Errorf("saved: %q", got)
	}
	b.setWidth(310)
	want("changed after saving", 1)
	b.New()
	if got := names(t, recovery); len(got) != 0 {
		t.Errorf("new bag: %q", got)
	}
	b.setWidth(320)
	want("changed again", 1)
	open(t, b, demo(t, t.TempDir()))
	if got := names(t, recovery); len(got) != 0 {
		t.Errorf("opened another: %q", got)
	}
	b.setWidth(330)
	want("and again", 1)
	must(t)(b.Close())
	if got := names(t, recovery); len(got) != 0 {
		t.Errorf("closed: %q", got)
	}
}

func TestAutosaveWritesOnlyWhatChanged(t *testing.T) {
	b := start(t, t.TempDir())
	open(t, b, withArtwork(t, t.TempDir()))
	b.setWidth(300)
	must(t)(b.Autosave())
	files := names(t, b.copies.mine)
	past := time.Now().Add(-time.Hour)
	for _, name := range files {
		must(t)(os.Chtimes(filepath.Join(b.copies.mine, name), past, past))
	}
	age := func(name string) time.Duration {
		info, err := os.Stat(filepath.Join(b.copies.mine, name))
		must(t)(err)
		return time.Since(info.ModTime())
	}
	must(t)(b.Autosave())
	if age(copyName) < time.Minute {
		t.Error("written again though nothing changed")
	}
	b.setWidth(310)
	must(t)(b.Autosave())
	if age(copyName) > time.Minute || age("artwork-1") < time.Minute || !slices.Equal(names(t, b.copies.mine), files) {
		t.Errorf("files %q; the copy is %v old, the artwork %v", names(t, b.copies.mine), age(copyName), age("artwork-1"))
	}
}

// Entries that cannot be drawn are kept with their last good value, all others as
// they are.
func TestAutosaveOfWhatCannotBeDrawn(t *testing.T) {
	for _, test := range []struct {
		name  string
		spoil func(*bag.Spec)
	}{
		{"one entry", func(s *bag.Spec) { s.Body.Width = 5 }},
		{"a choice", func(s *bag.Spec) { s.Body.Base = "none" }},
		{"the name", func(s *bag.Spec) { s.Name = strings.Repeat("x", 200) }},
		{"artwork", func(s *bag.Spec) { s.Artwork = []bag.Artwork{{}} }},
		{"entries that do not go together", func(s *bag.Spec) { s.Body.Gusset = 3 }},
		{"first one entry, then together", func(s *bag.Spec) { s.Body.Width, s.Body.Gusset = 5, 3 }},
		{"a block base without gussets", func(s *bag.Spec) { s.Body.Gusset = 0 }},
	} {
		t.Run(test.name, func(t *testing.T) {
			recovery := t.TempDir()
			crashed := start(t, recovery)
			crashed.setWidth(300)
			want := crashed.doc.Project().Spec
			spec := want
			test.spoil(&spec)
			crashed.doc.Set(spec)
			spec.Paper.Grammage, want.Paper.Grammage = 200, 200 // edited while the other is refused
			crashed.doc.Set(spec)
			must(t)(crashed.Autosave())
			crashed.crash()
			b := start(t, recovery)
			_, err := b.Restore(recoverable(t, b, 1)[0])
			must(t)(err)
			if got := b.doc.Project().Spec; got.Body != want.Body || got.Paper != want.Paper || got.Name != want.Name || len(got.Artwork) != 0 {
				t.Errorf("got %+v, want %+v", got, want)
			}
		})
	}
}

// What no file can hold is an error, and is written as soon as it is mended.
func TestAutosaveOfWhatCannotBeWritten(t *testing.T) {
	b := start(t, t.TempDir())
	spec := b.doc.Project().Spec
	spec.Name = "\xff"
	b.doc.Set(spec)
	wantMessage(t, b.Autosave(), "name", "not UTF-8", "enter it anew")
	spec.Name = "Tea"
	b.doc.Set(spec)
	must(t)(b.Autosave())
}

// A copy that cannot be written is an error every time, and is written as soon as
// it can be.
func TestAutosaveFailing(t *testing.T) {
	blocked := filepath.Join(t.TempDir(), "file")
	write(t, blocked, "")
	b := start(t, filepath.Join(blocked, "recovery"))
	b.setWidth(300)
	for range 2 {
		wantMessage(t, b.Autosave(), "keep a copy of unsaved work", blocked, "save the bag yourself")
	}
	_, err := b.Recoverable()
	wantMessage(t, err, "look for unsaved work", blocked)
	must(t)(os.Remove(blocked))
	must(t)(b.Autosave())
	recoverable(t, b, 0)
}

func TestAutosaveInReadOnlyFolder(t *testing.T) {
	recovery := t.TempDir()
	b := start(t, recovery)
	b.setWidth(300)
	protect(t, recovery)
	wantMessage(t, b.Autosave(), "permission denied")
}

// Somebody clears the cache while the program runs.
func TestRecoveryFolderClearedAway(t *testing.T) {
	recovery := t.TempDir()
	b := start(t, recovery)
	open(t, b, withArtwork(t, t.TempDir()))
	b.setWidth(300)
	must(t)(b.Autosave())
	must(t)(os.RemoveAll(recovery))
	b.setWidth(310)
	must(t)(b.Autosave())
	b.crash()
	other := start(t, recovery)
	notes, err := other.Restore(recoverable(t, other, 1)[0])
	if err != nil || len(notes) != 0 || other.width() != 310 || len(other.doc.Project().Files) != 1 {
		t.Errorf("notes %q, %v, width %g, files %d", notes, err, other.width(), len(other.doc.Project().Files))
	}
}
