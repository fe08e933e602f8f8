package packing

import (
	"math"

	"gussetwright/geometry"
)

// Half of a bag is unrolled from the middle of the back over the left gusset to the
// middle of the front. Places on it are written as Vec2: X along the base crease, Y
// up from it, in units of the gusset depth.

// part is a region between creases, or the base.
type part byte

const (
	back part = iota
	backHalf
	frontHalf
	front
	baseTriangle
	smallTriangle
	strip
	base
)

// The corners of the net that have a name. Behind them come the rows from the
// flat-fold crease up, of columnCount corners each.
const (
	backMiddle  = iota // on the base crease, in the middle of the back
	backBetween        // between that and the next
	backCorner         // the base corner of back and gusset
	frontCorner        // the base corner of front and gusset
	frontMiddle
	edgeDent  // on the panel edge, below the flat-fold crease
	stripBend // in the strip, beside that
	stripMiddle
	rowStart
)

// The columns of a row, from the middle of the back to the middle of the front.
const (
	columnBackMiddle = iota
	columnBackBetween
	columnBackEdge
	columnBackGusset
	columnCrease
	columnFrontGusset
	columnFrontEdge
	columnFrontBetween
	columnFrontMiddle
	columnCount
)

// rows are the heights of the rows of the net while nothing has wandered: the
// flat-fold crease and those above it. The last is the upper edge.
var rows = []float64{0.5, 0.75, 1.05, 1.45, 2}

// corner returns the index of a corner of the net in a row.
func corner(row, column int) int { return rowStart + row*columnCount + column }

// triangle is a triangle of the net, by its corners.
type triangle struct {
	corners [3]int
	part    part
}

// net is half a bag: which corners the triangles join. It is the same at every moment.
type net struct {
	width     float64 // of half a face
	triangles []triangle
	count     int // corners
}

// newNet returns the net of half a bag.
func newNet(width float64) *net {
	n := &net{width: width, count: rowStart + len(rows)*columnCount}
	n.lowerPart()
	n.upperPart()
	return n
}

func (n *net) add(of part, a, b, c int) {
	n.triangles = append(n.triangles, triangle{[3]int{a, b, c}, of})
}

// lowerPart adds what is below the flat-fold crease.
func (n *net) lowerPart() {
	at := func(column int) int { return corner(0, column) }
	apex := at(columnCrease)
	n.add(back, backMiddle, backBetween, at(columnBackMiddle))
	n.add(back, backBetween, at(columnBackBetween), at(columnBackMiddle))
	n.add(back, backBetween, backCorner, at(columnBackBetween))
	n.add(back, backCorner, at(columnBackEdge), at(columnBackBetween))
	n.add(backHalf, backCorner, at(columnBackGusset), at(columnBackEdge))
	n.add(backHalf, backCorner, apex, at(columnBackGusset))
	n.add(baseTriangle, backCorner, frontCorner, apex)
	n.add(smallTriangle, frontCorner, edgeDent, apex)
	n.add(smallTriangle, edgeDent, at(columnFrontGusset), apex)
	n.add(smallTriangle, edgeDent, at(columnFrontEdge), at(columnFrontGusset))
	n.add(strip, frontCorner, stripBend, edgeDent)
	n.add(strip, edgeDent, stripBend, at(columnFrontEdge))
	n.add(strip, stripBend, at(columnFrontBetween), at(columnFrontEdge))
	n.add(strip, frontCorner, frontMiddle, stripBend)
	n.add(strip, frontMiddle, stripMiddle, stripBend)
	n.add(strip, stripBend, stripMiddle, at(columnFrontBetween))
	n.add(strip, stripMiddle, at(columnFrontMiddle), at(columnFrontBetween))
	n.add(base, backCorner, backMiddle, frontCorner)
	n.add(base, backMiddle, frontMiddle, frontCorner)
}

// upperPart adds the fields between the rows, each cut in two.
func (n *net) upperPart() {
	parts := []part{back, back, backHalf, backHalf, frontHalf, frontHalf, front, front}
	for row := range len(rows) - 1 {
		for column, of := range parts {
			a, b := corner(row, column), corner(row, column+1)
			c, d := corner(row+1, column+1), corner(row+1, column)
			if column < columnCrease {
				n.add(of, a, b, d)
				n.add(of, b, c, d)
			} else {
				n.add(of, a, b, c)
				n.add(of, a, c, d)
			}
		}
	}
}

// still is the net at a moment: where its corners are on the blank and in space.
type still struct {
	swing  float64 // of the base, in radians
	places []geometry.Vec2
	points []geometry.Vec3
}

func (n *net) newStill(swing float64) *still {
	return &still{swing, make([]geometry.Vec2, n.count), make([]geometry.Vec3, n.count)}
}

// linkage is where the parts are that stay plane: all angles in radians, lengths in D.
type linkage struct {
	tuck       float64       // by which the gusset halves have turned
	front      float64       // y of the front
	apex       geometry.Vec3 // where gusset crease and flat-fold crease meet
	frontFoot  geometry.Vec3 // the front base corner
	frontCrest geometry.Vec3 // the panel edge of the front at the flat-fold crease
}

// linkageAt returns the linkage when the base has swung up by an angle.
func linkageAt(swing float64) linkage {
	tuck := 2 * math.Atan(math.Sqrt(math.Tan(swing/2)))
	sin, cos := math.Sincos(swing)
	reach, lean := math.Sincos(tuck)
	return linkage{
		tuck:       tuck,
		front:      1 - lean,
		apex:       geometry.Vec3{X: reach / 2, Y: 1 - lean/2, Z: 0.5},
		frontFoot:  geometry.Vec3{Y: 1 - cos, Z: sin},
		frontCrest: geometry.Vec3{Y: 1 - lean, Z: 0.5},
	}
}
