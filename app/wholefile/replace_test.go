package wholefile_test

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"gussetwright/app/wholefile"
)

// put writes a text in the way of a test.
func put(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func text(text string) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := io.WriteString(w, text)
		return err
	}
}

func wantText(t *testing.T, path, want string) {
	t.Helper()
	if data, err := os.ReadFile(path); err != nil || string(data) != want {
		t.Errorf("the file holds %q, %v; want %q", data, err, want)
	}
}

// On a slow drive somebody else may write the file while ours is being written. What
// decides whether it is replaced is asked after that, with the new file complete.
func TestReplaceAsksWhenAllIsWritten(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "demo.gusset")
	put(t, path, "before")
	changed := errors.New("changed")
	var order []string
	err := wholefile.Replace(path, func() error {
		order = append(order, "asked")
		wantText(t, path, "by another")
		return changed
	}, func(w io.Writer) error {
		for _, part := range []string{"slow", "ly"} {
			if err := text(part)(w); err != nil {
				return err
			}
			wantText(t, path, "before")
		}
		put(t, path, "by another")
		order = append(order, "written")
		return nil
	})
	if !errors.Is(err, changed) || strings.Join(order, " ") != "written asked" {
		t.Errorf("%v after %q", err, order)
	}
	wantText(t, path, "by another")
	if entries(t, folder) != 1 {
		t.Error("something is left")
	}
}

// Between the question and the new name nobody else replaces the file.
func TestNobodyComesBetween(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("files that are replaced cannot be held there")
	}
	path := filepath.Join(t.TempDir(), "demo.gusset")
	put(t, path, "before")
	err := wholefile.Replace(path, func() error {
		if err := wholefile.Write(path, text("second")); !errors.Is(err, wholefile.ErrBusy) {
			t.Errorf("a second program got in between: %v", err)
		}
		return nil
	}, text("first"))
	if err != nil {
		t.Fatal(err)
	}
	wantText(t, path, "first")
	if err := wholefile.Write(path, text("second")); err != nil {
		t.Error(err)
	}
	wantText(t, path, "second")
}

// What a killed program left goes with the next file that is written there; what
// another program is writing stays.
func TestLeftoversAreCleared(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("only old leftovers can be told from files that are being written there")
	}
	folder := t.TempDir()
	left := filepath.Join(folder, ".gussetwright-0badcafe.tmp")
	foreign := filepath.Join(folder, ".other-0badcafe.tmp")
	put(t, left, "half of it")
	put(t, foreign, "not ours")
	first, second := filepath.Join(folder, "first"), filepath.Join(folder, "second")
	err := wholefile.Write(first, func(w io.Writer) error {
		if err := wholefile.Write(second, text("second")); err != nil {
			t.Error(err)
		}
		return text("first")(w)
	})
	if err != nil {
		t.Fatal(err)
	}
	wantText(t, first, "first")
	wantText(t, second, "second")
	wantText(t, foreign, "not ours")
	if found := entries(t, folder); found != 3 {
		t.Errorf("%d files are there, want the leftover gone", found)
	}
	if !wholefile.IsUnfinished(filepath.Base(left)) || wholefile.IsUnfinished(filepath.Base(foreign)) || wholefile.IsUnfinished("bag.tmp") {
		t.Error("leftovers are not told from other files")
	}
}

// Of the clock that stamps leftovers nothing depends where files can be held.
func TestLeftoversOfTheFuture(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("leftovers are told by their age there")
	}
	folder := t.TempDir()
	left := filepath.Join(folder, ".gussetwright-0badcafe.tmp")
	put(t, left, "half of it")
	tomorrow := time.Now().Add(24 * time.Hour)
	if err := os.Chtimes(left, tomorrow, tomorrow); err != nil {
		t.Fatal(err)
	}
	if err := wholefile.Write(filepath.Join(folder, "file"), text("whole")); err != nil {
		t.Fatal(err)
	}
	if found := entries(t, folder); found != 1 {
		t.Errorf("%d files are there, want the leftover gone", found)
	}
}

func TestFolderIsGone(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "unplugged")
	err := wholefile.Write(filepath.Join(folder, "file"), text("whole"))
	for _, part := range []string{"the folder " + folder + " is not there", "choose another", "connect the drive"} {
		if err == nil || !strings.Contains(err.Error(), part) {
			t.Errorf("error %v, want one with %q", err, part)
		}
	}
}
