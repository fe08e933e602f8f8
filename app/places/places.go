// Package places knows where on the disk to begin: which folder people keep their
// files in, and how a dialog that lists files is opened there.
package places

import (
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
)

// Usual returns a folder that people look for their files in, or "" when the user has
// no home.
func Usual() string {
	home, err := os.UserHomeDir()
	if err != nil {
		return ""
	}
	if documents := filepath.Join(home, "Documents"); isFolder(documents) {
		return documents
	}
	return home
}

// Show shows a dialog that lists files: in most of the window, beginning at the
// nearest folder above path that there is.
func Show(chooser *dialog.FileDialog, window fyne.Window, path string) {
	if start, err := storage.ListerForURI(storage.NewFileURI(existing(path))); err == nil {
		chooser.SetLocation(start)
	}
	size := window.Canvas().Size()
	chooser.Resize(fyne.NewSize(size.Width*0.8, size.Height*0.8))
	chooser.Show()
}

func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// existing returns the nearest folder above path that there is.
func existing(path string) string {
	for !isFolder(path) && path != filepath.Dir(path) {
		path = filepath.Dir(path)
	}
	return path
}
