package session

import (
	"bytes"
	"errors"
	"image/png"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"testing"
	"time"

	"gussetwright/app/project"
)

func TestSave(t *testing.T) {
	path := withArtwork(t, t.TempDir())
	b := start(t, t.TempDir())
	open(t, b, path)
	b.setWidth(300)
	must(t)(b.Save())
	saved, err := project.Open(path)
	must(t)(err)
	if saved.Spec.Body.Width != 300 || saved.Spec.Date != today || string(saved.Files["front.pdf"]) != "%PDF front" {
		t.Errorf("saved width %g, date %q, files %q", saved.Spec.Body.Width, saved.Spec.Date, saved.Files)
	}
	if picture, err := png.Decode(bytes.NewReader(saved.Preview)); err != nil || picture.Bounds().Dx() < 100 {
		t.Errorf("the preview is no picture: %v", err)
	}
	if b.Dirty() || b.doc.State().Undo.Label != "Face width" || !reflect.DeepEqual(b.doc.Project().Spec, saved.Spec) {
		t.Errorf("after saving: dirty %t, undo %+v", b.Dirty(), b.doc.State().Undo)
	}
	before := contents(t, path)
	must(t)(b.Save())
	if contents(t, path) != before {
		t.Error("saving twice gives other bytes")
	}
}

// A bag that did not change keeps the day of its last change.
func TestSavingUnchangedKeepsTheDate(t *testing.T) {
	folder := t.TempDir()
	b := start(t, t.TempDir())
	open(t, b, withArtwork(t, folder))
	must(t)(b.SaveAs(filepath.Join(folder, "copy.gusset")))
	if got := b.doc.Project().Spec.Date; got != earlier {
		t.Errorf("date %q, want %q", got, earlier)
	}
}

func TestSaveWithoutFile(t *testing.T) {
	b := start(t, t.TempDir())
	b.setWidth(300)
	for _, save := range []func() error{b.Save, b.Overwrite} {
		if err := save(); !errors.Is(err, ErrNoPath) {
			t.Errorf("error %v, want %v", err, ErrNoPath)
		}
	}
	path := filepath.Join(t.TempDir(), "new.gusset")
	must(t)(b.SaveAs(path))
	b.setWidth(310)
	must(t)(b.Save())
	if saved, err := project.Open(path); err != nil || saved.Spec.Body.Width != 310 || saved.Spec.Date != today {
		t.Errorf("saved %+v, %v", saved.Spec, err)
	}
	if !slices.Equal(b.recent, []string{path}) {
		t.Errorf("recent files %q", b.recent)
	}
}

func TestBareStaysBare(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "named like a project.gusset"), `{"bag": {"width_mm": 300}}`)
	b := start(t, t.TempDir())
	open(t, b, path)
	b.setWidth(310)
	must(t)(b.Save())
	if text := contents(t, path); text[0] != '{' {
		t.Errorf("the file begins with %q", text[:10])
	}
	if saved, err := project.Open(path); err != nil || saved.Spec.Body.Width != 310 {
		t.Errorf("saved %+v, %v", saved.Spec, err)
	}
	must(t)(b.SaveAs(filepath.Join(filepath.Dir(path), "whole.gusset")))
	if text := contents(t, b.Path()); text[:2] != "PK" {
		t.Errorf("the file begins with %q", text[:10])
	}
}

func TestArtworkBesideBareFile(t *testing.T) {
	b := start(t, t.TempDir())
	open(t, b, withArtwork(t, t.TempDir()))
	folder := t.TempDir()
	path, front := filepath.Join(folder, "bag.json"), filepath.Join(folder, "front.pdf")
	must(t)(b.SaveAs(path))
	if got := contents(t, front); got != "%PDF front" {
		t.Errorf("artwork %q", got)
	}
	write(t, front, "%PDF changed by its owner")
	b.setWidth(300)
	must(t)(b.Save())
	if got := contents(t, front); got != "%PDF changed by its owner" {
		t.Errorf("artwork %q was taken back", got)
	}
	must(t)(os.Remove(front))
	must(t)(b.Overwrite())
	if got := contents(t, front); got != "%PDF front" {
		t.Errorf("artwork %q, want what was open", got)
	}

	elsewhere := t.TempDir()
	there := write(t, filepath.Join(elsewhere, "front.pdf"), "%PDF of another bag")
	err := b.SaveAs(filepath.Join(elsewhere, "bag.json"))
	wantMessage(t, err, "save project", "front.pdf", "choose another folder")
	if got := contents(t, there); got != "%PDF of another bag" || len(names(t, elsewhere)) != 1 || b.Path() != path {
		t.Errorf("%q, files %q, path %q", got, names(t, elsewhere), b.Path())
	}
	write(t, there, "%PDF front")
	must(t)(b.SaveAs(filepath.Join(elsewhere, "bag.json")))

	spec := b.doc.Project().Spec
	spec.Artwork[0].File = "Bag.json"
	files := map[string][]byte{"Bag.json": nil}
	b.doc.Load(project.Project{Spec: spec, Files: files})
	wantMessage(t, b.SaveAs(filepath.Join(t.TempDir(), "bag.json")), "Bag.json", "choose another name")
}

func TestReadOnlyIsSavedAsCopyOnly(t *testing.T) {
	folder := t.TempDir()
	path := newer(t, folder)
	before := contents(t, path)
	link := filepath.Join(folder, "link.json")
	b := start(t, t.TempDir())
	open(t, b, path)
	b.setWidth(310)
	saves := map[string]func() error{
		"save": b.Save, "overwrite": b.Overwrite, "save as the same": func() error { return b.SaveAs(path) },
	}
	if os.Symlink(path, link) == nil {
		saves["save as a link to it"] = func() error { return b.SaveAs(link) }
	}
	for name, save := range saves {
		if err := save(); !errors.Is(err, ErrReadOnly) || contents(t, path) != before {
			t.Errorf("%s: error %v", name, err)
		}
	}
	must(t)(b.SaveAs(filepath.Join(folder, "copy.gusset")))
	b.setWidth(320)
	must(t)(b.Save())
	if saved, err := project.Open(b.Path()); err != nil || saved.ReadOnly || saved.Spec.Body.Width != 320 {
		t.Errorf("the copy: %+v, %v", saved, err)
	}
}

func TestFileChangedByAnotherProgram(t *testing.T) {
	path := demo(t, t.TempDir())
	b, other := start(t, t.TempDir()), start(t, t.TempDir())
	open(t, b, path)
	open(t, other, path)
	other.setWidth(500)
	must(t)(other.Save())

	b.setWidth(300)
	err := b.Save()
	var changed *ChangedError
	if !errors.As(err, &changed) || changed.Path != path {
		t.Fatalf("error %v, want that the file was changed", err)
	}
	wantMessage(t, err, path, "overwrite it", "another name")
	if saved, err := project.Open(path); err != nil || saved.Spec.Body.Width != 500 || !b.Dirty() {
		t.Errorf("width %g, %v, dirty %t", saved.Spec.Body.Width, err, b.Dirty())
	}
	must(t)(b.Overwrite())
	b.setWidth(310)
	must(t)(b.Save())
	if saved, err := project.Open(path); err != nil || saved.Spec.Body.Width != 310 {
		t.Errorf("width %g, %v", saved.Spec.Body.Width, err)
	}
}

// The size and the time may be those of before; a new time alone is no change.
func TestContentTellsWhetherAFileChanged(t *testing.T) {
	path := write(t, filepath.Join(t.TempDir(), "bag.json"), `{"bag": {"width_mm": 300}}`)
	info, err := os.Stat(path)
	must(t)(err)
	b := start(t, t.TempDir())
	open(t, b, path)
	write(t, path, `{"bag": {"width_mm": 400}}`)
	must(t)(os.Chtimes(path, info.ModTime(), info.ModTime()))
	b.setWidth(310)
	var changed *ChangedError
	if err := b.Save(); !errors.As(err, &changed) {
		t.Errorf("error %v, want that the file was changed", err)
	}
	write(t, path, `{"bag": {"width_mm": 300}}`)
	must(t)(os.Chtimes(path, time.Now(), info.ModTime().Add(time.Hour)))
	must(t)(b.Save())
}

func TestFileRemovedWhileOpen(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "inner")
	must(t)(os.Mkdir(folder, 0o755))
	path := demo(t, folder)
	b := start(t, t.TempDir())
	open(t, b, path)
	must(t)(os.Remove(path))
	b.setWidth(300)
	must(t)(b.Save())
	if saved, err := project.Open(path); err != nil || saved.Spec.Body.Width != 300 {
		t.Errorf("width %g, %v", saved.Spec.Body.Width, err)
	}
	must(t)(os.RemoveAll(folder))
	b.setWidth(310)
	wantMessage(t, b.Save(), "save project "+path)
	if !b.Dirty() || b.Path() != path {
		t.Errorf("after failing to save: dirty %t, path %q", b.Dirty(), b.Path())
	}
}

// After any failure the bag is still unsaved and has the file it had.
func TestSaveFailing(t *testing.T) {
	b := start(t, t.TempDir())
	path := demo(t, t.TempDir())
	open(t, b, path)
	b.setWidth(300)
	for _, test := range []struct {
		name, path string
		parts      []string
	}{
		{"folder missing", filepath.Join(t.TempDir(), "nowhere", "x.gusset"), []string{"save project", "nowhere"}},
		{"a folder", t.TempDir(), []string{"this is a folder", "choose a file name in it"}},
		{"bare in a missing folder", filepath.Join(t.TempDir(), "nowhere", "x.json"), []string{"save project", "nowhere"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			wantMessage(t, b.SaveAs(test.path), test.parts...)
		})
	}
	b.setWidth(5)
	for _, ending := range []string{".gusset", ".json"} {
		wantMessage(t, b.SaveAs(filepath.Join(t.TempDir(), "x"+ending)), "bag.width_mm", "30 to 1000 mm")
	}
	if !b.Dirty() || b.Path() != path || len(b.recent) != 1 {
		t.Errorf("dirty %t, path %q, recent files %q", b.Dirty(), b.Path(), b.recent)
	}
}

func TestSaveInReadOnlyFolder(t *testing.T) {
	folder := t.TempDir()
	path := demo(t, folder)
	b := start(t, t.TempDir())
	open(t, b, path)
	b.setWidth(300)
	protect(t, folder)
	before := contents(t, path)
	wantMessage(t, b.Save(), "save project "+path, "permission denied")
	if contents(t, path) != before || !b.Dirty() {
		t.Error("the file changed, or the bag counts as saved")
	}
}
