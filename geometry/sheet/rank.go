package sheet

import (
	"cmp"
	"math"
	"slices"

	"gussetwright/geometry/bag"
)

// Ranked is a sheet that can be bought with what fits on it, gripped at the better
// edge.
type Ranked struct {
	Usual
	Plan  Plan
	Price float64 // of one sheet; 0 when it is not known
}

// Criterion is what sheets are ranked by.
type Criterion int

// The criteria. ByPaper and ByCost count whole bags: of a piece that is left over, no
// bag is made.
const (
	ByWaste Criterion = iota // the share of the sheet that ends up in no bag
	ByPaper                  // the area of paper for 1000 bags
	ByCost                   // the price of the sheets for 1000 bags
)

// Rank lays the piece on every usual sheet, with the gripper, margins and gap of
// settings and each gripper edge in turn. Sheets on which it fits come first,
// least waste first; those on which it does not come last, nearest miss first.
func Rank(settings bag.Sheet, piece Piece) []Ranked {
	return RankStock(settings, piece, UsualStock(), ByWaste)
}

// RankStock is Rank for any list of sheets and criterion. By cost, sheets without a
// price come after those with one, by the paper they take.
func RankStock(settings bag.Sheet, piece Piece, stock []Stock, by Criterion) []Ranked {
	ranked := make([]Ranked, 0, len(stock))
	for _, s := range stock {
		piece.SheetFibres = s.Grain
		ranked = append(ranked, Ranked{s.Usual, bestGrip(settings, s.Usual, piece), s.Price})
	}
	slices.SortStableFunc(ranked, func(a, b Ranked) int { return by.compare(&a, &b) })
	return ranked
}

func (by Criterion) compare(a, b *Ranked) int {
	if a.Plan.Up() == 0 && b.Plan.Up() == 0 {
		return cmp.Compare(miss(a.Plan), miss(b.Plan))
	}
	waste := cmp.Compare(a.Plan.WastePercent(), b.Plan.WastePercent())
	switch by {
	case ByPaper:
		return cmp.Or(cmp.Compare(a.PaperPerThousand(), b.PaperPerThousand()), waste)
	case ByCost:
		return cmp.Or(cmp.Compare(a.CostPerThousand(), b.CostPerThousand()), cmp.Compare(a.PaperPerThousand(), b.PaperPerThousand()), waste)
	}
	return waste
}

// SheetsPerThousand returns how many sheets 1000 bags take, +Inf when none can be
// made. No sheet is rounded up: it serves to compare.
func (r *Ranked) SheetsPerThousand() float64 {
	way, some := r.Plan.WholeBags()
	if !some {
		return math.Inf(1)
	}
	return 1000 / way.PerSheet()
}

// PaperPerThousand returns the paper that 1000 bags take in m²; times the grammage
// it is their weight in g.
func (r *Ranked) PaperPerThousand() float64 { return r.SheetsPerThousand() * r.Width * r.Height / 1e6 }

// CostPerThousand returns what the sheets for 1000 bags cost, +Inf when no price is
// known.
func (r *Ranked) CostPerThousand() float64 {
	if r.Price <= 0 {
		return math.Inf(1)
	}
	return r.SheetsPerThousand() * r.Price
}

func bestGrip(settings bag.Sheet, u Usual, piece Piece) Plan {
	settings.Width, settings.Height = u.Width, u.Height
	settings.GripperEdge = bag.GripperLong
	long := Lay(settings, piece)
	settings.GripperEdge = bag.GripperShort
	short := Lay(settings, piece)
	if short.Up() > long.Up() || short.Up() == 0 && miss(short) < miss(long) {
		return short
	}
	return long
}

func miss(p Plan) float64 { return p.TooLong.X + p.TooLong.Y }
