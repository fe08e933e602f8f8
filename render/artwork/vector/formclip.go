package vector

import (
	"gussetwright/geometry"
	"gussetwright/render/artwork/vector/outline"
	"gussetwright/render/pdf/object"
)

// fewParts is how many parts of a clip are compared with each other.
const fewParts = 64

// clip writes a clip, if operators can say it: PDF knows only what lies inside of
// one path after the other, not what lies inside of any of several paths.
func (c *canvas) clip(clip *Clip) bool {
	if !plainly(clip) {
		return false
	}
	if len(clip.Parts) == 1 {
		for _, own := range clip.Parts[0].Clips {
			c.clip(own)
		}
	}
	var all outline.Path
	for _, part := range clip.Parts {
		all = all.Joined(part.Path)
	}
	c.path(all)
	c.do(ruled("W", clip.Parts[0].EvenOdd))
	c.do("n")
	return true
}

// plainly tells whether a clip is a single path, or several that lie apart and so
// can be made one.
func plainly(clip *Clip) bool {
	if len(clip.Parts) == 1 {
		for _, own := range clip.Parts[0].Clips {
			if !plainly(own) {
				return false
			}
		}
		return true
	}
	if len(clip.Parts) > fewParts {
		return false
	}
	var boxes []geometry.Rect
	for _, part := range clip.Parts {
		box, _ := part.Path.Bounds(geometry.Identity())
		if len(part.Clips) > 0 || part.EvenOdd != clip.Parts[0].EvenOdd {
			return false
		}
		for _, other := range boxes {
			if !overlap(box, other).Empty() {
				return false
			}
		}
		boxes = append(boxes, box)
	}
	return len(boxes) > 0
}

// mask returns a clip as a soft mask: a drawing whose white is what is seen.
func (b *book) mask(clip *Clip) *object.Indirect {
	if known := b.masks[clip]; known != nil {
		return known
	}
	c := &canvas{book: b, names: map[*object.Indirect]object.Name{}}
	for _, part := range clip.Parts {
		c.within(part.Clips, 1, false, func(c *canvas) {
			c.do("g", 1)
			c.path(part.Path)
			c.do(ruled("f", part.EvenOdd))
		})
	}
	made := b.luminosity(c)
	b.masks[clip] = made
	return made
}

// luminosity returns a content in grey as a soft mask (ISO 32000-1, 11.6.5.2).
func (b *book) luminosity(c *canvas) *object.Indirect {
	form := object.Form{Width: b.size.X, Height: b.size.Y, Content: c.data, Resources: c.resources(), Group: append(transparency[:len(transparency):len(transparency)], object.Entry{Key: "CS", Value: object.Name("DeviceGray")})}
	return &object.Indirect{Value: object.Dict{{Key: "Type", Value: object.Name("Mask")}, {Key: "S", Value: object.Name("Luminosity")}, {Key: "G", Value: form.XObject()}}}
}
