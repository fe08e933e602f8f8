package appearance

import (
	"image/color"

	"fyne.io/fyne/v2/theme"
)

// IsDark tells whether the window is dark: by the colour behind its text, as the user
// may have chosen against the desktop.
func IsDark() bool {
	grey := color.GrayModel.Convert(theme.Color(theme.ColorNameBackground)).(color.Gray)
	return grey.Y < 128
}
