package lockfile_test

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"gussetwright/app/lockfile"
)

func TestHold(t *testing.T) {
	path := filepath.Join(t.TempDir(), "held")
	first, held, err := lockfile.Hold(path)
	if err != nil {
		t.Fatal(err)
	}
	if !held {
		t.Skip("this file system knows no locks")
	}
	if _, _, err := lockfile.Hold(path); !errors.Is(err, lockfile.ErrHeld) {
		t.Errorf("held twice: %v", err)
	}
	first.Close()
	second, held, err := lockfile.Hold(path)
	if err != nil || !held {
		t.Fatalf("after letting go: held %t, %v", held, err)
	}
	second.Close()
}

func TestIsAt(t *testing.T) {
	folder := t.TempDir()
	path, moved := filepath.Join(folder, "file"), filepath.Join(folder, "moved")
	if err := os.WriteFile(path, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	if !lockfile.IsAt(file, path) {
		t.Error("the file is not where it was opened")
	}
	file.Close()
	if lockfile.IsAt(file, path) {
		t.Error("a closed file stands somewhere")
	}
	if err := os.Rename(path, moved); err != nil {
		t.Fatal(err)
	}
	if file, err = os.Open(moved); err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if lockfile.IsAt(file, path) {
		t.Error("a file that was moved is where it was")
	}
}
