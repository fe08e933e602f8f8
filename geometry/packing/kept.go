package packing

import (
	"bytes"
	"compress/gzip"
	_ "embed"
	"encoding/binary"
	"fmt"
	"io"
	"sync"

	"gussetwright/geometry"
)

// kept is the motion found by relaxing, from a swing of a few degrees to nearly flat.
//
//go:embed kept.gz
var kept []byte

// keptWidth is the width of half a face of the kept motion.
const keptWidth = 0.5

// openingSteps is the number of stills in closed form before the kept ones.
const openingSteps = 12

// course is a motion of half a bag from standing to packed flat.
type course struct {
	net    *net
	stills []*still
}

// wholeCourse returns the motion from end to end: the opening in closed form, what is
// kept up to where it turns restless, and the packed state.
var wholeCourse = sync.OnceValues(func() (*course, error) {
	c := &course{net: newNet(keptWidth)}
	stills, err := readStills(kept, c.net)
	if err != nil {
		return nil, fmt.Errorf("kept motion: %w", err)
	}
	first := stills[0]
	for step := range openingSteps {
		// The gusset halves turn with the root of the swing, so steps of the swing
		// that grow evenly turn them evenly.
		share := float64(step) / openingSteps
		c.stills = append(c.stills, c.net.opening(first.swing*share*share))
	}
	stills = stills[:c.net.calm(stills)]
	c.stills = append(append(c.stills, stills...), c.net.packed(stills[len(stills)-1].places))
	return c, nil
})

// calm returns how many of the stills are taken. From some moment on the bag is so near
// to packed that it can be pressed straight into that state, with next to nothing
// stretched, while the motion that was found buckles out at both lower corners first, far
// beyond where it was, and snaps back.
func (n *net) calm(stills []*still) int {
	const mostStretched, parts, least = 0.01, 8, 0.01 // least length of an edge that counts, in D
	m := Motion{course: &course{net: n}, fields: n.triangles, now: n.newStill(0)}
	for i := range n.count {
		m.nodes = append(m.nodes, node{of: i})
	}
	stretched := func(from, to *still) (most float64) {
		for part := range parts {
			m.blend(from, to, float64(part)/parts)
			edges, _ := m.strain(least)
			most = max(most, edges)
		}
		return most
	}
	for k, s := range stills {
		if stretched(s, n.packed(s.places)) <= mostStretched {
			return k + 1
		}
	}
	return len(stills)
}

// writeStills writes stills as little-endian numbers of 32 bits, packed by gzip: how
// many there are, and of each the swing, places and points.
func writeStills(w io.Writer, stills []*still) error {
	packer, err := gzip.NewWriterLevel(w, gzip.BestCompression)
	if err != nil {
		return err
	}
	if err := binary.Write(packer, binary.LittleEndian, uint32(len(stills))); err != nil {
		return err
	}
	for _, s := range stills {
		numbers := []float32{float32(s.swing)}
		for i, p := range s.points {
			numbers = append(numbers, float32(s.places[i].X), float32(s.places[i].Y), float32(p.X), float32(p.Y), float32(p.Z))
		}
		if err := binary.Write(packer, binary.LittleEndian, numbers); err != nil {
			return err
		}
	}
	return packer.Close()
}

func readStills(data []byte, n *net) ([]*still, error) {
	r, err := gzip.NewReader(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	var count uint32
	if err := binary.Read(r, binary.LittleEndian, &count); err != nil {
		return nil, err
	}
	const most = 10000
	if count == 0 || count > most {
		return nil, fmt.Errorf("%d stills, must be 1 to %d", count, most)
	}
	stills := make([]*still, count)
	numbers := make([]float32, 1+5*n.count)
	for k := range stills {
		if err := binary.Read(r, binary.LittleEndian, numbers); err != nil {
			return nil, fmt.Errorf("still %d: %w", k, err)
		}
		s := n.newStill(float64(numbers[0]))
		for i := range s.points {
			v := numbers[1+5*i:]
			s.places[i] = geometry.Vec2{X: float64(v[0]), Y: float64(v[1])}
			s.points[i] = geometry.Vec3{X: float64(v[2]), Y: float64(v[3]), Z: float64(v[4])}
		}
		stills[k] = s
	}
	return stills, nil
}
