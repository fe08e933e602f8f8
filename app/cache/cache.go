// Package cache knows the folder for what can be made anew but takes time.
package cache

import (
	"os"
	"path/filepath"
)

// Folder returns a folder of the program's own within the cache folder of the user, or
// "" where there is none. It need not be there yet: whoever has something to keep makes
// it, for nobody but the user.
func Folder(name string) string {
	cache, err := os.UserCacheDir()
	if err != nil {
		return ""
	}
	return filepath.Join(cache, "gussetwright", name)
}
