package artcheck

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/placement"
	"gussetwright/render/artwork"
)

// Values from judgement, tried on drawings and photographs; no published source.
const (
	groundLeast = 0.1 // of what is seen, that a further plain colour covers to have marks of its own
	markMost    = 1.0 / 3
	touches     = 0.5 // mm, within which a mark reaches an edge: the pixel that nearEdge leaves out
	like        = 2.5 // times as large at most is alike
	patternCuts = 3   // marks cut by the end of the file make a pattern
	barLength   = 8.0 // times as long as wide is a bar
	barFilled   = 0.85
)

// cutMark is a mark that runs over an edge of its place.
type cutMark struct {
	box  geometry.Rect
	edge edge
	over float64 // mm
}

// moved returns the mark on another place that is alike.
func (c cutMark) moved(by geometry.Vec2) cutMark {
	return cutMark{geometry.Rect{Min: c.box.Min.Add(by), Max: c.box.Max.Add(by)}, c.edge.moved(by), c.over}
}

// cutLook is what was found at one place.
type cutLook struct {
	placed          *placement.Placed
	worst, touching cutMark
}

// cutOff looks for marks that are whole in the file but not on the bag, because the place
// ends where they do not. What the end of the file cuts as well is meant to run on.
func (l *inspection) cutOff(p *placement.Placed, art *artwork.Art) {
	if !l.mayCut(p, art) {
		return
	}
	look := l.lookAtCuts(p, art)
	switch {
	case look.worst.over > 0:
		l.find(check.Warning, "mark-cut-off", p.Piece, look.worst.place(),
			phrase.New("a mark of %q runs %s over the edge of the %s, where it is cut off or folded round", art.Name, mm(look.worst.over), placeWord(p.Place)),
			phrase.New("make the artwork smaller, move it, or choose another fit, unless the mark is meant to run on"))
	case look.touching.over > -touches:
		l.comesNear(p.Piece, look.touching.place(), p.Place, -look.touching.over)
	}
}

// mayCut tells whether artwork reaches past its place by accident: it is shown once, and
// not drawn on the template of the piece, to be trimmed as it is.
func (l *inspection) mayCut(p *placement.Placed, art *artwork.Art) bool {
	entry := &l.spec.Artwork[p.Index]
	panel, isPanel := l.blank.Pieces[p.Piece].Panel(p.Place)
	switch {
	case p.Copies != nil || entry.Opacity == 0 || len(art.Levels) == 0:
		return false
	case isPanel && panel.Row != blank.RowBody:
		return false
	case !isPanel && (entry.Fit == bag.FitExact && entry.Scale == 1 || !art.Source.Trim.Empty()):
		return false
	}
	box, inner := p.At.Bounds(geometry.RectAt(0, 0, 1, 1)), p.Target.Inset(near)
	return !inner.Contains(box.Min) || !inner.Contains(box.Max)
}

// lookAtCuts looks at a file as it lies on one place, but not again where it lies so on
// another, as on both faces.
func (l *inspection) lookAtCuts(p *placement.Placed, art *artwork.Art) cutLook {
	for _, known := range l.cuts {
		if sameLie(p, known.placed) {
			shift := p.Target.Min.Sub(known.placed.Target.Min)
			known.worst, known.touching = known.worst.moved(shift), known.touching.moved(shift)
			return known
		}
	}
	look := cutLook{placed: p, touching: cutMark{over: -touches}}
	s, possible := newScan(p, art, l.beneath(p))
	if !possible {
		return look
	}
	_, isPanel := l.blank.Pieces[p.Piece].Panel(p.Place)
	allowed := near
	if !isPanel {
		allowed += l.spec.Print.Bleed
	}
	for _, ground := range s.grounds() {
		s.begin(ground)
		for _, e := range edgesOf(p.Target) {
			for _, m := range s.over(e, art.Source.Trim.Empty()) {
				switch {
				case m.over > max(allowed, look.worst.over):
					look.worst = m
				case isPanel && m.over <= near && m.over > look.touching.over:
					look.touching = m
				}
			}
		}
	}
	l.cuts = append(l.cuts, look)
	return look
}

// sameLie tells whether the same file lies alike on two places.
func sameLie(a, b *placement.Placed) bool {
	from, to := a.At.Origin.Sub(a.Target.Min), b.At.Origin.Sub(b.Target.Min)
	size, other := a.Target.Max.Sub(a.Target.Min), b.Target.Max.Sub(b.Target.Min)
	return a.Index == b.Index && a.Piece == b.Piece && size.Near(other) && a.At.U.Near(b.At.U) && a.At.V.Near(b.At.V) && from.Near(to)
}

// place returns where on its edge a mark is cut.
func (c *cutMark) place() geometry.Vec2 {
	low, high := c.edge.along(c.box)
	length := c.edge.to.Sub(c.edge.from)
	at := min(max((low+high)/2, 0), length.Length())
	return c.edge.from.Add(length.Unit().Scale(at))
}

// beneath returns what shows through a file: white where nothing is printed beneath, and
// otherwise nothing, so that white on a colour is told from the colour.
func (l *inspection) beneath(p *placement.Placed) colour {
	if l.spec.Print.Background.Total() > 0 {
		return colour{}
	}
	for i := range l.placed {
		if other := &l.placed[i]; other.Index < p.Index && other.Piece == p.Piece {
			return colour{}
		}
	}
	return colour{255, 255, 255, 255}
}

// over returns the marks that reach an edge or run over it, and those beyond it that go
// with one before it, as the last letter of a word does. torn tells whether the latter
// are looked for.
func (s *scan) over(e edge, torn bool) []cutMark {
	if !s.reaches(e, near) {
		return nil // the file ends before
	}
	var cut []cutMark
	crossing := s.on(e, -touches, 0)
	for _, m := range crossing {
		if end, _ := e.over(m.box); s.isMark(m) && !s.isBar(m, e) {
			cut = append(cut, cutMark{m.box, e, end})
		}
	}
	if !torn {
		return cut
	}
	var before []patch
	for _, m := range s.on(e, 1, 2, 4, 8, 16) { // one of which meets any letter as wide as its gap
		end, begin := e.over(m.box)
		if begin < 0 || !s.isMark(m) || s.isBar(m, e) {
			continue
		}
		if before == nil {
			before = append(s.on(e, -1, -2, -4, -8, -16), crossing...)
		}
		for _, other := range before {
			if s.isMark(other) && goTogether(e, other, m) {
				cut = append(cut, cutMark{m.box, e, end})
				break
			}
		}
	}
	return cut
}

// goTogether tells whether two marks stand side by side like letters of a word, one of
// them beyond the edge.
func goTogether(e edge, before, beyond patch) bool {
	last, first := e.over(before.box)
	_, begin := e.over(beyond.box)
	if first >= 0 || begin < last {
		return false
	}
	low, high := e.along(before.box)
	otherLow, otherHigh := e.along(beyond.box)
	less := min(high-low, otherHigh-otherLow)
	common := min(high, otherHigh) - max(low, otherLow)
	return max(high-low, otherHigh-otherLow) <= like*less && common >= less/2 && begin-last <= less/2
}

// isMark tells whether a patch is text or a logo: small against its place, and none of a
// pattern that the end of the file cuts as well.
func (s *scan) isMark(m patch) bool {
	if m.box.Width()*m.box.Height() > markMost*s.place.Width()*s.place.Height() || float64(m.pixels)*s.pixelArea < leastMark/(scale*scale) {
		return false
	}
	alike := 0
	for _, other := range s.cutByFile(like * m.longer()) {
		if ratio := other.longer() / m.longer(); ratio <= like && ratio >= 1/like {
			alike++
		}
	}
	return alike < patternCuts
}

// isBar tells whether a mark is a straight bar that runs into an edge with its end, or
// along it from one end to the other. Nobody sees that it is cut.
func (s *scan) isBar(m patch, e edge) bool {
	if float64(m.pixels)*s.pixelArea < barFilled*m.box.Width()*m.box.Height() {
		return false
	}
	low, high := e.along(m.box)
	end, begin := e.over(m.box)
	wide, deep := high-low, end-begin
	return deep >= barLength*wide || wide >= barLength*deep && low <= near && high >= e.to.Sub(e.from).Length()-near
}
