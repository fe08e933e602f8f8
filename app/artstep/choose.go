package artstep

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"

	"gussetwright/app/places"
)

// endings are what the names of artwork files end in, and those of profiles.
func endings() []string {
	return []string{".png", ".jpg", ".jpeg", ".tif", ".tiff", ".webp", ".svg", ".pdf"}
}

func profileEndings() []string { return []string{".icc", ".icm"} }

// IsArtwork tells from the name of a file whether it is likely to be artwork.
func IsArtwork(path string) bool {
	return slices.Contains(endings(), strings.ToLower(filepath.Ext(path)))
}

// IsProfile tells from the name of a file whether it is likely to be a profile.
func IsProfile(path string) bool {
	return slices.Contains(profileEndings(), strings.ToLower(filepath.Ext(path)))
}

// folderKey is where the folder is remembered in which artwork was found last.
const folderKey = "artwork-folder"

// AskForFiles lets the user choose artwork. No panel is pointed at.
func (s *Step) AskForFiles() {
	s.ask(endings(), func(path string) { s.source.Add("", path) })
}

// ask lets the user choose a file.
func (s *Step) ask(endings []string, then func(path string)) {
	store := fyne.CurrentApp().Preferences()
	chooser := dialog.NewFileOpen(func(file fyne.URIReadCloser, err error) {
		switch {
		case err != nil:
			dialog.ShowError(fmt.Errorf(lang.L("the file cannot be opened: %s; choose another"), err), s.window)
		case file != nil:
			path := filepath.FromSlash(file.URI().Path())
			_ = file.Close() // nothing was read from it
			store.SetString(folderKey, filepath.Dir(path))
			then(path)
		}
	}, s.window)
	chooser.SetFilter(storage.NewExtensionFileFilter(endings))
	places.Show(chooser, s.window, store.StringWithFallback(folderKey, places.Usual()))
}
