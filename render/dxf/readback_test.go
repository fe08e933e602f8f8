package dxf_test

import (
	"encoding/json"
	"maps"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/scene"
)

// The readers of other makers: ezdxf for Python and dxf-parser for Node.

// read is what testdata/outside/dxf-read.py prints.
type read struct {
	Version     string
	Units       int
	Measurement int
	Faults      []string
	Layers      []layer
	LineTypes   []struct {
		Name    string
		Pattern []float64
	}
	Entities []entity
}

// layer is one layer of a file, with its colour in red, green and blue to 255.
type layer struct {
	Name, LineType string
	Weight         int
	Colour         [3]float64
}

// entity is one entity of a file. A line has two points, an arc its start,
// middle and end, a circle its centre, a text the point it stands at.
type entity struct {
	Type, Layer, LineType string
	Weight                int
	Points                [][2]float64
	Radius                float64
	Text, Align, Style    string
	Height, Turn          float64
}

// accuracy is how closely coordinates must come back, in mm.
const accuracy = 0.01

func TestReadByEzdxf(t *testing.T) {
	pieces := []scene.Drawing{sample(), second()}
	got := readByEzdxf(t, written(t, pieces...))
	if len(got.Faults) > 0 {
		t.Errorf("audit of ezdxf: %q", got.Faults)
	}
	if got.Version != "AC1015" || got.Units != 4 || got.Measurement != 1 {
		t.Errorf("version %s, unit %d, measurement %d; want AC1015, 4 (mm), 1 (metric)", got.Version, got.Units, got.Measurement)
	}
	want := expected(pieces)
	if len(got.Entities) != len(want) {
		t.Fatalf("read %d entities, want %d", len(got.Entities), len(want))
	}
	for i, w := range want {
		compare(t, got.Entities[i], w)
	}
}

// TestHardArcs checks arcs for which rounding in the file is at its worst: nearly
// straight, nearly a full circle, and of a radius of 125 m.
func TestHardArcs(t *testing.T) {
	hard := second()
	for _, bulge := range []float64{0.001, -0.001, 0.002, 1, -1, 40, -400} {
		for _, length := range []float64{0.5, 1000} {
			hard.Items = append(hard.Items, scene.Stroke{Role: scene.Cutting, Width: 0.35, Path: geometry.Path{Vertices: []geometry.Vertex{
				{Vec2: geometry.Vec2{X: 0.1, Y: 0.2}, Bulge: bulge}, {Vec2: geometry.Vec2{X: 0.1 + length*0.6, Y: 0.2 + length*0.8}},
			}}})
		}
	}
	got := readByEzdxf(t, written(t, hard))
	for i, want := range expected([]scene.Drawing{hard}) {
		compare(t, got.Entities[i], want)
	}
}

func compare(t *testing.T, got, want entity) {
	t.Helper()
	same := got.Type == want.Type && got.Layer == want.Layer && got.LineType == want.LineType &&
		got.Weight == want.Weight && got.Text == want.Text && got.Align == want.Align && got.Style == want.Style &&
		len(got.Points) == len(want.Points) && math.Abs(got.Radius-want.Radius) < accuracy &&
		math.Abs(got.Height-want.Height) < accuracy && math.Abs(got.Turn-want.Turn) < 1e-6
	for i := 0; same && i < len(want.Points); i++ {
		same = math.Hypot(got.Points[i][0]-want.Points[i][0], got.Points[i][1]-want.Points[i][1]) < accuracy
	}
	if !same {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
}

// expected returns the entities that the items of the sample stand for, worked
// out from the bulges alone.
func expected(pieces []scene.Drawing) []entity {
	var all []entity
	for i, piece := range pieces {
		move := geometry.Vec2{}
		if i == 1 {
			// The first page reaches to 110 and the gap is 20; the second begins at −5.
			move.X = 110 + 20 + 5
		}
		for _, role := range scene.Roles() {
			for _, item := range piece.Items {
				if item.Layer() == role {
					all = append(all, entitiesOf(item, move)...)
				}
			}
		}
	}
	return all
}

func entitiesOf(item scene.Item, move geometry.Vec2) []entity {
	base := entity{Layer: layerNames[item.Layer()], LineType: "BYLAYER", Weight: -1, Style: ""}
	switch item := item.(type) {
	case scene.Stroke:
		if item.Width == 0.5 {
			base.Weight = 50
		}
		if item.Role == scene.Creasing && item.Dash == nil {
			base.LineType = "CONTINUOUS"
		}
		return edgesOf(item.Path.Translate(move), base)
	case scene.Fill:
		if item.Role == scene.Legend {
			return edgesOf(item.Path.Translate(move), base)
		}
		base.Type = "SOLID"
		for _, v := range item.Path.Vertices {
			base.Points = append(base.Points, [2]float64{v.X + move.X, v.Y + move.Y})
		}
	case scene.Label:
		base.Type, base.Text = "TEXT", item.Text
		base.Points = [][2]float64{{item.At.X + move.X, item.At.Y + move.Y}}
		base.Height, base.Turn = item.Size*0.722, item.Turn*180/math.Pi
		base.Align = map[scene.Anchor]string{scene.Start: "LEFT", scene.Middle: "CENTER", scene.End: "RIGHT"}[item.Anchor]
		base.Style = map[bool]string{false: "Standard", true: "BOLD"}[item.Bold]
	}
	return []entity{base}
}

func edgesOf(path geometry.Path, base entity) []entity {
	if center, radius, ok := path.AsCircle(); ok {
		base.Type, base.Radius, base.Points = "CIRCLE", radius, [][2]float64{{center.X, center.Y}}
		return []entity{base}
	}
	var all []entity
	for i := range path.Len() {
		edge := path.Edge(i)
		from, to := [2]float64{edge.From.X, edge.From.Y}, [2]float64{edge.To.X, edge.To.Y}
		base.Type, base.Points = "LINE", [][2]float64{from, to}
		if math.Abs(edge.Bulge) > 1e-6 {
			// An arc to the left rises to the right of its chord, by bulge times half the chord.
			rise := edge.To.Sub(edge.From).Left().Scale(-edge.Bulge / 2)
			top := edge.From.Mid(edge.To).Add(rise)
			base.Type, base.Points = "ARC", [][2]float64{from, {top.X, top.Y}, to}
			if edge.Bulge < 0 {
				slices.Reverse(base.Points)
			}
		}
		all = append(all, base)
	}
	return all
}

var layerNames = map[scene.Role]string{
	scene.Artwork: "ARTWORK", scene.Gluing: "GLUING", scene.ContentArea: "CONTENT_AREA", scene.Bleed: "BLEED",
	scene.Dimensions: "DIMENSIONS", scene.Legend: "LEGEND", scene.Creasing: "CREASING",
	scene.ReverseCreasing: "REVERSE_CREASING", scene.Punching: "PUNCHING", scene.Cutting: "CUTTING",
}

func TestLayers(t *testing.T) {
	got := readByEzdxf(t, written(t, sample()))
	patterns := map[string][]float64{}
	for _, lineType := range got.LineTypes {
		patterns[lineType.Name] = lineType.Pattern
	}
	wantPatterns := map[string][]float64{"CREASING": {4, -1.5}, "REVERSE_CREASING": {6, -1, 1, -6, 1, -1}}
	for _, role := range scene.Roles() {
		name := layerNames[role]
		i := slices.IndexFunc(got.Layers, func(l layer) bool { return l.Name == name })
		if i < 0 {
			t.Errorf("no layer %s", name)
			continue
		}
		layer := got.Layers[i]
		if !slices.Equal(patterns[layer.LineType], wantPatterns[name]) {
			t.Errorf("layer %s has the dashes %v, want %v", name, patterns[layer.LineType], wantPatterns[name])
		}
		if want := int(math.Round(role.Style().Width * 100)); layer.Weight != want {
			t.Errorf("layer %s has the line weight %d, want %d", name, layer.Weight, want)
		}
		compareHue(t, role, layer.Colour)
	}
}

// compareHue checks that a colourful role has nearly the hue on the screen that
// its colour index has. Indices are 15° apart, so that the nearest is about half of
// it away at most; the palette is that of ezdxf (DXF_DEFAULT_COLORS).
func compareHue(t *testing.T, role scene.Role, colour [3]float64) {
	t.Helper()
	screen := role.Style().Screen
	want, strength := hue([3]float64{float64(screen.R), float64(screen.G), float64(screen.B)})
	if strength < 40 {
		return
	}
	got, _ := hue(colour)
	if apart := math.Abs(math.Mod(got-want+540, 360) - 180); apart > 8 {
		t.Errorf("layer of %s has the hue %.0f°, on the screen it is %.0f°; choose another colour index", role, got, want)
	}
}

// hue returns the angle on the colour circle in degrees and the distance from
// grey, 0 to 255.
func hue(c [3]float64) (angle, strength float64) {
	angle = math.Atan2(math.Sqrt(3)*(c[1]-c[2]), 2*c[0]-c[1]-c[2]) * 180 / math.Pi
	return angle, max(c[0], c[1], c[2]) - min(c[0], c[1], c[2])
}

// TestUsualLineType checks that a layer takes the dashes of most of its strokes,
// and that fills and labels on it stay without gaps.
func TestUsualLineType(t *testing.T) {
	drawing := second()
	line := drawing.Items[0].(scene.Stroke).Path
	for _, dash := range [][]float64{{1, 1}, {2, 2}, nil, {2, 2}} {
		drawing.Items = append(drawing.Items, scene.Stroke{Role: scene.Legend, Path: line, Width: 0.13, Dash: dash})
	}
	drawing.Items = append(drawing.Items, scene.Label{Role: scene.Legend, Text: "a", Size: 3})
	got := readByEzdxf(t, written(t, drawing))
	uses := map[string]int{}
	for _, e := range got.Entities {
		uses[e.Layer+" "+e.LineType+" "+e.Type]++
	}
	want := map[string]int{
		"CUTTING BYLAYER LINE": 4, "LEGEND BYLAYER LINE": 8, "LEGEND DASHED_1 LINE": 4,
		"LEGEND CONTINUOUS LINE": 4, "LEGEND CONTINUOUS TEXT": 1,
	}
	if !maps.Equal(uses, want) {
		t.Errorf("line types\ngot  %v\nwant %v", uses, want)
	}
}

func TestReadByDxfParser(t *testing.T) {
	pieces := []scene.Drawing{sample(), second()}
	file := saved(t, written(t, pieces...))
	var got struct {
		Version string
		Units   int
		Layers  []string
		Counts  map[string]int
	}
	if err := json.Unmarshal(geomtest.Node(t, "dxf-read.cjs", file), &got); err != nil {
		t.Fatal(err)
	}
	if got.Version != "AC1015" || got.Units != 4 {
		t.Errorf("version %s, unit %d; want AC1015, 4 (mm)", got.Version, got.Units)
	}
	for _, name := range layerNames {
		if !slices.Contains(got.Layers, name) {
			t.Errorf("no layer %s among %v", name, got.Layers)
		}
	}
	want := map[string]int{}
	for _, e := range expected(pieces) {
		want[e.Layer+" "+e.Type]++
	}
	if !maps.Equal(got.Counts, want) {
		t.Errorf("entities by layer and kind\ngot  %v\nwant %v", got.Counts, want)
	}
}

// readByEzdxf reads a file with ezdxf of Debian, which goes with Debian's own
// Python.
func readByEzdxf(t *testing.T, file []byte) read {
	t.Helper()
	python := geomtest.Tool(t, "/usr/bin/python3")
	if err := exec.Command(python, "-c", "import ezdxf").Run(); err != nil {
		geomtest.Missing(t, "python3-ezdxf")
	}
	script := filepath.Join(geomtest.Root(t), "testdata", "outside", "dxf-read.py")
	var got read
	if err := json.Unmarshal(geomtest.Run(t, python, script, saved(t, file)), &got); err != nil {
		t.Fatal(err)
	}
	for i := range got.Entities {
		got.Entities[i].LineType = strings.ToUpper(got.Entities[i].LineType)
	}
	return got
}

func saved(t *testing.T, file []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "sample.dxf")
	if err := os.WriteFile(path, file, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}
