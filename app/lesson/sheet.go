package lesson

import (
	"image"
	"image/color"
	"slices"
	"sync"

	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/render/dieline"
	"gussetwright/render/flat"
	"gussetwright/render/printed"
	"gussetwright/render/scene"
	"gussetwright/render/solid"
	"gussetwright/render/spares"
)

// sheet draws the blank, either side up: what is folded and glued in a stage stands out
// from a faint drawing of the rest.
type sheet struct {
	voice scene.Voice // of the names and numbers on the drawing

	spare spares.Pictures

	lock    sync.Mutex
	painter flat.Painter
	bench   printed.Bench

	plain   plain
	laid    *blank.Blank             // as it is seen
	ground  *image.RGBA              // the faint drawing, without its lettering
	lines   []scene.Drawing          // its lines, by piece
	names   []scene.Drawing          // its lettering, likewise
	dashes  map[scene.Role][]float64 // of the creases
	palette *flat.Palette
	letters *flat.Palette // of the lettering
}

// plain is what the faint drawing depends on.
type plain struct {
	course        *course
	width, height int
	letter, top   float64
	faded, dark   bool
	bare, reverse bool
}

func newSheet() *sheet { return &sheet{voice: words.DrawingVoice()} }

// Widths of lines in pixels of fyne, and as multiples of a crease.
const (
	pen       = 1.4
	litWidth  = 3.2
	haloWidth = 6
	shadow    = 7
)

// edges are drawn over names, whose ground may reach over the edge of a narrow flap.
const edges = flat.Layers(1 << scene.Cutting)

// paint is part of artist.
func (s *sheet) paint(o order) *image.RGBA {
	s.lock.Lock()
	defer s.lock.Unlock()
	if wanted := (plain{o.course, o.width, o.height, o.letter, o.top, o.faded, o.dark, o.bare, o.reverse}); s.plain != wanted {
		s.plain = wanted
		s.draw(&o)
	}
	picture := s.spare.Take(o.width, o.height)
	copy(picture.Pix, s.ground.Pix)
	spread := layOut(&o)
	areas, pieces := o.course.areas(o.at.stage)
	for i, area := range areas {
		if o.reverse {
			area = overleaf{s.laid.Pieces[pieces[i]].Width}.area(area)
		}
		s.painter.Begin(picture, spread.view(&o, pieces[i]))
		s.glue(&area, o.at.glued(), spread.scale/o.density)
		for _, opening := range area.Openings {
			s.uncover(picture, spread.view(&o, pieces[i]), opening)
		}
	}
	creases := slices.Clone(o.course.Stages[o.at.stage].Creases)
	if o.reverse {
		for i, crease := range creases {
			creases[i] = overleaf{s.laid.Pieces[crease.Piece].Width}.crease(crease)
		}
	}
	for i := range s.laid.Pieces {
		s.painter.Begin(picture, spread.view(&o, i))
		s.painter.Draw(s.names[i], s.letters, flat.AllLayers())
		s.painter.Draw(s.lines[i], s.letters.WithoutHalo(), edges)
		s.light(creases, i, o.look.Accent)
	}
	return picture
}

// draw makes the faint drawing.
func (s *sheet) draw(o *order) {
	snapshot := o.shown()
	laid := &snapshot.Blank
	sides := s.print(o)
	if s.choosePalette(o, sides != nil); o.reverse {
		laid = fromTheReverse(laid)
		s.palette.Paper = color.NRGBA(solid.PaperOf(snapshot.Spec.Paper).Reverse)
	}
	s.laid = laid
	spread := layOut(o)
	veil := color.NRGBA(solid.PaperOf(snapshot.Spec.Paper).Print)
	veil.A = 120 // lets what is printed step back
	if size := image.Rect(0, 0, o.width, o.height); s.ground == nil || s.ground.Rect != size {
		s.ground = image.NewRGBA(size)
	}
	s.painter.Begin(s.ground, spread.view(o, 0))
	s.painter.Clear(s.palette.Ground)
	for i := range laid.Pieces {
		view := spread.view(o, i)
		s.painter.Begin(s.ground, view)
		s.painter.Shadow(s.palette.Shadow, laid.Pieces[i].Outline, shadow*o.density)
		if sides == nil {
			s.painter.Fill(s.palette.Paper, laid.Pieces[i].Outline)
		} else {
			sides[i].Paint(&s.bench, s.ground, view, printed.Fine)
			s.painter.Begin(s.ground, view)
			s.painter.Fill(veil, laid.Pieces[i].Outline)
		}
		for _, opening := range laid.Pieces[i].CutOuts() {
			s.painter.Fill(s.palette.Ground, opening.Shape)
		}
	}
	screen := dieline.Screen{Letter: o.letter / spread.scale, Voice: s.voice}
	shown := flat.AllLayers().With(scene.Artwork, false).With(scene.Dimensions, false).With(scene.Bleed, false).
		With(scene.ContentArea, false).With(scene.Gluing, false)
	s.dashes = dashesOf(screen)
	bare := *laid // glue is drawn stage by stage
	bare.Pieces = slices.Clone(laid.Pieces)
	s.lines, s.names = s.lines[:0], s.names[:0]
	for i := range laid.Pieces {
		bare.Pieces[i].Glue = nil
		drawing, names := lettering(screen.Draw(&bare, i), shown)
		s.lines, s.names = append(s.lines, drawing), append(s.names, names)
		s.painter.Begin(s.ground, spread.view(o, i))
		s.painter.Draw(drawing, s.palette, shown)
	}
}

// lettering parts a drawing into its lines and the lettering of what is shown.
func lettering(d scene.Drawing, shown flat.Layers) (lines, letters scene.Drawing) {
	lines, letters = d, d
	lines.Items, letters.Items = nil, nil
	for _, item := range d.Items {
		switch _, is := item.(scene.Label); {
		case !is:
			lines.Items = append(lines.Items, item)
		case shown.Has(item.Layer()):
			letters.Items = append(letters.Items, item)
		}
	}
	return lines, letters
}

// print returns the print sides of the pieces, nil where plain white paper or the reverse
// is seen.
func (s *sheet) print(o *order) []*printed.Side {
	snapshot := o.shown()
	if o.reverse {
		return nil
	}
	var sides []*printed.Side
	seen := snapshot.Spec.Paper.Colour != bag.ColourWhite
	for i := range snapshot.Blank.Pieces {
		sides = append(sides, snapshot.Side(i))
		seen = seen || !sides[i].Bare()
	}
	if !seen {
		return nil
	}
	return sides
}

// choosePalette chooses the colours: the creases faint, and everything where the bag is
// out of date.
func (s *sheet) choosePalette(o *order, onPrint bool) {
	palette := flat.Light()
	switch {
	case o.dark && (onPrint || o.reverse): // real paper, which is light
		palette = flat.OnPrint()
	case o.dark:
		palette = flat.Dark()
	}
	if o.faded {
		palette = palette.Faded()
	}
	s.palette = palette
	letters := *palette
	if letters.Calm = !o.faded; letters.Calm && letters.Halo.A == 0 {
		letters.Halo = palette.Paper // of glue in a dark window
	}
	s.letters = &letters
	for _, role := range []scene.Role{scene.Creasing, scene.ReverseCreasing} {
		ink := palette.Ink[role]
		ink.A = 130
		palette.Ink[role] = ink
	}
}

// dashesOf returns the dash patterns of mountain and valley.
func dashesOf(screen dieline.Screen) map[scene.Role][]float64 {
	dashes := map[scene.Role][]float64{}
	for _, role := range []scene.Role{scene.Creasing, scene.ReverseCreasing} {
		for _, item := range screen.Sample(role, geometry.RectAt(0, 0, 1, 1)).Items {
			if stroke, is := item.(scene.Stroke); is {
				dashes[role] = stroke.Dash
			}
		}
	}
	return dashes
}

// light draws the creases of a piece that are folded now, thick, with the dashes of
// mountain and valley.
func (s *sheet) light(creases []fold.Crease, piece int, accent color.RGBA) {
	var halo, line scene.Drawing
	for _, crease := range creases {
		if crease.Piece != piece {
			continue
		}
		role := scene.Creasing
		if crease.Fold == blank.Valley {
			role = scene.ReverseCreasing
		}
		path := geometry.Path{Vertices: []geometry.Vertex{{Vec2: crease.From}, {Vec2: crease.To}}}
		width := role.Style().Width
		halo.Items = append(halo.Items, scene.Stroke{Role: role, Path: path, Width: haloWidth * width})
		line.Items = append(line.Items, scene.Stroke{Role: role, Path: path, Width: litWidth * width, Dash: s.dashes[role]})
	}
	under := s.palette.Paper
	under.A = 190
	s.painter.Draw(halo, twoInks(under), flat.AllLayers())
	s.painter.Draw(line, twoInks(color.NRGBA(accent)), flat.AllLayers())
}

// uncover brings back what was there before within a shape.
func (s *sheet) uncover(picture *image.RGBA, view flat.View, shape geometry.Path) {
	box := shape.Bounds()
	left, top := view.At(geometry.Vec2{X: box.Min.X, Y: box.Max.Y})
	right, bottom := view.At(geometry.Vec2{X: box.Max.X, Y: box.Min.Y})
	within := image.Rect(int(left), int(top), int(right)+1, int(bottom)+1).Intersect(picture.Rect)
	for y := within.Min.Y; y < within.Max.Y; y++ {
		for x := within.Min.X; x < within.Max.X; x++ {
			middle := geometry.Vec2{X: (float64(x) + 0.5) / view.Scale, Y: -(float64(y) + 0.5) / view.Scale}
			if shape.Contains(view.Origin.Add(middle)) {
				picture.SetRGBA(x, y, s.ground.RGBAAt(x, y))
			}
		}
	}
}

// twoInks is a palette in which all creases have one colour.
func twoInks(c color.NRGBA) *flat.Palette {
	return &flat.Palette{Ink: map[scene.Role]color.NRGBA{scene.Creasing: c, scene.ReverseCreasing: c}}
}

// glue draws an area that is glued, striped: rising on the print side, and falling with
// a dashed border on the reverse. scale is in pixels of fyne per mm.
func (s *sheet) glue(area *blank.GlueArea, strength, scale float64) {
	ink := s.palette.Ink[scene.Gluing]
	faint, strong := ink, ink
	faint.A, strong.A = uint8(70*strength), uint8(200*strength)
	s.painter.Fill(faint, area.Shape)
	slope := geometry.Vec2{X: 1, Y: 1}
	if area.Side == blank.ReverseSide {
		slope.Y = -1
	}
	const every, broad = 9.0, 3.0 // pixels of fyne
	s.painter.Fill(strong, stripes(corners(area.Shape), slope, every/scale, broad/scale)...)
	border := scene.Stroke{Role: scene.Gluing, Path: area.Shape, Width: scene.Creasing.Style().Width * 1.5}
	if area.Side == blank.ReverseSide {
		border.Dash = []float64{6 / scale, 4 / scale}
	}
	s.painter.Draw(scene.Drawing{Items: []scene.Item{border}}, s.palette, flat.AllLayers())
}

// stripes returns stripes along a direction within a convex shape: every so many mm one
// that is so broad.
func stripes(shape []geometry.Vec2, along geometry.Vec2, every, broad float64) []geometry.Path {
	along = along.Unit()
	left := along.Left()
	first, last := left.Dot(shape[0]), left.Dot(shape[0])
	for _, p := range shape {
		first, last = min(first, left.Dot(p)), max(last, left.Dot(p))
	}
	var list []geometry.Path
	for at := first; at < last; at += every {
		stripe := geometry.CutLeft(shape, left.Scale(at), along)
		if len(stripe) > 2 {
			stripe = geometry.CutLeft(stripe, left.Scale(at+broad), along.Scale(-1))
		}
		if len(stripe) > 2 {
			list = append(list, geometry.Polygon(stripe...))
		}
	}
	return list
}

// giveBack is part of artist.
func (s *sheet) giveBack(old *image.RGBA) { s.spare.Give(old) }
