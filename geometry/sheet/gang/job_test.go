package gang_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/gang"
)

// job is what is ganged in a test.
type job struct {
	sheet bag.Sheet
	items []gang.Item
}

// randomJob returns so many bags of 1 to most pieces a sheet, on a usual sheet.
func randomJob(random *rand.Rand, items int, most float64) job {
	usual := sheet.UsualSheets()
	rules := []sheet.GrainRule{sheet.GrainRequired, sheet.GrainPreferred, sheet.GrainFree}
	fibres := []bag.Grain{"", bag.GrainHeight, bag.GrainWidth}
	u := usual[random.IntN(len(usual))]
	j := job{sheet: bag.Sheet{Width: u.Width, Height: u.Height, Gripper: 12, Side: 5, Tail: 8, Gap: 6, GripperEdge: bag.GripperLong}}
	rule, along := rules[random.IntN(3)], fibres[random.IntN(3)]
	bleed := float64(random.IntN(3)) * 2
	for len(j.items) < items {
		usable := sheet.Usable(j.sheet)
		area := usable.Area() / (1 + random.Float64()*most)
		width := area / (60 + random.Float64()*600)
		piece := sheet.Piece{Width: width, Height: area / width, PerBag: 1 + random.IntN(2), Area: area, Grain: rule, SheetFibres: along, Bleed: bleed}
		piece.Fibres = fibres[random.IntN(3)]
		if random.IntN(6) == 0 {
			piece.Grain = rules[random.IntN(3)]
		}
		if random.IntN(6) == 0 {
			piece.Bleed = float64(random.IntN(5))
		}
		if plan := sheet.Lay(j.sheet, piece); width > 60 && plan.Up() > 0 {
			j.items = append(j.items, gang.Item{Name: fmt.Sprintf("bag %d", len(j.items)+1), Piece: piece, Bags: (1 + random.IntN(100)) * []int{1, 25, 100}[random.IntN(3)]})
		}
	}
	return j
}

// box returns where a placed piece lies.
func box(piece sheet.Piece, at sheet.Placement) geometry.Rect {
	if at.Turn%180 == 90 {
		return geometry.RectAt(at.X, at.Y, piece.Height, piece.Width)
	}
	return geometry.RectAt(at.X, at.Y, piece.Width, piece.Height)
}

// separately returns how many sheets the bags take, each on sheets of its own.
func (j job) separately() int {
	sum := 0
	for _, item := range j.items {
		plan := sheet.Lay(j.sheet, item.Piece)
		sum += (item.Bags*item.Piece.PerBag + plan.Up() - 1) / plan.Up()
	}
	return sum
}

// verify checks a result by nothing but the job.
func verify(t *testing.T, j job, r gang.Result) {
	t.Helper()
	made := make([]int, len(j.items))
	sheets := 0
	for f, form := range r.Forms {
		if form.Run < 1 {
			t.Errorf("form %d is printed %d times", f, form.Run)
		}
		sheets += form.Run
		for i, n := range form.Counts(len(j.items)) {
			made[i] += n * form.Run
		}
		verifyForm(t, j, form)
	}
	for i, item := range j.items {
		needed := item.Bags * item.Piece.PerBag
		if made[i] < needed {
			t.Errorf("%s: %d pieces, want %d", item.Name, made[i], needed)
		}
		if over := made[i]/item.Piece.PerBag - item.Bags; over != r.Over[i] {
			t.Errorf("%s: %d bags over, counted %d", item.Name, r.Over[i], over)
		}
	}
	if sheets != r.Sheets || r.Bound > r.Sheets || r.Proven != (r.Bound == r.Sheets) {
		t.Errorf("%d sheets, bound %d, proven %v; the forms take %d", r.Sheets, r.Bound, r.Proven, sheets)
	}
}

// verifyForm checks margins, gaps and grain of one form.
func verifyForm(t *testing.T, j job, form gang.Form) {
	t.Helper()
	alike := -1
	for k, p := range form.Placements {
		piece := j.items[p.Item].Piece
		here := box(piece, p.Placement)
		gripper, side, tail := j.sheet.Gripper+piece.Bleed, max(j.sheet.Side, piece.Bleed), max(j.sheet.Tail, piece.Bleed)
		room := geometry.Rect{Min: geometry.Vec2{X: side, Y: gripper}, Max: geometry.Vec2{X: j.sheet.Width - side, Y: j.sheet.Height - tail}}
		if j.sheet.GripperEdge == bag.GripperLong != (j.sheet.Width >= j.sheet.Height) {
			room = geometry.Rect{Min: geometry.Vec2{X: gripper, Y: side}, Max: geometry.Vec2{X: j.sheet.Width - tail, Y: j.sheet.Height - side}}
		}
		if !room.Contains(here.Min) || !room.Contains(here.Max) {
			t.Errorf("piece %d at %+v leaves %+v", k, here, room)
		}
		for _, q := range form.Placements[:k] {
			other := j.items[q.Item].Piece
			there := box(other, q.Placement)
			apart := max(here.Min.X-there.Max.X, there.Min.X-here.Max.X, here.Min.Y-there.Max.Y, there.Min.Y-here.Max.Y)
			if gap := max(j.sheet.Gap, piece.Bleed+other.Bleed); apart < gap-geometry.Tolerance {
				t.Errorf("pieces at %+v and %+v are %g apart, want %g", here, there, apart, gap)
			}
		}
		if piece.Grain != sheet.GrainRequired {
			continue
		}
		if piece.SheetFibres != "" && form.Fibres != piece.SheetFibres {
			t.Errorf("fibres of the form lie along its %s, want %s", form.Fibres, piece.SheetFibres)
		}
		turn := p.Turn % 180
		if piece.Fibres == "" {
			if alike >= 0 && turn != alike {
				t.Errorf("pieces that must lie alike are turned by %d and %d", alike, turn)
			}
			alike = turn
			continue
		}
		if along := (piece.Fibres == form.Fibres); along != (turn == 0) || form.Fibres == "" {
			t.Errorf("piece with fibres along its %s is turned by %d, fibres of the form along its %q", piece.Fibres, turn, form.Fibres)
		}
	}
}
