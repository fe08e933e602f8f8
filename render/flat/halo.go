package flat

import (
	"image"
	"image/color"
	"math"

	"gussetwright/geometry"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// The contrasts that lines and letters are to have with what lies under them, as ratios
// of luminances: WCAG 2.2, success criteria 1.4.11 and 1.4.3 (values from memory). Where
// artwork leaves less, lines get a pale edge and letters a pale field.
const (
	lineContrast   = 3
	letterContrast = 4.5
)

// lineShare is how much of the halo the edge of a line shows: the line itself is to be
// seen, not its edge.
const lineShare = 0.85

// halos paints the halo of the palette round lines and behind letters, where without it
// they would be lost in what the picture holds already.
func (p *Painter) halos(drawing scene.Drawing, palette *Palette, shown Layers) {
	own, can := p.raster.(*raster)
	if palette.Halo.A == 0 || !can {
		return
	}
	edge := palette.Halo
	edge.A = uint8(lineShare * float64(edge.A))
	all := coats(drawing, palette, shown)
	for _, c := range all {
		for _, item := range drawing.Items {
			if c.takes(item) {
				p.widen(item)
			}
		}
		own.fillNear(p.picture, edge, needOf(c.ink, lineContrast))
	}
	for _, c := range all {
		p.fields(drawing, c)
	}
	p.raster.fill(p.picture, palette.Halo)
}

// widen adds a line or an area with an edge round it.
func (p *Painter) widen(item scene.Item) {
	switch item := item.(type) {
	case scene.Stroke:
		// Whole pixels on either side leave the middle of the line where it is.
		width := p.pen(item.Width)
		p.stroke(item.Path, width+2*max(1, math.Round(width/2)), item.Dash)
	case scene.Fill:
		p.fill(item.Path)
		p.stroke(item.Path, 2*p.pen(penWidth), nil)
	}
}

// fields adds a field behind each label of a coat that cannot be read where it stands.
func (p *Painter) fields(drawing scene.Drawing, c coat) {
	need := needOf(c.ink, letterContrast)
	for _, item := range drawing.Items {
		label, is := item.(scene.Label)
		if !is || !c.takes(item) || label.Size*p.view.Scale < leastLetter {
			continue
		}
		if field := field(label); p.lost(field.Bounds(), need) {
			p.fill(field)
		}
	}
}

// field returns the area that a label takes, with some room round it.
func field(label scene.Label) geometry.Path {
	const room, below, above = 0.25, 0.32, 0.9 // in letters
	length := typeface.Advance(label.Text, label.Size, label.Bold)
	along := geometry.Polar(1, label.Turn)
	start := label.At.Sub(along.Scale(shareBefore[label.Anchor]*length + room*label.Size))
	end := start.Add(along.Scale(length + 2*room*label.Size))
	down, up := along.Left().Scale(-below*label.Size), along.Left().Scale(above*label.Size)
	return geometry.Polygon(start.Add(down), end.Add(down), end.Add(up), start.Add(up))
}

// lost tells whether an ink cannot be read in a part of the drawing, by what the picture
// holds there.
func (p *Painter) lost(part geometry.Rect, need *need) bool {
	left, top := p.view.At(geometry.Vec2{X: part.Min.X, Y: part.Max.Y})
	right, bottom := p.view.At(geometry.Vec2{X: part.Max.X, Y: part.Min.Y})
	area := image.Rect(int(left), int(top), int(right), int(bottom)).Intersect(p.picture.Rect)
	const most = 0.03 // of the pixels
	bad := 0
	for y := area.Min.Y; y < area.Max.Y; y++ {
		row := p.picture.Pix[p.picture.PixOffset(area.Min.X, y):p.picture.PixOffset(area.Max.X, y)]
		for ; len(row) >= 4; row = row[4:] {
			if need.of(row) > 0.5 {
				bad++
			}
		}
	}
	return float64(bad) > most*float64(area.Dx()*area.Dy())
}

// fillNear is fill for those pixels alone that need it.
func (r *raster) fillNear(picture *image.RGBA, halo color.NRGBA, need *need) {
	brush := newBrush(halo)
	brush.need = need
	r.paint(picture, &brush)
}

// need says for each luminance, in steps of 255, how much of a halo it takes, 0 to 1.
type need [256]float32

// needOf returns what an ink needs. The halo fades out over a quarter of the wanted
// contrast, so that it has no hard edge within artwork.
func needOf(ink color.NRGBA, wanted float64) *need {
	var n need
	own := luminance(ink.R, ink.G, ink.B)
	for i := range n {
		ground := float64(i) / 255
		ratio := (max(own, ground) + 0.05) / (min(own, ground) + 0.05)
		n[i] = float32(min(max((wanted-ratio)/(wanted/4), 0), 1))
	}
	return &n
}

// of returns what the first of some pixels needs.
func (n *need) of(pixels []uint8) float32 {
	return n[uint8(luminance(pixels[0], pixels[1], pixels[2])*255+0.5)]
}

// luminance returns the relative luminance of WCAG 2.2 (formula from memory), 0 to 1.
func luminance(r, g, b uint8) float64 {
	return 0.2126*linear[r] + 0.7152*linear[g] + 0.0722*linear[b]
}

// linear is the light of each value of a channel.
var linear = func() (light [256]float64) {
	for i := range light {
		if v := float64(i) / 255; v <= 0.04045 {
			light[i] = v / 12.92
		} else {
			light[i] = math.Pow((v+0.055)/1.055, 2.4)
		}
	}
	return light
}()

// runNear paints neighbouring pixels, each by the halo that it needs.
func (b *brush) runNear(pixels []uint8, cover float32) {
	for ; len(pixels) >= 4; pixels = pixels[4:] {
		if needed := b.need.of(pixels); needed > 0 {
			b.blend(pixels[:4], min(cover, 1)*needed)
		}
	}
}
