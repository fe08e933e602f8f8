package sheet_test

import (
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

func BenchmarkLay(b *testing.B) {
	s := bag.Default().Sheet
	small := sheet.Piece{Width: 230, Height: 180, PerBag: 1, Area: 230 * 180}
	for b.Loop() {
		sheet.Lay(s, small)
	}
}

func BenchmarkRank(b *testing.B) {
	s := bag.Default().Sheet
	for b.Loop() {
		sheet.Rank(s, one)
	}
}
