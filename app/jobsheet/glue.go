package jobsheet

import (
	"gussetwright/geometry/blank"
)

// glued is all glue areas of one kind in one bag.
type glued struct {
	role  blank.GlueRole
	side  blank.Side
	count int
	area  float64 // mm², of all
}

// glueAreas returns the glue areas of a bag by what they hold, in the order in which they
// are first met.
func glueAreas(laid *blank.Blank) []glued {
	var list []glued
	for i := range laid.Pieces {
		piece := &laid.Pieces[i]
		for _, area := range piece.Glue {
			at := find(list, area.Role, area.Side)
			if at < 0 {
				at = len(list)
				list = append(list, glued{role: area.Role, side: area.Side})
			}
			list[at].count += piece.Count
			list[at].area += float64(piece.Count) * area.Shape.Area()
		}
	}
	return list
}

func find(list []glued, role blank.GlueRole, side blank.Side) int {
	for i, g := range list {
		if g.role == role && g.side == side {
			return i
		}
	}
	return -1
}
