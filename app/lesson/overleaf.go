package lesson

import (
	"slices"

	"gussetwright/app/creases"
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
)

// upside is which side of the blank is to be seen.
type upside int

// The choices of the user.
const (
	asHandsHoldIt upside = iota // the side that lies up on the table in the stage
	printUp
	reverseUp
)

// liesOnPrint tells whether the print side lies on the table in a stage, so that the
// hands see the reverse of the blank.
func (c *course) liesOnPrint(stage int) bool { return creases.ReverseUp(&c.Stages[stage]) }

// overleaf carries what is on a piece to where it is seen from the reverse: left and right
// change places. Mountains seen from there are valleys.
type overleaf struct{ width float64 }

func (o overleaf) point(p geometry.Vec2) geometry.Vec2 {
	return geometry.Vec2{X: o.width - p.X, Y: p.Y}
}

func (o overleaf) edge(e geometry.Edge) geometry.Edge {
	return geometry.Edge{From: o.point(e.From), To: o.point(e.To), Bulge: -e.Bulge}
}

// path keeps the paper on the left of the path: it runs the other way, so that arcs keep
// the sign of their bulge.
func (o overleaf) path(p geometry.Path) geometry.Path {
	n := len(p.Vertices)
	turned := geometry.Path{Closed: p.Closed, Vertices: make([]geometry.Vertex, n)}
	for i := range n {
		turned.Vertices[i] = geometry.Vertex{Vec2: o.point(p.Vertices[n-1-i].Vec2), Bulge: p.Vertices[(2*n-2-i)%n].Bulge}
	}
	return turned
}

func (o overleaf) area(a blank.GlueArea) blank.GlueArea {
	a.Shape = o.path(a.Shape)
	openings := a.Openings
	a.Openings = nil
	for _, opening := range openings {
		a.Openings = append(a.Openings, o.path(opening))
	}
	return a
}

func (o overleaf) crease(c fold.Crease) fold.Crease {
	c.Edge, c.Fold = o.edge(c.Edge), c.Fold.Opposite()
	return c
}

// piece returns a piece as it is seen from the reverse, with its names where they are then.
func (o overleaf) piece(p blank.Piece) blank.Piece {
	p.Outline = o.path(p.Outline)
	p.Panels, p.Lines, p.Holes, p.Glue = slices.Clone(p.Panels), slices.Clone(p.Lines), slices.Clone(p.Holes), slices.Clone(p.Glue)
	for i := range p.Panels {
		panel := &p.Panels[i]
		panel.Shape = o.path(panel.Shape)
		panel.Box = panel.Shape.Bounds()
	}
	for i := range p.Lines {
		line := &p.Lines[i]
		line.Edge, line.Fold = o.edge(line.Edge), line.Fold.Opposite()
	}
	for i := range p.Holes {
		p.Holes[i].Center = o.point(p.Holes[i].Center)
	}
	for i := range p.Glue {
		p.Glue[i] = o.area(p.Glue[i])
	}
	return p
}

// fromTheReverse returns a blank as it is seen from the reverse.
func fromTheReverse(laid *blank.Blank) *blank.Blank {
	turned := *laid
	turned.Pieces = nil
	for _, p := range laid.Pieces {
		turned.Pieces = append(turned.Pieces, overleaf{p.Width}.piece(p))
	}
	return &turned
}
