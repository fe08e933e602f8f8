package printed

import (
	"image"
	"image/color"
)

// overPaper puts the ink on paper and both over the picture. ink is white where the
// paper is bare and transparent beyond it.
func overPaper(picture, ink *image.RGBA, paper color.RGBA) {
	var red, green, blue [256]uint8
	for v := range 256 {
		red[v], green[v], blue[v] = times(v, paper.R), times(v, paper.G), times(v, paper.B)
	}
	width := ink.Rect.Dx()
	for y := range ink.Rect.Dy() {
		from := ink.Pix[y*ink.Stride:][:4*width]
		to := picture.Pix[y*picture.Stride:][:4*width]
		for i := 0; i+3 < len(from); i += 4 {
			switch a := uint32(from[i+3]); a {
			case 0:
			case 255:
				to[i], to[i+1], to[i+2], to[i+3] = red[from[i]], green[from[i+1]], blue[from[i+2]], 255
			default:
				to[i] = over(red[from[i]], to[i], a)
				to[i+1] = over(green[from[i+1]], to[i+1], a)
				to[i+2] = over(blue[from[i+2]], to[i+2], a)
				to[i+3] = over(uint8(a), to[i+3], a)
			}
		}
	}
}

func times(ink int, paper uint8) uint8 { return uint8((ink*int(paper) + 127) / 255) }

// over returns a premultiplied value over another.
func over(upper, lower uint8, alpha uint32) uint8 {
	return uint8(min(uint32(upper)+(uint32(lower)*(255-alpha)+127)/255, 255))
}

func fill(picture *image.RGBA, c color.RGBA) {
	for i := 0; i+3 < len(picture.Pix); i += 4 {
		picture.Pix[i], picture.Pix[i+1], picture.Pix[i+2], picture.Pix[i+3] = c.R, c.G, c.B, 255
	}
}
