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
		p.fields(drawing, c, palette.Calm)
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

// fields adds a field behind each label of a coat that cannot be read where it stands,
// for calm also where the ground is uneven.
func (p *Painter) fields(drawing scene.Drawing, c coat, calm bool) {
	need := needOf(c.ink, letterContrast)
	for _, item := range drawing.Items {
		label, is := item.(scene.Label)
		if !is || !c.takes(item) || label.Size*p.view.Scale < leastLetter {
			continue
		}
		field := field(label)
		if light := p.light(field.Bounds()); light.lost(need) || calm && light.uneven() {
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

// light says of a part of the picture how many pixels have each luminance, in steps of
// 255.
type light [256]int

// light returns the light of a part of the drawing, by what the picture holds there.
func (p *Painter) light(part geometry.Rect) *light {
	left, top := p.view.At(geometry.Vec2{X: part.Min.X, Y: part.Max.Y})
	right, bottom := p.view.At(geometry.Vec2{X: part.Max.X, Y: part.Min.Y})
	area := image.Rect(int(left), int(top), int(right), int(bottom)).Intersect(p.picture.Rect)
	var l light
	for y := area.Min.Y; y < area.Max.Y; y++ {
		row := p.picture.Pix[p.picture.PixOffset(area.Min.X, y):p.picture.PixOffset(area.Max.X, y)]
		for ; len(row) >= 4; row = row[4:] {
			l[step(row)]++
		}
	}
	return &l
}

// lost tells whether an ink cannot be read there.
func (l *light) lost(need *need) bool {
	const most = 0.03 // of the pixels
	bad, all := 0, 0
	for i, count := range l {
		if all += count; need[i] > 0.5 {
			bad += count
		}
	}
	return float64(bad) > most*float64(all)
}

// uneven tells whether shapes lie there that letters would run into: what is darker and
// what is lighter differ as much as is seen at a glance (value by looking).
func (l *light) uneven() bool {
	const (
		seen  = 1.2   // ratio of luminances, as of contrasts
		stray = 0.005 // of the pixels may be otherwise
	)
	all := 0
	for _, count := range l {
		all += count
	}
	least, most := 0, len(l)-1
	for gone := l[least]; least < most && float64(gone) <= stray*float64(all); gone += l[least] {
		least++
	}
	for gone := l[most]; most > least && float64(gone) <= stray*float64(all); gone += l[most] {
		most--
	}
	return (float64(most)/255+0.05)/(float64(least)/255+0.05) > seen
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
func (n *need) of(pixels []uint8) float32 { return n[step(pixels)] }

// step returns the luminance of the first of some pixels in steps of 255.
func step(pixels []uint8) uint8 {
	return uint8(luminance(pixels[0], pixels[1], pixels[2])*255 + 0.5)
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
