package raster

import (
	"image"

	"gussetwright/geometry"
)

// InkMap is how much ink a picture takes: the greatest total in each cell of a coarse
// grid over the picture as shown. Totals are means over patches of about 1 mm, as a
// densitometer sees them, so that a lone pixel does not count.
type InkMap struct {
	Columns, Rows int
	// Percent is the total of the four inks, 0 to 400, row by row from the top left.
	Percent []float32
}

// mostCells is the number of columns and of rows of an InkMap at most.
const mostCells = 512

// Greatest returns the greatest total, 0 to 400 percent, and the cell where it is.
func (m *InkMap) Greatest() (percent float32, cell image.Point) {
	for i, p := range m.Percent {
		if p > percent {
			percent, cell = p, image.Pt(i%m.Columns, i/m.Columns)
		}
	}
	return percent, cell
}

// inkGauge fills an InkMap from the rows of a picture as stored.
type inkGauge struct {
	size    image.Point // of the picture in pixels, as stored
	side    int         // of a patch in pixels
	patches image.Point // columns and rows of them; the last take what is left over
	turn    orientation
	row     int
	sums    []uint64 // of the patches in the present row of patches
	result  *InkMap
}

func newInkGauge(size image.Point, turn orientation, perMM geometry.Vec2) *inkGauge {
	side := patchSide(perMM)
	g := &inkGauge{size: size, side: side, turn: turn, patches: image.Pt(max(1, size.X/side), max(1, size.Y/side))}
	g.sums = make([]uint64, g.patches.X)
	cells := turn.size(g.patches)
	cells = image.Pt(min(cells.X, mostCells), min(cells.Y, mostCells))
	g.result = &InkMap{cells.X, cells.Y, make([]float32, cells.X*cells.Y)}
	return g
}

// patchSide returns 1 mm in pixels, from 4, with which noise does not matter any
// more, to 16. 4 stands for a resolution that is not stated.
func patchSide(perMM geometry.Vec2) int {
	return int(max(4, min(16, (perMM.X+perMM.Y)/2+0.5)))
}

// add takes the next row of inks.
func (g *inkGauge) add(line []byte) {
	for patch := range g.sums {
		end := min((patch+1)*g.side, g.size.X)
		if patch == g.patches.X-1 {
			end = g.size.X
		}
		sum := uint64(0)
		for _, amount := range line[4*patch*g.side : 4*end] {
			sum += uint64(amount)
		}
		g.sums[patch] += sum
	}
	g.row++
	full := g.row%g.side == 0 && g.row/g.side < g.patches.Y
	if full || g.row == g.size.Y {
		g.flush()
	}
}

// flush takes a row of patches into the map.
func (g *inkGauge) flush() {
	patchRow := min((g.row-1)/g.side, g.patches.Y-1)
	rows := g.row - patchRow*g.side
	shown := g.turn.size(g.patches)
	for patch, sum := range g.sums {
		columns := g.side
		if patch == g.patches.X-1 {
			columns = g.size.X - patch*g.side
		}
		percent := float32(100 * float64(sum) / (255 * float64(rows*columns)))
		at := g.turn.place(image.Pt(patch, patchRow), g.patches)
		cell := at.Y*g.result.Rows/shown.Y*g.result.Columns + at.X*g.result.Columns/shown.X
		g.result.Percent[cell] = max(g.result.Percent[cell], percent)
		g.sums[patch] = 0
	}
}
