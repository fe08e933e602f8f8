package toolrow

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// newMore returns the button that opens the list of the tools for which a row has no room.
func newMore(r *row) *Button {
	more := Sign(lang.L("More tools"), theme.MoreHorizontalIcon(), nil)
	more.OnTapped = func() {
		more.hush()
		OpenList(more, r.items())
	}
	more.Hide()
	return more
}

// items returns the tools that were left out, as entries of a list.
func (r *row) items() []*fyne.MenuItem {
	var items []*fyne.MenuItem
	for _, tool := range r.left {
		switch tool := tool.(type) {
		case *Button:
			items = append(items, item(tool.word, &tool.Button))
		case *widget.Button:
			items = append(items, item(tool.Text, tool))
		}
	}
	return items
}

// item does what a button does. It is ticked where the button would be pressed in.
func item(word string, button *widget.Button) *fyne.MenuItem {
	made := fyne.NewMenuItemWithIcon(word, button.Icon, button.OnTapped)
	made.Checked = button.Importance == widget.MediumImportance
	made.Disabled = button.Disabled()
	return made
}

// Seen returns the tool of a row, or the button with the list that it is in where there is
// no room for it.
func Seen(in *fyne.Container, tool fyne.CanvasObject) fyne.CanvasObject {
	if of, is := in.Layout.(*row); is && !tool.Visible() {
		return of.more
	}
	return tool
}

// OpenList opens a list below an object, with the focus in it.
func OpenList(below fyne.CanvasObject, items []*fyne.MenuItem) {
	driver := fyne.CurrentApp().Driver()
	on := driver.CanvasForObject(below)
	if on == nil {
		return
	}
	list := widget.NewPopUpMenu(fyne.NewMenu("", items...), on)
	list.ShowAtPosition(driver.AbsolutePositionForObject(below).AddXY(0, below.Size().Height))
	on.Focus(list)
}
