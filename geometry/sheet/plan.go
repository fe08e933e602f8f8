package sheet

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// Placement is where one piece lies on the sheet.
type Placement struct {
	X, Y float64 // lower left corner of its bounding box, mm from that of the sheet
	// Turn is how far the piece is turned anticlockwise: 0, or 90 when it lies on
	// its side; 180 and 270 only where pieces lie head to tail.
	Turn int
}

// Plan is a sheet with as many pieces as were found to fit.
type Plan struct {
	Sheet      bag.Sheet
	Piece      Piece
	Usable     geometry.Rect // what the bounding boxes of pieces may cover
	Placements []Placement
	Turn       int // of most pieces, 0 or 90, head to tail counted alike; 0 when nothing fits
	// TooLong is by how much the piece passes the usable area along x and y in
	// the turn that comes nearer to fitting; both are 0 when it fits.
	TooLong geometry.Vec2
	// Bound is a number of pieces that no layout passes. Proven tells that the plan
	// meets it, so that none is better.
	Bound  int
	Proven bool
	Nested bool // bounding boxes reach into each other
}

// Lay returns the plan with the most pieces that could be found. Where as many fit
// all alike, they lie in straight rows, upright if both turns are as good and the
// grain does not decide.
func Lay(s bag.Sheet, piece Piece) Plan {
	plan := Plan{Sheet: s, Piece: piece, Usable: usable(s, piece.Bleed)}
	plan.layAlike()
	if piece.Grain != GrainRequired {
		plan.layMixed()
	}
	if piece.Outline != nil {
		plan.nest()
	}
	plan.Proven = plan.Up() == plan.Bound
	plan.leaveGripper()
	return plan
}

// layAlike lays the grid with more pieces of the turns that the grain allows.
func (p *Plan) layAlike() {
	var best grid
	for i, turn := range p.turns() {
		width, height := p.Piece.size(turn)
		g := fit(p.Usable, p.Gap(), width, height)
		if i == 0 || g.count() > best.count() || g.count() == 0 && best.count() == 0 && g.excess() < best.excess() {
			best, p.Turn = g, turn
		}
	}
	p.TooLong = best.tooLong
	p.Placements = best.placements(p.Usable, p.Gap(), p.Turn)
	p.Bound = len(p.Placements)
	if p.Bound == 0 {
		p.Turn = 0
	}
}

// turns returns how pieces may lie, the better one first.
func (p *Plan) turns() []int {
	turns := []int{0, 90}
	if p.Piece.Grain != GrainFree && p.Piece.grainKnown() && p.Piece.alongGrain() == 90 {
		turns = []int{90, 0}
	}
	if !p.Piece.mayLie(turns[1]) {
		return turns[:1]
	}
	return turns
}

// layMixed takes a layout of pieces that lie and stand where that holds more.
func (p *Plan) layMixed() {
	in, ok := newInstance(p.Usable, p.Gap(), p.Piece.Width, p.Piece.Height)
	if !ok {
		return
	}
	best := in.solve()
	p.Bound = max(p.Bound, best.bound)
	if len(best.cells) <= p.Up() {
		return
	}
	p.TooLong = geometry.Vec2{}
	p.Placements = make([]Placement, len(best.cells))
	alongWhenUpright := p.Piece.Width >= p.Piece.Height
	turned := 0
	for i, c := range best.cells {
		at := Placement{X: p.Usable.Min.X + float64(c.x)/ticks, Y: p.Usable.Min.Y + float64(c.y)/ticks}
		if c.along != alongWhenUpright {
			at.Turn = 90
			turned++
		}
		p.Placements[i] = at
	}
	p.Turn = 0
	if 2*turned > len(best.cells) {
		p.Turn = 90
	}
}

// Fits tells whether at least one piece lies on the sheet.
func Fits(s bag.Sheet, width, height float64) bool {
	usable := Usable(s)
	return fit(usable, s.Gap, width, height).count() > 0 || fit(usable, s.Gap, height, width).count() > 0
}

// Up returns the number of pieces on the sheet.
func (p Plan) Up() int { return len(p.Placements) }

// Gap returns the least distance between two pieces in mm: that of the sheet, or
// twice the bleed where that is more.
func (p Plan) Gap() float64 { return max(p.Sheet.Gap, 2*p.Piece.Bleed) }

// WastePercent returns the share of the whole sheet, gripper and margins
// included, that ends up in no bag.
func (p Plan) WastePercent() float64 {
	return 100 * (1 - float64(p.Up())*p.Piece.Area/(p.Sheet.Width*p.Sheet.Height))
}

// GrainAlong returns the side of the sheet along which its fibres must lie so
// that they lie along the wanted side of the bag, in most pieces: GrainWidth or
// GrainHeight of the sheet.
func (p Plan) GrainAlong(onBag bag.Grain) bag.Grain {
	if p.Turn == 0 {
		return onBag
	}
	if onBag == bag.GrainHeight {
		return bag.GrainWidth
	}
	return bag.GrainHeight
}

// Across returns how many pieces have their fibres across the wanted direction: all
// that do not lie along the grain of the sheet or, where the sheet is ordered as
// needed, all that do not lie as most do.
func (p Plan) Across() int {
	right := p.Turn
	if p.Piece.grainKnown() {
		right = p.Piece.alongGrain()
	}
	across := 0
	for _, at := range p.Placements {
		if at.Turn%180 != right {
			across++
		}
	}
	return across
}
