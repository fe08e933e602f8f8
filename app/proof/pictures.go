package proof

import (
	"image"
	"image/png"
	"io"
	"math"

	"gussetwright/geometry/phrase"
	"gussetwright/render/solid"
)

// Side is a side from which the bag is seen.
type Side string

// The sides of the set of pictures.
const (
	Front     Side = "front"
	Back      Side = "back"
	Left      Side = "left"
	Right     Side = "right"
	Isometric Side = "isometric"
	Base      Side = "base"
)

// Sides returns the sides of the set of pictures.
func Sides() []Side { return []Side{Front, Back, Left, Right, Isometric, Base} }

func (s Side) camera() solid.Camera {
	switch s {
	case Back:
		return solid.Back
	case Left:
		return solid.Left
	case Right:
		return solid.Right
	case Isometric:
		return solid.Isometric
	case Base:
		return solid.Below
	}
	return solid.Front
}

// Sizes of the pictures in pixels.
const (
	longerSide  = 2000
	leastSide   = 600 // of a flat bag from its side
	pictureEdge = 110 // around the bag
)

// Picture writes the bag as it is seen from a side, as PNG of 2000 pixels on its longer
// side.
func (p *Proof) Picture(w io.Writer, side Side) error {
	picture, err := p.picture(side)
	if err != nil {
		return phrase.Errorf("draw the picture %q of the bag: %s", side, err)
	}
	encoder := png.Encoder{CompressionLevel: png.BestSpeed} // noise of a picture hardly packs any better
	if err := encoder.Encode(w, picture); err != nil {
		return phrase.Errorf("write the picture %q of the bag: %s", side, err)
	}
	return nil
}

func (p *Proof) picture(side Side) (*image.RGBA, error) {
	s, err := p.onStage(finestTexture)
	if err != nil {
		return nil, err
	}
	v := s.view(side.camera(), softLook())
	outline := s.outline(v)
	scale := (longerSide - 2*pictureEdge) / max(outline.Width(), outline.Height())
	pixels := func(length float64) int {
		return min(max(int(math.Round(length*scale))+2*pictureEdge, leastSide), longerSide)
	}
	v.Width, v.Height = pixels(outline.Width()), pixels(outline.Height())
	fit(&v, outline, image.Rect(0, 0, v.Width, v.Height).Inset(pictureEdge))
	return s.draw(v), nil
}
