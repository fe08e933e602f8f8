package help

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/shortcuts"
)

// keys lists the table of shortcuts, with the group of a title before all others; "" is
// none.
func keys(first string) *fyne.Container {
	box := container.NewVBox()
	groups := shortcuts.Groups()
	slices.SortStableFunc(groups, func(a, b shortcuts.Group) int {
		switch {
		case a.Title == first && b.Title != first:
			return -1
		case b.Title == first && a.Title != first:
			return 1
		}
		return 0
	})
	for _, group := range groups {
		box.Add(heading(group.Title))
		var rows []pair
		for _, s := range group.Shortcuts {
			rows = append(rows, pair{words(s.Keys()), s.Label})
		}
		box.Add(table(rows))
	}
	return box
}

// mouse says what pointer and wheel do in the panes.
func mouse() fyne.CanvasObject {
	return table([]pair{
		{words(lang.L("Wheel")), lang.L("Zooms: in the blank at the pointer.")},
		{words(lang.L("Drag")), lang.L("Moves the blank; turns the folded bag.")},
		{words(lang.L("Drag an edge or a hole")), lang.L("Changes the bag. A drag is one step for undo, and Escape takes it back.")},
		{words(lang.L("Double click")), lang.L("Shows everything.")},
		{words(lang.L("Point at a panel")), lang.L("It lights up in the other pane as well.")},
		{words(lang.L("Click a finding")), lang.L("Both panes show its place.")},
		{words(lang.L("Drop a file")), lang.L("A project is opened. Artwork goes on the panel under the pointer; where there is none, on a face without artwork.")},
		{words(lang.L("Drag artwork")), lang.L("In the Artwork step: moves the chosen piece; its corners scale it, and the handle above it turns it. With Shift it does not snap.")},
	})
}
