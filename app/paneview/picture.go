// Package paneview holds what the blank pane and the folded pane share: how a picture
// that was drawn elsewhere comes onto the screen, and short texts over it.
package paneview

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// NewPicture returns an image whose pixels are those of the screen.
func NewPicture() *canvas.Image {
	return &canvas.Image{FillMode: canvas.ImageFillStretch, ScaleMode: canvas.ImageScalePixels}
}

// Outgrown readies a picture for a size that no pixels were drawn in yet. Those that it
// shows keep their proportions until others come. It tells whether there are any.
func Outgrown(picture *canvas.Image) bool {
	if picture.Image == nil {
		return false
	}
	picture.FillMode = canvas.ImageFillContain
	return true
}

// Swap shows pixels in a picture and returns those that they take the place of, to be
// drawn on again; nil when there were none or they are the same.
func Swap(picture *canvas.Image, pixels *image.RGBA) *image.RGBA {
	old, _ := picture.Image.(*image.RGBA)
	picture.Image, picture.FillMode = pixels, canvas.ImageFillStretch
	picture.Refresh()
	if old == pixels {
		return nil
	}
	return old
}

// Clear shows nothing in a picture and returns the pixels that it showed, or nil.
func Clear(picture *canvas.Image) *image.RGBA {
	old, _ := picture.Image.(*image.RGBA)
	picture.Image = nil
	picture.Refresh()
	return old
}

// Density returns how many pixels of the screen a pixel of fyne is wide where the
// object is shown, 1 where it is not.
func Density(object fyne.CanvasObject) float64 {
	on := fyne.CurrentApp().Driver().CanvasForObject(object)
	if on == nil {
		return 1
	}
	const far = 1000 // enough for the rounding to whole pixels not to count
	x, _ := on.PixelCoordinateForPosition(fyne.NewPos(far, 0))
	if x <= 0 {
		return 1
	}
	return float64(x) / far
}
