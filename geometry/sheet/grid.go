package sheet

import (
	"math"

	"gussetwright/geometry"
)

// grid is a block of equal cells.
type grid struct {
	columns, rows int
	width, height float64 // of one cell
	tooLong       geometry.Vec2
}

func fit(usable geometry.Rect, gap, width, height float64) grid {
	g := grid{width: width, height: height}
	g.columns, g.tooLong.X = times(usable.Width(), gap, width)
	g.rows, g.tooLong.Y = times(usable.Height(), gap, height)
	return g
}

// times returns how often length goes into room with gaps between, and by how
// much even one is too long.
func times(room, gap, length float64) (count int, tooLong float64) {
	if length <= 0 {
		return 0, 0
	}
	if length > room+geometry.Tolerance {
		return 0, length - room
	}
	return int(math.Floor((room + gap + geometry.Tolerance) / (length + gap))), 0
}

func (g grid) count() int { return g.columns * g.rows }

func (g grid) excess() float64 { return g.tooLong.X + g.tooLong.Y }

// placements returns the cells, row by row from the lower left of the usable
// area, where the press registers the sheet.
func (g grid) placements(usable geometry.Rect, gap float64, turn int) []Placement {
	if g.count() == 0 {
		return nil
	}
	cells := make([]Placement, 0, g.count())
	for row := range g.rows {
		for column := range g.columns {
			cells = append(cells, Placement{
				X:    usable.Min.X + float64(column)*(g.width+gap),
				Y:    usable.Min.Y + float64(row)*(g.height+gap),
				Turn: turn,
			})
		}
	}
	return cells
}
