package pdf

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

var day = Info{Title: "Two pieces – 240 × 100 × 360 mm", Date: time.Date(2026, 11, 25, 16, 30, 0, 0, time.UTC)}

func line(role scene.Role, x1, y1, x2, y2 float64) scene.Stroke {
	path := geometry.Path{Vertices: []geometry.Vertex{{Vec2: geometry.Vec2{X: x1, Y: y1}}, {Vec2: geometry.Vec2{X: x2, Y: y2}}}}
	return scene.Stroke{Role: role, Path: path, Width: role.Style().Width}
}

// page returns a made-up piece of 300 × 200 mm with lines, arcs, circles, areas
// and labels of every role. Its corner is the origin; the paper around it starts
// at negative coordinates.
func page(title string) scene.Drawing {
	trim := geometry.RectAt(0, 0, 300, 200)
	d := scene.Drawing{Title: title, Trim: trim, Bleed: trim.Inset(-3), Media: trim.Inset(-25)}
	add := func(items ...scene.Item) { d.Items = append(d.Items, items...) }

	// An outline with two round corners, one turning in; it comes first to show
	// that layers are drawn in their own order.
	add(scene.Stroke{Role: scene.Cutting, Width: 0.35, Path: geometry.Path{Closed: true, Vertices: []geometry.Vertex{
		{Vec2: geometry.Vec2{}},
		{Vec2: geometry.Vec2{X: 300}},
		{Vec2: geometry.Vec2{X: 300, Y: 180}, Bulge: math.Tan(math.Pi / 8)},
		{Vec2: geometry.Vec2{X: 280, Y: 200}},
		{Vec2: geometry.Vec2{X: 20, Y: 200}, Bulge: -math.Tan(math.Pi / 8)},
		{Vec2: geometry.Vec2{Y: 180}},
	}}})
	for i, x := range []float64{60, 120.123456, 180, 240} {
		role := []scene.Role{scene.Creasing, scene.ReverseCreasing}[i%2]
		crease := line(role, x, 0, x, 200)
		crease.Dash = [][]float64{{4, 1.5}, {4, 1, 0.5, 1}}[i%2]
		add(crease)
	}
	for _, x := range []float64{90, 210} {
		add(scene.Stroke{Role: scene.Punching, Width: 0.25, Path: geometry.Circle(geometry.Vec2{X: x, Y: 175}, 2.5)})
	}
	// A slot with half round ends, and an arc that is nearly straight.
	add(scene.Stroke{Role: scene.Punching, Width: 0.25, Path: geometry.Path{Closed: true, Vertices: []geometry.Vertex{
		{Vec2: geometry.Vec2{X: 130, Y: 150}},
		{Vec2: geometry.Vec2{X: 170, Y: 150}, Bulge: 1},
		{Vec2: geometry.Vec2{X: 170, Y: 165}},
		{Vec2: geometry.Vec2{X: 130, Y: 165}, Bulge: 1},
	}}})
	add(scene.Stroke{Role: scene.Cutting, Width: 0.35, Path: geometry.Path{Vertices: []geometry.Vertex{
		{Vec2: geometry.Vec2{X: 20, Y: 40}, Bulge: 1e-5}, {Vec2: geometry.Vec2{X: 280, Y: 40}, Bulge: -2.5}, {Vec2: geometry.Vec2{X: 285, Y: 50}},
	}}})
	add(scene.Fill{Role: scene.Gluing, Path: geometry.RectAt(250, 60, 40, 100).Path()})
	add(scene.Stroke{Role: scene.ContentArea, Width: 0.13, Path: trim.Inset(8).Path()})
	add(scene.Stroke{Role: scene.Bleed, Width: 0.13, Path: d.Bleed.Path()})
	add(line(scene.Dimensions, 0, -12, 300, -12))
	add(
		scene.Label{Role: scene.Dimensions, Text: "300 × 200 mm", At: geometry.Vec2{X: 150, Y: -11}, Size: 4, Anchor: scene.Middle},
		scene.Label{Role: scene.Dimensions, Text: "45° · 0.2 µm", At: geometry.Vec2{X: -12, Y: 100}, Size: 4, Anchor: scene.Middle, Turn: math.Pi / 2},
		scene.Label{Role: scene.Legend, Text: title, At: geometry.Vec2{X: 0, Y: 212}, Size: 6, Bold: true},
		scene.Label{Role: scene.Legend, Text: "20–25 g/m²", At: geometry.Vec2{X: 300, Y: 212}, Size: 4, Anchor: scene.End},
		scene.Label{Role: scene.Cutting, Text: "slanted", At: geometry.Vec2{X: 20, Y: 60}, Size: 10, Turn: math.Pi / 6},
	)
	add(scene.Fill{Role: scene.Artwork, Path: geometry.RectAt(20, 90, 80, 50).Path(), Ink: &scene.CMYK{C: 1}})
	add(scene.Fill{Role: scene.Artwork, Path: geometry.Circle(geometry.Vec2{X: 150, Y: 90}, 25), Ink: &scene.CMYK{M: 0.4, Y: 0.6}})
	return d
}

func pages() []scene.Drawing {
	return []scene.Drawing{page("Front · piece 1"), page("Back · piece 2")}
}

func produce(t testing.TB, pages []scene.Drawing, overprinting bool) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := write(&out, pages, day, overprinting); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// produceFile writes the drawings to a temporary file and returns its path.
func produceFile(t testing.TB, pages []scene.Drawing, overprinting bool) string {
	t.Helper()
	return save(t, produce(t, pages, overprinting))
}

// produceWith writes the drawings with an info of their own to a temporary file.
func produceWith(t testing.TB, pages []scene.Drawing, info Info) string {
	t.Helper()
	data, err := build(pages, info, true)
	if err != nil {
		t.Fatal(err)
	}
	return save(t, data)
}

// save puts a file into a temporary folder and returns its path.
func save(t testing.TB, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "drawing.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// busy returns a piece with 160 lines and 80 labels, as much as a large bag has.
func busy() scene.Drawing {
	d := page("Busy")
	for i := range 150 {
		role := scene.Roles()[1+i%9]
		d.Items = append(d.Items, line(role, float64(i), 5, float64(i)+0.5, 195))
	}
	for i := range 80 {
		at := geometry.Vec2{X: 10 + float64(i%10)*25, Y: 20 + float64(i/10)*20}
		d.Items = append(d.Items, scene.Label{Role: scene.Legend, Text: fmt.Sprintf("Panel %d, %d × 360 mm", i, 3*i), At: at, Size: 3, Turn: float64(i)})
	}
	return d
}
