package pdf

import (
	"bytes"
	"errors"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

func TestSameDrawingsGiveTheSameBytes(t *testing.T) {
	first := produce(t, pages(), true)
	if !bytes.Equal(produce(t, pages(), true), first) {
		t.Error("the second file differs from the first")
	}
	// Only the day counts.
	var later bytes.Buffer
	info := day
	info.Date = info.Date.Add(3 * time.Hour)
	if err := Write(&later, pages(), info); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(later.Bytes(), first) {
		t.Error("the time of day changes the file")
	}
}

func TestIdentifierFollowsTheContent(t *testing.T) {
	identifier := regexp.MustCompile(`/ID \[<([0-9A-F]{32})> <([0-9A-F]{32})>\]`)
	seen := map[string]bool{}
	for _, pages := range [][]scene.Drawing{pages(), pages()[:1], {busy()}} {
		found := identifier.FindSubmatch(produce(t, pages, true))
		if found == nil || !bytes.Equal(found[1], found[2]) {
			t.Fatalf("identifier is %s", found)
		}
		seen[string(found[1])] = true
	}
	if len(seen) != 3 {
		t.Errorf("three documents have %d identifiers", len(seen))
	}
}

func TestNamesOfPlates(t *testing.T) {
	// Names that a spot colour must not have (ISO 32000-1, 8.6.6.4 for All and
	// None; the process inks by common practice, no published source).
	reserved := []string{"All", "None", "Cyan", "Magenta", "Yellow", "Black"}
	for _, role := range scene.Roles() {
		if slices.Contains(reserved, role.Style().Name) {
			t.Errorf("the spot colour of role %d is called %s", int(role), role)
		}
	}
}

// spoil returns two pages of which the second is changed.
func spoil(change func(page *scene.Drawing)) []scene.Drawing {
	list := pages()
	change(&list[1])
	return list
}

func withItem(item scene.Item) []scene.Drawing {
	return spoil(func(page *scene.Drawing) { page.Items = []scene.Item{item} })
}

func TestBadDrawings(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	ink := &scene.CMYK{C: 1}
	square := geometry.RectAt(0, 0, 10, 10).Path()
	bulged := func(bulge float64) geometry.Path {
		return geometry.Path{Vertices: []geometry.Vertex{{Bulge: bulge}, {Vec2: geometry.Vec2{X: 5000}}}}
	}
	cut := func(path geometry.Path, width float64, dash ...float64) []scene.Drawing {
		return withItem(scene.Stroke{Role: scene.Cutting, Path: path, Width: width, Dash: dash})
	}
	cases := []struct {
		name  string
		pages []scene.Drawing
		want  string // part of the message
	}{
		{"no page", nil, "no page"},
		{"no items", spoil(func(p *scene.Drawing) { p.Items = nil }), "page 2 (Back · piece 2): there is nothing to draw"},
		{"zero page", []scene.Drawing{{Items: page("").Items}}, "the media box is 0 × 0 mm"},
		{"NaN page", spoil(func(p *scene.Drawing) { p.Media.Max.X = nan }), "media box: NaN"},
		{"endless trim", spoil(func(p *scene.Drawing) { p.Trim.Max.X = inf }), "trim box: +Inf"},
		{"inside out", spoil(func(p *scene.Drawing) { p.Trim.Min, p.Trim.Max = p.Trim.Max, p.Trim.Min }), "must have an area"},
		{"trim sticks out", spoil(func(p *scene.Drawing) { p.Trim.Max.X += 4 }), "sticks out of the bleed box, (-3, -3) to (303, 203) mm"},
		{"bleed sticks out", spoil(func(p *scene.Drawing) { p.Bleed.Min.Y -= 30 }), "sticks out of the media box"},
		{"page too large", spoil(func(p *scene.Drawing) { p.Media.Max.X = p.Media.Min.X + 5080.1 }), "a side of the page is 5080.1 mm"},
		{"page too small", []scene.Drawing{{Media: geometry.RectAt(0, 0, 1, 1), Bleed: geometry.RectAt(0, 0, 1, 1), Trim: geometry.RectAt(0, 0, 1, 1), Items: page("").Items}}, "a side of the page is 1 mm"},
		{"NaN vertex", cut(geometry.Polygon(geometry.Vec2{X: nan}, geometry.Vec2{X: 1}), 0.3), "page 2 (Back · piece 2): item 1: line on layer Cutting: vertex: NaN"},
		{"far away", cut(geometry.Polygon(geometry.Vec2{X: 2e4}, geometry.Vec2{X: 1}), 0.3), "vertex: 20000"},
		{"NaN bulge", cut(bulged(nan), 0.3), "bulge: NaN"},
		{"endless bulge", cut(bulged(inf), 0.3), "bulge: +Inf"},
		{"huge arc", cut(bulged(3), 0.3), "arc: 15000"},
		{"no vertices", cut(geometry.Path{}, 0.3), "no edge"},
		{"one vertex", cut(geometry.Path{Vertices: make([]geometry.Vertex, 1)}, 0.3), "no edge"},
		{"no width", cut(square, 0), "width of 0 mm"},
		{"NaN width", cut(square, nan), "width of NaN mm"},
		{"negative dash", cut(square, 0.3, 2, -1), "dash of -1 mm"},
		{"dashes of nothing", cut(square, 0.3, 0, 0), "dashes of 0 mm in all"},
		{"NaN dash", cut(square, 0.3, nan), "dash: NaN"},
		{"empty area", withItem(scene.Fill{Role: scene.Gluing}), "area on layer Gluing: the path has no edge"},
		{"ink on a step", withItem(scene.Fill{Role: scene.Gluing, Path: square, Ink: ink}), "leave the ink out"},
		{"artwork without ink", withItem(scene.Fill{Path: square}), "give the area an ink"},
		{"too much ink", withItem(scene.Fill{Path: square, Ink: &scene.CMYK{K: 1.5}}), "ink of 1.5"},
		{"NaN ink", withItem(scene.Fill{Path: square, Ink: &scene.CMYK{K: nan}}), "ink of NaN"},
		{"artwork line", withItem(scene.Stroke{Path: square, Width: 1}), "line on layer Artwork"},
		{"artwork label", withItem(scene.Label{Text: "a", Size: 3}), "label on layer Artwork"},
		{"no size", withItem(scene.Label{Role: scene.Legend, Text: "a"}), "size of 0 mm"},
		{"NaN direction", withItem(scene.Label{Role: scene.Legend, Text: "a", Size: 3, Turn: nan}), "direction: NaN"},
		{"NaN place", withItem(scene.Label{Role: scene.Legend, Text: "a", Size: 3, At: geometry.Vec2{Y: nan}}), "place: NaN"},
		{"no item", withItem(nil), "a <nil> can't be drawn"},
		{"pointer", withItem(&scene.Label{Role: scene.Legend}), "a *scene.Label can't be drawn"},
		{"no such role", withItem(scene.Label{Role: 99, Text: "a", Size: 3}), "label of role 99"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			var out bytes.Buffer
			err := Write(&out, c.pages, day)
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error is %v, want one with %q", err, c.want)
			}
			if out.Len() > 0 {
				t.Errorf("%d bytes are written all the same", out.Len())
			}
		})
	}
}

func TestBadDates(t *testing.T) {
	for _, date := range []time.Time{{}, time.Date(12026, 1, 1, 0, 0, 0, 0, time.UTC), time.Date(-5, 1, 1, 0, 0, 0, 0, time.UTC)} {
		if err := Write(&bytes.Buffer{}, pages(), Info{Title: "a", Date: date}); err == nil || !strings.Contains(err.Error(), "date") {
			t.Errorf("date %v: error is %v", date, err)
		}
	}
}

var errFull = errors.New("disk full")

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errFull }

func TestFailedWriteIsReported(t *testing.T) {
	if err := Write(fullDisk{}, pages(), day); !errors.Is(err, errFull) {
		t.Errorf("error is %v, want %v", err, errFull)
	}
}

// Whatever the numbers and the text, the result is an error or a file that has
// only plain numbers in it and comes out the same again.
func FuzzWrite(f *testing.F) {
	f.Add("240 × 360 mm", 1.0, 2.0, 0.4, 0.3)
	f.Add("\x00\xff漢", math.NaN(), -1e300, 1e300, 0.0)
	f.Add("", 0.0, 0.0, math.Inf(-1), 5e-324)
	f.Add("(a) \\", 9999.0, -9999.0, -0.5, 1e-9)
	f.Fuzz(func(t *testing.T, words string, x, y, bulge, size float64) {
		drawing := page(words)
		drawing.Items = append(drawing.Items,
			scene.Stroke{Role: scene.Cutting, Width: size, Dash: []float64{size, y}, Path: geometry.Path{Vertices: []geometry.Vertex{{Vec2: geometry.Vec2{X: x, Y: y}, Bulge: bulge}, {}}}},
			scene.Label{Role: scene.Legend, Text: words, Size: size, At: geometry.Vec2{X: x, Y: y}, Turn: bulge},
			scene.Placed{Form: quadrants(), At: at(x, y, bulge, size, y, x), Copies: []geometry.Vec2{{X: size}}, Opacity: size},
		)
		info := Info{Title: words, Date: day.Date}
		var first, second bytes.Buffer
		if err := Write(&first, []scene.Drawing{drawing}, info); err != nil {
			return
		}
		c := content{fonts: newFonts(), forms: newForms(&file{})}
		for _, role := range scene.Roles() {
			c.layer(role, itemsOf(drawing, role))
		}
		if bytes.Contains(c.data, []byte("NaN")) || bytes.Contains(c.data, []byte("Inf")) {
			t.Error("the content holds a number that is none")
		}
		if err := Write(&second, []scene.Drawing{drawing}, info); err != nil || !bytes.Equal(first.Bytes(), second.Bytes()) {
			t.Errorf("the second file differs (%v)", err)
		}
	})
}

func BenchmarkWrite(b *testing.B) {
	pages := []scene.Drawing{busy()}
	for b.Loop() {
		var out bytes.Buffer
		if err := Write(&out, pages, day); err != nil {
			b.Fatal(err)
		}
	}
}
