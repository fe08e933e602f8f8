package vector

import (
	"image"

	"gussetwright/geometry"
)

// mask tells how much of each pixel may be seen.
type mask struct {
	area  image.Rectangle // nothing outside
	alpha []uint8         // of the area, row by row; nil where all of it is seen
}

// row returns the alpha of neighbouring pixels, or nil where all of them are seen.
func (m *mask) row(y, from, to int) []uint8 {
	if m.alpha == nil {
		return nil
	}
	start := (y-m.area.Min.Y)*m.area.Dx() - m.area.Min.X
	return m.alpha[start+from : start+to]
}

// maskKey is by what a mask is known that was worked out before.
type maskKey struct {
	through *mask
	clip    *Clip
}

// keptMasks is how many bytes of masks are kept for shapes that follow.
const keptMasks = 64 << 20

// clipped returns what is seen through a mask and a clip.
func (r *renderer) clipped(through *mask, clip *Clip) *mask {
	key := maskKey{through, clip}
	if known := r.masks[key]; known != nil {
		return known
	}
	if len(clip.Parts) == 1 && len(clip.Parts[0].Clips) == 0 {
		if box, is := clip.Parts[0].Path.Rectangle(r.view); is && holds(box, through.area) {
			return through
		}
	}
	made := r.newMask(through, clip)
	const entry = 200 // bytes besides the alpha
	if r.maskSize += len(made.alpha) + entry; r.maskSize > keptMasks {
		clear(r.masks)
		r.maskSize = len(made.alpha) + entry
	}
	r.masks[key] = made
	return made
}

// holds tells whether a rectangle covers all pixels of an area.
func holds(box geometry.Rect, area image.Rectangle) bool {
	const close = 1e-3 // of a pixel
	grown, pixels := box.Inset(-close), seenOf(area)
	return grown.Min.X <= pixels.Min.X && grown.Min.Y <= pixels.Min.Y && grown.Max.X >= pixels.Max.X && grown.Max.Y >= pixels.Max.Y
}

func (r *renderer) newMask(through *mask, clip *Clip) *mask {
	var area image.Rectangle
	for _, part := range clip.Parts {
		if box, ok := part.Path.Bounds(r.view); ok {
			area = area.Union(pixelsOf(box))
		}
	}
	made := &mask{area: area.Intersect(through.area)}
	made.alpha = make([]uint8, made.area.Dx()*made.area.Dy())
	if made.area.Empty() {
		return made
	}
	for _, part := range clip.Parts {
		inner := &mask{area: made.area}
		for _, clip := range part.Clips {
			inner = r.clipped(inner, clip)
		}
		if !r.outline(inner.area, part.Path) {
			continue
		}
		r.scanner.Scan(part.EvenOdd, func(y, from, to int, cover float32) {
			made.unite(y, from, to, cover, inner.row(y, from, to))
		})
	}
	made.cut(through)
	return made
}

// unite adds pixels that are covered by a share, as far as they are seen through
// alpha.
func (m *mask) unite(y, from, to int, cover float32, alpha []uint8) {
	line := m.row(y, from, to)
	share := uint32(cover*255 + 0.5)
	for i := range line {
		add := share
		if alpha != nil {
			add = over255(share * uint32(alpha[i]))
		}
		line[i] = uint8(255 - over255((255-uint32(line[i]))*(255-add)))
	}
}

// cut takes away what is not seen through another mask.
func (m *mask) cut(through *mask) {
	if through.alpha == nil {
		return
	}
	for y := m.area.Min.Y; y < m.area.Max.Y; y++ {
		line, other := m.row(y, m.area.Min.X, m.area.Max.X), through.row(y, m.area.Min.X, m.area.Max.X)
		for i := range line {
			line[i] = uint8(over255(uint32(line[i]) * uint32(other[i])))
		}
	}
}

// over255 divides by 255, rounded; it holds up to 65 535.
func over255(v uint32) uint32 { return (v + 128 + (v+128)>>8) >> 8 }
