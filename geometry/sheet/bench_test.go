package sheet_test

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"

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

// problem is one sheet with one blank.
type problem struct {
	sheet bag.Sheet
	piece sheet.Piece
}

// upTo returns random problems of 1 to most pieces that may lie across each other, on
// usual sheets with a usual gripper, margins and gap.
func upTo(most, count int) []problem {
	random := rand.New(rand.NewPCG(17, 18))
	usual := sheet.UsualSheets()
	list := make([]problem, 0, count)
	for len(list) < count {
		u := usual[random.IntN(len(usual))]
		s := bag.Sheet{Width: u.Width, Height: u.Height, Gripper: 12, Side: 5, Tail: 8, Gap: 6, GripperEdge: bag.GripperLong}
		usable := sheet.Usable(s)
		area := usable.Area() / (1 + random.Float64()*float64(most))
		width := area / (60 + random.Float64()*600)
		piece := sheet.Piece{Width: width, Height: area / width, PerBag: 1, Area: area, Grain: sheet.GrainFree}
		if width > 60 && sheet.Fits(s, piece.Width, piece.Height) {
			list = append(list, problem{s, piece})
		}
	}
	return list
}

// BenchmarkOneBlank lays 2000 random blanks, at most 30 and at most 100 of which have
// the area of the sheet, and reports the median and the worst time of one.
func BenchmarkOneBlank(b *testing.B) {
	for _, size := range []struct {
		name string
		most int
	}{{"30", 30}, {"100", 100}} {
		problems := upTo(size.most, 2000)
		b.Run(size.name, func(b *testing.B) {
			times := make([]time.Duration, len(problems))
			proven := 0
			for b.Loop() {
				proven = 0
				for i, p := range problems {
					start := time.Now()
					plan := sheet.Lay(p.sheet, p.piece)
					times[i] = time.Since(start)
					if plan.Proven {
						proven++
					}
				}
			}
			slices.Sort(times)
			b.ReportMetric(float64(times[len(times)/2])/1e6, "median-ms")
			b.ReportMetric(float64(times[len(times)-1])/1e6, "worst-ms")
			b.ReportMetric(100*float64(proven)/float64(len(problems)), "%-proven")
		})
	}
}

func BenchmarkRank(b *testing.B) {
	s := bag.Default().Sheet
	for b.Loop() {
		sheet.Rank(s, one)
	}
}

func BenchmarkNest(b *testing.B) {
	spec := bag.Default()
	spec.Body.Top = bag.TopZigzag
	piece, _ := nestable(spec)
	for b.Loop() {
		sheet.Lay(spec.Sheet, piece)
	}
}
