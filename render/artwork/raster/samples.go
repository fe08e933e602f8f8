package raster

import (
	"image"
	"image/color"

	"gussetwright/geometry/phrase"
	"gussetwright/render/ink"
)

// samples are the pixels of a picture as stored, four channels of 8 bits each.
type samples struct {
	model model
	// row writes a row into line, four bytes a pixel. Rows are asked for from the
	// top down.
	row func(y int, line []byte) error
}

// model is what the four channels are.
type model int

const (
	straight  model = iota // red, green and blue, not multiplied by the alpha that follows
	inks                   // cyan, magenta, yellow and black, 255 being full ink
	lightness              // lightness, two of colour as in JFIF, and nothing
)

// newSamples gives the rows of a decoded picture.
func newSamples(picture image.Image) (samples, error) {
	at := picture.Bounds().Min
	switch p := picture.(type) {
	case *image.Gray:
		return each(1, func(y int) []byte { return p.Pix[p.PixOffset(at.X, at.Y+y):] }, greyPixel), nil
	case *image.Gray16:
		return each(2, func(y int) []byte { return p.Pix[p.PixOffset(at.X, at.Y+y):] }, grey16Pixel), nil
	case *image.RGBA:
		return each(4, func(y int) []byte { return p.Pix[p.PixOffset(at.X, at.Y+y):] }, multipliedPixel), nil
	case *image.RGBA64:
		return each(8, func(y int) []byte { return p.Pix[p.PixOffset(at.X, at.Y+y):] }, multiplied16Pixel), nil
	case *image.NRGBA:
		return samples{straight, copied(func(y int) []byte { return p.Pix[p.PixOffset(at.X, at.Y+y):] })}, nil
	case *image.NRGBA64:
		return each(8, func(y int) []byte { return p.Pix[p.PixOffset(at.X, at.Y+y):] }, straight16Pixel), nil
	case *image.CMYK:
		return samples{inks, copied(func(y int) []byte { return p.Pix[p.PixOffset(at.X, at.Y+y):] })}, nil
	case *image.Paletted:
		return palettedSamples(p), nil
	case *image.YCbCr:
		return lightnessSamples(p), nil
	}
	return samples{}, phrase.Errorf("pixels of the kind %T are not known", picture)
}

func copied(from func(y int) []byte) func(int, []byte) error {
	return func(y int, line []byte) error {
		copy(line, from(y))
		return nil
	}
}

// each gives rows whose pixels of so many bytes are turned one by one.
func each(size int, from func(y int) []byte, turn func(pixel, stored []byte)) samples {
	return samples{straight, func(y int, line []byte) error {
		stored := from(y)
		for x := 0; 4*x < len(line); x++ {
			turn(line[4*x:4*x+4:4*x+4], stored[size*x:size*x+size])
		}
		return nil
	}}
}

func greyPixel(pixel, stored []byte) {
	pixel[0], pixel[1], pixel[2], pixel[3] = stored[0], stored[0], stored[0], 255
}

func grey16Pixel(pixel, stored []byte) {
	grey := big16(stored)
	pixel[0], pixel[1], pixel[2], pixel[3] = grey, grey, grey, 255
}

func multipliedPixel(pixel, stored []byte) {
	copy(pixel, stored)
	unmultiply(pixel)
}

func multiplied16Pixel(pixel, stored []byte) {
	straight16Pixel(pixel, stored)
	unmultiply(pixel)
}

func straight16Pixel(pixel, stored []byte) {
	for c := range pixel {
		pixel[c] = big16(stored[2*c:])
	}
}

// big16 reads 16 bits, the high byte first, as 8.
func big16(b []byte) byte { return from16(uint16(b[0])<<8 | uint16(b[1])) }

// unmultiply takes alpha out of a pixel's colours.
func unmultiply(pixel []byte) {
	alpha := uint32(pixel[3])
	if alpha == 255 || alpha == 0 {
		return
	}
	for c := range 3 {
		pixel[c] = byte(min(255, (uint32(pixel[c])*255+alpha/2)/alpha))
	}
}

func palettedSamples(p *image.Paletted) samples {
	var colours [256][4]byte // colours beyond the palette stay clear
	for i, c := range p.Palette[:min(256, len(p.Palette))] {
		n := color.NRGBAModel.Convert(c).(color.NRGBA)
		colours[i] = [4]byte{n.R, n.G, n.B, n.A}
	}
	from := func(y int) []byte { return p.Pix[p.PixOffset(p.Rect.Min.X, p.Rect.Min.Y+y):] }
	return each(1, from, func(pixel, stored []byte) { copy(pixel, colours[stored[0]][:]) })
}

// lightnessSamples gives the rows of a JPEG picture with its channels as they are:
// means of them can be taken first, and the fewer pixels be turned to RGB then.
func lightnessSamples(p *image.YCbCr) samples {
	min, width := p.Rect.Min, p.Rect.Dx()
	half := p.SubsampleRatio == image.YCbCrSubsampleRatio420 || p.SubsampleRatio == image.YCbCrSubsampleRatio422
	return samples{lightness, func(y int, line []byte) error {
		light := p.Y[p.YOffset(min.X, min.Y+y):][:width]
		if at := p.COffset(min.X, min.Y+y); half && min.X%2 == 0 {
			blue, red := p.Cb[at:], p.Cr[at:]
			for x, l := range light {
				pixel := line[4*x : 4*x+4 : 4*x+4]
				pixel[0], pixel[1], pixel[2], pixel[3] = l, blue[x/2], red[x/2], 255
			}
			return nil
		}
		for x, l := range light {
			at := p.COffset(min.X+x, min.Y+y)
			line[4*x], line[4*x+1], line[4*x+2], line[4*x+3] = l, p.Cb[at], p.Cr[at], 255
		}
		return nil
	}}
}

// lightnessToRGB turns a row of lightness and colour to red, green and blue.
func lightnessToRGB(line []byte) {
	for ; len(line) >= 4; line = line[4:] {
		line[0], line[1], line[2] = color.YCbCrToRGB(line[0], line[1], line[2])
	}
}

// inksToRGB turns a row of inks to what they look like.
func inksToRGB(table *ink.Table, line []byte) {
	for ; len(line) >= 4; line = line[4:] {
		line[0], line[1], line[2] = table.RGB(line[0], line[1], line[2], line[3])
		line[3] = 255
	}
}

// multiply multiplies the colours of a row by alpha and tells whether anything was
// not opaque.
func multiply(line []byte) (alpha bool) {
	for ; len(line) >= 4; line = line[4:] {
		if a := uint32(line[3]); a != 255 {
			alpha = true
			for c := range 3 {
				line[c] = byte((uint32(line[c])*a + 127) / 255)
			}
		}
	}
	return alpha
}

// videoSamples gives the rows of pictures in the colours of television (Rec. 601):
// lightness from 16 to 235, two of colour from 16 to 240 about 128.
func videoSamples(p *image.YCbCr, alpha []byte, stride int) samples {
	return samples{straight, func(y int, line []byte) error {
		for x := 0; 4*x < len(line); x++ {
			at := p.COffset(x, y)
			light := 1.164383 * (float64(p.Y[p.YOffset(x, y)]) - 16)
			blue, red := float64(p.Cb[at])-128, float64(p.Cr[at])-128
			pixel := line[4*x : 4*x+4 : 4*x+4]
			pixel[0] = clamp(light + 1.596027*red)
			pixel[1] = clamp(light - 0.391762*blue - 0.812968*red)
			pixel[2] = clamp(light + 2.017232*blue)
			if pixel[3] = 255; alpha != nil {
				pixel[3] = alpha[y*stride+x]
			}
		}
		return nil
	}}
}

func clamp(v float64) byte { return byte(max(0, min(255, v+0.5))) }
