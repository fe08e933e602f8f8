package cache_test

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"gussetwright/app/cache"
)

// The folder is named and not made: a program that keeps nothing leaves nothing.
func TestFolderIsTheUsersOwn(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("the cache folder is named by a variable on Linux only")
	}
	root := t.TempDir()
	t.Setenv("XDG_CACHE_HOME", root)
	if got, want := cache.Folder("pdfium"), filepath.Join(root, "gussetwright", "pdfium"); got != want {
		t.Errorf("folder %q, want %q", got, want)
	}
	if entries, err := os.ReadDir(root); err != nil || len(entries) > 0 {
		t.Errorf("%d entries in the cache of the user (%v)", len(entries), err)
	}
	t.Setenv("XDG_CACHE_HOME", "")
	t.Setenv("HOME", "")
	if got := cache.Folder("pdfium"); got != "" {
		t.Errorf("folder %q of nobody", got)
	}
}
