package steppage

import (
	"testing"

	"fyne.io/fyne/v2"
)

func TestRowAfter(t *testing.T) {
	for _, test := range []struct {
		key            fyne.KeyName
		at, rows, want int
	}{
		{fyne.KeyDown, 0, 3, 1},
		{fyne.KeyDown, 2, 3, 2},
		{fyne.KeyUp, 1, 3, 0},
		{fyne.KeyUp, 0, 3, 0},
		{fyne.KeyHome, 2, 3, 0},
		{fyne.KeyEnd, 0, 3, 2},
		{fyne.KeyLeft, 1, 3, 1},
		{fyne.KeyLeft, 5, 3, 2},
		{fyne.KeyDown, 0, 0, 0},
		{fyne.KeyEnd, 0, 0, 0},
	} {
		if got := RowAfter(test.key, test.at, test.rows); got != test.want {
			t.Errorf("%s from row %d of %d leads to %d, want %d", test.key, test.at, test.rows, got, test.want)
		}
	}
}
