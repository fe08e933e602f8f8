package foldedpane

import (
	"fyne.io/fyne/v2/lang"

	"gussetwright/render/solid"
)

// NamedView is a usual place to look from.
type NamedView struct {
	Name   string // in the language of the user
	Camera solid.Camera
}

// NamedViews returns the usual places to look from.
func NamedViews() []NamedView {
	return []NamedView{
		{lang.L("Isometric"), solid.Isometric},
		{lang.L("Front"), solid.Front},
		{lang.L("Back"), solid.Back},
		{lang.L("Left side"), solid.Left},
		{lang.L("Right side"), solid.Right},
		{lang.L("From above"), solid.Top},
		{lang.L("From below"), solid.Below},
	}
}

// ViewName returns the name of the place that a camera looks from, however large, and
// that it is turned where the place has none.
func ViewName(camera solid.Camera) string {
	for _, v := range NamedViews() {
		if seen := v.Camera.Limited(); seen.Azimuth == camera.Azimuth && seen.Elevation == camera.Elevation {
			return v.Name
		}
	}
	return lang.L("Turned")
}
