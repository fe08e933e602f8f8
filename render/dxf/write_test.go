package dxf_test

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/dxf"
	"gussetwright/render/scene"
)

func TestGolden(t *testing.T) {
	file := written(t, sample(), second())
	geomtest.Golden(t, "dxf/sample.dxf", file)
	if !bytes.Equal(file, written(t, sample(), second())) {
		t.Error("written twice, the files differ")
	}
}

// tag is a group code with its value.
type tag struct {
	code  int
	value string
}

// tagsOf reads a file as the pairs of lines that it must be.
func tagsOf(t *testing.T, file []byte) []tag {
	t.Helper()
	if strings.Count(string(file), "\n") != strings.Count(string(file), "\r\n") {
		t.Error("some lines do not end in CR LF")
	}
	if i := slices.IndexFunc(file, func(b byte) bool { return b > 126 }); i >= 0 {
		t.Errorf("byte %d is not ASCII", i)
	}
	lines := strings.Split(strings.TrimSuffix(string(file), "\r\n"), "\r\n")
	if len(lines)%2 != 0 {
		t.Fatalf("%d lines are no pairs", len(lines))
	}
	var tags []tag
	for i := 0; i < len(lines); i += 2 {
		code, err := strconv.Atoi(strings.TrimSpace(lines[i]))
		if err != nil {
			t.Fatalf("line %d: %v", i+1, err)
		}
		tags = append(tags, tag{code, lines[i+1]})
	}
	return tags
}

// TestHandles checks that no two objects have the same handle, that every handle
// that is referred to exists, and that the one named as free is free.
func TestHandles(t *testing.T) {
	tags := tagsOf(t, written(t, sample(), second()))
	own := map[string]bool{}
	var seed string
	for i, tag := range tags {
		isSeed := i > 0 && tags[i-1].value == "$HANDSEED"
		switch {
		case isSeed:
			seed = tag.value
		case tag.code == 5 || tag.code == 105:
			if own[tag.value] {
				t.Errorf("two objects have the handle %s", tag.value)
			}
			own[tag.value] = true
		}
	}
	for _, tag := range tags {
		refers := slices.Contains([]int{330, 340, 350, 360, 390}, tag.code)
		if refers && tag.value != "0" && !own[tag.value] {
			t.Errorf("%d refers to %s, which does not exist", tag.code, tag.value)
		}
	}
	free, err := strconv.ParseUint(seed, 16, 64)
	if err != nil {
		t.Fatalf("$HANDSEED: %v", err)
	}
	for name := range own {
		if handle, err := strconv.ParseUint(name, 16, 64); err != nil || handle >= free {
			t.Errorf("handle %s is not below $HANDSEED %s (%v)", name, seed, err)
		}
	}
}

// TestSections checks the order of sections and tables against the list of the
// file format (DXF reference for AC1015: value from memory; ezdxf writes the same).
func TestSections(t *testing.T) {
	var sections, tables []string
	tags := tagsOf(t, written(t, second()))
	for i, tag := range tags {
		switch {
		case tag.code == 0 && tag.value == "SECTION":
			sections = append(sections, tags[i+1].value)
		case tag.code == 0 && tag.value == "TABLE":
			tables = append(tables, tags[i+1].value)
		}
	}
	if got, want := fmt.Sprint(sections), "[HEADER CLASSES TABLES BLOCKS ENTITIES OBJECTS]"; got != want {
		t.Errorf("sections %s, want %s", got, want)
	}
	if got, want := fmt.Sprint(tables), "[VPORT LTYPE LAYER STYLE VIEW UCS APPID DIMSTYLE BLOCK_RECORD]"; got != want {
		t.Errorf("tables %s, want %s", got, want)
	}
	if last := tags[len(tags)-1]; last != (tag{0, "EOF"}) {
		t.Errorf("the file ends with %v", last)
	}
}

// TestNothingToDraw checks that what has no length leaves no entity.
func TestNothingToDraw(t *testing.T) {
	drawing := second()
	point := geometry.Vertex{Vec2: geometry.Vec2{X: 5, Y: 5}, Bulge: 0.5}
	drawing.Items = []scene.Item{
		scene.Stroke{Role: scene.Cutting},
		scene.Fill{Role: scene.Cutting},
		scene.Stroke{Role: scene.Cutting, Path: geometry.Path{Vertices: []geometry.Vertex{point}, Closed: true}},
		scene.Stroke{Role: scene.Cutting, Path: geometry.Path{Vertices: []geometry.Vertex{point, point}}},
		scene.Stroke{Role: scene.Punching, Path: geometry.Circle(geometry.Vec2{}, 0)},
		scene.Label{Role: scene.Legend, Text: " ", Size: 3},
	}
	empty := drawing
	empty.Items = nil
	if got, want := written(t, drawing), written(t, empty); !bytes.Equal(got, want) {
		t.Errorf("something was drawn:\n%s", got)
	}
}

// TestCapitals checks the height of capitals against the font itself, Go Regular.
func TestCapitals(t *testing.T) {
	regular, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	metrics, err := regular.Metrics(nil, fixed.I(1000), font.HintingNone)
	if err != nil {
		t.Fatal(err)
	}
	tags := tagsOf(t, written(t, sample()))
	at := slices.Index(tags, tag{1, "100 mm"})
	height, err := strconv.ParseFloat(tags[at-1].value, 64)
	if err != nil || tags[at-1].code != 40 {
		t.Fatalf("before the text stands %v (%v)", tags[at-1], err)
	}
	want := 3.5 * float64(metrics.CapHeight) / 64 / 1000
	if math.Abs(height-want) > 0.01 {
		t.Errorf("text height %g, want the capitals of 3.5 mm Go Regular, %g", height, want)
	}
}

func TestErrors(t *testing.T) {
	stroke := func(x, y, bulge float64) scene.Item {
		return scene.Stroke{Role: scene.Cutting, Path: geometry.Path{Vertices: []geometry.Vertex{
			{Vec2: geometry.Vec2{X: x, Y: y}, Bulge: bulge}, {Vec2: geometry.Vec2{X: 1, Y: 1}},
		}}}
	}
	cases := []struct {
		name string
		item scene.Item
		says string
	}{
		{"x", stroke(math.NaN(), 0, 0), "x is NaN"},
		{"y", stroke(0, math.Inf(-1), 0), "y is -Inf"},
		{"bulge", stroke(0, 0, math.Inf(1)), "bulge is +Inf"},
		{"label", scene.Label{Role: scene.Legend, Text: "a", Size: math.NaN()}, "size is NaN"},
		{"kind", nil, "use a Stroke"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			drawing := second()
			drawing.Items = append(drawing.Items, c.item)
			var out bytes.Buffer
			err := dxf.Write(&out, []scene.Drawing{drawing})
			if err == nil || !strings.HasPrefix(err.Error(), "write DXF: ") || !strings.Contains(err.Error(), c.says) {
				t.Errorf("got the error %v, want one that says %q", err, c.says)
			}
			if out.Len() > 0 {
				t.Error("something was written before the error")
			}
		})
	}
	if err := dxf.Write(&bytes.Buffer{}, nil); err == nil {
		t.Error("no drawings: no error")
	}
}

// fullDisk is a writer that takes nothing more.
type fullDisk struct{ error }

func (d fullDisk) Write([]byte) (int, error) { return 0, d.error }

func TestWriterFails(t *testing.T) {
	full := errors.New("disk full")
	if err := dxf.Write(fullDisk{full}, []scene.Drawing{second()}); !errors.Is(err, full) {
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
	file, err := os.CreateTemp("", "*.dxf")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.Remove(file.Name())
	if err := errors.Join(dxf.Write(file, []scene.Drawing{drawing}), file.Close()); err != nil {
		fmt.Println(err)
		return
	}
	text, err := os.ReadFile(file.Name())
	fmt.Println(bytes.Count(text, []byte("\r\nLINE\r\n")), "lines", err)
	// Output: 4 lines <nil>
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
		if err := dxf.Write(&out, pieces); err != nil {
			b.Fatal(err)
		}
	}
	b.SetBytes(int64(out.Len()))
}
