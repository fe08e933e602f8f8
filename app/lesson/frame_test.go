package lesson

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

// lessons returns bags of every construction.
func lessons(t testing.TB) map[string]bag.Spec {
	list := map[string]bag.Spec{"block": furnished()}
	change := func(name string, change func(*bag.Spec)) {
		spec := furnished()
		change(&spec)
		list[name] = spec
	}
	change("slotted", func(s *bag.Spec) { s.Body.Base = bag.BaseSlotted })
	change("two-seams", func(s *bag.Spec) { s.Body.Seams = bag.SeamsTwo })
	change("pinch", func(s *bag.Spec) { s.Body.Base, s.Cards.Base = bag.BasePinch, false })
	change("flat", func(s *bag.Spec) { s.Body.Base, s.Body.Gusset, s.Cards.Base = bag.BasePinch, 0, false })
	change("patch", func(s *bag.Spec) { s.Handle.Kind = bag.HandleTwisted })
	return list
}

// The motion is seen whole at every moment, from any side.
func TestTheMotionStaysInThePicture(t *testing.T) {
	const width, height = 200, 160
	cameras := []solid.Camera{solid.Isometric, solid.Front, solid.Top, {Azimuth: 4, Elevation: 0.2, Zoom: 1}}
	for name, spec := range lessons(t) {
		course := newCourse(derived(t, spec))
		f := newFolder()
		var renderer solid.Renderer
		for stage := range course.Stages {
			for _, share := range []float64{0, 0.21, 0.5, 0.77, 1} {
				if course.sights[stage].Near || stage > 0 && course.sights[stage-1].Near && share < comingOver {
					continue // only a part is to be seen, or not all of it yet
				}
				for _, camera := range cameras {
					o := order{course: course, at: place{stage, share}, width: width, height: height, samples: draft, camera: camera, look: solid.LightLook()}
					o.look.Shadow = 0
					o.look.Above, o.look.Below = color.RGBA{255, 0, 255, 255}, color.RGBA{255, 0, 255, 255}
					view := f.view(&o)
					if !course.sights[stage].Cords { // they may leave it
						paper := course.body(o.at)
						paper.Cords = nil
						f.model.Refold(paper)
					}
					if x, y, seen := atEdge(renderer.Draw(view), o.look.Above); seen {
						t.Fatalf("%s, stage %s at %g, camera %+v: the bag reaches %d, %d", name, course.Stages[stage].Name, share, camera, x, y)
					}
				}
			}
		}
	}
}

// atEdge returns a pixel at the edge of a picture that is not of the ground.
func atEdge(picture *image.RGBA, ground color.RGBA) (x, y int, found bool) {
	size := picture.Rect.Size()
	for x := range size.X {
		for y := range size.Y {
			if edge := x == 0 || y == 0 || x == size.X-1 || y == size.Y-1; edge && picture.RGBAAt(x, y) != ground {
				return x, y, true
			}
		}
	}
	return 0, 0, false
}

// From one picture to the next the scene grows, shrinks and shifts by little, within
// stages as between them: a bag takes no less than two thirds of a second to pass through
// the picture or to fill it. That is our own choice, by looking.
func TestThePictureIsSteady(t *testing.T) {
	const most = 0.025 // of the size of the bag; a sixtieth of a second at the usual speed
	for name, spec := range lessons(t) {
		course := newCourse(derived(t, spec))
		v := solid.View{Width: 900, Height: 900, Camera: solid.Isometric, Model: &solid.Model{}}
		look := func(at place) (scale float64, frame solid.Frame) {
			box := course.box(at)
			v.Frame = box.frame()
			v.Camera.Zoom = min(max(v.Closest(box.least, box.greatest), 1), closest)
			return v.Scale(), v.Frame
		}
		scale, frame := look(place{})
		for stage := range course.Stages {
			for i := range 181 {
				nextScale, next := look(place{stage, float64(i) / 180})
				grown := math.Abs(nextScale/scale - 1)
				moved := next.Middle.Sub(frame.Middle).Length() / math.Hypot(next.Radius, next.Rise)
				if grown > most || moved > most {
					t.Fatalf("%s, stage %s at %d of 180: grown by %.4f, moved by %.4f", name, course.Stages[stage].Name, i, grown, moved)
				}
				scale, frame = nextScale, next
			}
		}
	}
}

// The stages of random bags: every place has a picture, and those that light up creases
// and glue say so in the legend.
func TestRandomBags(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 3))
	for range 25 {
		course := newCourse(derived(t, geomtest.RandomBag(random)))
		f, s := newFolder(), newSheet()
		for stage := range course.Stages {
			o := order{course: course, at: course.within(place{stage, random.Float64()}), width: 120, height: 100, density: 1, letter: 9, samples: draft, camera: solid.Isometric, look: solid.LightLook()}
			o.reverse, o.bare = random.IntN(2) == 0, random.IntN(2) == 0
			f.giveBack(f.paint(o))
			s.giveBack(s.paint(o))
			has := course.marksOf(stage, random.IntN(2) == 0)
			lit := false
			for _, c := range course.creases[stage] {
				lit = lit || c.Lit
			}
			if lit != (has[mountain] || has[valley]) {
				t.Errorf("stage %s: creases lit %v, marks %v", course.Stages[stage].Name, lit, has)
			}
		}
	}
}

// Mountain and valley, print side and reverse are told apart by more than colour: drawn
// in one ink the samples differ.
func TestMarksDifferInShape(t *testing.T) {
	b := newBench(t, furnished(), 1024, 700)
	b.at(b.stageOf(t, "base-gussets"), 0.5)
	differ := func(m, n mark) (pixels int) {
		one, other := b.flat.legend.sample(m, 48, 16).(*image.RGBA), b.flat.legend.sample(n, 48, 16).(*image.RGBA)
		for i := 0; i < len(one.Pix); i += 4 {
			if [4]uint8(one.Pix[i:i+4]) != [4]uint8(other.Pix[i:i+4]) {
				pixels++
			}
		}
		return pixels
	}
	if n := differ(mountain, valley); n < 10 {
		t.Errorf("mountain and valley differ in %d pixels", n)
	}
	if n := differ(glueHere, glueBehind); n < 40 {
		t.Errorf("glue on the two sides differs in %d pixels", n)
	}
}

// Stripes cover their share of a shape and nothing beside it.
func TestStripes(t *testing.T) {
	laid := blank.Lay(furnished())
	for _, area := range laid.Pieces[0].Glue {
		shape := corners(area.Shape)
		sum := 0.0
		for _, stripe := range stripes(shape, geometry.Vec2{X: 1, Y: 1}, 2, 0.5) {
			sum += stripe.Area()
			for _, v := range stripe.Vertices {
				if !area.Shape.Bounds().Inset(-1e-6).Contains(v.Vec2) {
					t.Fatalf("%s: a stripe reaches %v", area.Role, v.Vec2)
				}
			}
		}
		if share := sum / area.Shape.Area(); math.Abs(share-0.25) > 0.03 {
			t.Errorf("%s on %s: stripes cover %.3f of it, want a quarter", area.Role, area.Panel, share)
		}
	}
}
