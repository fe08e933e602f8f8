package status

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
)

// openingText says which artwork is being read and opened; nothing when all of it is
// shown.
func openingText(state document.State, reading []string) string {
	names := slices.Clone(reading)
	for i, hung := range state.Snapshot.Hung {
		name := state.Snapshot.Spec.Artwork[i].File
		if hung.Art == nil && hung.Err == nil && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	switch len(names) {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf(lang.L("Opening %s…"), names[0])
	}
	return fmt.Sprintf(lang.L("Opening %s and %d more…"), names[0], len(names)-1)
}
