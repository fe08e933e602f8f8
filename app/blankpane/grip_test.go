package blankpane

import (
	"math"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
)

// twoSeams is a bag of two pieces.
func twoSeams() bag.Spec {
	spec := sized(420, 120, 360)
	spec.Body.Seams = bag.SeamsTwo
	return spec
}

func handHole() bag.Spec {
	spec := bag.Default()
	spec.Handle.Kind = bag.HandleHandHole
	spec.Derive(func(string) bool { return false })
	return spec
}

func taped() bag.Spec {
	spec := bag.Default()
	spec.Handle.Kind = bag.HandleTape
	spec.Derive(func(string) bool { return false })
	return spec
}

func straightTop() bag.Spec {
	spec := bag.Default()
	spec.Body.Top = bag.TopStraight
	return spec
}

func zigzagTop() bag.Spec {
	spec := bag.Default()
	spec.Body.Top = bag.TopZigzag
	return spec
}

// The default bag is 240 × 100 × 360 with V 20 and T 50: base crease at 70, top fold
// at 430, top edge at 480; its panel edges stand at 240, 340, 580, 679.5 and 699.5,
// its holes 60 either side of the middle of a face and 25 from the top fold.
func TestGripsDriveTheirEntries(t *testing.T) {
	for _, c := range []struct {
		name   string
		spec   bag.Spec
		piece  int
		at, by geometry.Vec2
		want   map[string]float64
	}{
		{"face", bag.Default(), 0, geometry.Vec2{X: 240, Y: 250}, geometry.Vec2{X: 12}, map[string]float64{widthPath: 252}},
		{"face, below the base", bag.Default(), 0, geometry.Vec2{X: 241, Y: 30}, geometry.Vec2{X: -12}, map[string]float64{widthPath: 228}},
		{"gusset", bag.Default(), 0, geometry.Vec2{X: 340, Y: 250}, geometry.Vec2{X: 7.4, Y: 50}, map[string]float64{gussetPath: 107}},
		{"second face, moved by both", bag.Default(), 0, geometry.Vec2{X: 580, Y: 250}, geometry.Vec2{X: 20}, map[string]float64{widthPath: 250}},
		{"second gusset", bag.Default(), 0, geometry.Vec2{X: 679.5, Y: 250}, geometry.Vec2{X: 20}, map[string]float64{gussetPath: 110}},
		{"seam flap", bag.Default(), 0, geometry.Vec2{X: 699.5, Y: 250}, geometry.Vec2{X: 5}, map[string]float64{flapPath: 25}},
		{"top fold", bag.Default(), 0, geometry.Vec2{X: 300, Y: 430}, geometry.Vec2{Y: -10}, map[string]float64{heightPath: 350}},
		{"turn-in", bag.Default(), 0, geometry.Vec2{X: 300, Y: 480}, geometry.Vec2{Y: 10}, map[string]float64{turnInPath: 60}},
		{"base flap", bag.Default(), 0, geometry.Vec2{X: 300, Y: 0}, geometry.Vec2{Y: -5}, map[string]float64{overlapPath: 25}},
		{"straight top", straightTop(), 0, geometry.Vec2{X: 300, Y: 430}, geometry.Vec2{Y: 15}, map[string]float64{heightPath: 375}},
		{"teeth", zigzagTop(), 0, geometry.Vec2{X: 300, Y: 427}, geometry.Vec2{Y: 15}, map[string]float64{heightPath: 375}},
		{"left hole out", bag.Default(), 0, geometry.Vec2{X: 60, Y: 405}, geometry.Vec2{X: -10}, map[string]float64{spacingPath: 140}},
		{"right hole out and down", bag.Default(), 0, geometry.Vec2{X: 181, Y: 404}, geometry.Vec2{X: 10, Y: -5}, map[string]float64{spacingPath: 140, dropPath: 30}},
		{"hole in the turn-in up", bag.Default(), 0, geometry.Vec2{X: 400, Y: 455}, geometry.Vec2{Y: 5}, map[string]float64{dropPath: 30}},
		{"hole down, hardly aside", bag.Default(), 0, geometry.Vec2{X: 60, Y: 405}, geometry.Vec2{X: 0.9, Y: -8}, map[string]float64{dropPath: 33}},
		{"hand hole", handHole(), 0, geometry.Vec2{X: 120, Y: 370}, geometry.Vec2{Y: -6}, map[string]float64{dropPath: 51}},
		{"left slit out and down", taped(), 0, geometry.Vec2{X: 60, Y: 398}, geometry.Vec2{X: -10, Y: -5}, map[string]float64{spacingPath: 140, dropPath: 30}},
		{"right slit in the turn-in up", taped(), 0, geometry.Vec2{X: 521, Y: 462}, geometry.Vec2{Y: 5}, map[string]float64{dropPath: 30}},
		{"face of the second piece", twoSeams(), 1, geometry.Vec2{X: 420, Y: 250}, geometry.Vec2{X: 20}, map[string]float64{widthPath: 430}},
		{"least", bag.Default(), 0, geometry.Vec2{X: 240, Y: 250}, geometry.Vec2{X: -900}, map[string]float64{widthPath: 30}},
		{"most", bag.Default(), 0, geometry.Vec2{X: 300, Y: 480}, geometry.Vec2{Y: 900}, map[string]float64{turnInPath: 300}},
	} {
		t.Run(c.name, func(t *testing.T) {
			laid := blank.Lay(c.spec)
			g := find(grips(&laid, c.piece), c.at, 3)
			if g == nil {
				t.Fatal("there is nothing to drag")
			}
			got, ok := g.dragged(c.spec, c.by, 1, 1)
			if !ok {
				t.Fatal("the bag could not be drawn")
			}
			want := c.spec
			for path, value := range c.want {
				field, _ := bag.FieldAt(path)
				field.SetNumber(&want, value)
			}
			if got.Body != want.Body || got.Handle != want.Handle {
				t.Errorf("got %+v %+v\nwant %+v %+v", got.Body, got.Handle, want.Body, want.Handle)
			}
		})
	}
}

func TestNothingToDrag(t *testing.T) {
	laid := blank.Lay(bag.Default())
	all := grips(&laid, 0)
	for _, at := range []geometry.Vec2{{X: 120, Y: 250}, {X: 290, Y: 300}, {X: 120, Y: 70}, {X: 120, Y: 120}, {X: -30, Y: 250}, {X: 240, Y: 600}} {
		if g := find(all, at, 3); g != nil {
			t.Errorf("at %v something drives %s", at, g.pulls[0].path)
		}
	}
}

func TestTenths(t *testing.T) {
	spec := bag.Default()
	laid := blank.Lay(spec)
	g := find(grips(&laid, 0), geometry.Vec2{X: 240, Y: 250}, 3)
	got, _ := g.dragged(spec, geometry.Vec2{X: 0.317}, 0.1, 0)
	if got.Body.Width != 240.3 {
		t.Errorf("a drag by 0.317 mm in tenths gives %v, want 240.3", got.Body.Width)
	}
}

// A gusset of less than 10 mm cannot be creased down its middle.
func TestWhatCannotBeDrawnIsNotOffered(t *testing.T) {
	spec := bag.Default()
	laid := blank.Lay(spec)
	g := find(grips(&laid, 0), geometry.Vec2{X: 340, Y: 250}, 3)
	if _, ok := g.dragged(spec, geometry.Vec2{X: -95}, 1, 0); ok {
		t.Error("a gusset of 5 mm was offered")
	}
}

// What is dragged must follow the pointer: the blank laid out anew has the thing
// where it was pulled to, on whatever bag.
func TestGripsFollowThePointer(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 1))
	tried := map[string]int{}
	for range 300 {
		spec := geomtest.RandomBag(random)
		if spec.Body.Seams == bag.SeamsAuto {
			spec.Body.Seams = bag.SeamsTwo // or a wider bag may come out of more pieces
		}
		before := blank.Lay(spec)
		was := layOut(&before, view{scale: 1, letter: 8})
		for piece := range before.Pieces {
			for i, g := range grips(&before, piece) {
				for _, p := range g.pulls {
					by := p.move.Scale(float64(random.IntN(21) - 10))
					changed, ok := (&grip{pulls: []pull{p}}).dragged(spec, by, 0.1, 0)
					if !ok || clamped(&changed, p.path) {
						continue
					}
					after := blank.Lay(changed)
					now := layOut(&after, view{scale: 1, letter: 8})
					all := grips(&after, piece)
					if len(all) != len(grips(&before, piece)) {
						continue // a hole left the turn-in
					}
					moved := now.at(piece, all[i].edge.From).Sub(was.at(piece, g.edge.From))
					along := moved.Dot(p.move.Unit())
					if want := by.Dot(p.move.Unit()); math.Abs(along-want) > 0.11*p.move.Length() {
						t.Fatalf("%s of piece %d: pulled by %v, moved by %v\n%+v", p.path, piece, by, moved, spec.Body)
					}
					tried[p.path]++
				}
			}
		}
	}
	for _, path := range []string{widthPath, gussetPath, heightPath, turnInPath, overlapPath, flapPath, spacingPath, dropPath} {
		if tried[path] < 50 {
			t.Errorf("%s was pulled only %d times", path, tried[path])
		}
	}
}

func clamped(spec *bag.Spec, path string) bool {
	field, _ := bag.FieldAt(path)
	value := field.Number(spec)
	return value == field.Least || value == field.Most
}

func TestDirections(t *testing.T) {
	laid := blank.Lay(bag.Default())
	all := grips(&laid, 0)
	for at, want := range map[geometry.Vec2]direction{
		{X: 240, Y: 250}: sideways, {X: 300, Y: 430}: upright, {X: 60, Y: 405}: anyway,
	} {
		if got := find(all, at, 3).direction(); got != want {
			t.Errorf("at %v: direction %d, want %d", at, got, want)
		}
	}
}
