package sheet_test

import (
	"math/rand/v2"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

func randomSheet(random *rand.Rand) bag.Sheet {
	upTo := func(most float64) float64 {
		if random.IntN(3) == 0 {
			return 0
		}
		return most * random.Float64()
	}
	edges := []bag.GripperEdge{bag.GripperLong, bag.GripperShort}
	return bag.Sheet{
		Width: 100 + upTo(1900), Height: 100 + upTo(1900),
		Gripper: upTo(40), Side: upTo(50), Tail: upTo(50), Gap: upTo(50), GripperEdge: edges[random.IntN(2)],
	}
}

// randomPiece returns a piece of any size, or one that fills the usable area
// exactly in so many columns and rows.
func randomPiece(random *rand.Rand, s bag.Sheet) sheet.Piece {
	piece := sheet.Piece{Width: 10 + 700*random.Float64(), Height: 10 + 700*random.Float64(), PerBag: 1 + random.IntN(2)}
	usable := sheet.Usable(s)
	columns, rows := float64(1+random.IntN(5)), float64(1+random.IntN(5))
	width := (usable.Width() - (columns-1)*s.Gap) / columns
	height := (usable.Height() - (rows-1)*s.Gap) / rows
	if random.IntN(2) == 0 && width > 1 && height > 1 {
		piece.Width, piece.Height = width, height
	}
	if random.IntN(2) == 0 {
		piece.Width, piece.Height = piece.Height, piece.Width
	}
	piece.Area = piece.Width * piece.Height
	return piece
}

// box returns where a placed piece lies.
func box(piece sheet.Piece, at sheet.Placement) geometry.Rect {
	if at.Turn%180 == 90 {
		return geometry.RectAt(at.X, at.Y, piece.Height, piece.Width)
	}
	return geometry.RectAt(at.X, at.Y, piece.Width, piece.Height)
}

// most counts, one by one, how many pieces with gaps between go into room.
func most(room, gap, length float64) int {
	n := 0
	for float64(n+1)*length+float64(n)*gap <= room+geometry.Tolerance {
		n++
	}
	return n
}

func TestPlansOfRandomSheets(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	empty, turned := 0, 0
	const tries = 3000
	for range tries {
		s := randomSheet(random)
		piece := randomPiece(random, s)
		plan := sheet.Lay(s, piece)
		insideAndApart(t, plan)
		usable := plan.Usable
		upright := most(usable.Width(), s.Gap, piece.Width) * most(usable.Height(), s.Gap, piece.Height)
		onItsSide := most(usable.Width(), s.Gap, piece.Height) * most(usable.Height(), s.Gap, piece.Width)
		if want := max(upright, onItsSide); plan.Up() != want {
			t.Errorf("%+v on %+v: %d up, counted %d", piece, s, plan.Up(), want)
		}
		if waste := plan.WastePercent(); waste < -1e-9 || waste > 100 {
			t.Errorf("%+v on %+v: waste %g %%", piece, s, waste)
		}
		if (plan.Up() == 0) != (plan.TooLong.X > 0 || plan.TooLong.Y > 0) || (plan.Up() > 0) != sheet.Fits(s, piece.Width, piece.Height) {
			t.Errorf("%+v on %+v: %d up, too long by %v", piece, s, plan.Up(), plan.TooLong)
		}
		if plan.Up() == 0 {
			empty++
		}
		if plan.Turn == 90 {
			turned++
		}
	}
	if empty == 0 || empty == tries || turned == 0 {
		t.Errorf("of %d random plans %d are empty and %d turned: the tries are too tame", tries, empty, turned)
	}
}

// insideAndApart checks that every piece lies in the usable area and keeps the gap
// to every other one.
func insideAndApart(t *testing.T, plan sheet.Plan) {
	t.Helper()
	for i, at := range plan.Placements {
		here := box(plan.Piece, at)
		if !plan.Usable.Contains(here.Min) || !plan.Usable.Contains(here.Max) {
			t.Errorf("piece %d at %+v leaves the usable area %+v", i, here, plan.Usable)
		}
		if at.Turn != plan.Turn && plan.Piece.Grain == sheet.GrainRequired {
			t.Errorf("piece %d is turned by %d, the plan by %d", i, at.Turn, plan.Turn)
		}
		for j := range i {
			there := box(plan.Piece, plan.Placements[j])
			apart := max(here.Min.X-there.Max.X, there.Min.X-here.Max.X, here.Min.Y-there.Max.Y, there.Min.Y-here.Max.Y)
			if gap := max(plan.Sheet.Gap, 2*plan.Piece.Bleed); apart < gap-geometry.Tolerance {
				t.Errorf("pieces %d and %d are %g apart, want %g", j, i, apart, gap)
			}
		}
	}
}
