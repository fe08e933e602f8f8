package artcheck

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/placement"
	"gussetwright/render/artwork"
)

// The EAN-13 symbol at its nominal size, in mm: 95 modules of 0.330 with quiet zones
// of 11 modules on the left and 7 on the right, bars 22.85 high (GS1 General
// Specifications, as GS1 Sweden and GS1 Ireland give them). It may be printed from 80
// to 200 %.
const (
	module     = 0.330
	codeWidth  = (11 + 95 + 7) * module
	barHeight  = 22.85
	leastScale = 0.8
	mostScale  = 2.0
)

// offFolds is how far a bar code keeps from folds, cuts and holes, in mm.
const offFolds = 10.0

// code looks at artwork that holds an EAN-13 symbol with its quiet zones and nothing
// else.
func (l *inspection) code(p *placement.Placed, art *artwork.Art) {
	width, height := p.At.U.Length(), p.At.V.Length()
	scale := width / codeWidth
	box := p.At.Bounds(geometry.RectAt(0, 0, 1, 1))
	percent := geometry.FormatNumber(100*scale, 0)
	switch {
	case scale < leastScale-1e-6:
		l.find(check.Error, "code-small", p.Piece, box.Center(),
			phrase.New("the bar code %q is %s wide with its quiet zones, %s%% of the nominal %s; scanners need 80%%", art.Name, mm(width), percent, mm(codeWidth)),
			phrase.New("make it at least %s wide", mm(leastScale*codeWidth)))
	case scale > mostScale+1e-6:
		l.find(check.Warning, "code-large", p.Piece, box.Center(),
			phrase.New("the bar code %q is %s wide with its quiet zones, %s%% of the nominal %s; at most 200%% is allowed", art.Name, mm(width), percent, mm(codeWidth)),
			phrase.New("make it at most %s wide", mm(mostScale*codeWidth)))
	case height < barHeight*scale-near:
		l.find(check.Warning, "code-low", p.Piece, box.Center(),
			phrase.New("the bar code %q is %s high; at this width its bars should be %s", art.Name, mm(height), mm(barHeight*scale)),
			phrase.New("keep the proportions of the symbol; cut short it fails when it is swept past a scanner"))
	}
	if turned := math.Abs(math.Mod(math.Atan2(p.At.U.Y, p.At.U.X)*180/math.Pi, 90)); turned > 0.5 && turned < 89.5 {
		l.find(check.Warning, "code-slanted", p.Piece, box.Center(),
			phrase.New("the bar code %q is turned by %s°", art.Name, geometry.FormatNumber(turned, 0)),
			phrase.New("turn it by 0 or 90°, so that its bars are printed with straight edges"))
	}
	if what, distance := l.nearest(p.Piece, box); distance < offFolds-1e-6 {
		l.find(check.Warning, "code-near-fold", p.Piece, box.Center(),
			phrase.New("the bar code %q comes within %s of a %s", art.Name, mm(max(distance, 0)), what),
			phrase.New("keep it %s away, flat and whole", mm(offFolds)))
	}
}

// nearest returns the line, hole or glue area that comes nearest to a box, and how
// near; 0 when it reaches into the box.
func (l *inspection) nearest(index int, box geometry.Rect) (phrase.Word, float64) {
	piece := &l.blank.Pieces[index]
	what, least := phrase.Word("cut"), math.Inf(1)
	closer := func(name phrase.Word, distance float64) {
		if distance < least {
			what, least = name, distance
		}
	}
	for _, line := range piece.Lines {
		name := phrase.Word("cut")
		if line.Kind == blank.Crease {
			name = "crease"
		}
		closer(name, apart(box, geometry.Rect{Min: line.From, Max: line.From}.Union(geometry.Rect{Min: line.To, Max: line.To}), line.From, line.To))
	}
	for _, hole := range piece.Holes {
		around := geometry.Rect{Min: hole.Center, Max: hole.Center}.Inset(-hole.Diameter / 2)
		closer("hole", gap(box, around))
	}
	for _, area := range placement.InkFree(piece, *l.spec) {
		closer("glue area", gap(box, area.Bounds()))
	}
	return what, least
}

// apart returns the distance between a box and a straight line, found between points
// along the line.
func apart(box, bounds geometry.Rect, from, to geometry.Vec2) float64 {
	if gap(box, bounds) >= offFolds {
		return gap(box, bounds)
	}
	const steps = 200
	least := math.Inf(1)
	for i := range steps + 1 {
		p := from.Add(to.Sub(from).Scale(float64(i) / steps))
		least = min(least, gap(box, geometry.Rect{Min: p, Max: p}))
	}
	return least
}

// gap returns the distance between two boxes, 0 where they overlap.
func gap(a, b geometry.Rect) float64 {
	x := max(a.Min.X-b.Max.X, b.Min.X-a.Max.X, 0)
	y := max(a.Min.Y-b.Max.Y, b.Min.Y-a.Max.Y, 0)
	return math.Hypot(x, y)
}
