package packing

import (
	"context"
	"math"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/phrase"
)

// Motion is a bag with a block base on its way from standing to packed flat. It is not
// safe for use by several goroutines at once.
type Motion struct {
	// Measured is how well paper would follow the motion.
	Measured Measure
	// Schematic tells that the motion is worse than it may be to be shown as that of
	// paper, by Measure.Good.
	Schematic bool

	laid     *blank.Blank
	standing fold.Body
	sheets   []sheet
	course   *course
	nodes    []node
	fields   []triangle // of nodes
	lengths  []float64  // from the first still to each, in D
	now      *still     // of the nodes, at the last moment asked for
}

// node is a corner of the net fitted to the size of a bag: one of the net of the
// course, or one that is carried along with it further out.
type node struct {
	of     int
	aside  float64 // further in the middle of the face, in D
	beside float64 // the same on the blank, where the back runs the other way
	above  float64 // further up, in D
}

// Solve fits the motion to a bag and measures it. Progress, which may be nil, is told
// from 0 to 1. It fails when the bag does not pack, when its base needs no motion
// other than folding, or when the context ends.
func Solve(ctx context.Context, laid *blank.Blank, progress func(float64)) (*Motion, error) {
	m, err := fitted(laid)
	if err != nil {
		return nil, err
	}
	if m.Measured, err = m.measure(ctx, progress); err != nil {
		return nil, err
	}
	m.Schematic = !m.Measured.Good()
	return m, nil
}

// fitted returns the motion of a bag, not measured yet.
func fitted(laid *blank.Blank) (*Motion, error) {
	if err := fits(&laid.Spec.Body); err != nil {
		return nil, err
	}
	whole, err := wholeCourse()
	if err != nil {
		return nil, err
	}
	m := &Motion{laid: laid, course: whole, standing: fold.Standing(laid)}
	m.fit()
	m.sheets = m.sheetsOf(&m.standing)
	return m, nil
}

// fits tells what keeps a bag from being packed by this motion.
func fits(b *bag.Body) error {
	mm := func(length float64) geometry.Length { return geometry.Length(length) }
	var problem, remedy phrase.Phrase
	switch {
	case b.Base == bag.BasePinch:
		problem = phrase.New("a bag with a pinch base is packed flat as it is made")
		remedy = phrase.New("only a bag with a block base has to be packed")
	case b.Gusset > b.Width:
		problem = phrase.New("the gusset D = %s is deeper than the face W = %s is wide, so the two gussets meet when the bag is packed flat", mm(b.Gusset), mm(b.Width))
		remedy = phrase.New("make the face at least as wide as the gusset is deep, or deliver the bag standing")
	case b.Height < b.Gusset:
		problem = phrase.New("the bag is H = %s high but its base is D = %s deep, so the base cannot be folded up flat against the face", mm(b.Height), mm(b.Gusset))
		remedy = phrase.New("make the height at least %s, or deliver the bag standing", mm(b.Gusset))
	default:
		return nil
	}
	return phrase.Errorf("%s; %s", problem, remedy)
}

// fit extends the net to the width and height of the bag and finds how long the way is
// from still to still.
func (m *Motion) fit() {
	b := &m.laid.Spec.Body
	n := m.course.net
	m.nodes = make([]node, n.count)
	for i := range m.nodes {
		m.nodes[i].of = i
	}
	m.fields = slices.Clone(n.triangles)
	if wider := b.Width/2/b.Gusset - n.width; wider > geometry.Tolerance {
		m.extend(n.isMiddle, func(v *node) {
			v.aside, v.beside = wider, wider
			if m.course.stills[0].places[v.of].X < n.width {
				v.beside = -wider
			}
		})
	}
	top := rows[len(rows)-1]
	if higher := b.Height/b.Gusset - top; higher > geometry.Tolerance {
		m.extend(isTop, func(v *node) { v.above = higher })
	}
	m.now = &still{places: make([]geometry.Vec2, len(m.nodes)), points: make([]geometry.Vec3, len(m.nodes))}
	m.lengths = make([]float64, len(m.course.stills))
	for k := 1; k < len(m.lengths); k++ {
		m.lengths[k] = m.lengths[k-1] + farthest(m.course.stills[k-1].points, m.course.stills[k].points)
	}
}

// isMiddle tells whether a corner of the net lies in the middle of a face.
func (n *net) isMiddle(i int) bool {
	switch i {
	case backMiddle, frontMiddle, stripMiddle:
		return true
	}
	column := (i - rowStart) % columnCount
	return i >= rowStart && (column == columnBackMiddle || column == columnFrontMiddle)
}

func isTop(i int) bool { return i >= corner(len(rows)-1, 0) }

// extend adds a field beyond every edge between two corners that are on the border,
// with corners that are moved from those of the border.
func (m *Motion) extend(border func(int) bool, move func(*node)) {
	beyond := map[int]int{}
	outer := func(i int) int {
		if o, known := beyond[i]; known {
			return o
		}
		moved := m.nodes[i]
		move(&moved)
		m.nodes = append(m.nodes, moved)
		beyond[i] = len(m.nodes) - 1
		return beyond[i]
	}
	for _, t := range slices.Clone(m.fields) {
		for k, a := range t.corners {
			b := t.corners[(k+1)%3]
			if !border(m.nodes[a].of) || !border(m.nodes[b].of) {
				continue
			}
			// The field lies on the other side of the edge, so it runs against it.
			m.fields = append(m.fields, triangle{[3]int{b, a, outer(a)}, t.part}, triangle{[3]int{b, outer(a), outer(b)}, t.part})
		}
	}
}

func farthest(from, to []geometry.Vec3) float64 {
	most := 0.0
	for i, p := range from {
		most = max(most, to[i].Sub(p).Length())
	}
	return most
}

// set takes the nodes to a moment, 0 to 1. Moments are spaced by the way of what goes
// farthest, so nothing ever jumps.
func (m *Motion) set(moment float64) {
	want := min(max(moment, 0), 1) * m.lengths[len(m.lengths)-1]
	k, _ := slices.BinarySearch(m.lengths, want)
	k = min(max(k, 1), len(m.lengths)-1)
	share := 1.0
	if span := m.lengths[k] - m.lengths[k-1]; span > 0 {
		share = (want - m.lengths[k-1]) / span
	}
	m.blend(m.course.stills[k-1], m.course.stills[k], share)
}

// blend takes the nodes straight from one still to another.
func (m *Motion) blend(from, to *still, share float64) {
	m.now.swing = from.swing + share*(to.swing-from.swing)
	for i, v := range m.nodes {
		place := from.places[v.of].Scale(1 - share).Add(to.places[v.of].Scale(share))
		point := from.points[v.of].Scale(1 - share).Add(to.points[v.of].Scale(share))
		m.now.places[i] = place.Add(geometry.Vec2{X: v.beside, Y: v.above})
		m.now.points[i] = point.Add(geometry.Vec3{X: v.aside, Z: v.above})
	}
	m.swingBase()
}

// swingBase puts the front edge of the base where its swing takes it, since a straight
// way between two stills would shorten the base.
func (m *Motion) swingBase() {
	sin, cos := math.Sincos(m.now.swing)
	for i, v := range m.nodes {
		if v.of == frontCorner || v.of == frontMiddle {
			m.now.points[i].Y, m.now.points[i].Z = 1-cos, sin
		}
	}
}
