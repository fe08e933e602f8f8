package svg_test

import (
	"bytes"
	"image"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/scene"
)

// perMillimetre is how many pixels a millimetre of a test picture has: 254 dots
// in an inch of 25.4 mm.
const perMillimetre = 10

// picture returns the pieces as rsvg-convert, the program of librsvg, draws them
// on white.
func picture(t *testing.T, pieces ...scene.Drawing) image.Image {
	t.Helper()
	path := filepath.Join(t.TempDir(), "sample.svg")
	if err := os.WriteFile(path, written(t, pieces...), 0o644); err != nil {
		t.Fatal(err)
	}
	raster := geomtest.Run(t, "rsvg-convert", "--dpi-x=254", "--dpi-y=254", "--background-color=white", path)
	drawn, err := png.Decode(bytes.NewReader(raster))
	if err != nil {
		t.Fatal(err)
	}
	return drawn
}

// rgb returns the colour at a point of the row of pieces, whose pages reach from
// −10 to 90 in height and begin at −10.
func rgb(drawn image.Image, at geometry.Vec2) scene.RGB {
	x, y := int(math.Floor((at.X+10)*perMillimetre)), int(math.Floor((90-at.Y)*perMillimetre))
	r, g, b, _ := drawn.At(x, y).RGBA()
	return scene.RGB{R: uint8(r >> 8), G: uint8(g >> 8), B: uint8(b >> 8)}
}

func near(a, b scene.RGB) bool {
	apart := func(a, b uint8) bool { return math.Abs(float64(a)-float64(b)) > 40 }
	return !apart(a.R, b.R) && !apart(a.G, b.G) && !apart(a.B, b.B)
}

var paper = scene.RGB{R: 255, G: 255, B: 255}

func TestTrueScale(t *testing.T) {
	drawn := picture(t, sample(), second())
	want := image.Pt((120+20+50)*perMillimetre, 100*perMillimetre)
	if got := drawn.Bounds().Size(); got != want {
		t.Errorf("the picture has %v pixels, want %v", got, want)
	}
}

// TestEveryCut looks for the colour at five places of each edge that is cut.
// Cuts lie on top, so that nothing hides them.
func TestEveryCut(t *testing.T) {
	drawn := picture(t, sample(), second())
	for i, piece := range []scene.Drawing{sample(), second()} {
		move := geometry.Vec2{X: float64(i) * (110 + 20 + 5)}
		for _, item := range piece.Items {
			stroke, ok := item.(scene.Stroke)
			if !ok || stroke.Role != scene.Cutting {
				continue
			}
			for n := range stroke.Path.Len() {
				for _, share := range []float64{0.1, 0.3, 0.5, 0.7, 0.9} {
					at := along(stroke.Path.Edge(n), share)
					if got := rgb(drawn, at.Add(move)); !near(got, scene.Cutting.Style().Screen) {
						t.Errorf("piece %d, edge %d: %v at %v, want %v", i, n, got, at, scene.Cutting.Style().Screen)
					}
				}
			}
		}
	}
}

// along returns the point of an edge at a share of its length, turned about the
// point from which half the chord is seen under half the angle of the arc.
func along(edge geometry.Edge, share float64) geometry.Vec2 {
	if math.Abs(edge.Bulge) < 1e-6 {
		return edge.From.Add(edge.To.Sub(edge.From).Scale(share))
	}
	sweep := 4 * math.Atan(edge.Bulge)
	chord := edge.To.Sub(edge.From)
	center := edge.From.Mid(edge.To).Add(chord.Left().Scale(0.5 / math.Tan(sweep/2)))
	arm := edge.From.Sub(center)
	sin, cos := math.Sincos(sweep * share)
	return center.Add(geometry.Vec2{X: arm.X*cos - arm.Y*sin, Y: arm.X*sin + arm.Y*cos})
}

// TestPlaces looks at single points of the sample.
func TestPlaces(t *testing.T) {
	drawn := picture(t, sample(), second())
	cases := []struct {
		name string
		x, y float64
		want scene.RGB
	}{
		{"solid crease", 70, 47 + 10.0/3, scene.Creasing.Style().Screen},
		{"first dash of 8", 4, 10.0 / 3, scene.ReverseCreasing.Style().Screen},
		{"first gap of 4", 10, 10.0 / 3, paper},
		{"second dash", 16, 10.0 / 3, scene.ReverseCreasing.Style().Screen},
		{"second gap", 22, 10.0 / 3, paper},
		{"circle, right", 22.5, 75, scene.Punching.Style().Screen},
		{"circle, top", 20, 77.5, scene.Punching.Style().Screen},
		{"in the circle", 20, 75, paper},
		{"glue", 94.5, 5.5, scene.Gluing.Style().Screen},
		{"left of the glue", 79.8, 30, paper},
		{"filled circle", 5.8, 84, scene.Legend.Style().Screen},
		{"beside the cut", 100.4, 40, paper},
		{"between the pieces", 120, 10, paper},
	}
	for _, c := range cases {
		if got := rgb(drawn, geometry.Vec2{X: c.x, Y: c.y}); !near(got, c.want) {
			t.Errorf("%s: %v at (%g, %g), want %v", c.name, got, c.x, c.y, c.want)
		}
	}
}

// TestLabelsStand checks where labels leave ink: a turned one runs up to the left
// of its point and a centred one to both sides.
func TestLabelsStand(t *testing.T) {
	drawn := picture(t, sample())
	cases := []struct {
		name string
		area geometry.Rect
		ink  bool
	}{
		{"turned label, above its point", geometry.RectAt(-6, 10, 4, 20), true},
		{"turned label, below its point", geometry.RectAt(-8, 0, 7.5, 9.5), false},
		{"turned label, right of its baseline", geometry.RectAt(-0.8, 10, 0.5, 20), false},
		{"centred label, left half", geometry.RectAt(44, -4, 5, 3), true},
		{"centred label, right half", geometry.RectAt(51, -4, 5, 3), true},
	}
	for _, c := range cases {
		if got := hasInk(drawn, c.area); got != c.ink {
			t.Errorf("%s: ink is %t, want %t", c.name, got, c.ink)
		}
	}
}

func hasInk(drawn image.Image, area geometry.Rect) bool {
	for x := area.Min.X; x < area.Max.X; x += 1.0 / perMillimetre {
		for y := area.Min.Y; y < area.Max.Y; y += 1.0 / perMillimetre {
			if !near(rgb(drawn, geometry.Vec2{X: x, Y: y}), paper) {
				return true
			}
		}
	}
	return false
}
