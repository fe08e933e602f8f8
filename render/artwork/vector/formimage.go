package vector

import (
	"image"
	"image/color"

	"gussetwright/render/pdf/object"
)

// picture writes an embedded image.
func (c *canvas) picture(p *Picture) {
	made := c.book.images[p.Image]
	if made == nil {
		made = p.Image.object()
		c.book.images[p.Image] = made
	}
	if head := headOf(made); head.Get("SMask") != nil {
		c.book.seenThrough = true
	}
	c.do("q")
	c.move(p.Place)
	c.named("Do", c.name(&c.objects, "X", made))
	c.do("Q")
}

func headOf(of *object.Indirect) object.Dict {
	switch stream := of.Value.(type) {
	case object.Stream:
		return stream.Dict
	case object.Plain:
		return stream.Dict
	}
	return nil
}

// object returns the image as an object of a PDF file: a JPEG as it stood in the
// drawing, a PNG as its pixels.
func (m *Image) object() *object.Indirect {
	if m.JPEG != nil {
		return m.asJPEG()
	}
	colours, alpha, grey := pixelsIn(m.Pixels)
	space := object.Name("DeviceRGB")
	if grey {
		space = "DeviceGray"
	}
	head := m.head(space)
	if alpha != nil {
		head = append(head, object.Entry{Key: "SMask", Value: &object.Indirect{Value: object.Stream{Dict: m.head("DeviceGray"), Data: alpha}}})
	}
	return &object.Indirect{Value: object.Stream{Dict: head, Data: colours}}
}

func (m *Image) head(space object.Name) object.Dict {
	return object.Dict{
		{Key: "Type", Value: object.Name("XObject")},
		{Key: "Subtype", Value: object.Name("Image")},
		{Key: "Width", Value: object.Integer(m.Width)},
		{Key: "Height", Value: object.Integer(m.Height)},
		{Key: "ColorSpace", Value: space},
		{Key: "BitsPerComponent", Value: object.Integer(8)},
	}
}

func (m *Image) asJPEG() *object.Indirect {
	space := object.Name("DeviceRGB")
	var decode object.Array
	switch m.Pixels.ColorModel() {
	case color.GrayModel:
		space = "DeviceGray"
	case color.CMYKModel:
		// JPEGs of four inks tell how much paper is left free, not how much ink there
		// is; others of this kind are not read at all.
		space = "DeviceCMYK"
		decode = object.Numbers(1, 0, 1, 0, 1, 0, 1, 0)
	}
	head := append(m.head(space), object.Entry{Key: "Filter", Value: object.Name("DCTDecode")})
	if decode != nil {
		head = append(head, object.Entry{Key: "Decode", Value: decode})
	}
	return &object.Indirect{Value: object.Plain{Dict: head, Data: m.JPEG}}
}

// pixelsIn returns the colours of an image and how much is seen of each pixel, one
// byte each; alpha is nil where all is seen.
func pixelsIn(m image.Image) (colours, alpha []byte, grey bool) {
	box := m.Bounds()
	count := box.Dx() * box.Dy()
	if plain, is := m.(*image.Gray); is {
		colours = make([]byte, 0, count)
		for y := range box.Dy() {
			colours = append(colours, plain.Pix[y*plain.Stride:y*plain.Stride+box.Dx()]...)
		}
		return colours, nil, true
	}
	colours, alpha = make([]byte, 0, 3*count), make([]byte, 0, count)
	at := straight(m)
	opaque := true
	for y := box.Min.Y; y < box.Max.Y; y++ {
		for x := box.Min.X; x < box.Max.X; x++ {
			c := at(x, y)
			colours = append(colours, c.R, c.G, c.B)
			alpha = append(alpha, c.A)
			opaque = opaque && c.A == 255
		}
	}
	if opaque {
		alpha = nil
	}
	return colours, alpha, false
}

// straight returns a function for the pixels of an image, not multiplied by their
// opacity, the fastest for the kinds that a PNG mostly is.
func straight(m image.Image) func(x, y int) color.NRGBA {
	switch m := m.(type) {
	case *image.NRGBA:
		return m.NRGBAAt
	case *image.RGBA:
		if m.Opaque() {
			return func(x, y int) color.NRGBA { c := m.RGBAAt(x, y); return color.NRGBA(c) }
		}
	case *image.Paletted:
		list := make([]color.NRGBA, len(m.Palette))
		for i, c := range m.Palette {
			list[i] = color.NRGBAModel.Convert(c).(color.NRGBA)
		}
		return func(x, y int) color.NRGBA { return list[m.ColorIndexAt(x, y)] }
	}
	return func(x, y int) color.NRGBA { return color.NRGBAModel.Convert(m.At(x, y)).(color.NRGBA) }
}
