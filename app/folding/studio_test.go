package folding

import (
	"context"
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"gussetwright/app/document"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

func asIs(english string) string { return english }

func studioOf(t testing.TB, change func(*bag.Spec)) *Studio {
	t.Helper()
	spec := bag.Default()
	change(&spec)
	snapshot, err := document.Derive(spec)
	if err != nil {
		t.Fatal(err)
	}
	s, err := New(context.Background(), snapshot, asIs)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// magenta is a ground that no paper has.
var magenta = color.RGBA{255, 0, 255, 255}

// paperOn returns what the bag and its shadow take up of a picture.
func paperOn(picture *image.RGBA) image.Rectangle {
	var box image.Rectangle
	for y := range picture.Rect.Dy() {
		for x := range picture.Rect.Dx() {
			// Shadow on magenta has no green; paper has.
			if c := picture.RGBAAt(x, y); c.G > 40 {
				box = box.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	return box
}

// Every moment lies within the picture, and one that is taken close fills it from side
// to side.
func TestPicturesTakeInTheBag(t *testing.T) {
	for name, change := range map[string]func(*bag.Spec){
		"usual":      func(*bag.Spec) {},
		"pinch base": func(s *bag.Spec) { s.Body.Base = bag.BasePinch },
		"two pieces": func(s *bag.Spec) { s.Body.Seams = bag.SeamsTwo },
		"too low":    func(s *bag.Spec) { s.Body.Gusset, s.Body.Height = 150, 120 },
	} {
		s := studioOf(t, change)
		const width, height = 300, 200
		for stage := range s.Lesson.Stages {
			for _, moment := range []float64{0, 0.5, 1} {
				for _, close := range []bool{false, true} {
					picture := s.Take(Shot{Stage: stage, Moment: moment, Width: width, Height: height, Samples: 1, Ground: magenta, Close: close})
					box := paperOn(picture)
					s.GiveBack(picture)
					if s.sights[stage].Near {
						continue // see TestTheSeamIsSeenFromNear
					}
					spare := min(box.Min.X, box.Min.Y, width-box.Max.X, height-box.Max.Y)
					if spare < 2 {
						t.Errorf("%s, %s at %g, close %t: the bag reaches to %v of %d × %d", name, s.Lesson.Stages[stage].Name, moment, close, box, width, height)
					}
					if filled := max(float64(box.Dx())/width, float64(box.Dy())/height); close && filled < 0.85 {
						t.Errorf("%s, %s at %g: the bag fills %.0f %% of the picture", name, s.Lesson.Stages[stage].Name, moment, 100*filled)
					}
				}
			}
		}
	}
}

// Lit creases and glue are seen where they are asked for, and nowhere else.
func TestCreasesAndGlue(t *testing.T) {
	s := studioOf(t, func(*bag.Spec) {})
	count := func(shot Shot, is func(color.RGBA) bool) int {
		shot.Width, shot.Height, shot.Samples, shot.Ground = 300, 300, 2, color.RGBA{255, 255, 255, 255}
		picture := s.Take(shot)
		defer s.GiveBack(picture)
		found := 0
		for y := range 300 {
			for x := range 300 {
				if is(picture.RGBAAt(x, y)) {
					found++
				}
			}
		}
		return found
	}
	blue := func(c color.RGBA) bool { return int(c.B) > int(c.R)+90 }
	warm := func(c color.RGBA) bool { return int(c.R) > int(c.B)+60 }
	for stage := range s.Lesson.Stages {
		name := s.Lesson.Stages[stage].Name
		if plain := count(Shot{Stage: stage, Moment: 0.5}, blue); plain > 0 {
			t.Errorf("%s: %d pixels are lit unasked", name, plain)
		}
		if lit := count(Shot{Stage: stage, Moment: 0.5, Lit: true}, blue); (lit > 100) != (len(s.Lesson.Stages[stage].Creases) > 0) {
			t.Errorf("%s: %d pixels are lit, %d creases", name, lit, len(s.Lesson.Stages[stage].Creases))
		}
		if name == "base-front" {
			with, without := count(Shot{Stage: stage, Glue: true}, warm), count(Shot{Stage: stage}, warm)
			if with < 300 || without > with/10 {
				t.Errorf("%s: %d pixels of glue, %d unasked", name, with, without)
			}
		}
	}
}

// The view goes over from stage to stage without a jump.
func TestViewsGoOver(t *testing.T) {
	a, b := scope{geometry.RectAt(0, 0, 100, 50)}, scope{geometry.RectAt(100, -20, 400, 20)}
	near := func(got, want geometry.Rect) bool { return got.Min.Near(want.Min) && got.Max.Near(want.Max) }
	if got := a.toward(b, 0); !near(got.Rect, a.Rect) {
		t.Errorf("not begun: %v", got)
	}
	if got := a.toward(b, 1); !near(got.Rect, b.Rect) {
		t.Errorf("done: %v", got)
	}
	half := a.toward(b, 0.5)
	if math.Abs(half.Width()-200) > 1e-9 || math.Abs(half.Height()-math.Sqrt(1000)) > 1e-9 || !half.Center().Near(geometry.Vec2{X: 175, Y: 7.5}) {
		t.Errorf("half way: %v", half)
	}
	s := studioOf(t, func(*bag.Spec) {})
	// Quite back in the view of the stage before, its end is where it was.
	last := s.Take(Shot{Stage: 3, Moment: 1, Width: 200, Height: 200, Ground: magenta})
	next := s.Take(Shot{Stage: 4, Moment: 0, Back: 1, Width: 200, Height: 200, Ground: magenta})
	if was, is := paperOn(last), paperOn(next); was != is {
		t.Errorf("the bag was at %v and is at %v", was, is)
	}
}

func TestArtworkIsShownOrMissed(t *testing.T) {
	const roof = `<svg xmlns="http://www.w3.org/2000/svg" width="246mm" height="366mm"><rect width="246mm" height="366mm" fill="#c02010"/></svg>`
	spec := bag.Default()
	spec.Artwork = []bag.Artwork{bag.NewArtwork("roof.svg", bag.OnFaces)}
	snapshot, err := document.DeriveWithArt(context.Background(), spec, map[string][]byte{"roof.svg": []byte(roof)})
	if err != nil {
		t.Fatal(err)
	}
	s, err := New(context.Background(), snapshot, asIs)
	if err != nil {
		t.Fatal(err)
	}
	picture := s.Take(Shot{Stage: s.Lesson.Standing, Moment: 1, Width: 200, Height: 200, Ground: color.RGBA{255, 255, 255, 255}})
	red := 0
	for y := range 200 {
		for x := range 200 {
			if c := picture.RGBAAt(x, y); int(c.R) > int(c.G)+80 {
				red++
			}
		}
	}
	if red < 5000 {
		t.Errorf("%d pixels of the artwork", red)
	}
	broken, err := document.DeriveWithArt(context.Background(), spec, map[string][]byte{"roof.svg": []byte("no picture")})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := New(context.Background(), broken, asIs); err == nil || !strings.Contains(err.Error(), "roof.svg") {
		t.Errorf("error %v, want one that names roof.svg", err)
	}
	cancelled, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := New(cancelled, snapshot, asIs); err != context.Canceled {
		t.Errorf("error %v", err)
	}
}

// The seam is looked at from near, through the open top of the tube: the flap that is glued
// is in the picture, larger than where the whole tube is seen, and a later moment is another
// picture.
func TestTheSeamIsSeenFromNear(t *testing.T) {
	s := studioOf(t, func(spec *bag.Spec) { spec.Body.Width, spec.Body.Gusset, spec.Body.Height = 190, 95, 265 })
	seam := 0
	for s.Lesson.Stages[seam].Name != "seam" {
		seam++
	}
	if !s.sights[seam].Near {
		t.Fatal("the seam is not looked at from near")
	}
	whole := s.scopes[seam-1]
	if near := s.scopes[seam]; near.Width() > 0.9*whole.Width() {
		t.Errorf("the view is %.0f mm wide, that of the whole tube %.0f", near.Width(), whole.Width())
	}
	differ := func(close bool) (pixels int) {
		shot := Shot{Stage: seam, Width: 200, Height: 200, Samples: 1, Ground: magenta, Close: close}
		before := s.Take(shot)
		shot.Moment = 1
		after := s.Take(shot)
		for i := range before.Pix {
			if i%4 == 0 && before.Pix[i] != after.Pix[i] {
				pixels++
			}
		}
		return pixels
	}
	for _, close := range []bool{false, true} {
		if pixels := differ(close); pixels < 100 {
			t.Errorf("close %t: pressing the flap changes %d pixels", close, pixels)
		}
	}
	for _, change := range []func(*bag.Spec){
		func(spec *bag.Spec) { spec.Body.Base, spec.Body.Gusset = bag.BasePinch, 0 },
		func(spec *bag.Spec) { spec.Body.Seams = bag.SeamsTwo },
	} {
		for stage, sight := range studioOf(t, change).sights {
			if sight.Near {
				t.Errorf("stage %d of a bag with another seam is looked at from near", stage)
			}
		}
	}
}
