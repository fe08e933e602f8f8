package solid

import (
	"image/color"

	"gussetwright/geometry/bag"
)

// packed is an opaque colour as 0x00BBGGRR, the order in which a picture stores it
// on a machine that puts the lowest byte first.
type packed = uint32

func pack(c color.Color) packed {
	r, g, b, _ := c.RGBA()
	return r>>8 | g>>8<<8 | b>>8<<16
}

// packOpaque is pack of an opaque colour, without leaving garbage.
func packOpaque(c color.RGBA) packed { return packed(c.R) | packed(c.G)<<8 | packed(c.B)<<16 }

// mix returns the colour that lies the share part of 256 from a to b.
func mix(a, b packed, part uint32) packed {
	const even, odd = 0x00ff00ff, 0x0000ff00
	rest := 256 - part
	return (a&even*rest+b&even*part)>>8&even | (a&odd*rest+b&odd*part)>>8&odd
}

// shaded returns the colour at the brightness part of 256, at most 256.
func shaded(a packed, part uint32) packed {
	const even, odd = 0x00ff00ff, 0x0000ff00
	return a&even*part>>8&even | a&odd*part>>8&odd
}

// Paper is the colour of both sides of a paper.
type Paper struct{ Print, Reverse color.RGBA }

// PaperOf returns what a kind of paper looks like without ink: our own choice of
// shades.
func PaperOf(paper bag.Paper) Paper {
	if paper.Colour == bag.ColourNatural {
		return Paper{color.RGBA{205, 172, 133, 255}, color.RGBA{198, 165, 126, 255}}
	}
	switch paper.Kind {
	case bag.PaperBoard:
		return Paper{color.RGBA{252, 252, 250, 255}, color.RGBA{224, 220, 212, 255}}
	case bag.PaperUncoated:
		return Paper{color.RGBA{250, 248, 243, 255}, color.RGBA{248, 246, 241, 255}}
	}
	return Paper{color.RGBA{253, 253, 252, 255}, color.RGBA{246, 246, 244, 255}}
}

// Look is everything about a picture that a theme decides.
type Look struct {
	Above, Below color.RGBA // of the background, at its upper and its lower edge
	Shadow       float64    // darkness of the ground shadow, 0 to 1
	Accent       color.RGBA // of what is pointed at
	Ink          color.RGBA // of edges and names, against paper
	Halo         color.RGBA // around marks, so that they stand out on any ground
}

// LightLook is for a picture on light ground, and for files.
func LightLook() Look {
	return Look{
		Above: color.RGBA{233, 235, 238, 255}, Below: color.RGBA{208, 212, 217, 255}, Shadow: 0.5,
		Accent: color.RGBA{0, 105, 217, 255}, Ink: color.RGBA{70, 74, 80, 255}, Halo: color.RGBA{255, 255, 255, 255},
	}
}

// DarkLook is for a picture on dark ground.
func DarkLook() Look {
	return Look{
		Above: color.RGBA{46, 49, 54, 255}, Below: color.RGBA{28, 30, 33, 255}, Shadow: 0.75,
		Accent: color.RGBA{20, 130, 245, 255}, Ink: color.RGBA{70, 74, 80, 255}, Halo: color.RGBA{255, 255, 255, 255},
	}
}
