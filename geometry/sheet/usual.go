package sheet

import (
	"cmp"
	"slices"

	"gussetwright/geometry/bag"
)

// Usual is a sheet that merchants stock.
type Usual struct {
	Name          string
	Width, Height float64 // mm, long side first
}

// usual lists the sheets. A and B sizes are those of ISO 216, RA and SRA those
// of ISO 217; the sizes in centimetres and inches are common practice, no
// published source.
var usual = []Usual{
	{"A1", 841, 594},
	{"A2", 594, 420},
	{"A3", 420, 297},
	{"B0", 1414, 1000},
	{"B1", 1000, 707},
	{"B2", 707, 500},
	{"B3", 500, 353},
	{"RA0", 1220, 860},
	{"RA1", 860, 610},
	{"RA2", 610, 430},
	{"SRA0", 1280, 900},
	{"SRA1", 900, 640},
	{"SRA2", 640, 450},
	{"SRA3", 450, 320},
	{"50 × 35 cm", 500, 350},
	{"70 × 50 cm", 700, 500},
	{"90 × 64 cm", 900, 640},
	{"100 × 70 cm", 1000, 700},
	{"102 × 72 cm", 1020, 720},
	{"35 × 23 in", 889, 584.2},
	{"38 × 25 in", 965.2, 635},
	{"40 × 28 in", 1016, 711.2},
}

// UsualSheets returns the list of stocked sheets.
func UsualSheets() []Usual { return slices.Clone(usual) }

// Ranked is a usual sheet with what fits on it, gripped at the better edge.
type Ranked struct {
	Usual
	Plan Plan
}

// Rank lays the piece on every usual sheet, with the gripper, margins and gap of
// settings and each gripper edge in turn. Sheets on which it fits come first,
// least waste first; those on which it does not come last, nearest miss first.
func Rank(settings bag.Sheet, piece Piece) []Ranked {
	ranked := make([]Ranked, 0, len(usual))
	for _, u := range usual {
		ranked = append(ranked, Ranked{u, bestGrip(settings, u, piece)})
	}
	slices.SortStableFunc(ranked, func(a, b Ranked) int {
		if a.Plan.Up() > 0 || b.Plan.Up() > 0 {
			return cmp.Compare(a.Plan.WastePercent(), b.Plan.WastePercent())
		}
		return cmp.Compare(miss(a.Plan), miss(b.Plan))
	})
	return ranked
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
