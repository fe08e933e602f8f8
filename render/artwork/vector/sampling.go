package vector

import (
	"image"
	"image/draw"
	"math"

	"gussetwright/geometry"
	"gussetwright/render/ink"
)

// picture draws an embedded image.
func (r *renderer) picture(onto *image.RGBA, through *mask, p *Picture) {
	place := r.view.After(p.Place)
	area := through.area.Intersect(pixelsOf(place.Bounds(geometry.RectAt(0, 0, 1, 1))))
	if area.Empty() {
		return
	}
	brush, ok := r.imageBrush(p.Image, place)
	if !ok {
		return
	}
	r.scanner.Reset(area)
	r.scanner.Polygon([]geometry.Vec2{place.At(geometry.Vec2{}), place.At(geometry.Vec2{X: 1}), place.At(geometry.Vec2{X: 1, Y: 1}), place.At(geometry.Vec2{Y: 1})})
	r.lay(onto, through, false, brush, p.Opacity)
}

// reduced is an image that was made smaller by whole factors.
type reduced struct {
	of       *Image
	byX, byY int
	premixed *image.RGBA
}

// imageBrush paints an image, mixing the four pixels around each place.
type imageBrush struct {
	pixels *image.RGBA
	back   geometry.Affine // from the picture to the pixels of the image, y down
}

func (r *renderer) imageBrush(picture *Image, place geometry.Affine) (imageBrush, bool) {
	byX := factor(float64(picture.Width)/place.U.Length(), picture.Width)
	byY := factor(float64(picture.Height)/place.V.Length(), picture.Height)
	if kept := r.reduced; kept.of != picture || kept.byX != byX || kept.byY != byY {
		r.reduced = reduced{of: picture, byX: byX, byY: byY, premixed: r.reduce(picture.Pixels, byX, byY)}
	}
	// From the pixels of the small image to the unit square, and on to the picture.
	width, height := float64(picture.Width)/float64(byX), float64(picture.Height)/float64(byY)
	unit := geometry.Affine{U: geometry.Vec2{X: 1 / width}, V: geometry.Vec2{Y: -1 / height}, Origin: geometry.Vec2{Y: 1}}
	back, ok := place.After(unit).Inverse()
	return imageBrush{r.reduced.premixed, back}, ok
}

// factor returns by how much an image is made smaller before it is drawn, when so
// many of its pixels fall on one.
func factor(perPixel float64, most int) int {
	if !(perPixel > 1) {
		return 1
	}
	return int(min(math.Round(perPixel), float64(most)))
}

// reduce makes an image smaller: each pixel is the mean of a block.
func (r *renderer) reduce(from image.Image, byX, byY int) *image.RGBA {
	bounds := from.Bounds()
	small := image.NewRGBA(image.Rect(0, 0, (bounds.Dx()+byX-1)/byX, (bounds.Dy()+byY-1)/byY))
	row := image.NewRGBA(image.Rect(0, 0, bounds.Dx(), 1))
	sums := make([]uint64, 4*small.Rect.Dx())
	for y := range small.Rect.Dy() {
		if r.ctx.Err() != nil {
			break
		}
		rows := min(byY, bounds.Dy()-y*byY)
		clear(sums)
		for i := range rows {
			r.readRow(row, from, bounds.Min.Y+y*byY+i)
			addBlocks(sums, row.Pix, byX)
		}
		line := small.Pix[y*small.Stride : (y+1)*small.Stride]
		for i := range line {
			columns := min(byX, bounds.Dx()-i/4*byX)
			count := uint64(columns * rows)
			line[i] = uint8((sums[i] + count/2) / count)
		}
	}
	return small
}

// readRow reads a row of an image. Inks look as they do everywhere in this program.
func (r *renderer) readRow(into *image.RGBA, from image.Image, y int) {
	inks, is := from.(*image.CMYK)
	if !is {
		draw.Draw(into, into.Rect, from, image.Pt(from.Bounds().Min.X, y), draw.Src)
		return
	}
	if r.inks == nil {
		r.inks = ink.NewTable()
	}
	start := inks.PixOffset(inks.Rect.Min.X, y)
	amounts := inks.Pix[start : start+4*inks.Rect.Dx()]
	for i := 0; i+4 <= len(amounts); i += 4 {
		to := into.Pix[i : i+4 : i+4]
		to[0], to[1], to[2] = r.inks.RGB(amounts[i], amounts[i+1], amounts[i+2], amounts[i+3])
		to[3] = 255
	}
}

// addBlocks adds a row of pixels to the sums of its blocks.
func addBlocks(sums []uint64, row []uint8, by int) {
	for i := 0; len(row) > 0; i += 4 {
		block := row[:min(4*by, len(row))]
		row = row[len(block):]
		var a, b, c, d uint64
		for ; len(block) >= 4; block = block[4:] {
			a, b, c, d = a+uint64(block[0]), b+uint64(block[1]), c+uint64(block[2]), d+uint64(block[3])
		}
		sums[i], sums[i+1], sums[i+2], sums[i+3] = sums[i]+a, sums[i+1]+b, sums[i+2]+c, sums[i+3]+d
	}
}

func (b imageBrush) paint(x, y int, pixels []uint8) {
	at := b.back.At(geometry.Vec2{X: float64(x) + 0.5, Y: float64(y) + 0.5})
	for ; len(pixels) >= 4; pixels = pixels[4:] {
		b.sample(at, pixels[:4:4])
		at = at.Add(b.back.U)
	}
}

// sample writes the colour at a place of the image. Its border goes on outside.
func (b imageBrush) sample(at geometry.Vec2, into []uint8) {
	size := b.pixels.Rect
	x := min(max(at.X-0.5, 0), float64(size.Max.X-1))
	y := min(max(at.Y-0.5, 0), float64(size.Max.Y-1))
	left, top := int(x), int(y)
	right, bottom := min(left+1, size.Max.X-1), min(top+1, size.Max.Y-1)
	shareX, shareY := uint32((x-float64(left))*256), uint32((y-float64(top))*256)
	pixel := func(x, y int) []uint8 {
		start := y*b.pixels.Stride + 4*x
		return b.pixels.Pix[start : start+4 : start+4]
	}
	p, q, s, t := pixel(left, top), pixel(right, top), pixel(left, bottom), pixel(right, bottom)
	for i := range into {
		upper := uint32(p[i])*(256-shareX) + uint32(q[i])*shareX
		lower := uint32(s[i])*(256-shareX) + uint32(t[i])*shareX
		into[i] = uint8((upper*(256-shareY) + lower*shareY + 1<<15) >> 16)
	}
}
