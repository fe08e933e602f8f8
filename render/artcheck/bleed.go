package artcheck

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/placement"
	"gussetwright/render/artwork"
)

// near is how exactly artwork must meet a line, in mm: what a press holds.
const near = 0.25

// bleed finds artwork that reaches an edge but does not run past it.
func (l *inspection) bleed(p *placement.Placed, art *artwork.Art) {
	l.size(p, art)
	if p.Copies != nil || l.spec.Print.Bleed <= near {
		return
	}
	middle := p.Target.Center()
	for _, side := range []struct {
		at, out geometry.Vec2 // the middle of a side of the place, and the way past it
	}{
		{geometry.Vec2{X: p.Target.Min.X, Y: middle.Y}, geometry.Vec2{X: -1}},
		{geometry.Vec2{X: p.Target.Max.X, Y: middle.Y}, geometry.Vec2{X: 1}},
		{geometry.Vec2{X: middle.X, Y: p.Target.Min.Y}, geometry.Vec2{Y: -1}},
		{geometry.Vec2{X: middle.X, Y: p.Target.Max.Y}, geometry.Vec2{Y: 1}},
	} {
		wanted := reach(p.Clip, side.at, side.out)
		if wanted <= near {
			continue // a neighbour's artwork begins there
		}
		got := l.past(p, side.at, side.out)
		if got < -near || got >= wanted-near {
			continue
		}
		l.find(check.Warning, "artwork-without-bleed", p.Piece, side.at,
			phrase.New("%q ends %s past the edge of the %s; the bleed is %s", art.Name, mm(max(got, 0)), placeWord(p.Place), mm(l.spec.Print.Bleed)),
			phrase.New("enlarge it or let it cover its place, so that no white line shows where a cut or a fold wanders"))
		return
	}
}

// reach returns how far the clip goes past a side.
func reach(clip geometry.Rect, at, out geometry.Vec2) float64 {
	switch {
	case out.X < 0:
		return at.X - clip.Min.X
	case out.X > 0:
		return clip.Max.X - at.X
	case out.Y < 0:
		return at.Y - clip.Min.Y
	}
	return clip.Max.Y - at.Y
}

// past returns how far the artwork goes past a point in a direction, negative where
// it ends before, and a large negative number where the line through the point misses
// it.
func (l *inspection) past(p *placement.Placed, at, out geometry.Vec2) float64 {
	back, possible := p.At.Inverse()
	if !possible {
		return math.Inf(-1)
	}
	const far = 10_000 // mm, beyond any blank
	inner, outer := back.At(at.Sub(out.Scale(far))), back.At(at.Add(out.Scale(far)))
	_, leave, hit := geometry.RectAt(0, 0, 1, 1).Through(inner, outer)
	if !hit {
		return math.Inf(-1)
	}
	return leave*2*far - far
}

// size compares artwork that is placed in its own size on a whole piece with that.
func (l *inspection) size(p *placement.Placed, art *artwork.Art) {
	entry := &l.spec.Artwork[p.Index]
	_, isPanel := l.blank.Pieces[p.Piece].Panel(p.Place)
	if isPanel || entry.Fit != bag.FitExact || entry.Scale != 1 || entry.Turn != 0 || entry.Repeat != bag.RepeatNone {
		return
	}
	trim, bleed := p.Target, p.Target.Inset(-l.spec.Print.Bleed)
	size := art.Source.Size
	if !art.Source.Trim.Empty() {
		size = geometry.Vec2{X: art.Source.Trim.Width(), Y: art.Source.Trim.Height()}
		bleed = trim // the trim of the file is stated; it must be that of the piece
	}
	fits := func(r geometry.Rect) bool {
		return math.Abs(size.X-r.Width()) <= 2*near && math.Abs(size.Y-r.Height()) <= 2*near
	}
	if fits(trim) || fits(bleed) {
		return
	}
	l.find(check.Warning, "artwork-other-size", p.Piece, p.Target.Center(),
		phrase.New("%q is %s × %s; the blank is %s × %s", art.Name, geometry.BareLength(size.X), mm(size.Y), geometry.BareLength(trim.Width()), mm(trim.Height())),
		phrase.New("draw it on the template of this bag, or let it cover the blank"))
}

// upright warns of artwork on a face or a gusset that stands on its head or lies on
// its side when the bag stands.
func (l *inspection) upright(p *placement.Placed, entry *bag.Artwork) {
	panel, isPanel := l.blank.Pieces[p.Piece].Panel(p.Place)
	if isPanel && panel.Row != blank.RowBody || entry.Repeat != bag.RepeatNone {
		return
	}
	up := p.At.V.Unit().Y
	switch {
	case up < -0.7:
		l.find(check.Warning, "artwork-upside-down", p.Piece, p.Target.Center(),
			phrase.New("%q stands on its head on the %s", entry.File, placeWord(p.Place)),
			phrase.New("turn it by 180°, unless it is meant to"))
	case up < 0.7:
		l.find(check.Note, "artwork-on-its-side", p.Piece, p.Target.Center(),
			phrase.New("%q lies on its side on the %s", entry.File, placeWord(p.Place)),
			phrase.New("turn it by 90°, unless it is meant to"))
	}
}

// flatFold notes artwork on a face that the flat-fold crease crosses.
func (l *inspection) flatFold(p *placement.Placed, entry *bag.Artwork) {
	piece := &l.blank.Pieces[p.Piece]
	levels := piece.Levels
	panel, isPanel := piece.Panel(p.Place)
	if !isPanel || panel.Row != blank.RowBody || panel.Column != "front" || levels.FlatFold-levels.Base < geometry.Tolerance {
		return
	}
	shown := p.At.Bounds(geometry.RectAt(0, 0, 1, 1))
	if p.Copies == nil && (shown.Min.Y > levels.FlatFold-near || shown.Max.Y < levels.FlatFold+near) {
		return
	}
	l.find(check.Note, "artwork-on-flat-fold", p.Piece, geometry.Vec2{X: p.Target.Center().X, Y: levels.FlatFold},
		phrase.New("the flat-fold crease runs through %q, %s above the base of the front", entry.File, mm(levels.FlatFold-levels.Base)),
		phrase.New("keep text and logos off that line; bags that are delivered flat show it"))
}
