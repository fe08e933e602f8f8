package vector

import (
	"context"
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"gussetwright/geometry"
)

// TestBySpecification looks at single places of drawings. The rule of the standard
// stands with each case (numbers of sections from memory); a drawing is 100 mm square and a millimetre is 4 pixels.
func TestBySpecification(t *testing.T) {
	const red, green, blue, clear, black = "ff0000ff", "00ff00ff", "0000ffff", "00000000", "000000ff"
	type look struct {
		x, y float64
		want string
	}
	cases := []struct {
		rule, inside string
		looks        []look
	}{
		{"SVG 2, 13.4: paints as given, y down", `<rect x="10" y="10" width="20" height="5" fill="red"/>`, []look{{20, 12, red}, {20, 16, clear}, {20, 87, clear}}},
		{
			"CSS Masking 1, 3.5: a clipPath is clipped by its own clip-path", `<clipPath id="a" clip-path="url(#b)"><rect width="50" height="100"/></clipPath><clipPath id="b"><rect width="100" height="50"/></clipPath><rect width="100" height="100" fill="red" clip-path="url(#a)"/>`,
			[]look{{25, 25, red}, {75, 25, clear}, {25, 75, clear}, {75, 75, clear}},
		},
		{
			"CSS Masking 1, 3.5: children that are not shown do not clip", `<clipPath id="a"><rect width="50" height="50" visibility="hidden"/><rect x="50" width="50" height="50" display="none"/><rect y="50" width="50" height="50"/></clipPath><rect width="100" height="100" fill="red" clip-path="url(#a)"/>`,
			[]look{{25, 25, clear}, {75, 25, clear}, {25, 75, red}},
		},
		{"CSS Masking 1, 3.5: a clipPath without children hides all", `<clipPath id="a"/><rect width="100" height="100" fill="red" clip-path="url(#a)"/>`, []look{{50, 50, clear}}},
		{"CSS Masking 1, 3.5: use of a shape clips", `<defs><rect id="r" width="20" height="20"/></defs><clipPath id="a"><use href="#r" x="40" y="40"/></clipPath><rect width="100" height="100" fill="red" clip-path="url(#a)"/>`, []look{{50, 50, red}, {30, 50, clear}, {70, 50, clear}}},
		{"SVG 2, 2.14: symbols hide what overflows them", `<symbol id="s" viewBox="0 0 10 10"><rect x="-5" y="-5" width="20" height="20" fill="red"/></symbol><use href="#s" x="40" y="40" width="20" height="20"/>`, []look{{50, 50, red}, {35, 50, clear}, {65, 50, clear}}},
		{"SVG 2, 5.5: a use may give a symbol one side only", `<symbol id="s" width="20" height="20" preserveAspectRatio="none" viewBox="0 0 1 1"><rect width="1" height="1" fill="red"/></symbol><use href="#s" height="60"/>`, []look{{10, 55, red}, {25, 10, clear}, {10, 65, clear}}},
		{"SVG 2, 2.14: unless they say otherwise", `<symbol id="s" viewBox="0 0 10 10" overflow="visible"><rect x="-5" y="-5" width="20" height="20" fill="red"/></symbol><use href="#s" x="40" y="40" width="20" height="20"/>`, []look{{50, 50, red}, {35, 50, red}, {65, 50, red}}},
		{"SVG 2, 8.13: strokes that keep their width", `<g transform="scale(10 1)"><path d="M0 50h10" vector-effect="non-scaling-stroke" stroke="red" stroke-width="37.7953"/></g>`, []look{{50, 45.5, red}, {50, 44, clear}, {50, 54.5, red}, {50, 56, clear}}},
		{"SVG 2, 13.2: a missing gradient gives way to the colour after it", `<rect width="100" height="50" fill="url(#a) red"/><rect y="50" width="100" height="50" fill="url(#a)"/>`, []look{{50, 25, red}, {50, 75, clear}}},
		{"SVG 2, 14.2.3: one stop is one colour; no stops are no paint", `<linearGradient id="a"><stop stop-color="red"/></linearGradient><linearGradient id="b"/><rect width="100" height="50" fill="url(#a)"/><rect y="50" width="100" height="50" fill="url(#b)"/>`, []look{{50, 25, red}, {50, 75, clear}}},
		{"SVG 2, 14.2.2: a line without length is the last colour", `<linearGradient id="a" x2="0"><stop stop-color="red"/><stop offset="1" stop-color="#0f0"/></linearGradient><rect width="100" height="50" fill="url(#a)"/>`, []look{{50, 25, green}}},
		{"SVG 2, 14.2.4: offsets never go back", `<linearGradient id="a"><stop offset=".5" stop-color="red"/><stop offset=".2" stop-color="#0f0"/></linearGradient><rect width="100" height="50" fill="url(#a)"/>`, []look{{48, 25, red}, {52, 25, green}}},
		{"SVG 2, 14.2.2: pads with the colours of the ends", `<linearGradient id="a" x1=".4" x2=".6"><stop stop-color="red"/><stop offset="1" stop-color="#00f"/></linearGradient><rect width="100" height="50" fill="url(#a)"/>`, []look{{10, 25, red}, {90, 25, blue}}},
		{"SVG 2, 13.4: a circle in a circle by both rules", `<path d="M0 0h40v40h-40zM10 10h20v20h-20z" fill="red"/><path fill-rule="evenodd" d="M50 0h40v40h-40zM60 10h20v20h-20z" fill="red"/>`, []look{{20, 20, red}, {70, 20, clear}, {55, 5, red}}},
		{"CSS Cascade 4, 6: style over rules over attributes; important over all", `<style>rect{fill:red}#b{fill:#00f!important}</style><rect width="30" height="9" fill="#0f0"/><rect y="10" width="30" height="9" style="fill:#0f0"/><rect id="b" y="20" width="30" height="9" style="fill:#0f0"/>`, []look{{5, 5, red}, {5, 15, green}, {5, 25, blue}}},
		{"SVG 2, 6.2: opacity is not taken over, fill is", `<g fill="red" opacity=".5"><rect width="50" height="50"/></g>`, []look{{25, 25, "80000080"}}},
		{"CSS Color 4, 9: currentColor is that of where it is used", `<g color="red" fill="currentColor"><rect width="50" height="50"/><rect x="50" width="50" height="50" color="#0f0"/></g>`, []look{{25, 25, red}, {75, 25, green}}},
		{"SVG 2, 5.5: style comes from around the use", `<defs><rect id="r" width="20" height="20"/></defs><use href="#r" fill="red"/><g fill="#0f0"><use href="#r" x="40"/></g>`, []look{{10, 10, red}, {50, 10, green}}},
		{"SVG 2, 5.2: viewports may lie in each other", `<svg x="50" y="50" width="50" height="50" viewBox="0 0 10 10"><rect width="5" height="20" fill="red"/></svg>`, []look{{60, 60, red}, {85, 60, clear}, {60, 99, red}, {40, 60, clear}}},
		{"SVG 2, 10.2: a missing rounding is as the other", `<rect width="40" height="40" rx="20" fill="red"/>`, []look{{2, 2, clear}, {20, 20, red}, {5, 20, red}}},
		{"SVG 2, 13.5: no join in the plain of a bevel", `<path d="M20 50L60 50L20 50" fill="none" stroke="red" stroke-width="20"/>`, []look{{55, 50, red}, {65, 50, clear}}},
		{"SVG 2, 13.5: round ends reach over", `<path d="M20 50H60" stroke-linecap="round" stroke="red" stroke-width="20"/>`, []look{{65, 50, red}, {12, 50, red}, {68.5, 57, clear}}},
		{"SVG 2, 13.5: an odd number of dashes is run through twice", `<path d="M0 10H100" stroke="red" stroke-width="4" stroke-dasharray="20 10 5"/>`, []look{{10, 10, red}, {25, 10, clear}, {32, 10, red}, {45, 10, clear}, {60, 10, red}, {67, 10, clear}, {75, 10, red}}},
		{"SVG 2, 13.9: the stroke may lie below", `<path d="M40 20h20v20h-20z" fill="red" stroke="#0f0" stroke-width="10" paint-order="stroke"/>`, []look{{42, 22, red}, {38, 22, green}}},
		{"SVG 2, 7.4: what is flattened is not shown", `<g transform="scale(1 0)"><rect width="100" height="100" fill="red" stroke="red" stroke-width="50"/></g>`, []look{{50, 50, clear}, {50, 0.2, clear}}},
		{"CSS Color 5, 15: inks look like print, and black is black enough", `<rect width="50" height="50" fill="device-cmyk(0 0 0 0)"/><rect x="50" width="50" height="50" fill="#f00 device-cmyk(1 1 1 1)"/>`, []look{{25, 25, "ffffffff"}, {75, 25, "0a0908ff"}}},
		{"SVG 1.1, 14.3: nothing is drawn of definitions", `<defs><rect width="100" height="100" fill="red"/></defs><clipPath><rect width="100" height="100"/></clipPath>`, []look{{50, 50, clear}}},
		{"SVG 2, 16.4: links are groups", `<a href="http://example.invalid"><rect width="50" height="50" fill="#000"/></a>`, []look{{25, 25, black}}},
	}
	for _, c := range cases {
		t.Run(c.rule, func(t *testing.T) {
			d := mustRead(t, head+`width="100mm" height="100mm" viewBox="0 0 100 100">`+c.inside+`</svg>`)
			picture, err := d.Render(context.Background(), 400, 400)
			if err != nil {
				t.Fatal(err)
			}
			for _, l := range c.looks {
				if got := hexOf(picture, int(4*l.x), int(4*l.y)); got != l.want {
					t.Errorf("%s at (%g, %g), want %s", got, l.x, l.y, l.want)
				}
			}
		})
	}
}

func hexOf(m *image.RGBA, x, y int) string {
	const digits = "0123456789abcdef"
	c := m.RGBAAt(x, y)
	var b strings.Builder
	for _, v := range [4]uint8{c.R, c.G, c.B, c.A} {
		b.WriteByte(digits[v>>4])
		b.WriteByte(digits[v&15])
	}
	return b.String()
}

// A picture of other proportions stretches the drawing.
func TestRenderStretches(t *testing.T) {
	d := mustRead(t, head+`width="100mm" height="100mm" viewBox="0 0 100 100"><rect x="50" y="50" width="50" height="50" fill="#f00"/></svg>`)
	picture, err := d.Render(context.Background(), 40, 10)
	if err != nil {
		t.Fatal(err)
	}
	full := color.RGBA{255, 0, 0, 255}
	if picture.RGBAAt(21, 6) != full || picture.RGBAAt(19, 6).A != 0 || picture.RGBAAt(21, 4).A != 0 {
		t.Error("the lower right quarter is not where it should be")
	}
}

// Edges of half a pixel leave half of the colour, also where shapes overlap.
func TestEdgesAreSmooth(t *testing.T) {
	d := mustRead(t, head+`width="10mm" height="10mm" viewBox="0 0 10 10"><path d="M2.5 2.25h5v5h-5z M2.5 2.25h5v5h-5z" fill="#000"/></svg>`)
	picture, err := d.Render(context.Background(), 10, 10)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		x, y int
		want uint8
	}{{5, 5, 255}, {2, 5, 128}, {7, 5, 128}, {5, 2, 191}, {5, 7, 64}, {2, 2, 96}, {1, 5, 0}} {
		if got := picture.RGBAAt(c.x, c.y).A; max(got, c.want)-min(got, c.want) > 1 {
			t.Errorf("pixel (%d, %d) has %d of 255, want %d", c.x, c.y, got, c.want)
		}
	}
}

// Drawings are upright: y goes up, the origin is the lower left corner.
func TestShapesAreInMillimetres(t *testing.T) {
	d := mustRead(t, head+`width="200mm" height="100mm" viewBox="0 0 20 10"><path d="M1 2h3v1z" stroke="#000"/></svg>`)
	figure := d.Shapes[0].(*Figure)
	if want := "M10,80L40,80L40,70Z"; spelled(figure.Path) != want {
		t.Errorf("the path is %s, want %s", spelled(figure.Path), want)
	}
	if math.Abs(figure.Stroke.Pen.Width-10) > 1e-9 || figure.Stroke.Plane != geometry.Identity() {
		t.Errorf("the stroke is %+v", figure.Stroke)
	}
}
