package report

import (
	"errors"
	"fmt"
	"image"

	"golang.org/x/image/draw"

	"gussetwright/geometry"
)

// Window shows of its items what lies within a rectangle, and cuts off the rest. They
// stay lines and letters.
type Window struct {
	Rect  geometry.Rect
	Items []Item // at their places on the page
}

func (Window) isItem() {}

func (w Window) check() error {
	if !(w.Rect.Width() > 0 && w.Rect.Height() > 0) {
		return fmt.Errorf("a window is %g × %g mm; it must have an area", w.Rect.Width(), w.Rect.Height())
	}
	errs := []error{numbers("place of a window", w.Rect.Min.X, w.Rect.Min.Y, w.Rect.Max.X, w.Rect.Max.Y)}
	for i, item := range w.Items {
		if err := check(item); err != nil {
			errs = append(errs, fmt.Errorf("item %d in a window: %w", i+1, err))
		}
	}
	return errors.Join(errs...)
}

// look draws the items of a window beside the page and takes over what is seen of them.
func (e *easel) look(w Window) error {
	page := e.picture
	beside := image.NewRGBA(page.Rect)
	copy(beside.Pix, page.Pix)
	e.turnTo(beside)
	defer e.turnTo(page)
	for _, item := range w.Items {
		if err := e.draw(item); err != nil {
			return err
		}
	}
	area := e.pixels(w.Rect)
	draw.Draw(page, area, beside, area.Min, draw.Src)
	return nil
}

// turnTo paints what follows on a picture.
func (e *easel) turnTo(picture *image.RGBA) {
	e.picture = picture
	e.painter.Begin(picture, e.view)
}
