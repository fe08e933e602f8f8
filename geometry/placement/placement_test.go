package placement_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/placement"
)

// laid returns the bag of the worked example with artwork, and where it lies.
func laid(file placement.Source, artwork ...bag.Artwork) (*blank.Blank, []placement.Placed) {
	spec := geomtest.WorkedExample()
	spec.Artwork = artwork
	b := blank.Lay(spec)
	return &b, placement.Lay(&b, func(int) (placement.Source, bool) { return file, true })
}

func square(side float64) placement.Source {
	return placement.Source{Size: geometry.Vec2{X: side, Y: side}}
}

func on(place string, change func(*bag.Artwork)) bag.Artwork {
	art := bag.NewArtwork("art.png", place)
	change(&art)
	return art
}

func as(fit bag.Fit) func(*bag.Artwork) { return func(a *bag.Artwork) { a.Fit = fit } }

// The front of the worked example is 240 × 360 mm at (0, 70), its bleed 3 mm. The
// figures are those of the rule of three.
func TestFit(t *testing.T) {
	cases := []struct {
		name string
		file placement.Source
		art  bag.Artwork
		want geometry.Rect // where the file lies
	}{
		{"cover, a square", square(100), on("front", as(bag.FitCover)), geometry.RectAt(120-183, 250-183, 366, 366)},
		{"cover, as wide as the front", placement.Source{Size: geometry.Vec2{X: 246, Y: 366}}, on("front", as(bag.FitCover)), geometry.RectAt(-3, 67, 246, 366)},
		{"contain", square(100), on("front", as(bag.FitContain)), geometry.RectAt(0, 130, 240, 240)},
		{"exact", square(100), on("front", as(bag.FitExact)), geometry.RectAt(70, 200, 100, 100)},
		{"moved and scaled", square(100), on("front", func(a *bag.Artwork) { a.Fit, a.X, a.Y, a.Scale = bag.FitExact, 10, -20, 0.5 }), geometry.RectAt(105, 205, 50, 50)},
		{"contain, turned a quarter", placement.Source{Size: geometry.Vec2{X: 360, Y: 120}}, on("front", func(a *bag.Artwork) { a.Fit, a.Turn = bag.FitContain, 90 }), geometry.RectAt(60, 70, 120, 360)},
		{"exact with trim on trim", placement.Source{Size: geometry.Vec2{X: 710, Y: 490}, Trim: geometry.RectAt(3, 3, 700, 480)}, on(bag.OnBlank, as(bag.FitExact)), geometry.RectAt(-3, -3, 710, 490)},
		{"cover the whole blank", placement.Source{Size: geometry.Vec2{X: 706, Y: 486}}, on(bag.OnBlank, as(bag.FitCover)), geometry.RectAt(-3, -3, 706, 486)},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, placed := laid(c.file, c.art)
			if len(placed) != 1 {
				t.Fatalf("%d places, want 1", len(placed))
			}
			got := placed[0].At.Bounds(geometry.RectAt(0, 0, 1, 1))
			if !got.Min.Near(c.want.Min) || !got.Max.Near(c.want.Max) {
				t.Errorf("lies at %v, want %v", got, c.want)
			}
		})
	}
}

// However a file is turned and mirrored: covering leaves no corner of the clip bare,
// and within stays within.
func TestCoverCoversAndContainContains(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 7))
	for range 2000 {
		spec := geomtest.RandomBag(random)
		art := bag.NewArtwork("art.png", bag.ArtworkPlaces()[random.IntN(len(bag.ArtworkPlaces()))])
		art.Turn, art.Mirror = random.Float64()*720-360, random.IntN(2) == 0
		if random.IntN(2) == 0 {
			art.Fit = bag.FitContain
		}
		spec.Artwork = []bag.Artwork{art}
		b := blank.Lay(spec)
		file := placement.Source{Size: geometry.Vec2{X: 1 + 900*random.Float64(), Y: 1 + 900*random.Float64()}}
		for _, p := range placement.Lay(&b, func(int) (placement.Source, bool) { return file, true }) {
			if art.Fit == bag.FitCover {
				if !covered(p) {
					t.Fatalf("%s turned by %.1f leaves a corner of %v bare", art.On, art.Turn, p.Clip)
				}
				continue
			}
			box := p.At.Bounds(geometry.RectAt(0, 0, 1, 1))
			if !p.Target.Contains(box.Min) || !p.Target.Contains(box.Max) {
				t.Fatalf("%s turned by %.1f: %v sticks out of %v", art.On, art.Turn, box, p.Target)
			}
		}
	}
}

// covered tells whether every corner of the clip lies in the unit square of the file.
func covered(p placement.Placed) bool {
	back, _ := p.At.Inverse()
	unit := geometry.RectAt(0, 0, 1, 1)
	for _, corner := range []geometry.Vec2{p.Clip.Min, p.Clip.Max, {X: p.Clip.Min.X, Y: p.Clip.Max.Y}, {X: p.Clip.Max.X, Y: p.Clip.Min.Y}} {
		if !unit.Contains(back.At(corner)) {
			return false
		}
	}
	return true
}

// The turn-in is folded over, so what is to be read there stands on its head on the
// blank. Mirrored artwork is mirrored left to right as it is read.
func TestUprightOnTheFoldedBag(t *testing.T) {
	for _, c := range []struct {
		place       string
		mirror      bool
		right, upto geometry.Vec2 // directions of the sides of the file
	}{
		{"front", false, geometry.Vec2{X: 1}, geometry.Vec2{Y: 1}},
		{"front-turn-in", false, geometry.Vec2{X: -1}, geometry.Vec2{Y: -1}},
		{"back-base", false, geometry.Vec2{X: 1}, geometry.Vec2{Y: 1}},
		{"gusset-left", true, geometry.Vec2{X: -1}, geometry.Vec2{Y: 1}},
	} {
		_, placed := laid(square(50), on(c.place, func(a *bag.Artwork) { a.Mirror = c.mirror }))
		if got := placed[0].At; !got.U.Unit().Near(c.right) || !got.V.Unit().Near(c.upto) {
			t.Errorf("%s: right is %v, up is %v", c.place, got.U, got.V)
		}
	}
}

// Two colours meet on the crease where both panels have artwork; where only one has,
// it bleeds over.
func TestBleedEndsAtANeighbourWithArtwork(t *testing.T) {
	_, alone := laid(square(50), bag.NewArtwork("a", "front"))
	if got, want := alone[0].Clip, geometry.RectAt(-3, 67, 246, 366); got != want {
		t.Errorf("alone: clip %v, want %v", got, want)
	}
	_, beside := laid(square(50), bag.NewArtwork("a", bag.OnFaces), bag.NewArtwork("b", bag.OnGussets), bag.NewArtwork("c", "front-turn-in"))
	if got, want := beside[0].Clip, geometry.RectAt(-3, 67, 243, 363); got != want {
		t.Errorf("beside: clip %v, want %v", got, want)
	}
	if len(beside) != 5 {
		t.Errorf("%d appearances, want two faces, two gussets and a turn-in", len(beside))
	}
}

// Every point of the clip lies in one copy of a repeated file, but for points on the
// line between two.
func TestRepeatTilesTheClip(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 9))
	for _, how := range []bag.Repeat{bag.RepeatGrid, bag.RepeatHalfDrop} {
		_, placed := laid(placement.Source{Size: geometry.Vec2{X: 31, Y: 17}}, on("front", func(a *bag.Artwork) {
			a.Fit, a.Repeat, a.Turn = bag.FitExact, how, 20
		}))
		p := placed[0]
		for range 5000 {
			at := geometry.Vec2{X: p.Clip.Min.X + p.Clip.Width()*random.Float64(), Y: p.Clip.Min.Y + p.Clip.Height()*random.Float64()}
			held, onLine := 0, false
			p.Each(func(copyAt geometry.Affine) {
				back, _ := copyAt.Inverse()
				q := back.At(at)
				if q.X >= 0 && q.X < 1 && q.Y >= 0 && q.Y < 1 {
					held++
				}
				onLine = onLine || math.Min(math.Abs(q.X), math.Abs(q.Y)) < 1e-9
			})
			if held != 1 && !onLine {
				t.Fatalf("%s: %v lies in %d copies", how, at, held)
			}
		}
	}
	_, placed := laid(square(1), on("front", func(a *bag.Artwork) { a.Fit, a.Repeat = bag.FitExact, bag.RepeatGrid }))
	if !placed[0].Cut || len(placed[0].Copies) != placement.MostCopies {
		t.Errorf("%d copies, cut %t", len(placed[0].Copies), placed[0].Cut)
	}
}

func TestPlacesThatTheBagLacks(t *testing.T) {
	spec := bag.OfSize(240, 0, 360)
	b := blank.Lay(spec)
	for place, want := range map[string]bool{"front": true, "gusset-left": false, bag.OnGussets: false, bag.OnBackPiece: false, bag.OnBlank: true} {
		if got := placement.Has(&b, place); got != want {
			t.Errorf("a flat bag has %s: %t", place, got)
		}
	}
	spec = bag.OfSize(420, 120, 360)
	spec.Body.Seams = bag.SeamsTwo
	b = blank.Lay(spec)
	if len(b.Pieces) != 2 || !placement.Has(&b, bag.OnFrontPiece) || !placement.Has(&b, bag.OnBackPiece) {
		t.Error("a bag of two pieces takes artwork on each")
	}
}

// Where glue holds on the print side, the background leaves the paper bare; on the
// seam flap from one bleed past its crease.
func TestInkFree(t *testing.T) {
	b, _ := laid(square(1))
	spec := b.Spec
	piece := &b.Pieces[0]
	free := placement.InkFree(piece, spec)
	holds := func(p geometry.Vec2) bool {
		for _, path := range free {
			if path.Contains(p) {
				return true
			}
		}
		return false
	}
	crease := 680.0 // of the seam flap
	for p, want := range map[geometry.Vec2]bool{
		{X: crease + 10, Y: 250}: true, {X: crease + 2, Y: 250}: false, {X: 120, Y: 250}: false, {X: crease + 21, Y: 479}: false, {X: crease + 21, Y: 250}: true,
		{X: 10, Y: 450}: true, {X: -2, Y: 450}: true, {X: 10, Y: 482}: true, {X: 10, Y: 431}: false, {X: 18, Y: 450}: false, {X: 250, Y: 450}: false,
	} {
		if holds(p) != want {
			t.Errorf("%v is free of ink: %t", p, holds(p))
		}
	}
	for _, area := range piece.Glue {
		var middle geometry.Vec2 // of the corners, which lies within these convex shapes
		for _, corner := range area.Shape.Vertices {
			middle = middle.Add(corner.Vec2.Scale(1 / float64(len(area.Shape.Vertices))))
		}
		if area.Side == blank.PrintSide && !holds(middle) {
			t.Errorf("glue %s of %s at %v is not free of ink", area.Role, area.Panel, middle)
		}
	}
}

func TestPanelAt(t *testing.T) {
	b, _ := laid(square(1))
	for at, want := range map[geometry.Vec2]string{{X: 120, Y: 200}: "front", {X: 300, Y: 450}: "gusset-right-turn-in", {X: 690, Y: 200}: "", {X: -5, Y: 0}: ""} {
		if got, _ := placement.PanelAt(&b.Pieces[0], at); got != want {
			t.Errorf("at %v is %q, want %q", at, got, want)
		}
	}
}

func ExampleLay() {
	spec := bag.Default()
	spec.Artwork = []bag.Artwork{bag.NewArtwork("leaf.svg", "faces")}
	b := blank.Lay(spec)
	file := placement.Source{Size: geometry.Vec2{X: 123, Y: 183}}
	for _, p := range placement.Lay(&b, func(int) (placement.Source, bool) { return file, true }) {
		fmt.Printf("%s, %.0f times as large\n", p.Place, p.Magnification(file).X)
	}
	// Output:
	// front, 2 times as large
	// back, 2 times as large
}
