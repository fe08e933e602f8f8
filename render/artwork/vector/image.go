package vector

import (
	"bytes"
	"encoding/base64"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"net/url"
	"strings"

	"gussetwright/geometry"
)

// image reads an image that stands in the file.
func (r *reader) image(n *node, f frame) ([]Shape, error) {
	if f.style.hidden || f.style.opacity == 0 {
		return nil, nil
	}
	picture, err := r.embedded(n)
	if picture == nil || err != nil {
		return nil, err
	}
	if r.shapes++; r.shapes > mostShapes {
		return nil, tooMany("shapes with every use written out", mostShapes, "simplify the drawing")
	}
	// Drawing an image takes time for all its pixels, each time it is used.
	if err := r.work(picture.Width * picture.Height / 4); err != nil {
		return nil, err
	}
	port, ok := r.imagePort(n, f, picture)
	if !ok {
		return nil, nil
	}
	fitted := parseFit(n.attribute("preserveAspectRatio"))
	whole := geometry.RectAt(0, 0, float64(picture.Width), float64(picture.Height))
	box := fitted.into(whole, port).Bounds(whole)
	upright := geometry.Affine{U: geometry.Vec2{X: box.Width()}, V: geometry.Vec2{Y: -box.Height()}, Origin: geometry.Vec2{X: box.Min.X, Y: box.Max.Y}}
	shape := &Picture{Look{Opacity: 1}, picture, f.place.After(upright)}
	if err := checkBox(shape.Place.Bounds(geometry.RectAt(0, 0, 1, 1))); err != nil {
		return nil, err
	}
	r.remark(f.style)
	r.drawing.Colours.addImage(picture.Pixels)
	clips, err := r.clipsOf(f, []Shape{shape})
	if err != nil {
		return nil, err
	}
	if fitted.slice && !f.style.overflow {
		clips = append(clips, rectClip(port, f.place))
	}
	return seen(together([]Shape{shape}, Look{f.style.opacity, clips})), nil
}

func checkBox(box geometry.Rect) error {
	path := rectangle(box.Min.X, box.Min.Y, box.Width(), box.Height(), 0, 0)
	return check(path)
}

// imagePort returns where an image may be. A missing side follows from the image.
func (r *reader) imagePort(n *node, f frame, picture *Image) (geometry.Rect, bool) {
	width, height := r.length(n, "width", "0", f, f.port.X), r.length(n, "height", "0", f, f.port.Y)
	missing := func(name string) bool { text := n.attribute(name); return text == "" || text == "auto" }
	ratio := float64(picture.Width) / float64(picture.Height)
	switch noWidth, noHeight := missing("width"), missing("height"); {
	case noWidth && noHeight:
		width, height = float64(picture.Width), float64(picture.Height)
	case noWidth:
		width = height * ratio
	case noHeight:
		height = width / ratio
	}
	x, y := r.length(n, "x", "0", f, f.port.X), r.length(n, "y", "0", f, f.port.Y)
	return geometry.RectAt(x, y, width, height), width > 0 && height > 0
}

// embedded returns the image of an element, or nil for one that is not in the file
// or broken, which is noted.
func (r *reader) embedded(n *node) (*Image, error) {
	if picture, known := r.images[n]; known {
		return picture, nil
	}
	r.images[n] = nil
	href := strings.TrimSpace(n.attribute("href"))
	switch {
	case href == "":
		return nil, nil
	case len(href) < 5 || !strings.EqualFold(href[:5], "data:"):
		r.notes.add(outsideImage)
		return nil, nil
	}
	data, ok := dataOf(href)
	if !ok {
		r.notes.add(brokenImage)
		return nil, nil
	}
	picture, err := r.unpack(data)
	if err != nil {
		return nil, err
	}
	if picture == nil {
		r.notes.add(brokenImage)
	}
	r.images[n] = picture
	return picture, nil
}

// dataOf returns what a data: URI holds (RFC 2397).
func dataOf(uri string) ([]byte, bool) {
	head, body, found := strings.Cut(uri, ",")
	if !found {
		return nil, false
	}
	if strings.Contains(body, "%") {
		plain, err := url.PathUnescape(body)
		if err != nil {
			return nil, false
		}
		body = plain
	}
	if !strings.HasSuffix(strings.ToLower(strings.TrimSpace(head)), ";base64") {
		return []byte(body), true
	}
	body = strings.Map(func(c rune) rune {
		if strings.ContainsRune(blanks+"=", c) {
			return -1
		}
		return c
	}, body)
	data, err := base64.RawStdEncoding.DecodeString(body)
	return data, err == nil
}

// unpack reads a PNG or JPEG, or returns nil for what is neither.
func (r *reader) unpack(data []byte) (*Image, error) {
	size, unpack, isJPEG := png.DecodeConfig, png.Decode, bytes.HasPrefix(data, []byte{0xff, 0xd8})
	if isJPEG {
		size, unpack = jpeg.DecodeConfig, jpeg.Decode
	}
	head, err := size(bytes.NewReader(data))
	if err != nil || head.Width <= 0 || head.Height <= 0 {
		return nil, nil
	}
	if head.Width > mostPixels || head.Height > mostPixels || head.Width*head.Height > mostPixels-r.pixels {
		return nil, tooMany("pixels of embedded images", mostPixels, "place fewer or smaller images")
	}
	r.pixels += head.Width * head.Height
	if err := r.ctx.Err(); err != nil {
		return nil, err
	}
	pixels, err := unpack(bytes.NewReader(data))
	if err != nil {
		return nil, nil
	}
	picture := &Image{Width: pixels.Bounds().Dx(), Height: pixels.Bounds().Dy(), Pixels: pixels}
	if isJPEG {
		picture.JPEG = data
	}
	return picture, nil
}

// addImage adds what an image is stored in to the set.
func (c *Colours) addImage(pixels image.Image) {
	switch pixels.ColorModel() {
	case color.GrayModel, color.Gray16Model:
		c.Grey = true
	case color.CMYKModel:
		c.CMYK = true
	default:
		c.RGB = true
	}
}
