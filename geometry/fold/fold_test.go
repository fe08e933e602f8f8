package fold_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
)

// styles returns one bag of each construction.
func styles() map[string]bag.Spec {
	list := map[string]bag.Spec{}
	add := func(name string, change func(*bag.Spec)) {
		spec := geomtest.WorkedExample()
		spec.Body.SeamRelief = 0.5
		change(&spec)
		list[name] = spec
	}
	add("block", func(*bag.Spec) {})
	add("two seams", func(s *bag.Spec) { s.Body.Seams = bag.SeamsTwo })
	add("slotted", func(s *bag.Spec) { s.Body.Base = bag.BaseSlotted })
	add("straight", func(s *bag.Spec) { s.Body.Top = bag.TopStraight })
	add("zigzag", func(s *bag.Spec) { s.Body.Top = bag.TopZigzag; s.Handle.Kind = bag.HandleTwisted })
	add("tape", func(s *bag.Spec) { s.Handle.Kind, s.Handle.Eyelets = bag.HandleTape, true })
	add("hand hole", func(s *bag.Spec) { s.Handle.Kind = bag.HandleHandHole; s.Body.TurnIn = 80; s.Handle.Drop = 45 })
	add("pinch", func(s *bag.Spec) { s.Body.Base = bag.BasePinch })
	add("pinch, zigzag, two seams", func(s *bag.Spec) {
		s.Body.Base, s.Body.Top, s.Body.Seams = bag.BasePinch, bag.TopZigzag, bag.SeamsTwo
	})
	add("pinch, low", func(s *bag.Spec) { s.Body.Base, s.Body.Height, s.Body.Gusset = bag.BasePinch, 60, 240 })
	add("flat", func(s *bag.Spec) { s.Body.Base, s.Body.Gusset = bag.BasePinch, 0 })
	add("flat, two seams", func(s *bag.Spec) { s.Body.Base, s.Body.Gusset, s.Body.Seams = bag.BasePinch, 0, bag.SeamsTwo })
	return list
}

func lay(t testing.TB, spec bag.Spec) *blank.Blank {
	t.Helper()
	if err := spec.Validate(); err != nil {
		t.Fatal(err)
	}
	laid := blank.Lay(spec)
	return &laid
}

// The facets of a panel tile it, no edge is stretched, and the corners run
// anticlockwise seen from the print side.
func TestNothingIsStretched(t *testing.T) {
	for name, spec := range styles() {
		t.Run(name, func(t *testing.T) { checkFacets(t, lay(t, spec)) })
	}
	random := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		checkFacets(t, lay(t, geomtest.RandomBag(random)))
	}
}

func checkFacets(t *testing.T, laid *blank.Blank) {
	t.Helper()
	body := fold.Standing(laid)
	covered := map[[2]string]float64{}
	for i := range body.Facets {
		f := &body.Facets[i]
		n := len(f.Corners)
		for c := range n {
			flat := f.Corners[(c+1)%n].Sub(f.Corners[c]).Length()
			folded := f.Points[(c+1)%n].Sub(f.Points[c]).Length()
			if !(math.Abs(flat-folded) <= 1e-9*max(flat, 1)) {
				t.Fatalf("%s: edge %d is %v on the blank, %v on the bag", f.Panel, c, flat, folded)
			}
		}
		area := geometry.Polygon(f.Corners...).Area()
		if along := areaVector(f.Points).Dot(f.Pose.Out()); math.Abs(along-area) > 1e-6*area {
			t.Fatalf("%s: area %v on the blank, %v seen from the print side of the bag", f.Panel, area, along)
		}
		covered[[2]string{laid.Pieces[f.Piece].Name, f.Panel}] += area
	}
	for i := range laid.Pieces {
		for _, panel := range laid.Pieces[i].Panels {
			slot := max(laid.Spec.Body.SlotWidth, body.Caliper, 0.01)
			got, want := covered[[2]string{laid.Pieces[i].Name, panel.ID}], panel.Shape.Area()
			// A slotted flap has round corners, which the facets follow in chords.
			if math.Abs(got-want) > 1e-9*want+0.05*slot*slot {
				t.Fatalf("%s of %s: facets cover %v of %v mm²\n%+v", panel.ID, laid.Pieces[i].Name, got, want, laid.Spec.Body)
			}
		}
	}
}

// areaVector returns the vector that stands on a plane polygon, as long as its area.
func areaVector(points []geometry.Vec3) geometry.Vec3 {
	var sum geometry.Vec3
	for i, p := range points {
		sum = sum.Add(p.Sub(points[0]).Cross(points[(i+1)%len(points)].Sub(points[0])))
	}
	return sum.Scale(0.5)
}

// Creases hold: what is one point of the blank is one point of the bag but for the
// thickness of the layers, at most those of a closed flat bag, and the relief.
func TestCreasesHold(t *testing.T) {
	for name, spec := range styles() {
		laid := lay(t, spec)
		body := fold.Standing(laid)
		most := 13*body.Caliper + 2*spec.Body.SeamRelief
		for i := range body.Facets {
			for j := range body.Facets[:i] {
				a, b := &body.Facets[i], &body.Facets[j]
				if a.Piece != b.Piece {
					continue
				}
				for c, p := range a.Corners {
					for d, q := range b.Corners {
						if apart := a.Points[c].Sub(b.Points[d]).Length(); p.Near(q) && apart > most {
							t.Errorf("%s: %s and %s share (%.1f, %.1f) on the blank and are %.2f mm apart", name, a.Panel, b.Panel, p.X, p.Y, apart)
						}
					}
				}
			}
		}
	}
}

// The volume within the four walls follows from the divergence theorem: the flow of
// the field (x, 0, 0), or (0, y, 0), out through the walls, since the base and the
// open top lie along both fields. It must be W × D × H but for the relief of the
// seam, which takes its width of half a wall away.
func TestVolumeOfBlock(t *testing.T) {
	spec := geomtest.WorkedExample()
	for _, relief := range []float64{0, 0.5, 2} {
		spec.Body.SeamRelief = relief
		body := fold.Standing(lay(t, spec))
		var alongX, alongY float64
		for i := range body.Facets {
			f := &body.Facets[i]
			if f.Row() != blank.RowBody || f.Panel == "seam-flap" {
				continue
			}
			middle := middleOf(f.Points)
			flow := areaVector(f.Points)
			alongX += middle.X * flow.X
			alongY += middle.Y * flow.Y
		}
		want := spec.Body.Width * spec.Body.Gusset * spec.Body.Height
		slack := relief*spec.Body.Width*spec.Body.Height + 1e-6
		if math.Abs(alongX-want) > slack || math.Abs(alongY-want) > slack {
			t.Errorf("relief %v: %v mm³ along x and %v along y, want %v ± %v", relief, alongX, alongY, want, slack)
		}
	}
}

func middleOf(points []geometry.Vec3) geometry.Vec3 {
	var sum geometry.Vec3
	for _, p := range points {
		sum = sum.Add(p)
	}
	return sum.Scale(1 / float64(len(points)))
}

// Whatever looks at a block bag from below or from the side sees paper: no ray to
// a point within passes the walls or the base, except through a hole or the slots.
func TestBlockIsClosed(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for _, name := range []string{"block", "two seams", "straight"} {
		spec := styles()[name]
		spec.Handle.Kind = bag.HandleNone
		body := fold.Standing(lay(t, spec))
		b := spec.Body
		for range 4000 {
			// Where the ray starts, well within the walls, and where it goes, never
			// up: the relief leaves a slit beside the seam flap that a ray could
			// only find within a millimetre of the corner.
			from := geometry.Vec3{
				X: 5 + random.Float64()*(b.Width-10), Y: 5 + random.Float64()*(b.Gusset-10), Z: 5 + random.Float64()*(b.Height-10),
			}
			azimuth := random.Float64() * 2 * math.Pi
			toward := geometry.Vec3{X: math.Cos(azimuth), Y: math.Sin(azimuth), Z: -random.Float64() * 3}
			hits := 0
			for i := range body.Facets {
				if _, hit := strike(&body.Facets[i], from, toward); hit {
					hits++
				}
			}
			if hits == 0 && !nearSeam(spec, from, toward) {
				t.Fatalf("%s: nothing closes the bag from %v toward %v", name, from, toward)
			}
		}
	}
}

// nearSeam tells whether a ray leaves the bag within 2 mm of an upright edge.
func nearSeam(spec bag.Spec, from, toward geometry.Vec3) bool {
	b := spec.Body
	x, y := (b.Width-from.X)/toward.X, (b.Gusset-from.Y)/toward.Y
	if toward.X < 0 {
		x = -from.X / toward.X
	}
	if toward.Y < 0 {
		y = -from.Y / toward.Y
	}
	return math.Abs(x-y) <= 2
}

// strike returns where on the blank a ray meets a facet.
func strike(f *fold.Facet, from, toward geometry.Vec3) (geometry.Vec2, bool) {
	out := f.Pose.Out()
	share := f.Pose.Origin.Sub(from).Dot(out) / toward.Dot(out)
	if !(share > 0) || math.IsInf(share, 0) {
		return geometry.Vec2{}, false
	}
	p := from.Add(toward.Scale(share)).Sub(f.Pose.Origin)
	at := geometry.Vec2{X: p.Dot(f.Pose.Right), Y: p.Dot(f.Pose.Up)}
	return at, f.Contains(at)
}

// Layers that lie on each other are apart by at least a quarter of a caliper.
func TestLayersAreApart(t *testing.T) {
	for name, spec := range styles() {
		body := fold.Standing(lay(t, spec))
		for i := range body.Facets {
			for j := range body.Facets[:i] {
				a, b := &body.Facets[i], &body.Facets[j]
				if math.Abs(a.Pose.Out().Dot(b.Pose.Out())) < 1-1e-12 {
					continue
				}
				apart := math.Abs(a.Points[0].Sub(b.Points[0]).Dot(a.Pose.Out()))
				if apart < body.Caliper/4 && overlap(a, b) {
					t.Errorf("%s: %s and %s lie %v mm apart, a quarter of the caliper is %v", name, a.Panel, b.Panel, apart, body.Caliper/4)
				}
			}
		}
	}
}

// The base from outside: the back flap with its corners, which closes last, the front
// flap with its own, then the gusset flaps.
func TestLayersOfBase(t *testing.T) {
	for _, name := range []string{"block", "two seams", "slotted"} {
		body := fold.Standing(lay(t, styles()[name]))
		var order []*fold.Facet
		order = append(order, facetsOf(&body, "back-base")...)
		order = append(order, facetsOf(&body, "front-base")...)
		order = append(order, facetsOf(&body, "gusset-right-base")...)
		for i := range order[1:] {
			below, above := order[i].Points[0].Z, order[i+1].Points[0].Z
			twins := order[i].Panel == order[i+1].Panel && i%3 == 1 // the two corners of a flap
			if above < below+body.Caliper/4 && !twins {
				t.Errorf("%s: layer %d (%s) at %v is not above %s at %v", name, i+1, order[i+1].Panel, above, order[i].Panel, below)
			}
		}
	}
}

// overlap tells whether two parallel facets cover a common area: a grid of points
// of one is looked for in the other.
func overlap(a, b *fold.Facet) bool {
	box := geometry.Rect{Min: a.Corners[0], Max: a.Corners[0]}
	for _, c := range a.Corners {
		box = box.Union(geometry.Rect{Min: c, Max: c})
	}
	const steps = 23
	for i := range steps {
		for j := range steps {
			p := geometry.Vec2{
				X: box.Min.X + box.Width()*(float64(i)+0.5)/steps, Y: box.Min.Y + box.Height()*(float64(j)+0.5)/steps,
			}
			if !a.Contains(p) {
				continue
			}
			at := a.Pose.At(p).Sub(b.Pose.Origin)
			if b.Contains(geometry.Vec2{X: at.Dot(b.Pose.Right), Y: at.Dot(b.Pose.Up)}) {
				return true
			}
		}
	}
	return false
}

// The holes of the turn-in lie over those of the faces, so that one sees through.
func TestHolesAreSeenThrough(t *testing.T) {
	for _, kind := range []bag.HandleKind{bag.HandleRope, bag.HandleTape, bag.HandleHandHole} {
		spec := styles()["hand hole"]
		spec.Handle.Kind = kind
		body := fold.Standing(lay(t, spec))
		var holes []geometry.Vec3
		for i := range body.Facets {
			f := &body.Facets[i]
			if f.Panel != "front" && f.Panel != "front-turn-in" {
				continue
			}
			for _, o := range f.Openings {
				holes = append(holes, f.Pose.At(o.From.Mid(o.To)))
			}
		}
		if want := map[bag.HandleKind]int{bag.HandleRope: 4, bag.HandleTape: 4, bag.HandleHandHole: 2}[kind]; len(holes) != want {
			t.Fatalf("%s: %d holes in the front and its turn-in, want %d", kind, len(holes), want)
		}
		half := len(holes) / 2
		for i, hole := range holes[:half] {
			behind := holes[half+i]
			if math.Abs(hole.X-behind.X) > 1e-9 || math.Abs(hole.Z-behind.Z) > 1e-9 {
				t.Errorf("%s: hole at %v, in the turn-in at %v", kind, hole, behind)
			}
			if want := spec.Body.Height - spec.Handle.Drop; math.Abs(hole.Z-want) > 1e-9 {
				t.Errorf("%s: hole %v above the ground, want %v", kind, hole.Z, want)
			}
		}
	}
}

func TestOpening(t *testing.T) {
	slot := fold.Opening{From: geometry.Vec2{X: 10, Y: 5}, To: geometry.Vec2{X: 30, Y: 5}, Radius: 4}
	for _, test := range []struct {
		at   geometry.Vec2
		want bool
	}{
		{geometry.Vec2{X: 20, Y: 8.9}, true},
		{geometry.Vec2{X: 20, Y: 9.1}, false},
		{geometry.Vec2{X: 33.9, Y: 5}, true},
		{geometry.Vec2{X: 33, Y: 8}, false},
		{geometry.Vec2{X: 6.1, Y: 5}, true},
		{geometry.Vec2{X: 5.9, Y: 5}, false},
	} {
		if got := slot.Holds(test.at); got != test.want {
			t.Errorf("%v in the slot: got %v, want %v", test.at, got, test.want)
		}
	}
	// The area of a slot with round ends: a rectangle and a circle; clockwise.
	outline := geometry.Polygon(slot.Outline(64)...)
	if got, want := outline.Area(), -(20*8 + math.Pi*16); math.Abs(got-want) > 0.1 {
		t.Errorf("outline has the area %v, want %v", got, want)
	}
}

func BenchmarkStanding(b *testing.B) {
	laid := lay(b, geomtest.WorkedExample())
	b.ReportAllocs()
	for b.Loop() {
		fold.Standing(laid)
	}
}
