package solid_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

func TestGoldenPictures(t *testing.T) {
	var r solid.Renderer
	for _, name := range names(styles(t)) {
		spec := styles(t)[name]
		v := viewOf(spec, 2)
		v.Width, v.Height = 420, 360
		geomtest.GoldenPicture(t, "solid/"+name+".png", r.Draw(v), 0.01)
	}
	block := styles(t)["block"]
	for name, change := range map[string]func(*solid.View){
		"below": func(v *solid.View) { v.Camera = solid.Camera{Azimuth: 0.5, Elevation: -0.9, Zoom: 1.6} },
		"inside": func(v *solid.View) {
			v.Camera = solid.Camera{Azimuth: -0.4, Elevation: 1.1, Zoom: 2.2, Shift: at(0.2, -0.7)}
		},
		"dark": func(v *solid.View) {
			v.Look, v.Reference, v.Highlight = solid.DarkLook(), solid.SheetA4, "gusset-left"
			v.Marker = &solid.Place{At: at(180, 405)}
		},
		"can": func(v *solid.View) {
			v.Reference, v.Camera = solid.Can33, solid.Camera{Azimuth: 0.3, Elevation: 0.3, Zoom: 1}
		},
		"hand": func(v *solid.View) {
			v.Reference, v.Camera = solid.Hand, solid.Camera{Azimuth: -0.3, Elevation: 0.2, Zoom: 1}
		},
		"bottle": func(v *solid.View) { v.Reference = solid.Bottle75 },
		"person": func(v *solid.View) { v.Reference, v.Look = solid.Person, solid.DarkLook() },
		"faded":  func(v *solid.View) { v.Faded = true },
	} {
		v := viewOf(block, 2)
		v.Width, v.Height = 420, 360
		change(&v)
		geomtest.GoldenPicture(t, "solid/"+name+".png", r.Draw(v), 0.01)
	}
}

// No painter's mistakes: from random sides and distances each pixel shows the panel,
// and the side of it, that a ray through its middle meets first. Pixels beside
// another panel are left out, since fine lines run there.
func TestNearestIsSeen(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	var r solid.Renderer
	for _, name := range names(styles(t)) {
		spec := styles(t)[name]
		looked, edges := 0, 0
		for range 12 {
			v, of := tinted(spec)
			v.Camera = solid.Camera{
				Azimuth: (random.Float64() - 0.5) * 7, Elevation: (random.Float64() - 0.5) * math.Pi,
				Zoom: math.Exp(random.Float64()*2 - 0.3), Shift: at(random.Float64()-0.5, random.Float64()-0.5),
			}
			picture := r.Draw(v)
			for range 700 {
				x, y := 3+random.IntN(v.Width-6), 3+random.IntN(v.Height-6)
				hit, clear := around(&v, x, y)
				if !clear {
					continue
				}
				looked++
				got := picture.RGBAAt(x, y)
				want := color.RGBA{60, 60, 60, 255}
				right := got == want
				switch {
				case hit.Panel == "" && alike(got, want):
					// A ray along the layers of a closed bag passes between them and
					// meets only their edges, which are no panels.
					if right = true; got != want {
						edges++
					}
				case hit.Reverse:
					right = alike(got, want) && got.R > 90
				case hit.Panel != "":
					want = of[hit.Panel]
					right = alike(got, want)
				}
				if !right {
					t.Fatalf("%s from %+v: pixel (%d, %d) is %v, a ray meets %+v of %v", name, v.Camera, x, y, got, hit, want)
				}
			}
		}
		if looked < 2000 || edges > looked/200 {
			t.Errorf("%s: %d pixels looked at, of which %d show edges", name, looked, edges)
		}
	}
}

// around returns what lies under a pixel, and whether the same lies all around it.
func around(v *solid.View, x, y int) (solid.Hit, bool) {
	hit, found := v.Pick(float64(x)+0.5, float64(y)+0.5)
	for _, d := range [][2]float64{{-2, 0}, {2, 0}, {0, -2}, {0, 2}, {-1.5, -1.5}, {1.5, -1.5}, {-1.5, 1.5}, {1.5, 1.5}} {
		other, also := v.Pick(float64(x)+0.5+d[0], float64(y)+0.5+d[1])
		if also != found || other.Panel != hit.Panel || other.Reverse != hit.Reverse {
			return hit, false
		}
	}
	return hit, true
}

// A texture lies on the blank as it does in perspective: red grows along x and green
// along y of the blank, and each pixel has those of the place that is picked there.
func TestTextureInPerspective(t *testing.T) {
	spec := styles(t)["block"]
	v, _ := tinted(spec)
	const scale = 2
	width, height := 700.0, 480.0
	picture := image.NewRGBA(image.Rect(0, 0, int(width*scale), int(height*scale)))
	for y := range picture.Rect.Dy() {
		for x := range picture.Rect.Dx() {
			picture.SetRGBA(x, y, color.RGBA{uint8(255 * x / picture.Rect.Dx()), uint8(255 - 255*y/picture.Rect.Dy()), 255, 255})
		}
	}
	v.Textures = []*solid.Texture{solid.NewTexture(picture, scale, height)}
	var r solid.Renderer
	looked := 0
	for _, camera := range []solid.Camera{solid.Isometric, {Azimuth: -0.9, Elevation: 0.2, Zoom: 2}, {Azimuth: 2.5, Elevation: -0.5, Zoom: 1.4}} {
		v.Camera = camera
		drawn := r.Draw(v)
		for y := 5; y < v.Height-5; y += 7 {
			for x := 5; x < v.Width-5; x += 7 {
				hit, clear := around(&v, x, y)
				if !clear || hit.Panel == "" || hit.Reverse {
					continue
				}
				looked++
				got := drawn.RGBAAt(x, y)
				red, green := float64(got.R)/float64(got.B), float64(got.G)/float64(got.B)
				if math.Abs(red-hit.Place.At.X/width) > 0.02 || math.Abs(green-hit.Place.At.Y/height) > 0.02 {
					t.Fatalf("pixel (%d, %d) has red %.3f and green %.3f of blue, at %v", x, y, red, green, hit.Place.At)
				}
			}
		}
	}
	if looked < 500 {
		t.Errorf("only %d pixels looked at", looked)
	}
}

// Through the hand holes one sees past the front: the reverse or the outside of
// something else, never the panel with the hole.
func TestHolesAreOpen(t *testing.T) {
	spec := styles(t)["hand-hole"]
	v, of := tinted(spec)
	v.Camera = solid.Camera{Elevation: 0.05, Zoom: 1}
	var r solid.Renderer
	picture := r.Draw(v)
	open := 0
	for y := range v.Height {
		for x := range v.Width {
			hit, clear := around(&v, x, y)
			if clear && hit.Panel != "front" && picture.RGBAAt(x, y) != (color.RGBA{60, 60, 60, 255}) {
				if alike(picture.RGBAAt(x, y), of["front"]) {
					t.Fatalf("pixel (%d, %d) lies in a hole and shows the front", x, y)
				}
				open++
			}
		}
	}
	if open < 50 {
		t.Errorf("only %d pixels are seen through the holes", open)
	}
}

// Every camera and every size gives a picture, also the extremes: nothing runs away
// on slivers and nothing panics.
func TestAnyView(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 10))
	var r solid.Renderer
	for _, name := range names(styles(t)) {
		spec := styles(t)[name]
		v, _ := tinted(spec)
		for _, reference := range solid.References() {
			v.Reference = reference
			for range 15 {
				v.Width, v.Height = 1+random.IntN(200), 1+random.IntN(200)
				v.Samples = 1 + random.IntN(4)
				v.Camera = solid.Camera{
					Azimuth: float64(random.IntN(17)) * math.Pi / 8, Elevation: float64(random.IntN(9)-4) * math.Pi / 8,
					Zoom: math.Exp(random.NormFloat64() * 3), Shift: at(random.NormFloat64(), random.NormFloat64()),
				}
				v.Highlight, v.Marker = "back-base", &solid.Place{At: at(random.Float64()*700, random.Float64()*480)}
				picture := r.Draw(v)
				if picture.Rect.Dx() != v.Width || picture.Rect.Dy() != v.Height || picture.RGBAAt(0, 0).A != 255 {
					t.Fatalf("%s: picture %v of a view %d × %d", name, picture.Rect, v.Width, v.Height)
				}
				r.Recycle(picture)
			}
		}
	}
}

// A picture that was given back is drawn over, and one that was not stays.
func TestRecycle(t *testing.T) {
	v, _ := tinted(styles(t)["block"])
	var r solid.Renderer
	first := r.Draw(v)
	kept := bytes.Clone(first.Pix)
	second := r.Draw(v)
	if &first.Pix[0] == &second.Pix[0] || !bytes.Equal(first.Pix, kept) {
		t.Error("a picture in use was drawn over")
	}
	r.Recycle(second)
	v.Camera = solid.Top
	if third := r.Draw(v); &third.Pix[0] != &second.Pix[0] {
		t.Error("a spare picture was not used")
	}
	r.Recycle(first)
	v.Width++
	if other := r.Draw(v); other.Rect.Dx() != v.Width {
		t.Errorf("a spare picture of another size was used: %v", other.Rect)
	}
}

func TestHighlightAndMarker(t *testing.T) {
	v := viewOf(styles(t)["block"], 1)
	v.Width, v.Height, v.Samples, v.Camera = 400, 400, 1, solid.Front
	var r solid.Renderer
	plain := r.Draw(v)
	v.Highlight, v.Marker = "front", &solid.Place{At: at(120, 250)}
	marked := r.Draw(v)
	if p, q := plain.RGBAAt(160, 260), marked.RGBAAt(160, 260); int(p.R)-int(q.R) < 30 || int(p.B)-int(q.B) > 30 {
		t.Errorf("the front is %v and lit up %v, want it bluer", p, q)
	}
	where, found := v.Model.Where(*v.Marker)
	if !found || math.Abs(where.X-120) > 1e-9 || math.Abs(where.Y) > 1e-9 || math.Abs(where.Z-180) > 1e-9 {
		t.Errorf("the place lies at %v, want (120, 0, 180)", where)
	}
	if hit, _ := v.Pick(200, 200); hit.Panel != "front" {
		t.Errorf("in the middle lies %q", hit.Panel)
	}
	ink := 0
	for y := range 400 {
		for x := range 400 {
			if marked.RGBAAt(x, y) == v.Look.Accent {
				ink++
			}
		}
	}
	if ink < 300 {
		t.Errorf("border and ring take only %d pixels", ink)
	}
}

func TestWritePNG(t *testing.T) {
	v := viewOf(styles(t)["block"], 1)
	v.Width, v.Height, v.Samples = 123, 77, 3
	var out bytes.Buffer
	if err := solid.WritePNG(&out, v); err != nil {
		t.Fatal(err)
	}
	read, err := png.Decode(&out)
	if err != nil || read.Bounds().Dx() != 123 || read.Bounds().Dy() != 77 {
		t.Errorf("read back %v, %v", read.Bounds(), err)
	}
	for _, size := range [][2]int{{0, 10}, {10, -1}, {1 << 30, 1 << 30}, {20_000, 20_000}} {
		v.Width, v.Height = size[0], size[1]
		if err := solid.WritePNG(&out, v); err == nil || !strings.Contains(err.Error(), "pixels") {
			t.Errorf("a picture of %v: error %v", size, err)
		}
	}
}

// At zoom 1 the whole scene lies within the picture, from any side and whatever the
// shape of the picture; and it does not lie lost in the middle of it.
func TestEverythingFits(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 12))
	var r solid.Renderer
	ground := color.RGBA{60, 60, 60, 255}
	for _, name := range names(styles(t)) {
		spec := styles(t)[name]
		v := viewOf(spec, 1)
		v.Samples, v.Look.Above, v.Look.Below, v.Look.Shadow = 1, ground, ground, 0
		for _, reference := range solid.References() {
			v.Reference, v.Side = reference, random.IntN(4)
			for range 10 {
				v.Width, v.Height = 60+random.IntN(300), 60+random.IntN(300)
				v.Camera = solid.Camera{Azimuth: random.Float64() * 7, Elevation: (random.Float64() - 0.5) * math.Pi, Zoom: 1}
				picture := r.Draw(v)
				for i := range max(v.Width, v.Height) {
					for _, p := range []image.Point{{i, 0}, {i, v.Height - 1}, {0, i}, {v.Width - 1, i}} {
						if p.In(picture.Rect) && picture.RGBAAt(p.X, p.Y) != ground {
							t.Fatalf("%s with %q from %+v in %d × %d: something lies on the border at %v", name, reference, v.Camera, v.Width, v.Height, p)
						}
					}
				}
			}
		}
		v.Reference, v.Width, v.Height, v.Camera = solid.NoReference, 400, 600, solid.Front
		high := 0
		for picture, y := r.Draw(v), 0; y < v.Height; y++ {
			for x := range v.Width {
				if picture.RGBAAt(x, y) != ground {
					high++
					break
				}
			}
		}
		if high < v.Height/2 {
			t.Errorf("%s: the bag takes %d of %d rows", name, high, v.Height)
		}
	}
}
