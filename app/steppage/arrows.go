package steppage

import "fyne.io/fyne/v2"

// RowAfter returns the row that a key leads to in a list of so many rows: the arrow
// keys go up and down, Home and End to the ends. Other keys stay where they are.
func RowAfter(key fyne.KeyName, at, rows int) int {
	switch key {
	case fyne.KeyUp:
		at--
	case fyne.KeyDown:
		at++
	case fyne.KeyHome:
		at = 0
	case fyne.KeyEnd:
		at = rows - 1
	}
	return max(min(at, rows-1), 0)
}
