package solid

import "image/color"

// Skin is what the triangles of a mesh show.
type Skin int

// The skins.
const (
	PrintSide   Skin = iota // of the blank
	ReverseSide             // of the blank
	FoldedEdge              // print side of the blank bent round a crease between layers
	CutEdge                 // of paper
	CardSide                // of loose cards and patches
	Cloth                   // rope and ribbon
	PaperCord               // twisted cord and flat strip
	Metal                   // eyelets
)

func skinOf(s stuff) Skin {
	switch s {
	case paperCord:
		return PaperCord
	case metal:
		return Metal
	}
	return Cloth
}

// edgeShade is how light a cut edge is beside the print side.
const edgeShade = 0.93

// Colour returns the colour of a skin in full light, without artwork.
func (s Skin) Colour(paper Paper) color.RGBA {
	switch s {
	case ReverseSide, CardSide, PaperCord:
		return paper.Reverse
	case CutEdge:
		c := paper.Print
		return color.RGBA{uint8(edgeShade * float64(c.R)), uint8(edgeShade * float64(c.G)), uint8(edgeShade * float64(c.B)), c.A}
	case Cloth:
		return textileColour
	case Metal:
		return metalColour
	}
	return paper.Print
}
