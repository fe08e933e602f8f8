package filestep

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/places"
	"gussetwright/app/steady"
)

// folderKey is where the folder is remembered.
const folderKey = "files-folder"

// folder is the entry for where to write, with a button to choose.
type folder struct {
	entry   *steady.Entry
	browse  *widget.Button
	box     *entry.Column
	window  fyne.Window
	changed func()
}

func newFolder(window fyne.Window, changed func()) *folder {
	f := &folder{entry: steady.NewEntry(), window: window, changed: changed}
	f.entry.SetPlaceHolder(lang.L("Folder for the files"))
	f.entry.Text = fyne.CurrentApp().Preferences().StringWithFallback(folderKey, places.Usual())
	f.entry.OnChanged = f.remember
	f.browse = widget.NewButtonWithIcon(lang.L("Browse…"), theme.FolderOpenIcon(), f.choose)
	f.box = entry.NewColumn(1, f.entry, container.NewHBox(f.browse))
	return f
}

func (f *folder) remember(path string) {
	fyne.CurrentApp().Preferences().SetString(folderKey, path)
	f.changed()
}

// path returns the folder as a whole path, or "" when none is entered.
func (f *folder) path() string {
	entered := strings.TrimSpace(f.entry.Text)
	if entered == "" {
		return ""
	}
	if whole, err := filepath.Abs(entered); err == nil {
		return whole
	}
	return entered
}

// choose lets the user choose a folder, beginning at the one that is entered.
func (f *folder) choose() {
	chooser := dialog.NewFolderOpen(f.chosen, f.window)
	places.Show(chooser, f.window, f.path())
}

func (f *folder) chosen(place fyne.ListableURI, err error) {
	if err != nil {
		dialog.ShowError(fmt.Errorf(lang.L("the folder cannot be opened: %s; choose another"), err), f.window)
	} else if place != nil {
		f.entry.SetText(filepath.FromSlash(place.Path()))
	}
}

// isThere tells whether there is anything at path.
func isThere(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}
