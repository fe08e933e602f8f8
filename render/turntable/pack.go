package turntable

import (
	"encoding/base64"
	"encoding/binary"
	"fmt"
	"image/color"
	"math"

	"gussetwright/geometry"
	"gussetwright/render/solid"
)

// packedMesh is a mesh as the script of the page reads it. Lengths are in hundredths
// of a mm beyond an origin, as 16-bit numbers or, for a large bag, as 32-bit ones;
// normals are in parts of 127 as bytes. All are base64 of numbers with the lowest byte
// first.
type packedMesh struct {
	Wide        bool          `json:"wide"`   // lengths have 32 bits
	Origin      [3]float64    `json:"origin"` // of points and lines, mm
	Start       [2]float64    `json:"start"`  // of places, mm
	Points      string        `json:"points"`
	Normals     string        `json:"normals"`
	Places      string        `json:"places"`
	Triangles   string        `json:"triangles"` // three vertices each, 16 bits
	Groups      []packedGroup `json:"groups"`
	Lines       string        `json:"lines"` // two points each
	LineNormals string        `json:"lineNormals"`
	Height      float64       `json:"height"`
	Frame       packedFrame   `json:"frame"`
	Least       [3]float64    `json:"least"` // of the paper, for its shadow
	Greatest    [3]float64    `json:"greatest"`
}

type packedGroup struct {
	Skin   string     `json:"skin"`
	Piece  int        `json:"piece"`
	Colour [3]int     `json:"colour"`
	Grade  [2]float64 `json:"grade"`
	First  int        `json:"first"` // of the numbers in triangles
	Count  int        `json:"count"`
}

type packedFrame struct {
	Middle [3]float64 `json:"middle"`
	Radius float64    `json:"radius"`
	Rise   float64    `json:"rise"`
}

// skinNames are the skins as the script calls them.
var skinNames = map[solid.Skin]string{
	solid.PrintSide: "print", solid.ReverseSide: "reverse", solid.FoldedEdge: "fold", solid.CutEdge: "edge",
	solid.CardSide: "card", solid.Cloth: "cord", solid.PaperCord: "cord", solid.Metal: "metal",
}

const (
	mostVertices = 1 << 16 // that 16 bits can number
	mostLines    = mostVertices / 4
	farthest     = 10_000_000.0 // mm; 32 bits hold twice that
)

// packMesh packs a mesh for the page.
func packMesh(mesh *solid.Mesh, paper solid.Paper) (packedMesh, error) {
	var p packedMesh
	if err := checkMesh(mesh); err != nil {
		return p, err
	}
	p.Height = rounded(max(mesh.Height, 1))
	p.Frame = packedFrame{three(mesh.Frame.Middle), rounded(max(mesh.Frame.Radius, 1)), rounded(mesh.Frame.Rise)}
	p.Least, p.Greatest = paperBounds(mesh)
	p.Origin = p.Frame.Middle
	p.Start = middleOfPlaces(mesh)

	points, normals, places := make([]float64, 0, 3*len(mesh.Vertices)), make([]geometry.Vec3, 0, len(mesh.Vertices)), make([]float64, 0, 2*len(mesh.Vertices))
	for _, v := range mesh.Vertices {
		points = append(points, v.At.X-p.Origin[0], v.At.Y-p.Origin[1], v.At.Z-p.Origin[2])
		places = append(places, v.Place.X-p.Start[0], v.Place.Y-p.Start[1])
		normals = append(normals, v.Normal)
	}
	var lines []float64
	var lineNormals []geometry.Vec3
	for _, l := range mesh.Lines {
		for _, end := range []geometry.Vec3{l.From, l.To} {
			lines = append(lines, end.X-p.Origin[0], end.Y-p.Origin[1], end.Z-p.Origin[2])
		}
		lineNormals = append(lineNormals, l.Normal)
	}
	p.Wide = !narrow(points) || !narrow(places) || !narrow(lines)
	p.Points, p.Places, p.Lines = packLengths(points, p.Wide), packLengths(places, p.Wide), packLengths(lines, p.Wide)
	p.Normals, p.LineNormals = packNormals(normals), packNormals(lineNormals)
	p.packGroups(mesh, paper)
	return p, nil
}

// checkMesh tells what keeps a mesh from being packed.
func checkMesh(mesh *solid.Mesh) error {
	switch {
	case len(mesh.Groups) == 0:
		return fmt.Errorf("mesh: no triangles; give that of a bag")
	case len(mesh.Vertices) > mostVertices:
		return fmt.Errorf("mesh: %d vertices; a page holds %d, so leave out detail", len(mesh.Vertices), mostVertices)
	case len(mesh.Lines) > mostLines:
		return fmt.Errorf("mesh: %d lines; a page holds %d, so leave out detail", len(mesh.Lines), mostLines)
	}
	for i, v := range mesh.Vertices {
		reach := max(math.Abs(v.At.X), math.Abs(v.At.Y), math.Abs(v.At.Z), math.Abs(v.Place.X), math.Abs(v.Place.Y))
		if !(reach < farthest) {
			return fmt.Errorf("mesh: vertex %d lies at %v, place %v; a page reaches %g mm", i, v.At, v.Place, farthest)
		}
	}
	for i, l := range mesh.Lines {
		reach := max(math.Abs(l.From.X), math.Abs(l.From.Y), math.Abs(l.From.Z), math.Abs(l.To.X), math.Abs(l.To.Y), math.Abs(l.To.Z))
		if !(reach < farthest) {
			return fmt.Errorf("mesh: line %d runs from %v to %v; a page reaches %g mm", i, l.From, l.To, farthest)
		}
	}
	for _, g := range mesh.Groups {
		if _, known := skinNames[g.Skin]; !known {
			return fmt.Errorf("mesh: unknown skin %d", g.Skin)
		}
		for _, t := range g.Triangles {
			if min(t[0], t[1], t[2]) < 0 || max(t[0], t[1], t[2]) >= len(mesh.Vertices) {
				return fmt.Errorf("mesh: triangle %v of %d vertices", t, len(mesh.Vertices))
			}
		}
	}
	return nil
}

func (p *packedMesh) packGroups(mesh *solid.Mesh, paper solid.Paper) {
	var triangles []byte
	for i := range mesh.Groups {
		g := &mesh.Groups[i]
		below, above := g.Grade()
		p.Groups = append(p.Groups, packedGroup{
			Skin: skinNames[g.Skin], Piece: g.Piece, Colour: parts(g.Skin.Colour(paper)), Grade: [2]float64{below, above},
			First: len(triangles) / 2, Count: 3 * len(g.Triangles),
		})
		for _, t := range g.Triangles {
			for _, vertex := range t {
				triangles = binary.LittleEndian.AppendUint16(triangles, uint16(vertex))
			}
		}
	}
	p.Triangles = base64.StdEncoding.EncodeToString(triangles)
}

// paperBounds returns the least and the greatest coordinates of print sides.
func paperBounds(mesh *solid.Mesh) (least, greatest [3]float64) {
	first := true
	for i := range mesh.Groups {
		if mesh.Groups[i].Skin != solid.PrintSide {
			continue
		}
		for _, t := range mesh.Groups[i].Triangles {
			for _, vertex := range t {
				at := three(mesh.Vertices[vertex].At)
				if first {
					least, greatest, first = at, at, false
				}
				for k := range at {
					least[k], greatest[k] = min(least[k], at[k]), max(greatest[k], at[k])
				}
			}
		}
	}
	return least, greatest
}

// middleOfPlaces returns the middle of all places on the blanks.
func middleOfPlaces(mesh *solid.Mesh) [2]float64 {
	var least, greatest geometry.Vec2
	for _, v := range mesh.Vertices {
		least = geometry.Vec2{X: min(least.X, v.Place.X), Y: min(least.Y, v.Place.Y)}
		greatest = geometry.Vec2{X: max(greatest.X, v.Place.X), Y: max(greatest.Y, v.Place.Y)}
	}
	middle := least.Mid(greatest)
	return [2]float64{rounded(middle.X), rounded(middle.Y)}
}

const fine = 100 // parts of a mm

// narrow tells whether all lengths fit into 16 bits.
func narrow(lengths []float64) bool {
	for _, length := range lengths {
		if math.Abs(math.Round(length*fine)) > math.MaxInt16 {
			return false
		}
	}
	return true
}

func packLengths(lengths []float64, wide bool) string {
	data := make([]byte, 0, 4*len(lengths))
	for _, length := range lengths {
		if at := int32(math.Round(length * fine)); wide {
			data = binary.LittleEndian.AppendUint32(data, uint32(at))
		} else {
			data = binary.LittleEndian.AppendUint16(data, uint16(at))
		}
	}
	return base64.StdEncoding.EncodeToString(data)
}

func packNormals(normals []geometry.Vec3) string {
	data := make([]byte, 0, 3*len(normals))
	for _, n := range normals {
		for _, part := range []float64{n.X, n.Y, n.Z} {
			data = append(data, byte(int8(math.Round(127*min(max(part, -1), 1)))))
		}
	}
	return base64.StdEncoding.EncodeToString(data)
}

// rounded returns a length to the hundredth of a mm.
func rounded(length float64) float64 { return math.Round(length*fine) / fine }

func three(v geometry.Vec3) [3]float64 { return [3]float64{rounded(v.X), rounded(v.Y), rounded(v.Z)} }

func parts(c color.RGBA) [3]int { return [3]int{int(c.R), int(c.G), int(c.B)} }
