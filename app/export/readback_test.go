package export_test

import (
	"bytes"
	"context"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"math/rand/v2"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/export"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/dieline"
	"gussetwright/render/scene"
)

// ends is a line in a file, in millimetres of the piece it belongs to.
type ends struct{ a, b geometry.Vec2 }

// slack is how far a coordinate in a file may be from the blank's, in mm.
const slack = 0.01

// The lines of the blank come back out of the PDF (read by MuPDF), the SVG (read
// as XML) and the DXF (read by ezdxf) where they were laid.
func TestLinesComeBackOutOfTheFiles(t *testing.T) {
	twoSeams, slotted := geomtest.WorkedExample(), geomtest.WorkedExample()
	twoSeams.Body.Seams = bag.SeamsTwo
	slotted.Body.Base, slotted.Body.Top = bag.BaseSlotted, bag.TopZigzag
	specs := []bag.Spec{geomtest.WorkedExample(), twoSeams, slotted}
	random := rand.New(rand.NewPCG(13, 14))
	for range 5 {
		specs = append(specs, geomtest.RandomBag(random))
	}
	kinds, err := export.Choose("dieline,svg,dxf")
	if err != nil {
		t.Fatal(err)
	}
	for _, spec := range specs {
		snapshot, err := document.Derive(spec)
		if err != nil {
			t.Fatal(err)
		}
		folder := t.TempDir()
		if _, err := export.Write(context.Background(), export.Job{Folder: folder, Project: "bag", Snapshot: snapshot, Date: day, Kinds: kinds}, func(float64, string) {}); err != nil {
			t.Fatal(err)
		}
		drawings := dieline.Sheets(&snapshot.Blank, "2026-03-31")
		moves := scene.Row(drawings)
		for i := range snapshot.Blank.Pieces {
			piece := &snapshot.Blank.Pieces[i]
			holds(t, "PDF", piece, linesOfPDF(t, filepath.Join(folder, "bag-dieline.pdf"), i+1))
			holds(t, "SVG", piece, moved(linesOfSVG(t, filepath.Join(folder, "bag.svg"), scene.RowMedia(drawings)), moves[i]))
			holds(t, "DXF", piece, moved(linesOfDXF(t, filepath.Join(folder, "bag.dxf")), moves[i]))
		}
	}
}

// holds tells whether every straight cut and crease of the piece is among the lines.
func holds(t *testing.T, format string, piece *blank.Piece, lines []ends) {
	t.Helper()
	for _, line := range piece.Lines {
		if line.Bulge == 0 && !among(line.Edge, lines) {
			t.Errorf("%s, %s: %s %s from %v to %v is not in the file", format, piece.Name, line.Kind, line.Role, line.From, line.To)
			return
		}
	}
}

func among(edge geometry.Edge, lines []ends) bool {
	at := func(p, q geometry.Vec2) bool { return p.Sub(q).Length() <= slack }
	for _, l := range lines {
		if at(l.a, edge.From) && at(l.b, edge.To) || at(l.a, edge.To) && at(l.b, edge.From) {
			return true
		}
	}
	return false
}

func moved(lines []ends, move geometry.Vec2) []ends {
	list := make([]ends, len(lines))
	for i, l := range lines {
		list[i] = ends{l.a.Sub(move), l.b.Sub(move)}
	}
	return list
}

// linesOfPDF reads straight strokes with "mutool trace" and takes them to
// millimetres from the lower left corner of the TrimBox that poppler reports.
func linesOfPDF(t *testing.T, path string, page int) []ends {
	t.Helper()
	trim, mediaTop := boxes(t, path, page)
	decoder := xml.NewDecoder(bytes.NewReader(geomtest.Run(t, "mutool", "trace", path, strconv.Itoa(page))))
	var lines []ends
	var m [6]float64
	var start, pen geometry.Vec2
	for token, _ := decoder.Token(); token != nil; token, _ = decoder.Token() {
		element, isStart := token.(xml.StartElement)
		if !isStart {
			continue
		}
		values := map[string]string{}
		for _, a := range element.Attr {
			values[a.Name.Local] = a.Value
		}
		place := func() geometry.Vec2 {
			x, y := float(t, values["x"]), float(t, values["y"])
			right, down := m[0]*x+m[2]*y+m[4], m[1]*x+m[3]*y+m[5]
			return geometry.Vec2{X: (right - trim.X) * 25.4 / 72, Y: (mediaTop - down - trim.Y) * 25.4 / 72}
		}
		switch element.Name.Local {
		case "stroke_path":
			if _, err := fmt.Sscan(values["transform"], &m[0], &m[1], &m[2], &m[3], &m[4], &m[5]); err != nil {
				t.Fatal(err)
			}
		case "moveto":
			start = place()
			pen = start
		case "lineto":
			to := place()
			lines = append(lines, ends{pen, to})
			pen = to
		case "curveto":
			values["x"], values["y"] = values["x3"], values["y3"]
			pen = place()
		case "closepath":
			lines = append(lines, ends{pen, start})
		}
	}
	return lines
}

// boxes asks pdfinfo for the lower left corner of the TrimBox and the height of
// the MediaBox, in points.
func boxes(t *testing.T, path string, page int) (trim geometry.Vec2, mediaTop float64) {
	t.Helper()
	number := strconv.Itoa(page)
	out := geomtest.Run(t, "pdfinfo", "-box", "-f", number, "-l", number, path)
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		if len(words) != 7 {
			continue
		}
		switch words[2] {
		case "TrimBox:":
			trim = geometry.Vec2{X: float(t, words[3]), Y: float(t, words[4])}
		case "MediaBox:":
			mediaTop = float(t, words[6])
		}
	}
	return trim, mediaTop
}

// linesOfSVG reads the straight parts of all paths and turns y up again.
func linesOfSVG(t *testing.T, path string, media geometry.Rect) []ends {
	t.Helper()
	var file struct {
		ViewBox string `xml:"viewBox,attr"`
		Width   string `xml:"width,attr"`
		Groups  []struct {
			Paths []struct {
				Data string `xml:"d,attr"`
			} `xml:"path"`
		} `xml:"g"`
	}
	if err := xml.Unmarshal(read(t, path), &file); err != nil {
		t.Fatal(err)
	}
	if want := fmt.Sprintf("%gmm", media.Width()); file.Width != want {
		t.Errorf("SVG is %s wide, want %s", file.Width, want)
	}
	var lines []ends
	for _, group := range file.Groups {
		for _, path := range group.Paths {
			lines = append(lines, straightParts(t, path.Data, media)...)
		}
	}
	return lines
}

// straightParts reads the commands M, L, A and Z, which are all that the writer uses.
func straightParts(t *testing.T, data string, media geometry.Rect) []ends {
	t.Helper()
	var lines []ends
	var start, pen geometry.Vec2
	words := strings.Fields(data)
	point := func(at int) geometry.Vec2 {
		return geometry.Vec2{X: media.Min.X + float(t, words[at]), Y: media.Max.Y - float(t, words[at+1])}
	}
	for i := 0; i < len(words); {
		switch words[i] {
		case "M":
			start = point(i + 1)
			pen = start
			i += 3
		case "L":
			to := point(i + 1)
			lines = append(lines, ends{pen, to})
			pen = to
			i += 3
		case "A":
			pen = point(i + 6)
			i += 8
		case "Z":
			lines = append(lines, ends{pen, start})
			i++
		default:
			t.Fatalf("path command %q", words[i])
		}
	}
	return lines
}

// linesOfDXF reads LINE entities with ezdxf, which goes with Debian's own Python.
func linesOfDXF(t *testing.T, path string) []ends {
	t.Helper()
	python := geomtest.Tool(t, "/usr/bin/python3")
	if err := exec.Command(python, "-c", "import ezdxf").Run(); err != nil {
		geomtest.Missing(t, "python3-ezdxf")
	}
	var file struct {
		Entities []struct {
			Type   string
			Points [][2]float64
		}
	}
	script := filepath.Join(geomtest.Root(t), "testdata", "outside", "dxf-read.py")
	if err := json.Unmarshal(geomtest.Run(t, python, script, path), &file); err != nil {
		t.Fatal(err)
	}
	var lines []ends
	for _, e := range file.Entities {
		if e.Type == "LINE" {
			lines = append(lines, ends{
				geometry.Vec2{X: e.Points[0][0], Y: e.Points[0][1]}, geometry.Vec2{X: e.Points[1][0], Y: e.Points[1][1]},
			})
		}
	}
	return lines
}
