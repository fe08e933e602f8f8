package proof

import (
	"bytes"
	"compress/zlib"
	"context"
	"image"
	"image/color"
	"image/jpeg"
	"io"

	"gussetwright/geometry/phrase"
	"gussetwright/render/artwork/raster"
	"gussetwright/render/artwork/vector"
	"gussetwright/render/pdf/object"
)

// addInks adds the pixels of a CMYK picture with their inks, which its pictures for the
// screen have no more.
func (p palette) addInks(stored *image.CMYK, area float64) {
	size := stored.Rect.Size()
	step := strideFor(size)
	weight := area * float64(step*step) / float64(size.X*size.Y)
	for y := 0; y < size.Y; y += step {
		for x := 0; x < size.X; x += step {
			i := y*stored.Stride + 4*x
			mix := inks{}
			for k := range mix {
				mix[k] = float64(stored.Pix[i+k]) / 255
			}
			if c := mix.screen(); !isBare(c) {
				p.add(c, weight)
				p[c].inks = &mix
			}
		}
	}
}

// inksOf unpacks the inks of a CMYK picture from what goes into production: a JPEG file
// or rows as in PNG, whose samples are less those above them.
func inksOf(ctx context.Context, picture *raster.Picture) (*image.CMYK, error) {
	made, err := picture.XObject(ctx)
	if err != nil {
		return nil, err
	}
	stream, isPlain := made.Value.(object.Plain)
	if !isPlain {
		return nil, phrase.Errorf("the picture is a %T and should be a stream; save it again as PNG", made.Value)
	}
	if picture.Format == "JPEG" {
		decoded, err := jpeg.Decode(bytes.NewReader(stream.Data))
		if err != nil {
			return nil, err
		}
		if unpacked, isInk := decoded.(*image.CMYK); isInk {
			return unpacked, nil
		}
		return nil, phrase.Errorf("the JPEG file holds a %T and should hold CMYK; save it again as TIFF", decoded)
	}
	return unpack(stream.Data, picture.Stored)
}

func unpack(data []byte, size image.Point) (*image.CMYK, error) {
	rows, err := zlib.NewReader(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	unpacked := image.NewCMYK(image.Rectangle{Max: size})
	above, line := make([]byte, unpacked.Stride), make([]byte, 1+unpacked.Stride)
	for y := range size.Y {
		if _, err := io.ReadFull(rows, line); err != nil {
			return nil, err
		}
		row := unpacked.Pix[y*unpacked.Stride:][:unpacked.Stride]
		for i, v := range line[1:] {
			row[i] = v + above[i]
		}
		above = row
	}
	return unpacked, nil
}

// nameInks gives the colours of a drawing the inks that the drawing states for them.
func (p palette) nameInks(drawing *vector.Drawing) {
	var shapes func(list []vector.Shape)
	paint := func(paint vector.Paint) {
		c := paint.Colour
		if paint.Kind != vector.Solid || !c.Inks {
			return
		}
		if entry := p[color.RGBA{c.R, c.G, c.B, 255}]; entry != nil {
			entry.inks = &inks{c.C, c.M, c.Y, c.K}
		}
	}
	shapes = func(list []vector.Shape) {
		for _, shape := range list {
			switch shape := shape.(type) {
			case *vector.Figure:
				paint(shape.Fill)
				paint(shape.Stroke.Paint)
			case *vector.Group:
				shapes(shape.Shapes)
			}
		}
	}
	shapes(drawing.Shapes)
}
