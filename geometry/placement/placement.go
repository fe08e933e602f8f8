package placement

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// MostCopies bounds how often a repeated file is laid on one place. More are too
// small to be told apart.
const MostCopies = 10_000

// Source is what placing must know of a file.
type Source struct {
	Size geometry.Vec2 // mm
	// Trim is what of the file is left after cutting, in mm from its lower left
	// corner; empty when the file does not say.
	Trim geometry.Rect
}

// Placed is a file as it lies on one place of the blank.
type Placed struct {
	Index  int           // of the entry in Spec.Artwork
	Piece  int           // of the blank
	Place  string        // the panel, or the name of the piece
	Target geometry.Rect // the panel or the piece without bleed, mm
	Clip   geometry.Rect // the place and its bleed; nothing is shown outside
	// At carries the file, as the unit square with (0, 0) at its lower left corner,
	// to the blank in mm.
	At geometry.Affine
	// Copies are the steps to each copy of a repeated file, in unit squares before
	// At; nil for a file that is shown once, where At puts it.
	Copies []geometry.Vec2
	// Cut is true when the copies do not fill the place, as there would be more
	// than MostCopies.
	Cut bool
}

// Lay returns every appearance of artwork on the blank, what lies beneath first.
// source returns what is known of the file of an entry, and false while nothing is;
// such entries are left out, as are those for parts that the bag does not have.
func Lay(b *blank.Blank, source func(index int) (Source, bool)) []Placed {
	var all []Placed
	for i := range b.Spec.Artwork {
		art := &b.Spec.Artwork[i]
		file, known := source(i)
		if !known || !(file.Size.X > 0 && file.Size.Y > 0) {
			continue
		}
		for _, p := range placesOf(b, art.On) {
			at := position(art, file, p, b.Spec.Print.Bleed)
			all = append(all, Placed{Index: i, Piece: p.piece, Place: p.name, Target: p.box, At: at})
		}
	}
	clipAll(b, all)
	for i := range all {
		all[i].repeat(b.Spec.Artwork[all[i].Index].Repeat)
	}
	return all
}

// position returns where the unit square of the file goes.
func position(art *bag.Artwork, file Source, p place, bleed float64) geometry.Affine {
	turn := art.Turn
	if p.turned {
		turn += 180
	}
	rotation := geometry.Rotation(turn * math.Pi / 180)
	scale := art.Scale * fit(art.Fit, file.Size, p.box, bleed, rotation)
	mirror := 1.0
	if art.Mirror {
		mirror = -1
	}
	anchor := file.Size.Scale(0.5)
	if art.Fit == bag.FitExact && !file.Trim.Empty() {
		anchor = file.Trim.Center()
	}
	middle := p.box.Center().Add(geometry.Vec2{X: art.X, Y: art.Y})
	return geometry.Shift(middle).After(rotation).
		After(geometry.Stretch(scale*mirror, scale)).
		After(geometry.Shift(anchor.Scale(-1))).
		After(geometry.Stretch(file.Size.X, file.Size.Y))
}

// fit returns the scale at which a turned file covers the box and its bleed, or lies
// within the box. The box, seen along the sides of the file, is as wide and high as
// its turned corners reach; the file, seen along those of the box, likewise.
func fit(how bag.Fit, size geometry.Vec2, box geometry.Rect, bleed float64, rotation geometry.Affine) float64 {
	cos, sin := math.Abs(rotation.U.X), math.Abs(rotation.U.Y)
	switch how {
	case bag.FitCover:
		whole := box.Inset(-bleed)
		wide := whole.Width()*cos + whole.Height()*sin
		high := whole.Width()*sin + whole.Height()*cos
		return max(wide/size.X, high/size.Y)
	case bag.FitContain:
		wide := size.X*cos + size.Y*sin
		high := size.X*sin + size.Y*cos
		return min(box.Width()/wide, box.Height()/high)
	}
	return 1
}

// repeat fills the clip with copies.
func (p *Placed) repeat(how bag.Repeat) {
	back, possible := p.At.Inverse()
	if how == bag.RepeatNone || !possible {
		return
	}
	field := back.Bounds(p.Clip)
	left, right := math.Floor(field.Min.X), math.Ceil(field.Max.X)
	p.Copies = []geometry.Vec2{}
	for x := left; x < right; x++ {
		drop := 0.0
		if how == bag.RepeatHalfDrop && math.Mod(x, 2) != 0 {
			drop = 0.5
		}
		for y := math.Floor(field.Min.Y + drop); y < math.Ceil(field.Max.Y+drop); y++ {
			if len(p.Copies) == MostCopies {
				p.Cut = true
				return
			}
			p.Copies = append(p.Copies, geometry.Vec2{X: x, Y: y - drop})
		}
	}
}

// Each calls show with where each copy of the file lies.
func (p *Placed) Each(show func(at geometry.Affine)) {
	if p.Copies == nil {
		show(p.At)
		return
	}
	for _, step := range p.Copies {
		show(p.At.After(geometry.Shift(step)))
	}
}

// Magnification returns by what the file is enlarged along its sides.
func (p *Placed) Magnification(file Source) geometry.Vec2 {
	return geometry.Vec2{X: p.At.U.Length() / file.Size.X, Y: p.At.V.Length() / file.Size.Y}
}
