package turntable_test

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/render/solid"
)

// room is the part of the page that the bag is fitted into.
type room struct{ Left, Top, Width, Height float64 }

func (b *browser) room() room {
	b.t.Helper()
	var r room
	b.evaluate(`(() => {
		const box = document.getElementById("bag").getBoundingClientRect();
		return { Left: box.left, Top: box.top, Width: box.width, Height: box.height - document.getElementById("foot").offsetHeight };
	})()`, &r)
	return r
}

// middle returns the middle of the room.
func (r room) middle() (x, y float64) { return r.Left + r.Width/2, r.Top + r.Height/2 }

func pixel(picture image.Image, x, y int) color.RGBA {
	return color.RGBAModel.Convert(picture.At(x, y)).(color.RGBA)
}

func apart(a, b color.RGBA) int {
	far := func(x, y uint8) int { return max(int(x), int(y)) - min(int(x), int(y)) }
	return max(far(a.R, b.R), far(a.G, b.G), far(a.B, b.B))
}

// clear returns what lies under a pixel of a view, if the same panel and the same
// colour of it lie all around.
func clear(v *solid.View, laid *blank.Blank, x, y int) (solid.Hit, color.RGBA, bool) {
	look := func(dx, dy float64) (solid.Hit, color.RGBA) {
		hit, found := v.Pick(float64(x)+0.5+dx, float64(y)+0.5+dy)
		if !found {
			return hit, color.RGBA{}
		}
		if hit.Reverse {
			return hit, v.Paper.Reverse
		}
		return hit, quadrantAt(&laid.Pieces[hit.Place.Piece], hit.Place.At)
	}
	hit, c := look(0, 0)
	for _, d := range [][2]float64{{-3, 0}, {3, 0}, {0, -3}, {0, 3}, {-2, -2}, {2, -2}, {-2, 2}, {2, 2}} {
		if other, same := look(d[0], d[1]); other.Panel != hit.Panel || other.Reverse != hit.Reverse || same != c {
			return hit, c, false
		}
	}
	return hit, c, hit.Panel != ""
}

// The page shows each quarter of each panel where geometry says: wherever a ray through
// a pixel meets the paper, the pixel has a shade of the colour of that place of the
// blank, and of plain paper where the reverse looks at the viewer. One in a hundred may
// lie on the line of a crease within a panel. The browser is the
// outside program: it fills the triangles and looks up the texture. The shade is that of
// the pictures of package solid.
func TestColoursStandWhereGeometrySays(t *testing.T) {
	b := openBrowser(t, true)
	var renderer solid.Renderer
	tall := teaBag()
	tall.Body.Width, tall.Body.Gusset, tall.Body.Height = 420, 200, 690 // does not fit into 16 bits
	two := teaBag()
	two.Body.Seams = bag.SeamsTwo
	pinch := teaBag()
	pinch.Body.Base = bag.BasePinch
	for _, test := range []struct {
		name  string
		spec  bag.Spec
		scale float64
	}{{"tea house", teaBag(), 3}, {"tall", tall, 1}, {"two pieces", two, 3}, {"pinch base", pinch, 3}} {
		t.Run(test.name, func(t *testing.T) {
			b.t = t
			test.spec.Handle.Kind, test.spec.Cards.Base = bag.HandleNone, false
			j := jobOf(test.spec, test.scale, quadrants)
			b.screen(880, 520, 1, "light")
			b.open(written(t, j.page), "")
			for _, view := range []struct{ azimuth, elevation, zoom float64 }{{45, 35, 1}, {180, 12, 1.3}, {-100, 60, 1.2}, {20, -40, 1}} {
				b.look(fmt.Sprintf("#view=%g,%g,%g", view.azimuth, view.elevation, view.zoom))
				r, picture := b.room(), b.shot()
				v := j.view
				v.Width, v.Height, v.Samples = int(r.Width), int(r.Height), 1
				v.Camera = solid.Camera{Azimuth: view.azimuth * math.Pi / 180, Elevation: view.elevation * math.Pi / 180, Zoom: view.zoom}
				drawn := renderer.Draw(v)
				looked, astray, first := 0, 0, ""
				for y := 5; y < v.Height-5; y += 6 {
					for x := 5; x < v.Width-5; x += 6 {
						hit, want, ok := clear(&v, &j.laid, x, y)
						if !ok {
							continue
						}
						looked++
						if got := pixel(picture, x+int(r.Left), y+int(r.Top)); !shadeOf(got, want) || apart(got, drawn.RGBAAt(x, y)) > 8 {
							if astray++; first == "" {
								first = fmt.Sprintf("pixel (%d, %d), %s at %v, reverse %v: got %v, want a shade of %v, %v in the picture",
									x, y, hit.Panel, hit.Place.At, hit.Reverse, got, want, drawn.RGBAAt(x, y))
							}
						}
					}
				}
				if looked < 300 || astray > looked/100 {
					t.Errorf("view %v: %d of %d pixels are wrong, %s", view, astray, looked, first)
				}
			}
			b.quiet()
		})
	}
}

// shadeOf tells whether a colour is another in less light.
func shadeOf(got, full color.RGBA) bool {
	light := (float64(got.R) + float64(got.G) + float64(got.B)) / (float64(full.R) + float64(full.G) + float64(full.B))
	want := color.RGBA{shade(full.R, light), shade(full.G, light), shade(full.B, light), 255}
	return light > 0.5 && light < 1.02 && apart(got, want) <= 6
}

func shade(v uint8, light float64) uint8 { return uint8(math.Round(min(light*float64(v), 255))) }

// The light is that of the pictures of package solid, also on handles, and so are their
// shapes: the two draw the same bag, and of its pixels few differ. Some do on handles,
// which package solid draws in facets.
func TestLightIsThatOfThePictures(t *testing.T) {
	b := openBrowser(t, true)
	ribbon := teaBag()
	ribbon.Handle.Kind, ribbon.Handle.Eyelets = bag.HandleRibbon, true
	kraft := teaBag()
	kraft.Handle.Kind, kraft.Paper.Kind, kraft.Paper.Colour = bag.HandleTwisted, bag.PaperKraft, bag.ColourNatural
	for name, spec := range map[string]bag.Spec{"rope": teaBag(), "ribbon with eyelets": ribbon, "natural kraft": kraft} {
		t.Run(name, func(t *testing.T) {
			b.t = t
			j := jobOf(spec, 3, quadrants)
			if name == "natural kraft" {
				j.page.Textures, j.view.Textures = nil, nil // plain paper
			}
			b.screen(880, 520, 1, "light")
			b.open(written(t, j.page), "#view=30,25,1")
			r, picture := b.room(), b.shot()
			v := j.view
			v.Width, v.Height, v.Samples = int(r.Width), int(r.Height), 4
			v.Camera = solid.Camera{Azimuth: 30 * math.Pi / 180, Elevation: 25 * math.Pi / 180, Zoom: 1}
			ground := color.RGBA{1, 2, 3, 255}
			v.Look.Above, v.Look.Below, v.Look.Shadow = ground, ground, 0
			var renderer solid.Renderer
			drawn := renderer.Draw(v)
			looked, differ := 0, 0
			for y := range v.Height {
				for x := range v.Width {
					want := drawn.RGBAAt(x, y)
					if want == ground || int(want.R)+int(want.G)+int(want.B) < 150 {
						continue // no bag, or its border
					}
					looked++
					if apart(pixel(picture, x+int(r.Left), y+int(r.Top)), want) > 10 {
						differ++
					}
				}
			}
			if share := float64(differ) / float64(looked); looked < 20000 || share > 0.1 {
				t.Errorf("%.1f %% of %d pixels of the bag differ", 100*share, looked)
			}
		})
	}
}

// likeness returns the share of pixels of the room that look alike in two pictures.
func likeness(a, b image.Image, r room) float64 {
	same, all := 0, 0
	for y := int(r.Top); y < int(r.Top+r.Height); y++ {
		for x := int(r.Left); x < int(r.Left+r.Width); x++ {
			all++
			if apart(pixel(a, x, y), pixel(b, x, y)) <= 12 {
				same++
			}
		}
	}
	return float64(same) / float64(all)
}

// Mouse, fingers, keys and links turn the bag: afterwards the page shows what it shows
// when it is opened at the view where that should end.
func TestHandsTurnTheBag(t *testing.T) {
	b := openBrowser(t, true)
	page := written(t, jobOf(teaBag(), 2, quadrants).page)
	degrees := func(pixels float64) float64 { return pixels * 0.008 * 180 / math.Pi } // as in the script
	slant := fmt.Sprintf("#view=45,%g", math.Atan(math.Sqrt2/2)*180/math.Pi)
	b.screen(880, 520, 1, "light")
	b.call("Emulation.setTouchEmulationEnabled", map[string]any{"enabled": true, "maxTouchPoints": 2}, nil)
	b.open(page, "")
	tests := []struct {
		name, from string
		act        func(x, y float64)
		to         string
		moves      bool
		fresh      bool // on a page just opened
	}{
		{"nothing", "", func(x, y float64) {}, slant, false, true},
		{"a link to a view", "#view=back", func(x, y float64) {}, "#view=180,0", false, true},
		{"nonsense for a view", "#view=1e999,x", func(x, y float64) {}, slant, false, true},
		{"dragged to the left", "#view=front", func(x, y float64) { b.drag(x+50, y, x-50, y) }, fmt.Sprintf("#view=%g,0", degrees(100)), true, false},
		{"dragged down", "#view=front", func(x, y float64) { b.drag(x, y-40, x, y+40) }, fmt.Sprintf("#view=0,%g", degrees(80)), true, false},
		{"dragged beyond the top", "#view=front", func(x, y float64) {
			b.drag(x, y-150, x, y+150)
			b.drag(x, y-150, x, y+150)
		}, "#view=above", true, false},
		{"one finger", "#view=right", func(x, y float64) {
			b.touch("touchStart", [2]float64{x, y})
			b.touch("touchMove", [2]float64{x + 30, y})
			b.touch("touchMove", [2]float64{x + 60, y})
			b.touch("touchEnd")
		}, fmt.Sprintf("#view=%g,0", 90-degrees(60)), true, false},
		{"two fingers", "#view=front", func(x, y float64) {
			b.touch("touchStart", [2]float64{x - 40, y}, [2]float64{x + 40, y})
			for _, apart := range []float64{50, 60, 70, 80} {
				b.touch("touchMove", [2]float64{x - apart, y}, [2]float64{x + apart, y})
			}
			b.touch("touchEnd")
		}, "#view=0,0,2", true, false},
		{"tapped twice", "#view=back", func(x, y float64) {
			for range 2 {
				b.touch("touchStart", [2]float64{x, y})
				b.touch("touchEnd")
			}
		}, slant, true, false},
		{"the wheel", "#view=front", func(x, y float64) {
			b.call("Input.dispatchMouseEvent", map[string]any{"type": "mouseWheel", "x": x, "y": y, "deltaX": 0, "deltaY": -200}, nil)
		}, fmt.Sprintf("#view=0,0,%g", math.Exp(0.4)), true, false},
		{"arrow keys", "#view=front", func(x, y float64) {
			b.key("Tab")
			for _, name := range []string{"ArrowRight", "ArrowRight", "ArrowUp"} {
				b.key(name)
			}
			b.evaluate(`document.activeElement.blur()`, nil)
		}, "#view=15,7.5", true, true},
		{"Home", "#view=back", func(x, y float64) {
			b.key("Tab")
			b.key("Home")
			b.evaluate(`document.activeElement.blur()`, nil)
		}, slant, true, true},
		{"a link clicked", "#view=front", func(x, y float64) {
			b.evaluate(`document.querySelector('a[href="#view=left"]').click()`, nil)
		}, "#view=-90,0", true, false},
		{"a link clicked again", "#view=front", func(x, y float64) {
			b.drag(x, y, x+90, y)
			b.evaluate(`document.querySelector('a[href="#view=front"]').click()`, nil)
		}, "#view=0,0", false, false},
		{"the card lost and found", "#view=front", func(x, y float64) {
			b.evaluate(`new Promise((done) => {
				const canvas = document.getElementById("bag"), card = canvas.getContext("webgl").getExtension("WEBGL_lose_context");
				canvas.addEventListener("webglcontextrestored", () => setTimeout(done, 50));
				canvas.addEventListener("webglcontextlost", () => setTimeout(() => card.restoreContext(), 50));
				card.loseContext();
			})`, nil)
		}, "#view=0,0", false, true},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			b.t = t
			if test.fresh {
				b.open(page, test.from)
			} else {
				b.look(test.from)
			}
			r, before := b.room(), b.shot()
			test.act(r.middle())
			after := b.shot()
			b.look(test.to)
			if like := likeness(after, b.shot(), r); like < 0.985 {
				t.Errorf("%.1f %% of the picture are as at %s", 100*like, test.to)
			}
			if like := likeness(before, after, r); test.moves && like > 0.97 {
				t.Errorf("%.1f %% of the picture are as before", 100*like)
			}
		})
	}
}

// Small print on the face can be read when the picture is zoomed: lines half a mm
// wide on a blank of 4 pixels to the mm stay apart, dark and light.
func TestSmallPrintStaysSharp(t *testing.T) {
	const pitch, width = 1.5, 0.5 // mm
	stripes := func(piece *blank.Piece, scale float64) *image.RGBA {
		picture := quadrants(piece, scale)
		for y := range picture.Rect.Dy() {
			for x := range picture.Rect.Dx() {
				c := color.RGBA{255, 255, 255, 255}
				if math.Mod((float64(x)+0.5)/scale, pitch) < width {
					c = color.RGBA{20, 20, 20, 255}
				}
				picture.SetRGBA(x, y, c)
			}
		}
		return picture
	}
	spec := teaBag()
	spec.Handle.Kind = bag.HandleNone
	j := jobOf(spec, 4, stripes)
	b := openBrowser(t, true)
	b.screen(880, 520, 1, "light")
	b.open(written(t, j.page), "#view=0,0,4")
	r, picture := b.room(), b.shot()
	v := j.view
	v.Width, v.Height, v.Camera = int(r.Width), int(r.Height), solid.Camera{Zoom: 4}
	y, looked := v.Height/2, 0
	for x := v.Width/2 - 120; x < v.Width/2+120; x++ {
		hit, _ := v.Pick(float64(x)+0.5, float64(y)+0.5)
		phase := math.Mod(hit.Place.At.X, pitch)
		got := pixel(picture, x+int(r.Left), y+int(r.Top))
		half := 0.5 / v.Scale() // mm, of a pixel
		switch {
		case phase > half && phase < width-half-0.12 && got.R > 110:
			t.Fatalf("pixel %d, %.2f mm into a dark line: %v", x, phase, got)
		case phase > width+half+0.25 && phase < pitch-half-0.25 && got.R < 190:
			t.Fatalf("pixel %d, %.2f mm into a light gap: %v", x, phase-width, got)
		case phase > width+half+0.25:
			looked++
		}
	}
	if looked < 50 {
		t.Errorf("only %d pixels looked at", looked)
	}
}
