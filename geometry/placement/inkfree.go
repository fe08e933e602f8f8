package placement

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// InkFree returns the areas of a piece that must stay free of ink, because glue
// holds on bare paper. On the seam flap they begin one bleed past the seam crease:
// ink runs that far under the panel which is glued on, so that no white line shows. On
// a turn-in they are what is glued onto it.
func InkFree(piece *blank.Piece, spec bag.Spec) []geometry.Path {
	var free []geometry.Path
	flap, seamed := piece.Panel("seam-flap")
	for _, area := range piece.Glue {
		if area.Side != blank.PrintSide || seamed && area.Shape.Bounds().Min.X >= flap.Box.Min.X-geometry.Tolerance {
			continue
		}
		free = append(free, area.Shape)
	}
	free = append(free, onTurnIns(piece, spec)...)
	if !seamed {
		return free
	}
	strip := rightOf(piece.BleedOutline(spec.Print.Bleed), flap.Box.Min.X+spec.Print.Bleed)
	if len(strip.Vertices) < 3 {
		return free
	}
	return append(free, strip)
}

// onTurnIns returns what of the turn-ins is glued on, with the bleed at the edges of the
// piece.
func onTurnIns(piece *blank.Piece, spec bag.Spec) (free []geometry.Path) {
	paper := piece.Box()
	for _, area := range piece.GluedTurnIns(spec) {
		box := area.Box
		if box.Min.X <= paper.Min.X+geometry.Tolerance {
			box.Min.X -= spec.Print.Bleed
		}
		if box.Max.Y >= paper.Max.Y-geometry.Tolerance {
			box.Max.Y += spec.Print.Bleed
		}
		free = append(free, box.Path())
	}
	return free
}

// rightOf returns the part of a convex path of straight edges to the right of an
// upright line.
func rightOf(path geometry.Path, x float64) geometry.Path {
	part := geometry.Path{Closed: true}
	for i := range path.Len() {
		a, b := path.Edge(i).From, path.Edge(i).To
		if a.X >= x {
			part.Vertices = append(part.Vertices, geometry.Vertex{Vec2: a})
		}
		if (a.X < x) != (b.X < x) {
			cross := a.Add(b.Sub(a).Scale((x - a.X) / (b.X - a.X)))
			part.Vertices = append(part.Vertices, geometry.Vertex{Vec2: cross})
		}
	}
	return part
}
