package raster

import "image"

// orientation is how a stored picture is turned to be upright, by the numbers of
// EXIF 2.3 (4.6.4 A, tag 274): 1 is upright, 2 to 4 are mirrored or upside down, 5
// to 8 lie on a side.
type orientation int

// turn returns what makes the picture upright: rows and columns swap first, then
// the picture flips from left to right and from top to bottom.
func (o orientation) turn() (swap, flipX, flipY bool) {
	switch o {
	case 2:
		return false, true, false
	case 3:
		return false, true, true
	case 4:
		return false, false, true
	case 5:
		return true, false, false
	case 6:
		return true, true, false
	case 7:
		return true, true, true
	case 8:
		return true, false, true
	}
	return false, false, false
}

// size returns the size of the upright picture.
func (o orientation) size(stored image.Point) image.Point {
	if swap, _, _ := o.turn(); swap {
		return image.Pt(stored.Y, stored.X)
	}
	return stored
}

// place returns where a stored pixel stands in the upright picture.
func (o orientation) place(pixel, stored image.Point) image.Point {
	swap, flipX, flipY := o.turn()
	if swap {
		pixel, stored = image.Pt(pixel.Y, pixel.X), image.Pt(stored.Y, stored.X)
	}
	if flipX {
		pixel.X = stored.X - 1 - pixel.X
	}
	if flipY {
		pixel.Y = stored.Y - 1 - pixel.Y
	}
	return pixel
}

// matrix returns the six numbers with which a PDF file draws the stored picture
// upright into a width × height rectangle, y up (ISO 32000-1, 8.9.5: an image fills
// the unit square, its first row at the top).
func (o orientation) matrix(width, height float64) [6]float64 {
	swap, flipX, flipY := o.turn()
	corner := func(x, y float64) (float64, float64) {
		right, down := x, 1-y
		if swap {
			right, down = down, right
		}
		if flipX {
			right = 1 - right
		}
		if flipY {
			down = 1 - down
		}
		return right * width, (1 - down) * height
	}
	e, f := corner(0, 0)
	ax, ay := corner(1, 0)
	bx, by := corner(0, 1)
	return [6]float64{ax - e, ay - f, bx - e, by - f, e, f}
}
