package session

import (
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"gussetwright/app/project"
	"gussetwright/geometry/bag"
)

func keptSizes(letters string) (kept []project.KeptSize) {
	for i, letter := range letters {
		kept = append(kept, project.KeptSize{Letter: string(letter), Width: 200 + 10*float64(i), Gusset: 80, Height: 300})
	}
	return kept
}

// Kept sizes are there when the project is opened again, with every kind of file, and make
// no other bag of it: its day and its history stay.
func TestKeptSizesAreSaved(t *testing.T) {
	for _, ending := range []string{"gusset", "json"} {
		b := start(t, t.TempDir())
		folder := t.TempDir()
		open(t, b, withArtwork(t, folder))
		path := filepath.Join(folder, "kept."+ending)
		b.setWidth(300)
		b.doc.Undo()
		b.doc.Keep(keptSizes("AB"))
		if b.Title("") != "printed* – Gussetwright" {
			t.Errorf("the title is %q", b.Title(""))
		}
		must(t)(b.SaveAs(path))
		if state := b.doc.State(); state.Dirty || state.Redo.Label != "Face width" || state.Spec.Date != earlier {
			t.Errorf("%s: dirty %t, redo %+v, day %s", ending, state.Dirty, state.Redo, state.Spec.Date)
		}
		must(t)(b.Save())
		open(t, b, withArtwork(t, t.TempDir()))
		if got := b.doc.Kept(); len(got) != 0 {
			t.Errorf("%s: another project keeps %v", ending, got)
		}
		open(t, b, path)
		if got := b.doc.Kept(); !slices.Equal(got, keptSizes("AB")) || b.Dirty() {
			t.Errorf("%s: opened again it keeps %v, dirty %t", ending, got, b.Dirty())
		}
		b.doc.Keep(nil)
		must(t)(b.Save())
		saved, err := project.Open(path)
		if err != nil || len(saved.Kept) != 0 {
			t.Errorf("%s: what was removed is still in the file: %v, %v", ending, saved.Kept, err)
		}
	}
}

// A crash loses no kept size, not even where nothing else is unsaved.
func TestKeptSizesAreRecovered(t *testing.T) {
	recovery := t.TempDir()
	path := withArtwork(t, t.TempDir())
	crashed := start(t, recovery)
	open(t, crashed, path)
	crashed.doc.Keep(keptSizes("AB"))
	must(t)(crashed.Autosave())
	crashed.crash()

	b := start(t, recovery)
	_, err := b.Restore(recoverable(t, b, 1)[0])
	must(t)(err)
	if got := b.doc.Kept(); !slices.Equal(got, keptSizes("AB")) || !b.Dirty() {
		t.Errorf("restored %v, dirty %t", got, b.Dirty())
	}
	b.doc.Keep(nil) // on disk there is none: what was restored is unsaved until it is saved
	must(t)(b.Save())
	if got := names(t, recovery); len(got) != 0 || b.Dirty() {
		t.Errorf("after saving: %q, dirty %t", got, b.Dirty())
	}
}

// An entry that cannot be drawn is mended in the copy, and takes no kept size along.
func TestKeptSizesAreCopiedBesideABagThatCannotBeDrawn(t *testing.T) {
	recovery := t.TempDir()
	crashed := start(t, recovery)
	crashed.doc.Keep(keptSizes("A"))
	crashed.setWidth(-1)
	must(t)(crashed.Autosave())
	crashed.crash()
	b := start(t, recovery)
	_, err := b.Restore(recoverable(t, b, 1)[0])
	must(t)(err)
	if got := b.doc.Kept(); !slices.Equal(got, keptSizes("A")) || b.width() != bag.Default().Body.Width {
		t.Errorf("restored %v, width %g", got, b.width())
	}
}

// What is kept while a slow drive is written to is unsaved after it.
func TestKeepingWhileSaving(t *testing.T) {
	b := start(t, t.TempDir())
	path := withArtwork(t, t.TempDir())
	open(t, b, path)
	b.doc.Keep(keptSizes("A"))
	task := b.BeginSave()
	b.doc.Keep(keptSizes("AB"))
	task.Write()
	must(t)(task.End())
	if !b.Dirty() {
		t.Error("B counts as saved")
	}
	saved, err := project.Open(path)
	if err != nil || !slices.Equal(saved.Kept, keptSizes("A")) {
		t.Errorf("saved %v, %v", saved.Kept, err)
	}
}

// Without kept sizes a file is what it was before there were any.
func TestFilesWithoutKeptSizes(t *testing.T) {
	b := start(t, t.TempDir())
	path := filepath.Join(t.TempDir(), "bag.json")
	must(t)(b.SaveAs(path))
	if text := contents(t, path); strings.Contains(text, "kept") {
		t.Errorf("the file names kept sizes:\n%s", text)
	}
}
