package turntable

import (
	"bytes"
	"encoding/base64"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"
)

// qualities are those of JPEG that are tried in turn until all pictures of the blank
// fit into mostTexture bytes. At the first small text is as good as new; the last is
// taken in any case.
var qualities = []int{90, 82, 74, 66}

// mostTexture is what the pictures of the blank may take in bytes, so that the page
// stays under 2 MB.
const mostTexture = 1_150_000

// stillQuality is that of the still picture as JPEG.
const stillQuality = 85

// encodeAll returns the pictures as data URLs, "" for none. All get the same quality.
func encodeAll(pictures []image.Image) ([]string, error) {
	for i, quality := range qualities {
		urls, size := make([]string, len(pictures)), 0
		for k, picture := range pictures {
			if picture == nil {
				continue
			}
			data, kind, err := encode(picture, quality)
			if err != nil {
				return nil, err
			}
			size += len(data)
			urls[k] = dataURL(kind, data)
		}
		if size <= mostTexture || i == len(qualities)-1 {
			return urls, nil
		}
	}
	return nil, nil
}

func dataURL(kind string, data []byte) string {
	return "data:image/" + kind + ";base64," + base64.StdEncoding.EncodeToString(data)
}

// encode returns a picture as PNG where that is no larger than JPEG of the quality,
// as it is for flat colours, otherwise as JPEG. What is clear becomes white.
func encode(picture image.Image, quality int) (data []byte, kind string, err error) {
	picture = opaque(picture)
	var asJPEG bytes.Buffer
	if err := jpeg.Encode(&asJPEG, picture, &jpeg.Options{Quality: quality}); err != nil {
		return nil, "", fmt.Errorf("encode picture as JPEG: %w", err)
	}
	asPNG := bounded{most: asJPEG.Len()}
	encoder := png.Encoder{CompressionLevel: png.BestCompression}
	switch err := encoder.Encode(&asPNG, fewColours(picture)); {
	case errors.Is(err, errTooLong):
		return asJPEG.Bytes(), "jpeg", nil
	case err != nil:
		return nil, "", fmt.Errorf("encode picture as PNG: %w", err)
	}
	return asPNG.Bytes(), "png", nil
}

// bounded is a buffer that takes no more than most bytes.
type bounded struct {
	bytes.Buffer
	most int
}

var errTooLong = errors.New("too long")

// Write is part of io.Writer.
func (b *bounded) Write(data []byte) (int, error) {
	if b.Len()+len(data) > b.most {
		return 0, errTooLong
	}
	return b.Buffer.Write(data)
}

// opaque returns the picture on white, its corner at (0, 0).
func opaque(picture image.Image) *image.RGBA {
	box := picture.Bounds()
	if rgba, ok := picture.(*image.RGBA); ok && rgba.Opaque() && box.Min == (image.Point{}) {
		return rgba
	}
	laid := image.NewRGBA(image.Rect(0, 0, box.Dx(), box.Dy()))
	draw.Draw(laid, laid.Rect, image.White, image.Point{}, draw.Src)
	draw.Draw(laid, laid.Rect, picture, box.Min, draw.Over)
	return laid
}

// fewColours returns the same picture with a palette, where 256 colours are enough.
func fewColours(picture image.Image) image.Image {
	rgba, ok := picture.(*image.RGBA)
	if !ok {
		return picture
	}
	index := map[color.RGBA]uint8{}
	var palette color.Palette
	paletted := image.NewPaletted(rgba.Rect, nil)
	var last color.RGBA
	var lastIndex uint8
	for y := range rgba.Rect.Dy() {
		for x := range rgba.Rect.Dx() {
			c := rgba.RGBAAt(x, y)
			if len(palette) == 0 || c != last {
				at, known := index[c]
				if !known {
					if len(palette) == 256 {
						return picture
					}
					at = uint8(len(palette))
					index[c] = at
					palette = append(palette, c)
				}
				last, lastIndex = c, at
			}
			paletted.Pix[y*paletted.Stride+x] = lastIndex
		}
	}
	paletted.Palette = palette
	return paletted
}
