package help

import (
	"fmt"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/release"
)

// changes lists what is new in each version, the newest first. The list is a document
// that comes with the program, like its licences, and stands in English in every
// language.
func changes() fyne.CanvasObject {
	versions, err := release.Changes()
	if err != nil {
		return words(err.Error())
	}
	box := container.NewVBox()
	for _, version := range versions {
		box.Add(heading(fmt.Sprintf(lang.L("Version %s, %s"), version.Version, version.Date.Format(time.DateOnly))))
		for _, part := range version.Parts {
			box.Add(words(part.Title))
			for _, item := range part.Items {
				box.Add(words("•  " + item))
			}
		}
	}
	return box
}
