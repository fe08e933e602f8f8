package jobsheet

import (
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
)

// glued is all glue areas of one kind in one bag.
type glued struct {
	name  phrase.Word
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
			at := find(list, glueName(area.Role), area.Side)
			if at < 0 {
				at = len(list)
				list = append(list, glued{name: glueName(area.Role), side: area.Side})
			}
			list[at].count += piece.Count
			list[at].area += float64(piece.Count) * area.Area()
		}
	}
	return list
}

func find(list []glued, name phrase.Word, side blank.Side) int {
	for i, g := range list {
		if g.name == name && g.side == side {
			return i
		}
	}
	return -1
}
