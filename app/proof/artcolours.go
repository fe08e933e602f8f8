package proof

import (
	"context"
	"image"
	"image/color"
	"math"

	"gussetwright/geometry"
	"gussetwright/render/artwork"
	"gussetwright/render/artwork/raster"
)

// artColours returns the main colours of all artwork, each file as much as it covers of
// the bag.
func (p *Proof) artColours() ([]mainColour, error) {
	areas := map[*artwork.Art]float64{}
	var order []*artwork.Art
	for i := range p.Snapshot.Placed {
		placed := &p.Snapshot.Placed[i]
		art := p.Snapshot.Hung[placed.Index].Art
		covered := placed.Clip
		if placed.Copies == nil {
			covered = common(covered, placed.At.Bounds(geometry.RectAt(0, 0, 1, 1)))
		}
		if areas[art] == 0 {
			order = append(order, art)
		}
		areas[art] += covered.Width() * covered.Height() * p.Snapshot.Spec.Artwork[placed.Index].Opacity / 100
	}
	colours := palette{}
	for _, art := range order {
		if err := p.ctx.Err(); err != nil {
			return nil, err
		}
		if err := colours.addArt(p.ctx, art, areas[art]); err != nil {
			return nil, err
		}
	}
	return colours.main(), nil
}

// common returns what two rectangles have in common, of no size where that is nothing.
func common(a, b geometry.Rect) geometry.Rect {
	low := geometry.Vec2{X: max(a.Min.X, b.Min.X), Y: max(a.Min.Y, b.Min.Y)}
	high := geometry.Vec2{X: min(a.Max.X, b.Max.X), Y: min(a.Max.Y, b.Max.Y)}
	return geometry.Rect{Min: low, Max: geometry.Vec2{X: max(high.X, low.X), Y: max(high.Y, low.Y)}}
}

// addArt adds the colours of a file that covers an area. Inks that cannot be unpacked are
// left out: what they look like is known all the same.
func (p palette) addArt(ctx context.Context, art *artwork.Art, area float64) error {
	if art.Raster != nil && art.Raster.Colours == raster.CMYK {
		if stored, err := inksOf(ctx, art.Raster); err == nil {
			p.addInks(stored, area)
			return nil
		}
	}
	p.addPixels(art.Levels[0], area)
	if art.Drawing != nil {
		p.nameInks(art.Drawing)
	}
	return ctx.Err()
}

// Weights of pixels. Where two colours meet, pixels have neither of them.
const (
	flatWeight = 1.0
	edgeWeight = 0.04
	sameAs     = 10  // greatest difference of a channel on flat ground
	bareFrom   = 249 // of 255: paper that is left bare
	seenFrom   = 128 // alpha
)

// enoughPixels is how many pixels tell the colours of artwork.
const enoughPixels = 600_000

// strideFor returns the step from pixel to pixel at which enough of them are looked at.
func strideFor(size image.Point) int {
	return max(int(math.Ceil(math.Sqrt(float64(size.X)*float64(size.Y)/enoughPixels))), 1)
}

// addPixels adds the pixels of a picture.
func (p palette) addPixels(picture *image.RGBA, area float64) {
	width, height := picture.Rect.Dx(), picture.Rect.Dy()
	step := strideFor(picture.Rect.Size())
	weight := area * float64(step*step) / float64(width*height)
	for y := 0; y < height; y += step {
		for x := 0; x < width; x += step {
			c, seen := straight(picture, x, y)
			if !seen || isBare(c) {
				continue
			}
			if isFlatAt(picture, x, y) {
				p.add(c, weight*flatWeight)
			} else {
				p.add(c, weight*edgeWeight)
			}
		}
	}
}

// straight returns the colour of a pixel, and false where it is more clear than not.
func straight(picture *image.RGBA, x, y int) (color.RGBA, bool) {
	i := y*picture.Stride + 4*x
	pixel := picture.Pix[i : i+4 : i+4]
	alpha := uint32(pixel[3])
	if alpha < seenFrom {
		return color.RGBA{}, false
	}
	part := func(v uint8) uint8 { return uint8(min((uint32(v)*255+alpha/2)/alpha, 255)) }
	return color.RGBA{part(pixel[0]), part(pixel[1]), part(pixel[2]), 255}, true
}

func isBare(c color.RGBA) bool { return min(c.R, c.G, c.B) >= bareFrom }

// isFlatAt tells whether a pixel is like those on all four sides of it.
func isFlatAt(picture *image.RGBA, x, y int) bool {
	if x == 0 || y == 0 || x == picture.Rect.Dx()-1 || y == picture.Rect.Dy()-1 {
		return false
	}
	i := y*picture.Stride + 4*x
	for _, other := range [4]int{i - 4, i + 4, i - picture.Stride, i + picture.Stride} {
		for c := range 4 {
			if math.Abs(float64(picture.Pix[i+c])-float64(picture.Pix[other+c])) > sameAs {
				return false
			}
		}
	}
	return true
}
