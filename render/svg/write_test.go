package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/scene"
	"gussetwright/render/svg"
)

func TestGolden(t *testing.T) {
	file := written(t, sample(), second())
	geomtest.Golden(t, "svg/sample.svg", file)
	if !bytes.Equal(file, written(t, sample(), second())) {
		t.Error("written twice, the files differ")
	}
}

// file is what the tests read of an SVG document.
type file struct {
	XMLName xml.Name `xml:"http://www.w3.org/2000/svg svg"`
	Width   string   `xml:"width,attr"`
	Height  string   `xml:"height,attr"`
	ViewBox string   `xml:"viewBox,attr"`
	Title   string   `xml:"title"`
	Desc    string   `xml:"desc"`
	Groups  []struct {
		ID    string `xml:"id,attr"`
		Class string `xml:"class,attr"`
		Group string `xml:"data-iso-19593-1-group,attr"`
		Type  string `xml:"data-iso-19593-1-type,attr"`
		Color string `xml:"stroke,attr"`
		Title string `xml:"title"`
		Paths []struct {
			D     string `xml:"d,attr"`
			Width string `xml:"stroke-width,attr"`
			Dash  string `xml:"stroke-dasharray,attr"`
		} `xml:"path"`
		Circles []struct {
			X string `xml:"cx,attr"`
			Y string `xml:"cy,attr"`
			R string `xml:"r,attr"`
		} `xml:"circle"`
		Texts []struct {
			Anchor string `xml:"text-anchor,attr"`
			Turn   string `xml:"transform,attr"`
			Weight string `xml:"font-weight,attr"`
			Text   string `xml:",chardata"`
		} `xml:"text"`
	} `xml:"g"`
}

func parsed(t *testing.T, text []byte) file {
	t.Helper()
	var got file
	if err := xml.Unmarshal(text, &got); err != nil {
		t.Fatal(err)
	}
	return got
}

func TestDocument(t *testing.T) {
	got := parsed(t, written(t, sample(), second(), second()))
	if got.Width != "260mm" || got.Height != "100mm" || got.ViewBox != "0 0 260 100" {
		t.Errorf("size %s × %s, viewBox %q; want 260mm × 100mm, 0 0 260 100", got.Width, got.Height, got.ViewBox)
	}
	if got.Title != "Sample <&> trial, Second" || got.Desc != "millimetres, true scale" {
		t.Errorf("title %q, description %q", got.Title, got.Desc)
	}
}

func TestGroups(t *testing.T) {
	got := parsed(t, written(t, sample(), second()))
	var rows []string
	for _, g := range got.Groups {
		if g.Class != g.ID {
			t.Errorf("group %s has the class %s", g.ID, g.Class)
		}
		rows = append(rows, strings.Join([]string{g.ID, g.Title, g.Group, g.Type, g.Color}, " "))
	}
	want := []string{
		"gluing Gluing Structural Gluing #768126",
		"dimensions Dimensions Dimensions  #4e5863",
		"legend Legend Legend  #1f2933",
		"creasing Creasing Structural Creasing #0a787d",
		"reverse-creasing ReverseCreasing Structural ReverseCreasing #be5514",
		"punching Punching Structural Punching #2c4296",
		"cutting Cutting Structural Cutting #5c164e",
	}
	if !slices.Equal(rows, want) {
		t.Errorf("groups\ngot  %q\nwant %q", rows, want)
	}
}

// TestShapes checks coordinates by hand: x grows by 10 and y counts down from 90.
func TestShapes(t *testing.T) {
	got := parsed(t, written(t, sample(), second()))
	legend, crease, punching, cutting := got.Groups[2], got.Groups[4], got.Groups[5], got.Groups[6]
	checks := []struct{ name, got, want string }{
		{"outline", cutting.Paths[0].D, "M 10 90 L 110 90 L 110 10 L 10 10 Z"},
		{"slot", cutting.Paths[1].D, "M 50 30 L 70 30 A 5 5 0 0 0 75 25 A 5 5 0 0 0 70 20 L 50 20 A 5 5 0 0 0 45 25 A 5 5 0 0 0 50 30 Z"},
		{"second piece", cutting.Paths[3].D, "M 145 90 L 185 90 L 185 60 L 145 60 Z"},
		{"width", cutting.Paths[2].Width, "0.5"},
		{"crease", crease.Paths[0].D, "M 10 86.6667 L 110 86.6667"},
		{"dashes", crease.Paths[0].Dash, "8 4"},
		{"hole", fmt.Sprint(punching.Circles[0]), "{30 15 2.5}"},
		{"label", legend.Texts[0].Text, `Größe 纸 <&> "a"`},
		{"label turned left", legend.Texts[0].Turn, "rotate(-90 8 80)"},
		{"bold label", legend.Texts[0].Weight, "bold"},
		{"centred label", got.Groups[1].Texts[0].Anchor, "middle"},
	}
	for _, c := range checks {
		if c.got != c.want {
			t.Errorf("%s: got %q, want %q", c.name, c.got, c.want)
		}
	}
}

// TestNumbers checks that no number has more than four decimals, a trailing zero
// or a sign before zero.
func TestNumbers(t *testing.T) {
	drawing := sample()
	for i := range 50 {
		angle := float64(i)
		path := geometry.Polygon(geometry.Polar(1e-5, angle), geometry.Polar(7, angle), geometry.Polar(9, angle+1))
		drawing.Items = append(drawing.Items, scene.Stroke{Role: scene.Legend, Path: path.Translate(geometry.Vec2{X: -10, Y: 90}), Width: 0.13})
	}
	_, text, _ := strings.Cut(string(written(t, drawing)), "?>")
	wrong := regexp.MustCompile(`\.\d{5}|\.\d*0["\s]|-0["\s]`)
	if found := wrong.FindString(text); found != "" {
		t.Errorf("a number ends with %q", found)
	}
}

// TestNothingToDraw checks that paths without edges are left out.
func TestNothingToDraw(t *testing.T) {
	drawing := second()
	drawing.Items = []scene.Item{scene.Stroke{Role: scene.Cutting}, scene.Fill{Role: scene.Cutting}}
	got := parsed(t, written(t, drawing))
	if len(got.Groups) != 1 || len(got.Groups[0].Paths) != 0 {
		t.Errorf("something was drawn: %+v", got.Groups)
	}
}

func TestErrors(t *testing.T) {
	cases := []struct {
		name string
		item scene.Item
		says string
	}{
		{"fill", scene.Fill{Role: scene.Legend, Path: geometry.Polygon(geometry.Vec2{X: math.NaN()})}, "x is NaN"},
		{"circle", scene.Stroke{Role: scene.Legend, Path: geometry.Circle(geometry.Vec2{}, math.Inf(1))}, "x is +Inf"},
		{"label", scene.Label{Role: scene.Legend, Size: 3, Turn: math.NaN()}, "turn is NaN"},
		{"role", scene.Label{Role: 99, Size: 3}, "role 99 is not known"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			drawing := second()
			drawing.Items = append(drawing.Items, c.item)
			var out bytes.Buffer
			err := svg.Write(&out, []scene.Drawing{drawing})
			if err == nil || !strings.HasPrefix(err.Error(), "write SVG: ") || !strings.Contains(err.Error(), c.says) {
				t.Errorf("got the error %v, want one that says %q", err, c.says)
			}
			if out.Len() > 0 {
				t.Error("something was written before the error")
			}
		})
	}
	if err := svg.Write(&bytes.Buffer{}, nil); err == nil {
		t.Error("no drawings: no error")
	}
}

// fullDisk is a writer that takes nothing more.
type fullDisk struct{ error }

func (d fullDisk) Write([]byte) (int, error) { return 0, d.error }

func TestWriterFails(t *testing.T) {
	full := errors.New("disk full")
	if err := svg.Write(fullDisk{full}, []scene.Drawing{second()}); !errors.Is(err, full) {
		t.Errorf("got the error %v, want %v", err, full)
	}
}

func ExampleWrite() {
	drawing := scene.Drawing{
		Title: "Card",
		Media: geometry.RectAt(-10, -10, 120, 80),
		Items: []scene.Item{
			scene.Stroke{Role: scene.Cutting, Path: geometry.RectAt(0, 0, 100, 60).Path(), Width: 0.35},
		},
	}
	if err := svg.Write(os.Stdout, []scene.Drawing{drawing}); err != nil {
		fmt.Println(err)
	}
	// Output:
	// <?xml version="1.0" encoding="UTF-8"?>
	// <svg xmlns="http://www.w3.org/2000/svg" version="1.1" width="120mm" height="80mm" viewBox="0 0 120 80">
	// <title>Card</title>
	// <desc>millimetres, true scale</desc>
	// <g id="cutting" class="cutting" data-iso-19593-1-group="Structural" data-iso-19593-1-type="Cutting" fill="none" stroke="#5c164e" stroke-linecap="butt" stroke-linejoin="round">
	// <title>Cutting</title>
	// <desc>cut edge</desc>
	// <path d="M 10 70 L 110 70 L 110 10 L 10 10 Z" stroke-width="0.35"/>
	// </g>
	// </svg>
}

func BenchmarkWrite(b *testing.B) {
	drawing := sample()
	for len(drawing.Items) < 1000 {
		drawing.Items = append(drawing.Items, sample().Items...)
	}
	pieces := []scene.Drawing{drawing, drawing}
	var out bytes.Buffer
	for b.Loop() {
		out.Reset()
		if err := svg.Write(&out, pieces); err != nil {
			b.Fatal(err)
		}
	}
	b.SetBytes(int64(out.Len()))
}
