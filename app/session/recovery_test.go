package session

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"gussetwright/app/lockfile"
	"gussetwright/app/project"
	"gussetwright/geometry/bag"
)

func TestRestore(t *testing.T) {
	recovery, folder := t.TempDir(), t.TempDir()
	path := withArtwork(t, folder)
	crashed := start(t, recovery)
	open(t, crashed, path)
	crashed.setWidth(300)
	must(t)(crashed.Autosave())
	crashed.setWidth(310)
	must(t)(crashed.Autosave())
	crashed.crash()

	b := start(t, recovery)
	found := recoverable(t, b, 1)[0]
	if found.Name != "printed" || found.Path != path || time.Since(found.Time) > time.Minute {
		t.Errorf("found %+v", found)
	}
	notes, err := b.Restore(found)
	if err != nil || len(notes) != 0 {
		t.Fatalf("notes %q, %v", notes, err)
	}
	if b.width() != 310 || !b.Dirty() || b.Path() != path || b.Title("") != "printed* – Gussetwright" {
		t.Errorf("restored width %g, dirty %t, title %q", b.width(), b.Dirty(), b.Title(""))
	}
	if got := b.doc.Project().Files; len(got) != 1 || string(got["front.pdf"]) != "%PDF front" {
		t.Errorf("artwork %q", got)
	}
	recoverable(t, start(t, recovery), 0) // it is this session's now

	b.setWidth(320)
	must(t)(b.Autosave())
	b.crash() // once more
	again := start(t, recovery)
	if _, err := again.Restore(recoverable(t, again, 1)[0]); err != nil || again.width() != 320 {
		t.Errorf("after the second crash: width %g, %v", again.width(), err)
	}
	must(t)(again.Save())
	if saved, err := project.Open(path); err != nil || saved.Spec.Body.Width != 320 || len(saved.Files) != 1 {
		t.Errorf("saved %+v, %v", saved, err)
	}
	if got := names(t, recovery); len(got) != 0 {
		t.Errorf("after saving: %q", got)
	}
}

// What was known about the file is known after a crash: that it may only be copied,
// that it is bare, and what it held.
func TestRestoreKnowsTheFile(t *testing.T) {
	recovery := t.TempDir()
	restored := func(path string) *bench {
		crashed := start(t, recovery)
		open(t, crashed, path)
		crashed.setWidth(333)
		must(t)(crashed.Autosave())
		crashed.crash()
		b := start(t, recovery)
		_, err := b.Restore(recoverable(t, b, 1)[0])
		must(t)(err)
		return b
	}
	if err := restored(newer(t, t.TempDir())).Save(); !errors.Is(err, ErrReadOnly) {
		t.Errorf("of a newer version: %v", err)
	}
	bare := write(t, filepath.Join(t.TempDir(), "bag.json"), "{}")
	must(t)(restored(bare).Save())
	if text := contents(t, bare); text[0] != '{' {
		t.Errorf("bare: %q", text[:10])
	}
	path := demo(t, t.TempDir())
	b := restored(path)
	must(t)(project.Save(path, project.Project{Spec: bag.Default()}))
	var changed *ChangedError
	if err := b.Save(); !errors.As(err, &changed) {
		t.Errorf("changed since the crash: %v", err)
	}
}

func TestRestoreUnnamedBag(t *testing.T) {
	recovery := t.TempDir()
	crashed := start(t, recovery)
	spec := crashed.doc.Project().Spec
	spec.Name = "Tea"
	crashed.doc.Set(spec)
	must(t)(crashed.Autosave())
	crashed.crash()
	b := start(t, recovery)
	found := recoverable(t, b, 1)[0]
	if found.Name != "Tea" || found.Path != "" {
		t.Errorf("found %+v", found)
	}
	_, err := b.Restore(found)
	must(t)(err)
	if err := b.Save(); !errors.Is(err, ErrNoPath) {
		t.Errorf("saving it: %v", err)
	}
}

func TestDiscard(t *testing.T) {
	recovery := t.TempDir()
	for i := range 3 {
		crashed := start(t, recovery)
		crashed.setWidth(300 + float64(i))
		must(t)(crashed.Autosave())
		when := time.Now().Add(time.Duration(i-5) * time.Hour)
		must(t)(os.Chtimes(filepath.Join(crashed.copies.mine, copyName), when, when))
		crashed.crash()
	}
	b := start(t, recovery)
	found := recoverable(t, b, 3)
	if !found[0].Time.After(found[1].Time) || !found[1].Time.After(found[2].Time) {
		t.Errorf("not the newest first: %v", found)
	}
	must(t)(b.Discard(found[1]))
	left := recoverable(t, b, 2)
	if _, err := b.Restore(left[0]); err != nil || b.width() != 302 {
		t.Errorf("the newest has the width %g, %v", b.width(), err)
	}
	wantMessage(t, b.Discard(found[1]), "discard unsaved work")
}

// Two running programs see neither each other's copies nor take them.
func TestTwoSessions(t *testing.T) {
	recovery := t.TempDir()
	first, second := start(t, recovery), start(t, recovery)
	first.setWidth(300)
	second.setWidth(400)
	must(t)(first.Autosave())
	must(t)(second.Autosave())
	if got := names(t, recovery); len(got) != 2 {
		t.Fatalf("copies %q, want one each", got)
	}
	recoverable(t, first, 0)
	recoverable(t, second, 0)
	stolen := Recovery{folder: first.copies.mine}
	for name, err := range map[string]error{
		"restore": func() error { _, err := second.Restore(stolen); return err }(), "discard": second.Discard(stolen),
	} {
		if !errors.Is(err, lockfile.ErrHeld) {
			t.Errorf("%s: error %v, want %v", name, err, lockfile.ErrHeld)
		}
	}
	if second.width() != 400 {
		t.Errorf("width %g after failing to restore", second.width())
	}
	must(t)(first.Close())
	must(t)(second.Autosave())
	if got := names(t, recovery); len(got) != 1 {
		t.Errorf("copies %q, want that of the second alone", got)
	}
}

func TestDamagedCopy(t *testing.T) {
	recovery := t.TempDir()
	for name, text := range map[string]string{"1-cut": `{"path": "/x/y.gus`, "2-bag": `{"bag": {"bag": {"width_mm": 5}}}`, "3-empty": ""} {
		must(t)(os.Mkdir(filepath.Join(recovery, name), 0o755))
		write(t, filepath.Join(recovery, name, copyName), text)
	}
	write(t, filepath.Join(recovery, "a file"), "")
	b := start(t, recovery)
	b.setWidth(300)
	for _, found := range recoverable(t, b, 3) {
		_, err := b.Restore(found)
		wantMessage(t, err, "restore unsaved work", found.folder, "damaged")
		if b.width() != 300 {
			t.Errorf("width %g after failing to restore", b.width())
		}
		must(t)(b.Discard(found))
	}
	if got := names(t, recovery); !slices.Equal(got, []string{"a file"}) {
		t.Errorf("left: %q", got)
	}
}

func TestMissingArtworkOfACopyIsTold(t *testing.T) {
	recovery := t.TempDir()
	crashed := start(t, recovery)
	open(t, crashed, withArtwork(t, t.TempDir()))
	crashed.setWidth(300)
	must(t)(crashed.Autosave())
	must(t)(os.Remove(filepath.Join(crashed.copies.mine, "artwork-1")))
	crashed.crash()
	b := start(t, recovery)
	notes, err := b.Restore(recoverable(t, b, 1)[0])
	if err != nil || len(notes) != 1 || !strings.Contains(notes[0].String(), "front.pdf") || b.width() != 300 {
		t.Errorf("notes %q, %v, width %g", notes, err, b.width())
	}
}

// A folder in which a program died before it wrote a copy is cleared away.
func TestFolderWithoutCopyIsCleared(t *testing.T) {
	recovery := t.TempDir()
	crashed := start(t, recovery)
	must(t)(crashed.copies.settle())
	crashed.crash()
	recoverable(t, start(t, recovery), 0)
	if got := names(t, recovery); len(got) != 0 {
		t.Errorf("left: %q", got)
	}
}

// Replaced artwork gets a file of its own, also after a restore.
func TestReplacedArtwork(t *testing.T) {
	recovery := t.TempDir()
	b := start(t, recovery)
	open(t, b, withArtwork(t, t.TempDir()))
	for _, content := range []string{"one", "two", "three"} {
		replaced := b.doc.Project()
		replaced.Files["front.pdf"] = []byte(content)
		b.doc.Restore(replaced)
		must(t)(b.Autosave())
		b.crash()
		next := start(t, recovery)
		_, err := next.Restore(recoverable(t, next, 1)[0])
		must(t)(err)
		if got := string(next.doc.Project().Files["front.pdf"]); got != content {
			t.Errorf("artwork %q, want %q", got, content)
		}
		b = next
	}
}

func TestIsRunning(t *testing.T) {
	if !isRunning(os.Getpid()) {
		t.Error("this program does not run")
	}
	child := exec.Command(os.Args[0], "-test.run=^$")
	must(t)(child.Run())
	if isRunning(child.Process.Pid) {
		t.Error("a program that ended runs")
	}
}

// Where files cannot be held, the number in the file tells whether its owner runs.
func TestOwnerLives(t *testing.T) {
	ended := exec.Command(os.Args[0], "-test.run=^$")
	must(t)(ended.Run())
	for text, want := range map[string]bool{
		"": false, "nonsense": false, strconv.Itoa(os.Getppid()): true,
		strconv.Itoa(ended.Process.Pid): false, strconv.Itoa(os.Getpid()): false,
	} {
		file, err := os.Open(write(t, filepath.Join(t.TempDir(), ownerName), text))
		must(t)(err)
		if got := ownerLives(file); got != want {
			t.Errorf("owner %q lives: %t", text, got)
		}
		file.Close()
	}
}
