package placement

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// InkFree returns the areas of a piece that must stay free of ink, because glue
// holds on bare paper. On the seam flap they begin one bleed past the seam crease:
// ink runs that far under the panel which is glued on, so that no white line shows.
func InkFree(piece *blank.Piece, spec bag.Spec) []geometry.Path {
	var free []geometry.Path
	flap, seamed := piece.Panel("seam-flap")
	for _, area := range piece.Glue {
		if area.Side != blank.PrintSide || seamed && area.Shape.Bounds().Min.X >= flap.Box.Min.X-geometry.Tolerance {
			continue
		}
		free = append(free, area.Shape)
	}
	if !seamed {
		return free
	}
	strip := flap.Box
	strip.Min.X += spec.Print.Bleed
	strip.Min.Y, strip.Max.Y = -spec.Print.Bleed, piece.Height+spec.Print.Bleed
	strip.Max.X = piece.Width + spec.Print.Bleed
	if strip.Empty() {
		return free
	}
	return append(free, strip.Path())
}
