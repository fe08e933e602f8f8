package solid

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"slices"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
)

const (
	checkSide     = 20  // mm, of a square of the checker
	checkDark     = 251 // of 256, brightness of the darker squares
	creaseWidth   = 0.5 // mm
	creaseDark    = 26  // of 256, how much ink a crease takes
	nameDark      = 120
	nameTallest   = 20.0 // mm, height of the em square of a name
	nameShare     = 0.62 // of the width of the panel that a name may take
	nameHigh      = 0.22 // of the height of the panel, likewise
	leastNameSize = 4.0  // pixels; smaller names would be unreadable
)

// Sample returns a texture for a bag without artwork: a faint checker of 20 mm
// squares, the creases, and the name of each panel as name returns it, "" for none.
// scale is pixels per mm.
func Sample(piece *blank.Piece, paper Paper, ink color.RGBA, scale float64, name func(panel string) string) *Texture {
	width, height := int(math.Ceil(piece.Width*scale)), int(math.Ceil(piece.Height*scale))
	base := level{width: max(width, 1), height: max(height, 1), scale: scale}
	base.pixels = make([]packed, base.width*base.height)
	base.checker(piece, pack(paper.Print))
	s := sampler{level: base, tall: piece.Height, ink: pack(ink)}
	for _, line := range piece.Lines {
		if line.Kind == blank.Crease {
			s.crease(line.Edge)
		}
	}
	for i := range piece.Panels {
		panel := &piece.Panels[i]
		if text := name(panel.ID); text != "" && !pierced(piece, panel.Box) {
			s.write(text, panel.Box, panel.Row == blank.RowTurnIn)
		}
	}
	return newTexture(base, piece.Height)
}

// pierced tells whether a hole lies where the name of a panel would stand.
func pierced(piece *blank.Piece, box geometry.Rect) bool {
	middle := box.Center()
	return slices.ContainsFunc(piece.Lines, func(l blank.Line) bool {
		hole := l.Bounds().Inset(-nameTallest / 2)
		return l.Role.IsCutOut() && (hole.Contains(middle) || hole.Min.Y < middle.Y && hole.Max.Y > middle.Y &&
			hole.Min.X < box.Max.X && hole.Max.X > box.Min.X)
	})
}

// checker fills the texture with squares that meet at the lower left corner of the
// front, where the base crease is.
func (l *level) checker(piece *blank.Piece, light packed) {
	dark := shaded(light, checkDark)
	cells := make([]bool, l.width)
	for x := range cells {
		cells[x] = int(float64(x)/l.scale/checkSide)%2 == 1
	}
	var rows [2][]packed
	for odd := range rows {
		rows[odd] = make([]packed, l.width)
		for x := range cells {
			rows[odd][x] = light
			if cells[x] == (odd == 0) {
				rows[odd][x] = dark
			}
		}
	}
	for y := range l.height {
		up := piece.Height - piece.Levels.Base - float64(y)/l.scale
		odd := int(math.Floor(up/checkSide)) & 1
		copy(l.pixels[y*l.width:], rows[odd])
	}
}

// sampler draws on a texture.
type sampler struct {
	level
	tall float64 // of the piece, mm
	ink  packed
	scan scanner
}

// pixel returns where a point of the blank is on the texture.
func (s *sampler) pixel(p geometry.Vec2) geometry.Vec2 {
	return geometry.Vec2{X: p.X * s.scale, Y: (s.tall - p.Y) * s.scale}
}

func (s *sampler) crease(edge geometry.Edge) {
	from, to := s.pixel(edge.From), s.pixel(edge.To)
	side := to.Sub(from).Unit().Left().Scale(max(creaseWidth*s.scale, 1) / 2)
	corners := []geometry.Vec2{from.Add(side), from.Sub(side), to.Sub(side), to.Add(side)}
	s.scan.begin()
	s.scan.polygon(corners, s.height)
	s.scan.fill(s.width, turnOf(corners), func(row, left, right int) {
		line := s.pixels[row*s.width+left : row*s.width+right]
		for i := range line {
			line[i] = mix(line[i], s.ink, creaseDark)
		}
	})
}

// write puts a name into the middle of a panel, upside down where the panel is
// folded over.
func (s *sampler) write(text string, box geometry.Rect, turned bool) {
	if s.scale*box.Width()*nameShare < leastNameSize {
		return
	}
	size := min(nameTallest, nameHigh*box.Height()) * s.scale
	face := faceOf(size)
	if most := box.Width() * nameShare * s.scale; advance(face, text) > most {
		size *= most / advance(face, text)
		face = faceOf(size)
	}
	if size < leastNameSize {
		return
	}
	mask := maskOf(face, text)
	middle := s.pixel(box.Center())
	wide, high := mask.Rect.Dx(), mask.Rect.Dy()
	left, top := int(middle.X)-wide/2, int(middle.Y)-high/2
	for y := range high {
		row := top + y
		if row < 0 || row >= s.height {
			continue
		}
		for x := range wide {
			column := left + x
			if column < 0 || column >= s.width {
				continue
			}
			cover := mask.Pix[y*mask.Stride+x]
			if turned {
				cover = mask.Pix[(high-1-y)*mask.Stride+wide-1-x]
			}
			if cover > 0 {
				i := row*s.width + column
				s.pixels[i] = mix(s.pixels[i], s.ink, uint32(cover)*nameDark/255)
			}
		}
	}
}

// typeface is the face of names, parsed once.
var typeface = sync.OnceValue(func() *opentype.Font {
	parsed, err := opentype.Parse(goregular.TTF)
	if err != nil {
		panic(fmt.Sprintf("read the built-in face: %v", err)) // a fault of the build
	}
	return parsed
})

func faceOf(size float64) font.Face {
	face, err := opentype.NewFace(typeface(), &opentype.FaceOptions{Size: max(size, 1), DPI: 72})
	if err != nil {
		panic(fmt.Sprintf("set up the built-in face: %v", err)) // a fault of the build
	}
	return face
}

func advance(face font.Face, text string) float64 {
	return float64(font.MeasureString(face, text)) / 64
}

// maskOf returns a line of text as a mask, cut to its capitals and descenders.
func maskOf(face font.Face, text string) *image.Alpha {
	metrics := face.Metrics()
	width := font.MeasureString(face, text).Ceil() + 2
	mask := image.NewAlpha(image.Rect(0, 0, width, metrics.Ascent.Ceil()+metrics.Descent.Ceil()))
	drawer := font.Drawer{Dst: mask, Src: image.Opaque, Face: face, Dot: fixed.P(1, metrics.Ascent.Ceil())}
	drawer.DrawString(text)
	return mask
}

// sheetTexture is what is on the A4 sheet: its name, and grey lines for text.
var sheetTexture = sync.OnceValue(func() *Texture {
	const width, height, scale = 210, 297, 2
	base := level{width: width * scale, height: height * scale, scale: scale}
	base.pixels = make([]packed, base.width*base.height)
	for i := range base.pixels {
		base.pixels[i] = 0xfdfdfd
	}
	s := sampler{level: base, tall: height, ink: 0x504a46}
	s.write("A4", geometry.RectAt(10, 222, 70, 80), false)
	for line := range 17 {
		y := height - 62 - 12*float64(line)
		long := 170.0
		if line%5 == 4 {
			long = 95
		}
		s.bar(geometry.RectAt(20, y, long, 3))
	}
	return newTexture(base, height)
})

// bar draws a grey bar.
func (s *sampler) bar(r geometry.Rect) {
	low, high := s.pixel(r.Min), s.pixel(r.Max)
	for y := int(high.Y); y < int(low.Y); y++ {
		for x := int(low.X); x < int(high.X); x++ {
			s.pixels[y*s.width+x] = mix(s.pixels[y*s.width+x], s.ink, 44)
		}
	}
}
