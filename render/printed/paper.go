package printed

import (
	"image"
	"image/color"
)

// overPaper puts the ink on paper and both over the picture, which may be that of
// the ink itself. ink is white where the paper is bare and transparent beyond it; each
// of its pixels covers a square of side pixels of the picture.
func overPaper(picture, ink *image.RGBA, side int, paper color.RGBA) {
	var red, green, blue [256]uint8
	for v := range 256 {
		red[v], green[v], blue[v] = times(v, paper.R), times(v, paper.G), times(v, paper.B)
	}
	for y := range picture.Rect.Dy() {
		from := ink.Pix[y/side*ink.Stride:][:4*ink.Rect.Dx()]
		to := picture.Pix[y*picture.Stride:][:4*picture.Rect.Dx()]
		for k := 0; k+3 < len(from); k += 4 {
			a := uint32(from[k+3])
			if a == 0 {
				continue
			}
			r, g, b := red[from[k]], green[from[k+1]], blue[from[k+2]]
			for i, end := k*side, min((k+4)*side, len(to)); i+3 < end; i += 4 {
				if a == 255 {
					to[i], to[i+1], to[i+2], to[i+3] = r, g, b, 255
					continue
				}
				to[i], to[i+1] = over(r, to[i], a), over(g, to[i+1], a)
				to[i+2], to[i+3] = over(b, to[i+2], a), over(uint8(a), to[i+3], a)
			}
		}
	}
}

// nearlyWhite tells whether a paper is so white that a draft need not tell.
func nearlyWhite(c color.RGBA) bool { return min(c.R, c.G, c.B) >= 248 }

func times(ink int, paper uint8) uint8 { return uint8((ink*int(paper) + 127) / 255) }

// over returns a premultiplied value over another.
func over(upper, lower uint8, alpha uint32) uint8 {
	return uint8(min(uint32(upper)+(uint32(lower)*(255-alpha)+127)/255, 255))
}

// fill fills a picture of at least a pixel with a colour: its first row ever longer runs at
// a time, and the others with that, one by one as in Bench.ink.
func fill(picture *image.RGBA, c color.RGBA) {
	first := picture.Pix[:picture.Stride]
	copy(first, []uint8{c.R, c.G, c.B, c.A})
	for done := 4; done < len(first); done *= 2 {
		copy(first[done:], first[:done])
	}
	for row := picture.Stride; row < len(picture.Pix); row += picture.Stride {
		copy(picture.Pix[row:], first)
	}
}
