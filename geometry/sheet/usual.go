package sheet

import (
	"slices"

	"gussetwright/geometry/bag"
)

// Usual is a sheet that merchants stock.
type Usual struct {
	Name          string
	Width, Height float64 // mm, long side first
}

// usual lists the sheets. A and B sizes are those of ISO 216, RA and SRA those
// of ISO 217, as several published tables print them alike. Sizes in centimetres and
// inches are common practice, no published source. No size stands here twice: what is
// sold as 90 × 64 cm is SRA1.
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
	{"100 × 70 cm", 1000, 700},
	{"102 × 72 cm", 1020, 720},
	{"35 × 23 in", 889, 584.2},
	{"38 × 25 in", 965.2, 635},
	{"40 × 28 in", 1016, 711.2},
}

// UsualSheets returns the list of stocked sheets.
func UsualSheets() []Usual { return slices.Clone(usual) }

// Stock is a sheet that can be bought: a usual one, or one of the user's own list.
type Stock struct {
	Usual
	Grain bag.Grain // side along which its fibres lie; empty when either can be had
	Price float64   // of one sheet, in any currency; 0 when it is not known
}

// UsualStock returns the usual sheets, with either grain and no price.
func UsualStock() []Stock {
	list := make([]Stock, len(usual))
	for i, u := range usual {
		list[i].Usual = u
	}
	return list
}

// StockOf returns the sheets that can be bought for a bag: the user's own first, then
// the usual ones. A sheet without a price of its own costs what its weight costs.
func StockOf(spec *bag.Spec) []Stock {
	var list []Stock
	for i := range spec.Stock {
		own := &spec.Stock[i]
		list = append(list, Stock{
			Usual: Usual{own.Name, max(own.Width, own.Height), min(own.Width, own.Height)},
			Grain: ownGrain(own), Price: own.Price,
		})
	}
	list = append(list, UsualStock()...)
	for i := range list {
		if s := &list[i]; s.Price == 0 {
			s.Price = s.Width * s.Height * spec.Paper.Grammage / 1e9 * spec.Prices.Paper
		}
	}
	return list
}

// ownGrain returns the grain of a sheet as it lies with its long side as its width.
func ownGrain(own *bag.StockSheet) bag.Grain {
	grain := Fibres(own.Grain)
	if own.Width >= own.Height || grain == "" {
		return grain
	}
	return map[bag.Grain]bag.Grain{bag.GrainWidth: bag.GrainHeight, bag.GrainHeight: bag.GrainWidth}[grain]
}

// Fibres returns the side of a sheet along which its fibres lie, empty when either can
// be had.
func Fibres(grain bag.SheetGrain) bag.Grain {
	switch grain {
	case bag.GrainAlongWidth:
		return bag.GrainWidth
	case bag.GrainAlongHeight:
		return bag.GrainHeight
	}
	return ""
}
