package practice

import (
	"math"
	"strconv"

	"gussetwright/geometry"
	"gussetwright/render/report"
)

// footer is the height in mm of the strip below the drawing on each tile.
const footer = 12.0

// grid is how a drawing is parted into tiles. Each shows a part of the drawing, of the
// size of window; neighbours share a strip of the width of overlap.
type grid struct {
	paper         report.Paper
	window        geometry.Rect // where the drawing is seen on each page
	corner        geometry.Vec2 // of the drawing, at the lower left of all tiles
	columns, rows int
}

// newGrid parts a drawing into the fewest tiles, upright ones where both ways take as
// many. The drawing stands in the middle of them.
func newGrid(drawing geometry.Rect, paper report.Paper, margin float64) grid {
	upright, lying := gridOn(paper, drawing, margin), gridOn(paper.Landscape(), drawing, margin)
	if lying.count() < upright.count() {
		return lying
	}
	return upright
}

func gridOn(paper report.Paper, drawing geometry.Rect, margin float64) grid {
	g := grid{paper: paper, window: geometry.RectAt(0, 0, paper.Width, paper.Height).Inset(margin)}
	g.window.Min.Y += footer
	tiles := func(length, window float64) int {
		return max(int(math.Ceil((length-overlap)/(window-overlap)-1e-9)), 1)
	}
	g.columns, g.rows = tiles(drawing.Width(), g.window.Width()), tiles(drawing.Height(), g.window.Height())
	size := geometry.Vec2{X: float64(g.columns-1)*g.step().X + g.window.Width(), Y: float64(g.rows-1)*g.step().Y + g.window.Height()}
	g.corner = drawing.Center().Sub(size.Scale(0.5))
	return g
}

// step is the way from a tile to the next.
func (g *grid) step() geometry.Vec2 {
	return geometry.Vec2{X: g.window.Width() - overlap, Y: g.window.Height() - overlap}
}

func (g *grid) count() int { return g.columns * g.rows }

// seams is the number of borders between two tiles.
func (g *grid) seams() int { return g.rows*(g.columns-1) + g.columns*(g.rows-1) }

// place is a tile: its column from the left and its row from above.
type place struct{ column, row int }

func (g *grid) place(number int) place { return place{number % g.columns, number / g.columns} }

func (g *grid) has(p place) bool {
	return p.column >= 0 && p.column < g.columns && p.row >= 0 && p.row < g.rows
}

// part returns what a tile shows of the drawing.
func (g *grid) part(p place) geometry.Rect {
	step := g.step()
	x := g.corner.X + float64(p.column)*step.X
	y := g.corner.Y + float64(g.rows-1-p.row)*step.Y
	return geometry.RectAt(x, y, g.window.Width(), g.window.Height())
}

// name returns the number of the column and the letter of the row; the other way round it
// would read like a size of paper. Rows are lettered from the first one on, which is 0 for
// A.
func (p place) name(first int) string {
	letter := ""
	for row := first + p.row; row >= 0; row = row/26 - 1 {
		letter = string(rune('A'+row%26)) + letter
	}
	return strconv.Itoa(p.column+1) + letter
}

func (p place) left() place  { return place{p.column - 1, p.row} }
func (p place) right() place { return place{p.column + 1, p.row} }
func (p place) above() place { return place{p.column, p.row - 1} }
func (p place) below() place { return place{p.column, p.row + 1} }
