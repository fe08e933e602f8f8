package places

import (
	"os"
	"path/filepath"
	"testing"
)

func TestFirstFolderIsWherePeopleLook(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	t.Setenv("USERPROFILE", home)
	if got := Usual(); got != home {
		t.Errorf("folder %q, want %q", got, home)
	}
	documents := filepath.Join(home, "Documents")
	if err := os.Mkdir(documents, 0o755); err != nil {
		t.Fatal(err)
	}
	if got := Usual(); got != documents {
		t.Errorf("folder %q, want %q", got, documents)
	}
}

func TestExisting(t *testing.T) {
	folder := t.TempDir()
	if got := existing(filepath.Join(folder, "a", "b")); got != folder {
		t.Errorf("got %q, want %q", got, folder)
	}
	if got := existing(""); got == "" {
		t.Error("nowhere to begin without a folder")
	}
}

func TestAddressOfFolder(t *testing.T) {
	for folder, want := range map[string]string{"/files/50% off": "file:///files/50%25%20off", "C:/files": "file:///C:/files"} {
		if got := pageOf(folder).String(); got != want {
			t.Errorf("%q has the address %q, want %q", folder, got, want)
		}
	}
}
