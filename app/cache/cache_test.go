package cache_test

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"gussetwright/app/cache"
)

func TestFolderIsTheUsersOwn(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("the cache folder is named by a variable on Linux only")
	}
	root := t.TempDir()
	t.Setenv("XDG_CACHE_HOME", root)
	got := cache.Folder("pdfium")
	info, err := os.Stat(got)
	if err != nil || got != filepath.Join(root, "gussetwright", "pdfium") || info.Mode().Perm() != 0o700 {
		t.Errorf("folder %q, %v, %v", got, info, err)
	}
	t.Setenv("XDG_CACHE_HOME", filepath.Join(root, "file"))
	if err := os.WriteFile(filepath.Join(root, "file"), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if got := cache.Folder("pdfium"); got != "" {
		t.Errorf("folder %q where none can be made", got)
	}
}
