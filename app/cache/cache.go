// Package cache knows the folder for what can be made anew but takes time.
package cache

import (
	"os"
	"path/filepath"
)

// Folder returns a folder of the program's own within the cache folder of the user,
// which only the user can write to, or "" where there is none.
func Folder(name string) string {
	cache, err := os.UserCacheDir()
	if err != nil {
		return ""
	}
	folder := filepath.Join(cache, "gussetwright", name)
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return ""
	}
	return folder
}
