package wholefile_test

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"

	"gussetwright/app/wholefile"
)

// While a file is written it stands beside the old one; when writing fails the old
// one is as it was and the new one is gone.
func TestFailingWriteLeavesTheOldFile(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "demo.gusset")
	if err := os.WriteFile(path, []byte("before"), 0o644); err != nil {
		t.Fatal(err)
	}
	broken := errors.New("broken")
	err := wholefile.Write(path, func(w io.Writer) error {
		if found := entries(t, folder); found != 2 {
			t.Errorf("%d files while writing, want the old one and a temporary one", found)
		}
		if _, err := w.Write([]byte("half of it")); err != nil {
			t.Error(err)
		}
		return broken
	})
	if !errors.Is(err, broken) {
		t.Errorf("got %v, want %v", err, broken)
	}
	if found := entries(t, folder); found != 1 {
		t.Errorf("%d files are left, want one", found)
	}
	if data, err := os.ReadFile(path); err != nil || string(data) != "before" {
		t.Errorf("the old file holds %q, %v", data, err)
	}
}

func TestWriteReplaces(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new.txt")
	for _, text := range []string{"first", "second"} {
		err := wholefile.Write(path, func(w io.Writer) error {
			_, err := io.WriteString(w, text)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
		if data, err := os.ReadFile(path); err != nil || string(data) != text {
			t.Errorf("the file holds %q, %v; want %q", data, err, text)
		}
	}
}

func entries(t *testing.T, folder string) int {
	t.Helper()
	list, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	return len(list)
}
