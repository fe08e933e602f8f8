package advice

import (
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/sheet"
)

// adviser is one bag that advice is given about.
type adviser struct {
	spec  bag.Spec // its number of seams decided
	blank *blank.Blank
	piece sheet.Piece
	all   []lever
}

// newAdviser takes how pieces may lie, and whether bleed and outline count, from a
// piece of the blank.
func newAdviser(laid *blank.Blank, piece sheet.Piece) *adviser {
	spec := laid.Spec
	spec.Body.Seams = bag.SeamsOne
	if laid.Seams == 2 {
		spec.Body.Seams = bag.SeamsTwo
	}
	a := &adviser{spec: spec, blank: laid, piece: piece}
	a.all = a.levers()
	return a
}

// pieceOf returns the piece of a changed blank, to be laid like that of the first.
func (a *adviser) pieceOf(laid *blank.Blank, fibres bag.Grain) sheet.Piece {
	piece := laid.SheetPiece()
	piece.Grain, piece.Fibres, piece.SheetFibres = a.piece.Grain, a.piece.Fibres, fibres
	if a.piece.Bleed > 0 {
		piece.Bleed = laid.Spec.Print.Bleed
	}
	if a.piece.Outline != nil {
		piece.Outline = &laid.Pieces[0].Outline
	}
	return piece
}

// Row is a sheet of a ranking.
type Row struct {
	sheet.Ranked
	Reason phrase.Phrase // why nothing fits; empty when something does
	Near   []NearMiss    // what would gain one more up, the change that is least felt first
}

// mostNear bounds how many near misses a sheet gets.
const mostNear = 5

// Rank ranks sheets for a bag, each gripped at its better edge, and says of each what
// would make it hold one piece more. The piece is that of the blank, with its grain
// rule, bleed and outline as they are to count.
func Rank(laid *blank.Blank, piece sheet.Piece, stock []sheet.Stock, by sheet.Criterion) []Row {
	a := newAdviser(laid, piece)
	ranked := sheet.RankStock(a.spec.Sheet, piece, stock, by)
	rows := make([]Row, len(ranked))
	for i, r := range ranked {
		rows[i] = Row{Ranked: r, Reason: r.Plan.Reason()}
		rows[i].Near = a.nearOn(&r.Plan, false)
	}
	return rows
}

// Near returns what would make the bag's own sheet hold one piece more than the plan
// does, the change that is least felt first: the other gripper edge alone, one entry alone, or,
// where none of these does, the least two of them.
func Near(laid *blank.Blank, plan *sheet.Plan) []NearMiss {
	return newAdviser(laid, plan.Piece).nearOn(plan, true)
}

// nearOn looks for near misses of a plan. Where the gripper edge is a choice that was
// made, taking the other one is a change by itself.
func (a *adviser) nearOn(plan *sheet.Plan, edgeCounts bool) []NearMiss {
	up := plan.Up() + 1
	fibres := a.piece.SheetFibres
	defer func() { a.piece.SheetFibres = fibres }()
	a.piece.SheetFibres = plan.Piece.SheetFibres
	here, there := plan.Sheet, gripped(plan.Sheet)
	var single, double []attempt
	if edgeCounts && sheet.Holds(there, a.piece, up) {
		single = append(single, attempt{on: there, other: true})
	}
	dimHere, dimThere := a.hopeless(here, up), a.hopeless(there, up)
	if !dimHere {
		single = append(single, a.single(here, up, false)...)
	}
	if !dimThere && !edgeCounts {
		single = append(single, a.single(there, up, true)...)
	}
	if near := a.verified(leastOfEach(single), up, mostNear); len(near) > 0 {
		return near
	}
	if !dimThere && edgeCounts {
		double = append(double, a.single(there, up, true)...)
	}
	if !dimHere {
		double = append(double, a.double(here, up, false)...)
	}
	if !dimThere && !edgeCounts {
		double = append(double, a.double(there, up, true)...)
	}
	return a.verified(double, up, 1)
}

// gripped returns the sheet gripped at its other edge.
func gripped(s bag.Sheet) bag.Sheet {
	if s.GripperEdge == bag.GripperShort {
		s.GripperEdge = bag.GripperLong
	} else {
		s.GripperEdge = bag.GripperShort
	}
	return s
}

// leastOfEach keeps of two attempts with the same lever, on either edge, the smaller
// one.
func leastOfEach(list []attempt) []attempt {
	least := map[*lever]float64{}
	for i := range list {
		if t := &list[i]; len(t.levers) == 1 {
			if known, seen := least[t.levers[0]]; !seen || t.share < known {
				least[t.levers[0]] = t.share
			}
		}
	}
	kept := list[:0]
	for _, t := range list {
		if len(t.levers) == 1 {
			if wanted, open := least[t.levers[0]]; !open || t.share > wanted {
				continue
			}
			delete(least, t.levers[0])
		}
		kept = append(kept, t)
	}
	return kept
}
