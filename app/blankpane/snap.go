package blankpane

import (
	"math"

	"gussetwright/geometry"
)

// kind is what a measuring point has snapped to.
type kind int

// The kinds, the more telling first: of two within reach at the same place the
// first counts.
const (
	corner kind = iota
	centre
	lineEnd
	middlePoint
	onLine
	free
)

// mark is a point of a piece to measure from or to.
type mark struct {
	piece int
	at    geometry.Vec2 // on the piece
	kind  kind
}

// of returns where a mark lies on the desk.
func (d desk) of(m mark) geometry.Vec2 { return d.at(m.piece, m.at) }

// marks returns the points that measuring snaps to: corners of panels, centres of
// holes, ends and middles of lines.
func (d desk) marks() []mark {
	var all []mark
	for i := range d.laid.Pieces {
		piece := &d.laid.Pieces[i]
		seen := map[[2]int64]bool{}
		add := func(at geometry.Vec2, k kind) {
			// A micrometre is far below what paper can be cut to.
			key := [2]int64{int64(math.Round(at.X * 1000)), int64(math.Round(at.Y * 1000))}
			if !seen[key] {
				seen[key] = true
				all = append(all, mark{i, at, k})
			}
		}
		for _, panel := range piece.Panels {
			for _, v := range panel.Shape.Vertices {
				add(v.Vec2, corner)
			}
		}
		for _, hole := range piece.Holes {
			add(hole.Center, centre)
		}
		for _, opening := range piece.CutOuts() {
			add(opening.Shape.Bounds().Center(), centre)
		}
		for _, line := range piece.Lines {
			add(line.From, lineEnd)
			add(line.To, lineEnd)
		}
		for _, line := range piece.Lines {
			if line.Bulge == 0 {
				add(line.From.Mid(line.To), middlePoint)
			}
		}
	}
	return all
}

// snap returns what a pointer at p measures from or to: the nearest mark within
// reach, else the nearest point of a line within reach, else p itself.
func (d desk) snap(marks []mark, p geometry.Vec2, reach float64) mark {
	piece, at := d.nearest(p)
	best, nearest := mark{piece, at, free}, reach
	for _, m := range marks {
		if distance := d.of(m).Sub(p).Length(); distance < nearest {
			best, nearest = m, distance
		}
	}
	if best.kind != free {
		return best
	}
	for i := range d.laid.Pieces {
		for _, line := range d.laid.Pieces[i].Lines {
			at := p.Sub(d.moves[i])
			on := onLineAt(line.Edge, at)
			if distance := on.Sub(at).Length(); distance < nearest {
				best, nearest = mark{i, on, onLine}, distance
			}
		}
	}
	return best
}

// onLineAt returns the point of an edge, straight or round, that is nearest to p.
func onLineAt(edge geometry.Edge, p geometry.Vec2) geometry.Vec2 {
	if edge.Bulge == 0 {
		return onEdge(edge, p)
	}
	arc := edge.Arc()
	from := p.Sub(arc.Center)
	if from.Length() > 0 && arc.Passes(from.Angle()) {
		return arc.Center.Add(from.Unit().Scale(arc.Radius))
	}
	if p.Sub(edge.From).Length() < p.Sub(edge.To).Length() {
		return edge.From
	}
	return edge.To
}

// next returns the mark that is reached from a point by going in a direction (a unit
// vector): the nearest of those that lie within 45° of it. That is how the keyboard
// measures.
func (d desk) next(marks []mark, from, direction geometry.Vec2) (mark, bool) {
	best, nearest := mark{}, math.Inf(1)
	for _, m := range marks {
		way := d.of(m).Sub(from)
		along, aside := way.Dot(direction), math.Abs(way.Cross(direction))
		// What lies aside counts eightfold, so that going on keeps to the line.
		if distance := along + 8*aside; along > geometry.Tolerance && aside <= along && distance < nearest {
			best, nearest = m, distance
		}
	}
	return best, !math.IsInf(nearest, 1)
}
