package session

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/project"
)

func TestTitle(t *testing.T) {
	folder := t.TempDir()
	path := demo(t, folder)
	b := start(t, t.TempDir())
	want := func(title string) {
		t.Helper()
		if got := b.Title("Untitled"); got != title {
			t.Errorf("title %q, want %q", got, title)
		}
	}
	want("Untitled – Gussetwright")
	spec := b.doc.Project().Spec
	spec.Name = "Tea"
	b.doc.Set(spec)
	want("Tea* – Gussetwright")
	open(t, b, path)
	want("tea-house – Gussetwright")
	b.setWidth(300)
	want("tea-house* – Gussetwright")
	b.doc.Undo()
	want("tea-house – Gussetwright")
	must(t)(b.SaveAs(filepath.Join(folder, "two.gusset")))
	want("two – Gussetwright")
	b.New()
	want("Untitled – Gussetwright")
	if b.Path() != "" || b.Dirty() {
		t.Errorf("a new bag has the path %q, dirty %t", b.Path(), b.Dirty())
	}
}

// Whoever listens to the document finds the title of the file that it shows.
func TestTitleIsRightWhileListenersAreTold(t *testing.T) {
	folder := t.TempDir()
	path := demo(t, folder)
	b := start(t, t.TempDir())
	var titles []string
	b.doc.Listen(func(d document.State) { titles = append(titles, b.Title("Untitled")) })
	open(t, b, path)
	must(t)(b.SaveAs(filepath.Join(folder, "two.gusset")))
	b.New()
	want := []string{"tea-house – Gussetwright", "two – Gussetwright", "Untitled – Gussetwright"}
	if !slices.Equal(titles, want) {
		t.Errorf("titles %q, want %q", titles, want)
	}
}

func TestOpenFailing(t *testing.T) {
	folder := t.TempDir()
	b := start(t, t.TempDir())
	open(t, b, demo(t, folder))
	b.setWidth(300)
	gone := filepath.Join(folder, "gone.gusset")
	b.recent.AddRecent(gone)
	before := *b
	_, err := b.Open(gone)
	wantMessage(t, err, "open project", "gone.gusset")
	if !errors.Is(err, fs.ErrNotExist) || slices.Contains(b.recent, gone) {
		t.Errorf("error %v, recent files %q", err, b.recent)
	}
	_, err = b.Open(folder)
	wantMessage(t, err, folder, "this is a folder")
	_, err = b.Open(write(t, filepath.Join(folder, "bad.json"), `{"bag": {"width_mm": 5}}`))
	wantMessage(t, err, "bad.json", "bag.width_mm", "30 to 1000 mm")
	_, err = b.Open(os.DevNull)
	wantMessage(t, err, "not a plain file", "choose another")
	if b.width() != 300 || b.Path() != before.Path() || !b.Dirty() || len(b.recent) != 1 {
		t.Errorf("after failing to open: width %g, path %q, dirty %t, recent %q", b.width(), b.Path(), b.Dirty(), b.recent)
	}
}

func TestOpenTellsWhatTheUserShouldKnow(t *testing.T) {
	b := start(t, t.TempDir())
	notes, err := b.Open(newer(t, t.TempDir()))
	must(t)(err)
	if len(notes) != 1 || !b.doc.State().ReadOnly {
		t.Errorf("notes %q, read-only %t", notes, b.doc.State().ReadOnly)
	}
}

func TestRecentFilesHaveWholePaths(t *testing.T) {
	folder := t.TempDir()
	path := demo(t, folder)
	t.Chdir(folder)
	b := start(t, t.TempDir())
	open(t, b, filepath.Base(path))
	must(t)(b.SaveAs("two.gusset"))
	if want := []string{filepath.Join(folder, "two.gusset"), path}; !slices.Equal(b.recent, want) || b.Path() != want[0] {
		t.Errorf("recent files %q, path %q, want %q", b.recent, b.Path(), want)
	}
}

// Without anybody to tell and without a clock it works all the same.
func TestOptionsMayBeLeftOut(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	t.Setenv("HOME", t.TempDir())
	path := demo(t, t.TempDir())
	b := start(t, "")
	plain := New(b.doc, Options{})
	if _, err := plain.Open(path); err != nil {
		t.Fatal(err)
	}
	b.setWidth(300)
	must(t)(plain.Autosave())
	must(t)(plain.Save())
	saved, err := project.Open(path)
	if err != nil || saved.Spec.Date == "" {
		t.Errorf("date %q, %v", saved.Spec.Date, err)
	}
	must(t)(plain.Close())
	b.setWidth(310)
	if plain.copies.due {
		t.Error("a closed session still listens")
	}
}
