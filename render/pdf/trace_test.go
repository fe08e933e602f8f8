package pdf

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/scene"
)

// traced is a line as mutool draws it, in millimetres of the drawing.
type traced struct {
	layer  string
	points []geometry.Vec2 // close together along the line
	width  float64
	dash   string
}

// trace reads the lines of a page back with "mutool trace", which prints each
// path with the matrix that takes it to points from the upper left of the page.
func trace(t *testing.T, file string, page int, media geometry.Rect) []traced {
	t.Helper()
	decoder := xml.NewDecoder(bytes.NewReader(geomtest.Run(t, "mutool", "trace", file, fmt.Sprint(page))))
	var (
		lines  []traced
		layer  string
		matrix [6]float64
		inside bool // a stroked path
		start  geometry.Vec2
		pen    geometry.Vec2
	)
	for {
		token, _ := decoder.Token()
		if token == nil {
			return lines
		}
		if end, isEnd := token.(xml.EndElement); isEnd && end.Name.Local == "stroke_path" {
			inside = false
		}
		element, isStart := token.(xml.StartElement)
		if !isStart {
			continue
		}
		value := func(key string) string {
			for _, a := range element.Attr {
				if a.Name.Local == key {
					return a.Value
				}
			}
			return ""
		}
		place := func(x, y string) geometry.Vec2 {
			p := geometry.Vec2{X: parse(t, value(x)), Y: parse(t, value(y))}
			right := matrix[0]*p.X + matrix[2]*p.Y + matrix[4]
			down := matrix[1]*p.X + matrix[3]*p.Y + matrix[5]
			return geometry.Vec2{X: media.Min.X + right*25.4/72, Y: media.Max.Y - down*25.4/72}
		}
		name := element.Name.Local
		switch {
		case name == "layer":
			layer = value("name")
		case name == "stroke_path":
			inside = true
			if _, err := fmt.Sscan(value("transform"), &matrix[0], &matrix[1], &matrix[2], &matrix[3], &matrix[4], &matrix[5]); err != nil {
				t.Fatal(err)
			}
			lines = append(lines, traced{layer: layer, width: parse(t, value("linewidth")) * matrix[0] * 25.4 / 72, dash: value("dash")})
		case !inside:
		case name == "moveto":
			start = place("x", "y")
			pen = start
		case name == "lineto" || name == "closepath":
			to := start
			if name == "lineto" {
				to = place("x", "y")
			}
			line := &lines[len(lines)-1]
			line.points = append(line.points, along(geometry.Edge{From: pen, To: to})...)
			pen = to
		case name == "curveto":
			line, c := &lines[len(lines)-1], curve{place("x1", "y1"), place("x2", "y2"), place("x3", "y3")}
			for step := range steps/4 + 1 {
				line.points = append(line.points, c.at(pen, float64(step)/(steps/4)))
			}
			pen = c.to
		}
	}
}

// An edge is cut into this many pieces for measuring; the chord of a curved piece
// of the largest circle here is 0.006 mm off at most.
const (
	steps         = 256
	straightSteps = 16
)

// along returns points on an edge, from the formulas for the straight line and
// the circle.
func along(edge geometry.Edge) []geometry.Vec2 {
	var points []geometry.Vec2
	if edge.Bulge == 0 {
		for i := range straightSteps + 1 {
			points = append(points, edge.From.Add(edge.To.Sub(edge.From).Scale(float64(i)/straightSteps)))
		}
		return points
	}
	for i := range steps + 1 {
		points = append(points, edge.Arc().At(float64(i)/steps))
	}
	return points
}

// farthestOff returns the largest distance of one of the points from the chain of
// the others.
func farthestOff(points, chain []geometry.Vec2) float64 {
	worst := 0.0
	for _, p := range points {
		nearest := math.Inf(1)
		for i := 1; i < len(chain); i++ {
			a, b := chain[i-1], chain[i]
			side := b.Sub(a)
			share := 0.0
			if length := side.Dot(side); length > 0 {
				share = min(1, max(0, p.Sub(a).Dot(side)/length))
			}
			nearest = min(nearest, p.Sub(a.Add(side.Scale(share))).Length())
		}
		worst = max(worst, nearest)
	}
	return worst
}

// Source of the coordinates: mutool. Each line of the drawing is drawn once, on
// its layer, in place to a hundredth of a millimetre both ways: nothing drawn is
// off the line, and nothing of the line is left out.
func TestLinesReadByMutool(t *testing.T) {
	list := pages()
	// The corner of a drawing need not be at the origin.
	list[1].Items = append(list[1].Items, line(scene.Cutting, 100.0049, 33.3333, 299.9951, 66.6667))
	file := produceFile(t, list, true)
	for i, drawing := range list {
		got := trace(t, file, i+1, drawing.Media)
		var want []scene.Stroke
		for _, role := range scene.Roles() {
			for _, item := range itemsOf(drawing, role) {
				if stroke, isStroke := item.(scene.Stroke); isStroke {
					want = append(want, stroke)
				}
			}
		}
		if len(got) != len(want) {
			t.Fatalf("page %d: %d lines are drawn, want %d", i+1, len(got), len(want))
		}
		for j, stroke := range want {
			compare(t, fmt.Sprintf("page %d, line %d on %s", i+1, j+1, stroke.Role), got[j], stroke)
		}
	}
}

func compare(t *testing.T, what string, got traced, want scene.Stroke) {
	t.Helper()
	const limit = 0.01 // mm
	var points []geometry.Vec2
	for i := range want.Path.Len() {
		points = append(points, along(want.Path.Edge(i))...)
	}
	if off := farthestOff(got.points, points); off > limit {
		t.Errorf("%s: drawn %.4f mm off the line", what, off)
	}
	if off := farthestOff(points, got.points); off > limit {
		t.Errorf("%s: a piece of the line %.4f mm away is not drawn", what, off)
	}
	if got.layer != want.Role.Style().Name {
		t.Errorf("%s: on layer %q", what, got.layer)
	}
	if math.Abs(got.width-want.Width) > 1e-4 {
		t.Errorf("%s: %.4f mm wide, want %.4f", what, got.width, want.Width)
	}
	var dash []string
	for _, length := range want.Dash {
		dash = append(dash, strings.TrimPrefix(fmt.Sprint(length), "0"))
	}
	if strings.Join(dash, " ") != got.dash {
		t.Errorf("%s: dashes %q, want %v", what, got.dash, dash)
	}
}

// Circles have their centre and radius, measured on what mutool draws.
func TestCirclesReadByMutool(t *testing.T) {
	drawing := page("Circles")
	var circles []scene.Stroke
	for i, radius := range []float64{0.5, 1.5, 2.5, 10, 18, 40, 300} {
		center := geometry.Vec2{X: 31.41593 * float64(i), Y: 27.18282 * float64(i)}
		circles = append(circles, scene.Stroke{Role: scene.Punching, Width: 0.25, Path: geometry.Circle(center, radius)})
	}
	drawing.Items = nil
	for _, circle := range circles {
		drawing.Items = append(drawing.Items, circle)
	}
	lines := trace(t, produceFile(t, []scene.Drawing{drawing}, true), 1, drawing.Media)
	if len(lines) != len(circles) {
		t.Fatalf("%d circles are drawn, want %d", len(lines), len(circles))
	}
	for i, got := range lines {
		center, radius, _ := circles[i].Path.AsCircle()
		for _, point := range got.points {
			if off := math.Abs(point.Sub(center).Length() - radius); off > 0.01 {
				t.Errorf("circle of radius %g mm: a point is %.4f mm off", radius, off)
				break
			}
		}
		compare(t, fmt.Sprintf("circle of radius %g mm", radius), got, circles[i])
	}
}
