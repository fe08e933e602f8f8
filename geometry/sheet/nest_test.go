package sheet_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/sheet"
)

// nestable returns the piece of a bag with its outline, and the outline's corners.
func nestable(spec bag.Spec) (sheet.Piece, []geometry.Vec2) {
	laid := blank.Lay(spec)
	piece := laid.SheetPiece()
	piece.Outline = &laid.Pieces[0].Outline
	var corners []geometry.Vec2
	for i := range piece.Outline.Vertices {
		e := piece.Outline.Edge(i)
		corners = append(corners, e.From)
		for k := 1; e.Bulge != 0 && k < 16; k++ {
			corners = append(corners, e.Arc().At(float64(k)/16))
		}
	}
	return piece, corners
}

// lying returns the corners of every piece on the sheet.
func lying(plan *sheet.Plan, corners []geometry.Vec2) []geometry.Path {
	list := make([]geometry.Path, plan.Up())
	for i := range list {
		motion := plan.Motion(i)
		var points []geometry.Vec2
		for _, c := range corners {
			points = append(points, motion.At(c))
		}
		list[i] = geometry.Polygon(points...)
	}
	return list
}

// apart returns the distance of two polygons by its definition, over all points of
// one and edges of the other, and 0 where one has a corner well inside the other.
func apart(a, b geometry.Path) float64 {
	least := math.Inf(1)
	for _, pair := range [2][2]geometry.Path{{a, b}, {b, a}} {
		for _, v := range pair[0].Vertices {
			near := math.Inf(1)
			for i := range pair[1].Len() {
				e := pair[1].Edge(i)
				along := e.To.Sub(e.From)
				share := min(max(v.Sub(e.From).Dot(along)/along.Dot(along), 0), 1)
				near = min(near, v.Sub(e.From.Add(along.Scale(share))).Length())
			}
			if pair[1].Contains(v.Vec2) && near > 1e-6 {
				return 0
			}
			least = min(least, near)
		}
	}
	return least
}

func checkNested(t *testing.T, plan *sheet.Plan, corners []geometry.Vec2) {
	t.Helper()
	pieces := lying(plan, corners)
	for i, piece := range pieces {
		box := piece.Bounds()
		if !plan.Usable.Contains(box.Min) || !plan.Usable.Contains(box.Max) {
			t.Errorf("piece %d at %+v leaves the usable area %+v", i, box, plan.Usable)
		}
		if own := plan.Box(i); !own.Min.Near(box.Min) || !own.Max.Near(box.Max) {
			t.Errorf("piece %d lies in %+v, not in its box %+v", i, box, own)
		}
		for k := range i {
			if d := apart(piece, pieces[k]); d < plan.Gap()-1e-5 {
				t.Errorf("pieces %d and %d are %g apart, want %g", k, i, d, plan.Gap())
			}
		}
	}
}

// The teeth of two raw edges that face each other go into each other. Worked out by
// hand: teeth 4 deep and 10 wide on faces of 300 without gusset fall in step when the
// pieces lie head to tail half a tooth aside, so that without a gap two blanks take 4
// less than twice their height, and four of them 8 less.
func TestZigzagInterlocks(t *testing.T) {
	spec := bag.OfSize(300, 0, 200)
	spec.Body.Top, spec.Body.ZigzagPitch, spec.Body.ZigzagDepth = bag.TopZigzag, 10, 4
	spec.Body.SeamRelief, spec.Body.BaseOverlap = 0, 30
	spec.Body.Seams = bag.SeamsTwo
	piece, corners := nestable(spec)
	piece.Fibres, piece.SheetFibres = bag.GrainHeight, bag.GrainHeight
	if piece.Width != 320 || piece.Height != 230 {
		t.Fatalf("the piece is %g × %g", piece.Width, piece.Height)
	}
	for _, test := range []struct {
		height float64
		up     int
		nested bool
	}{{460, 2, false}, {459.9, 2, true}, {456, 2, true}, {455.9, 1, false}, {912, 4, true}, {911.9, 3, false}, {460 + 226, 3, true}} {
		plan := sheet.Lay(loose(330, test.height), piece)
		checkNested(t, &plan, corners)
		if plan.Up() != test.up || plan.Nested != test.nested {
			t.Errorf("height %g: %d up, nested %v; want %d and %v", test.height, plan.Up(), plan.Nested, test.up, test.nested)
		}
	}
}

// Seam flaps with long slants on a low bag go between each other when every second
// column is raised by about half a piece. Worked out by hand: a flap 40 wide with
// slants of 120 and 60 is 60 long at its edge. The notch between two of them, 3 apart,
// is 183 wide at its mouth and narrows by 180 over 40. To keep a gap of 3 square to the
// slants, the flap needs 3 × √(40² + 60²) / 40 = 5.408 and 3 × √(40² + 120²) / 40 = 9.487
// more along them, so it goes 40 × (183 − 60 − 14.895) / 180 = 24.023 deep, and saves the
// gap of 3 between the boxes besides.
func TestSlantedFlapsInterlock(t *testing.T) {
	spec := bag.OfSize(240, 200, 60)
	spec.Body.TurnIn, spec.Body.SeamFlap, spec.Body.Chamfer, spec.Body.Seams = 60, 40, 5, bag.SeamsTwo
	piece, corners := nestable(spec)
	piece.Fibres, piece.SheetFibres = bag.GrainHeight, bag.GrainHeight
	s := loose(0, 400)
	s.Gap = 3
	for _, test := range []struct {
		less   float64
		up     int
		nested bool
	}{{0, 2, false}, {15, 2, true}, {27.02, 2, true}, {27.03, 1, false}} {
		s.Width = 2*piece.Width + 3 - test.less
		plan := sheet.Lay(s, piece)
		checkNested(t, &plan, corners)
		if plan.Up() != test.up || plan.Nested != test.nested {
			t.Errorf("%g less: %d up, nested %v; want %d and %v", test.less, plan.Up(), plan.Nested, test.up, test.nested)
		}
		if plan.Nested && (plan.Placements[1].Turn != 180 || plan.Placements[1].Y == plan.Placements[0].Y) {
			t.Errorf("%g less: %+v", test.less, plan.Placements)
		}
	}
	// The columns are too high to be raised.
	s.Width, s.Height = 2*piece.Width+3-15, piece.Height
	if plan := sheet.Lay(s, piece); plan.Up() != 1 {
		t.Errorf("%d up without room to raise a column", plan.Up())
	}
}

// Outlines never hold fewer than boxes, and what they gain is apart by the gap.
func TestNestedPlansOfRandomBags(t *testing.T) {
	random := rand.New(rand.NewPCG(13, 14))
	gained := 0
	for range 2000 {
		spec := geomtest.RandomBag(random)
		spec.Body.Top = bag.TopZigzag
		spec.Sheet = bag.Sheet{
			Width: 500 + 900*random.Float64(), Height: 400 + 700*random.Float64(), Gripper: 12, GripperEdge: bag.GripperLong, Grain: bag.GrainEither, GrainRule: bag.GrainRequired,
			Gap: 6 * float64(random.IntN(2)) * random.Float64(),
		}
		if spec.Validate() != nil {
			continue
		}
		piece, corners := nestable(spec)
		piece.Grain = []sheet.GrainRule{sheet.GrainRequired, sheet.GrainFree}[random.IntN(2)]
		plan := sheet.Lay(spec.Sheet, piece)
		outline := piece.Outline
		piece.Outline = nil
		boxes := sheet.Lay(spec.Sheet, piece)
		if plan.Up() < boxes.Up() || plan.Nested != (plan.Up() > boxes.Up()) {
			t.Errorf("%d up by outlines, nested %v; %d up by boxes", plan.Up(), plan.Nested, boxes.Up())
		}
		if plan.Bound < plan.Up() {
			t.Errorf("%d up of at most %d", plan.Up(), plan.Bound)
		}
		if area := float64(plan.Bound) * outline.Area(); plan.Up() > 0 && area > plan.Usable.Area()*(1+1e-9) {
			t.Errorf("the bound %d is above what the area holds", plan.Bound)
		}
		if plan.Nested {
			gained++
			checkNested(t, &plan, corners)
		}
	}
	t.Logf("%d gained", gained)
	if gained < 5 {
		t.Errorf("only %d gained: the tries are too tame", gained)
	}
}
