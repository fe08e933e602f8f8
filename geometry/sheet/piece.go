package sheet

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// Piece is what is laid out: the bounding box of a blank and how many such pieces
// make one bag. All but the first three entries may be left at their zero values.
type Piece struct {
	Width, Height float64 // mm
	PerBag        int     // 1, or 2 for a bag with two seams
	Area          float64 // mm² inside the outline, for the waste

	// Bleed is how far ink runs past the edges of the piece, in mm. The gap and the
	// margins grow where they do not hold it; 0 takes them as they are.
	Bleed float64
	// Ink is how far ink runs past the edges of the piece, in mm, whether or not room is
	// kept for it: where the sheet has room to spare, pieces keep that far off the gripper,
	// in which nothing is printed. 0 where no ink runs off.
	Ink float64
	// Grain tells whether pieces may lie across each other. Fibres is the side of
	// the piece along which its fibres are to lie, SheetFibres the side of the sheet
	// along which they do lie; where either is empty the sheet is ordered as needed.
	Grain               GrainRule
	Fibres, SheetFibres bag.Grain
	// Outline is the cut edge of the piece, anticlockwise with its lower left corner
	// at the origin. With it, pieces are turned head to tail and moved into each
	// other where that gains; nil lays the bounding box.
	Outline *geometry.Path
}

// GrainRule says how strictly the fibres of all pieces must lie alike.
type GrainRule int

// The rules. Under GrainRequired all pieces lie alike and along the fibres of the
// sheet. Under GrainPreferred pieces lie across where that puts more of them on the
// sheet. Under GrainFree the fibres do not matter.
const (
	GrainRequired GrainRule = iota
	GrainPreferred
	GrainFree
)

// mayLie tells whether all pieces may lie turned by 0 or by 90.
func (p *Piece) mayLie(turn int) bool {
	return p.Grain != GrainRequired || !p.grainKnown() || turn == p.alongGrain()
}

func (p *Piece) grainKnown() bool { return p.Fibres != "" && p.SheetFibres != "" }

// alongGrain returns the turn in which the fibres of the piece are those of the
// sheet; it holds when the grain is known.
func (p *Piece) alongGrain() int {
	if p.Fibres == p.SheetFibres {
		return 0
	}
	return 90
}

// size returns the extent of the piece along x and y when it lies turned by 0, 90,
// 180 or 270.
func (p *Piece) size(turn int) (width, height float64) {
	if turn%180 != 0 {
		return p.Height, p.Width
	}
	return p.Width, p.Height
}
