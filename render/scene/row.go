package scene

import "gussetwright/geometry"

// RowGap is the distance in mm between the pages of two pieces in one file.
const RowGap = 20.0

// Row returns how far to move each drawing so that their pages stand side by
// side, RowGap apart, in files that hold several pieces. The first stays where
// it is and all keep their height, so that equal pieces stay level.
func Row(drawings []Drawing) []geometry.Vec2 {
	moves := make([]geometry.Vec2, len(drawings))
	for i := 1; i < len(drawings); i++ {
		rightOfLast := drawings[i-1].Media.Max.X + moves[i-1].X
		moves[i].X = rightOfLast + RowGap - drawings[i].Media.Min.X
	}
	return moves
}

// RowMedia returns the page that holds all drawings of the row, empty when
// there are none.
func RowMedia(drawings []Drawing) geometry.Rect {
	var page geometry.Rect
	for i, move := range Row(drawings) {
		media := drawings[i].Media
		moved := geometry.Rect{Min: media.Min.Add(move), Max: media.Max.Add(move)}
		if i == 0 {
			page = moved
		}
		page = page.Union(moved)
	}
	return page
}
