package placement_test

import (
	"math/rand/v2"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/placement"
)

// first is where the front of the worked example is shown when each of its sides bleeds
// or not: 240 × 360 mm at (0, 70), the left side a cut edge, the bleed 3 mm.
func first(right, top, bottom float64) geometry.Rect {
	return geometry.RectAt(-3, 70-bottom, 243+right, 360+top+bottom)
}

// Over an inner crease artwork bleeds onto bare paper only. Common practice of printers,
// no published source; the figures are those of the worked example.
func TestWhereTheBleedEnds(t *testing.T) {
	front := bag.NewArtwork("front.png", "front")
	whole := bag.NewArtwork("whole.svg", bag.OnBlank)
	// The gusset beside the front is 100 × 360 mm, its middle 50 mm beyond the crease.
	small := func(x, y float64) bag.Artwork {
		return on("gusset-right", func(a *bag.Artwork) { a.Fit, a.X, a.Y = bag.FitExact, x, y })
	}
	see := func(a bag.Artwork, opacity float64) bag.Artwork {
		a.Opacity = opacity
		return a
	}
	cases := []struct {
		name   string
		change func(*bag.Spec)
		art    []bag.Artwork // the first on the front is looked at
		want   geometry.Rect
	}{
		{"alone", nil, []bag.Artwork{front}, first(3, 3, 3)},
		{"the gusset beside it, beneath", nil, []bag.Artwork{bag.NewArtwork("", bag.OnGussets), front}, first(0, 3, 3)},
		{"the gusset beside it, on top", nil, []bag.Artwork{front, bag.NewArtwork("", bag.OnGussets)}, first(0, 3, 3)},
		{"the back, which is no neighbour", nil, []bag.Artwork{front, bag.NewArtwork("", "back")}, first(3, 3, 3)},
		{"the turn-in above", nil, []bag.Artwork{front, bag.NewArtwork("", "front-turn-in")}, first(3, 0, 3)},
		{"the base flap below", nil, []bag.Artwork{front, bag.NewArtwork("", "front-base")}, first(3, 3, 0)},
		{"the whole blank beneath", nil, []bag.Artwork{whole, front}, first(0, 0, 0)},
		{"the whole blank on top", nil, []bag.Artwork{front, whole}, first(3, 3, 3)},
		{"the whole blank on top, showing through", nil, []bag.Artwork{front, see(whole, 60)}, first(0, 0, 0)},
		{"the whole blank, invisible", nil, []bag.Artwork{see(whole, 0), front}, first(3, 3, 3)},
		{"a small file in the middle of the whole blank", nil, []bag.Artwork{on(bag.OnBlank, as(bag.FitExact)), front}, first(3, 3, 3)},
		{"a small file repeated on the whole blank", nil, []bag.Artwork{on(bag.OnBlank, func(a *bag.Artwork) { a.Fit, a.Repeat = bag.FitExact, bag.RepeatGrid }), front}, first(0, 0, 0)},
		{"a background", func(s *bag.Spec) { s.Print.Background.Cyan = 10 }, []bag.Artwork{front}, first(0, 0, 0)},
		{"a logo in the middle of the gusset", nil, []bag.Artwork{front, small(0, 0)}, first(3, 3, 3)},
		{"a logo that begins 2 mm beyond the crease", nil, []bag.Artwork{front, small(-23, 0)}, first(2, 3, 3)},
		{"a logo that runs over the crease", nil, []bag.Artwork{front, small(-40, 0)}, first(0, 3, 3)},
		{"another piece on the front", nil, []bag.Artwork{front, bag.NewArtwork("", "front")}, first(3, 3, 3)},
		// Off the corner of the front, so that the shorter of its sides there ends.
		{"the turn-in of the gusset", nil, []bag.Artwork{front, bag.NewArtwork("", "gusset-right-turn-in")}, first(3, 0, 3)},
		{"the turn-in of the gusset and the gusset", nil, []bag.Artwork{front, bag.NewArtwork("", "gusset-right-turn-in"), bag.NewArtwork("", "gusset-right")}, first(0, 3, 3)},
		{"no bleed", func(s *bag.Spec) { s.Print.Bleed = 0 }, []bag.Artwork{front}, geometry.RectAt(0, 70, 240, 360)},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			spec := geomtest.WorkedExample()
			spec.Artwork = c.art
			if c.change != nil {
				c.change(&spec)
			}
			b := blank.Lay(spec)
			for _, p := range placement.Lay(&b, func(int) (placement.Source, bool) { return square(50), true }) {
				if p.Place != "front" {
					continue
				}
				if !p.Clip.Min.Near(c.want.Min) || !p.Clip.Max.Near(c.want.Max) {
					t.Errorf("clip %v, want %v", p.Clip, c.want)
				}
				return
			}
		})
	}
}

// Ink on the seam flap lies under the front, so that the left gusset bleeds onto it
// whatever is printed there. Between slotted base flaps each side has half of the slot.
func TestBleedAtSeamSlotAndCut(t *testing.T) {
	slotted := func(s *bag.Spec) { s.Body.Base, s.Body.SlotWidth = bag.BaseSlotted, 2 }
	cases := []struct {
		name   string
		change func(*bag.Spec)
		art    []bag.Artwork
		place  string
		want   geometry.Rect
	}{
		{"the seam flap", func(s *bag.Spec) { s.Print.Background.Black = 5 }, []bag.Artwork{bag.NewArtwork("", bag.OnBlank), bag.NewArtwork("", "gusset-left")}, "gusset-left", geometry.RectAt(580, 70, 103, 360)},
		{"a slot", slotted, []bag.Artwork{bag.NewArtwork("", "front-base"), bag.NewArtwork("", "gusset-right-base")}, "front-base", geometry.RectAt(-3, -3, 243, 76)},
		{"a cut edge above", func(s *bag.Spec) { s.Body.Top = bag.TopStraight }, []bag.Artwork{bag.NewArtwork("", bag.OnBlank), bag.NewArtwork("", "front")}, "front", geometry.RectAt(-3, 70, 243, 363)},
		{"whole pieces", func(s *bag.Spec) { s.Print.Background.Black = 5 }, []bag.Artwork{bag.NewArtwork("", "front"), bag.NewArtwork("", bag.OnBlank)}, "blank", geometry.RectAt(-3, -3, 706, 486)},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			spec := geomtest.WorkedExample()
			spec.Artwork = c.art
			if c.change != nil {
				c.change(&spec)
			}
			b := blank.Lay(spec)
			found := false
			for _, p := range placement.Lay(&b, func(int) (placement.Source, bool) { return square(50), true }) {
				if p.Place != c.place {
					continue
				}
				found = true
				if !p.Clip.Min.Near(c.want.Min) || !p.Clip.Max.Near(c.want.Max) {
					t.Errorf("clip %v, want %v", p.Clip, c.want)
				}
			}
			if !found {
				t.Fatalf("nothing lies on %s", c.place)
			}
		})
	}
}

// randomLayout returns a bag with some artwork, some of it on the whole blank.
func randomLayout(random *rand.Rand) (blank.Blank, []placement.Placed) {
	spec := geomtest.RandomBag(random)
	spec.Print.Bleed = 1 + 5*random.Float64()
	spec.Print.Background = bag.Background{}
	if random.IntN(4) == 0 {
		spec.Print.Background.Magenta = 30
	}
	places, fits := bag.ArtworkPlaces(), []bag.Fit{bag.FitCover, bag.FitContain, bag.FitExact}
	var files []placement.Source
	for range 1 + random.IntN(6) {
		art := bag.NewArtwork("art.png", places[random.IntN(len(places))])
		art.Fit, art.Turn = fits[random.IntN(len(fits))], float64(random.IntN(8)*45)
		art.X, art.Y = 60*random.Float64()-30, 60*random.Float64()-30
		art.Opacity = []float64{100, 100, 100, 50, 0}[random.IntN(5)]
		if random.IntN(5) == 0 {
			art.Repeat = bag.RepeatHalfDrop
		}
		spec.Artwork = append(spec.Artwork, art)
		files = append(files, placement.Source{Size: geometry.Vec2{X: 20 + 300*random.Float64(), Y: 20 + 300*random.Float64()}})
	}
	b := blank.Lay(spec)
	return b, placement.Lay(&b, func(i int) (placement.Source, bool) { return files[i], true })
}

// Whatever lies on a bag, no bleed covers, beyond the creases of its panel, ink that
// something else puts there, and none is seen through what lies over it. At the cut edges
// of the blank and at the seam all of the bleed is there.
func TestBleedCoversNoOtherInk(t *testing.T) {
	random := rand.New(rand.NewPCG(18, 26))
	looked, bare, ended := 0, 0, 0
	for range 1500 {
		b, all := randomLayout(random)
		bleed := b.Spec.Print.Bleed
		for i, p := range all {
			piece := &b.Pieces[p.Piece]
			if _, onPanel := piece.Panel(p.Place); !onPanel {
				if p.Clip != p.Target.Inset(-bleed) {
					t.Fatalf("%s: clip %v", p.Place, p.Clip)
				}
				continue
			}
			for range 30 {
				at := geometry.Vec2{X: p.Clip.Min.X + p.Clip.Width()*random.Float64(), Y: p.Clip.Min.Y + p.Clip.Height()*random.Float64()}
				panel, onPaper := placement.PanelAt(piece, at)
				if panel == p.Place || !onPaper {
					continue
				}
				looked++
				if b.Spec.Print.Background.Total() > 0 {
					t.Fatalf("%s bleeds onto the background at %v", p.Place, at)
				}
				if other, found := inkAt(&b, all, i, at, panel); found {
					t.Fatalf("%s bleeds onto %s at %v", p.Place, all[other].Place, at)
				}
				bare++
			}
			if p.Clip != p.Target.Inset(-bleed) {
				ended++
			}
			full := p.Target.Inset(-bleed)
			flap, seamed := piece.Panel("seam-flap")
			for _, side := range []struct {
				name        string
				cut         bool
				got, wanted float64
			}{
				{"left", p.Target.Min.X < geometry.Tolerance, p.Clip.Min.X, full.Min.X},
				{"right", seamed && p.Target.Max.X > flap.Box.Min.X-geometry.Tolerance, p.Clip.Max.X, full.Max.X},
				{"lower", p.Target.Min.Y < geometry.Tolerance, p.Clip.Min.Y, full.Min.Y},
				{"upper", p.Target.Max.Y > piece.Height-geometry.Tolerance, p.Clip.Max.Y, full.Max.Y},
			} {
				if side.cut && side.got != side.wanted {
					t.Fatalf("%s of %v: the %s side is cut and bleeds to %g, want %g", p.Place, p.Target, side.name, side.got, side.wanted)
				}
			}
		}
	}
	t.Logf("%d points beyond creases, %d of them bare, %d pieces of artwork with bleed that ends", looked, bare, ended)
	if bare < 500 || ended < 500 {
		t.Error("the tries are too tame")
	}
}

// inkAt tells whether artwork other than that of an index puts ink on a panel at a point,
// in its own place, where it would be covered or show what lies beneath.
func inkAt(b *blank.Blank, all []placement.Placed, own int, at geometry.Vec2, panel string) (int, bool) {
	for k, p := range all {
		opacity := b.Spec.Artwork[p.Index].Opacity
		_, onPanel := b.Pieces[p.Piece].Panel(p.Place)
		matters := p.Place == panel || !onPanel && (k < own || opacity < 100)
		if k == own || p.Piece != all[own].Piece || opacity == 0 || !matters || !p.Target.Contains(at) {
			continue
		}
		shown := false
		p.Each(func(copyAt geometry.Affine) {
			back, _ := copyAt.Inverse()
			shown = shown || geometry.RectAt(0, 0, 1, 1).Contains(back.At(at))
		})
		if shown {
			return k, true
		}
	}
	return 0, false
}

// BenchmarkLay lays artwork on every place of the worked example, as each step of a drag
// does.
func BenchmarkLay(b *testing.B) {
	spec := geomtest.WorkedExample()
	for _, place := range []string{bag.OnBlank, bag.OnFaces, bag.OnGussets, "front-base", "back-turn-in"} {
		spec.Artwork = append(spec.Artwork, bag.NewArtwork("art.png", place))
	}
	laid := blank.Lay(spec)
	b.ReportAllocs()
	for b.Loop() {
		placement.Lay(&laid, func(int) (placement.Source, bool) { return square(50), true })
	}
}
