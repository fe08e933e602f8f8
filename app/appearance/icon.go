package appearance

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"gussetwright/assets"
)

// ProgramIcon returns the icon of the program, 512 × 512 pixels.
func ProgramIcon() fyne.Resource { return icon("gussetwright.png") }

// FromProductIcon returns the picture for a bag that is made to fit what goes in.
func FromProductIcon() fyne.Resource { return theme.NewPrimaryThemedResource(icon("from-product.svg")) }

// FromSizeIcon returns the picture for a bag whose measures are known.
func FromSizeIcon() fyne.Resource { return theme.NewPrimaryThemedResource(icon("from-size.svg")) }

// FitIcon returns the sign for showing everything.
func FitIcon() fyne.Resource { return sign("fit") }

// ZoomInIcon returns the sign for coming nearer.
func ZoomInIcon() fyne.Resource { return sign("zoom-in") }

// ZoomOutIcon returns the sign for going further away.
func ZoomOutIcon() fyne.Resource { return sign("zoom-out") }

// MeasureIcon returns the sign for measuring between two points.
func MeasureIcon() fyne.Resource { return sign("measure") }

// LayersIcon returns the sign for what is shown and hidden.
func LayersIcon() fyne.Resource { return sign("layers") }

// ViewsIcon returns the sign for the sides from which the bag is seen.
func ViewsIcon() fyne.Resource { return sign("views") }

// UndoIcon returns the sign for taking a step back.
func UndoIcon() fyne.Resource { return sign("undo") }

// RedoIcon returns the sign for doing a step again.
func RedoIcon() fyne.Resource { return sign("redo") }

// sign returns an icon in the colour of text.
func sign(name string) fyne.Resource { return theme.NewThemedResource(icon(name + ".svg")) }

// icon returns an icon that is part of the program. A name that is not there is
// found by the tests, not by the user.
func icon(name string) fyne.Resource {
	data, err := assets.Icons.ReadFile("icon/" + name)
	if err != nil {
		return theme.BrokenImageIcon()
	}
	return fyne.NewStaticResource(name, data)
}
