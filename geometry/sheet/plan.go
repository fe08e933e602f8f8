package sheet

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// Piece is what is laid out: the bounding box of a blank and how many such
// pieces make one bag.
type Piece struct {
	Width, Height float64 // mm
	PerBag        int     // 1, or 2 for a bag with two seams
	Area          float64 // mm² inside the outline, for the waste
}

// Placement is where one piece lies on the sheet.
type Placement struct {
	X, Y float64 // lower left corner of its bounding box, mm from that of the sheet
	Turn int     // 0, or 90 when the piece lies on its side
}

// Plan is a sheet with pieces in straight rows, all turned the same way.
type Plan struct {
	Sheet      bag.Sheet
	Piece      Piece
	Usable     geometry.Rect
	Placements []Placement
	Turn       int // of every piece; 0 when nothing fits
	// TooLong is by how much the piece passes the usable area along x and y in
	// the turn that comes nearer to fitting; both are 0 when it fits.
	TooLong geometry.Vec2
}

// Lay returns the grid with more pieces of the two turns; upright wins a tie.
func Lay(s bag.Sheet, piece Piece) Plan {
	plan := Plan{Sheet: s, Piece: piece, Usable: Usable(s)}
	upright := fit(plan.Usable, s.Gap, piece.Width, piece.Height)
	turned := fit(plan.Usable, s.Gap, piece.Height, piece.Width)
	best := upright
	if turned.count() > upright.count() || turned.count() == 0 && turned.excess() < upright.excess() {
		best, plan.Turn = turned, 90
	}
	plan.TooLong = best.tooLong
	plan.Placements = best.placements(plan.Usable, s.Gap, plan.Turn)
	if len(plan.Placements) == 0 {
		plan.Turn = 0
	}
	return plan
}

// Fits tells whether at least one piece lies on the sheet.
func Fits(s bag.Sheet, width, height float64) bool {
	usable := Usable(s)
	return fit(usable, s.Gap, width, height).count() > 0 || fit(usable, s.Gap, height, width).count() > 0
}

// Up returns the number of pieces on the sheet.
func (p Plan) Up() int { return len(p.Placements) }

// BagsPerSheet returns the number of whole or half bags that a sheet makes.
func (p Plan) BagsPerSheet() float64 {
	if p.Piece.PerBag == 0 {
		return 0
	}
	return float64(p.Up()) / float64(p.Piece.PerBag)
}

// WastePercent returns the share of the whole sheet, gripper and margins
// included, that ends up in no bag.
func (p Plan) WastePercent() float64 {
	return 100 * (1 - float64(p.Up())*p.Piece.Area/(p.Sheet.Width*p.Sheet.Height))
}

// GrainAlong returns the side of the sheet along which its fibres must lie so
// that they lie along the wanted side of the bag: GrainWidth or GrainHeight of
// the sheet.
func (p Plan) GrainAlong(onBag bag.Grain) bag.Grain {
	if p.Turn == 0 {
		return onBag
	}
	if onBag == bag.GrainHeight {
		return bag.GrainWidth
	}
	return bag.GrainHeight
}

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
