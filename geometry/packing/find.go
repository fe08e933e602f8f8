package packing

import (
	"context"
	"fmt"
	"math"
	"slices"

	"gussetwright/geometry"
)

const degree = math.Pi / 180

// firstSwing is that of the base where the closed form ends, in radians, and
// lastSwing that at which it leans on the layers below it.
const (
	firstSwing = 3 * degree
	lastSwing  = math.Pi/2 - 6*layerGap
)

// layerGap is how far apart the layers are that corners are pulled to in the end, D.
const layerGap = 0.003

// find finds the motion of half a bag between the closed form and the packed state. It
// takes some minutes. Progress is told the swing of the base.
func find(ctx context.Context, width float64, progress func(swing float64)) ([]*still, error) {
	n := newNet(width)
	r := newRelaxer(n, n.opening(firstSwing))
	way, err := r.fold(ctx, progress)
	if err != nil {
		return nil, err
	}
	end, err := r.press(ctx)
	if err != nil {
		return nil, err
	}
	way = append(way, end...)
	for k, s := range way {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if strain, _ := n.straight(r.edges, s, s); strain > thinStrain/2 {
			way[k] = r.polished(s)
		}
	}
	return r.refined(n.thinned(way), 4), nil
}

// fold swings the base up, half a degree at a time, and lets the net follow. Where it
// would jump, it goes a stride at a time while the base waits.
func (r *relaxer) fold(ctx context.Context, progress func(swing float64)) ([]*still, error) {
	r.weights = weights{
		stretch: 3000, widen: 30, bend: 1e-4, contact: 1e-5, near: 0.006,
		still: 0.02, place: 0.01, lean: 0.01, shape: 0.03, stride: 0.008,
	}
	r.targets = r.layersApart()
	const most = 12000
	var way []*still
	for range most {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		r.close()
		atRest := r.relax(12)
		way = append(way, r.copied())
		if progress != nil {
			progress(r.now.swing)
		}
		const slow = 1e-3
		if r.now.swing >= lastSwing && r.strayed() < slow {
			return way, nil
		}
		if !atRest {
			continue
		}
		if err := r.swing(); err != nil {
			return nil, err
		}
	}
	return nil, fmt.Errorf("packing: not flat after %d relaxations, the base at %.1f°", most, r.now.swing/degree)
}

// close sets the weights toward the end, when layers come to lie on each other.
func (r *relaxer) close() {
	const from, to = 80 * degree, 89 * degree
	share := min(max((r.now.swing-from)/(to-from), 0), 1)
	r.weights.near = 0.006 - 0.003*share
	r.weights.place = 0.01 * math.Pow(10, share)
	r.weights.pull = 0
	if past := (r.now.swing - from) / (90*degree - from); past > 0 {
		r.weights.pull = 0.1 * math.Pow(10, 3*(past-1))
	}
}

// swing turns the base on as far as it can without touching anything, at most half a
// degree.
func (r *relaxer) swing() error {
	saved := r.copied()
	nearest := r.contacts(&equations{})
	turn := 0.5 * degree
	for range 15 {
		r.drive(min(saved.swing+turn, lastSwing), 3*layerGap)
		now := r.contacts(&equations{})
		if (now > 0.6*nearest || now > 0.5*r.weights.near) && crossing(r.now.points, r.edges, r.net.triangles) == 0 {
			return nil
		}
		r.now = &still{saved.swing, slices.Clone(saved.places), slices.Clone(saved.points)}
		turn /= 2
	}
	return fmt.Errorf("packing: the base is stuck at %.2f°", saved.swing/degree)
}

// press flattens the folded net.
func (r *relaxer) press(ctx context.Context) ([]*still, error) {
	r.weights = weights{
		stretch: 10000, widen: 30, bend: 1e-5, contact: 1e-5, near: 0.0015,
		still: 0.01, place: 0.01, pull: 1, shape: 0.03, stride: 0.008,
	}
	const most, slow = 600, 2e-4
	var way []*still
	for range most {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		r.relax(12)
		way = append(way, r.copied())
		if r.strayed() < slow {
			return way, nil
		}
	}
	return nil, fmt.Errorf("packing: still moving after %d relaxations", most)
}

// polish takes out what strain is left of a still, all but in place.
func (r *relaxer) polish(s *still) {
	r.weights = weights{
		stretch: 1e5, widen: 1e3, contact: 1e-5, near: 5e-4,
		still: 3, place: 3, shape: 0.03, stride: math.Inf(1),
	}
	r.now = &still{s.swing, slices.Clone(s.places), slices.Clone(s.points)}
	r.prefer = slices.Clone(s.places)
	r.relax(15)
}

// polished returns a still with less strain if that is to be had without a jump.
func (r *relaxer) polished(s *still) *still {
	r.polish(s)
	strain, _ := r.net.straight(r.edges, s, s)
	better, _ := r.net.straight(r.edges, r.now, r.now)
	const jump = 0.01 // D, from its neighbours
	if better > strain || farthest(s.points, r.now.points) > jump {
		return s
	}
	return r.now
}

// refined puts stills between those that the straight way would stretch, relaxed from
// half way, some levels deep.
func (r *relaxer) refined(kept []*still, levels int) []*still {
	if levels == 0 {
		return kept
	}
	fine := []*still{kept[0]}
	added := false
	for k, to := range kept[1:] {
		from := kept[k]
		if strain, _ := r.net.straight(r.edges, from, to); strain > thinStrain {
			r.polish(r.net.halfway(from, to))
			first, firstDepth := r.net.straight(r.edges, from, r.now)
			second, secondDepth := r.net.straight(r.edges, r.now, to)
			if max(first, second) < strain && max(firstDepth, secondDepth) < thinCrossing {
				fine, added = append(fine, r.now), true
			}
		}
		fine = append(fine, to)
	}
	if !added {
		return fine
	}
	return r.refined(fine, levels-1)
}

// halfway returns the still in the middle of the straight way between two.
func (n *net) halfway(from, to *still) *still {
	s := n.newStill((from.swing + to.swing) / 2)
	for i := range s.points {
		s.places[i] = from.places[i].Mid(to.places[i])
		s.points[i] = from.points[i].Mid(to.points[i])
	}
	sin, cos := math.Sincos(s.swing)
	for _, i := range []int{frontCorner, frontMiddle} {
		s.points[i].Y, s.points[i].Z = 1-cos, sin
	}
	return s
}

func (r *relaxer) copied() *still {
	return &still{r.now.swing, slices.Clone(r.now.places), slices.Clone(r.now.points)}
}

// layersApart returns where the corners lie packed, layer over layer.
func (r *relaxer) layersApart() map[int]geometry.Vec3 {
	targets := map[int]geometry.Vec3{}
	for i, place := range r.home {
		if i <= frontMiddle || isTop(i) {
			continue // they are driven
		}
		p := r.net.packedPoint(place)
		p.Y -= layerGap * r.layer(place)
		targets[i] = p
	}
	return targets
}

// layer returns the layer of a place on the packed half bag, counted from the back. On
// the flat-fold crease it is between those of both sides.
func (r *relaxer) layer(place geometry.Vec2) float64 {
	u := r.net.width + 1 - place.X
	const fold = 0.5
	switch {
	case u >= 1:
		return 0
	case u > 0 && place.Y == fold && u <= fold:
		return 3.5
	case u > fold:
		return 1
	case u == fold:
		return 1.5
	case u > 0:
		return 2
	case place.Y < fold:
		return 4
	case place.Y == fold:
		return 3.5
	}
	return 3
}

// What the straight way between two kept stills may bring with it.
const (
	thinStrain   = 0.008
	thinCrossing = 0.001 // D
	thinReach    = 0.15  // D, of a step
	anyLength    = 0     // the strain of the shortest edge counts: D is not known here
	stretchShare = 3     // how much more a triangle may be stretched across than its edges
)

// thinned leaves out stills that the straight way between others comes near enough to.
func (n *net) thinned(way []*still) []*still {
	edges := edgesOf(n.triangles)
	own := make([]float64, len(way))
	for k, s := range way {
		own[k], _ = n.straight(edges, s, s)
	}
	kept := []*still{way[0]}
	for k := 0; k < len(way)-1; {
		next := k + 1
		for far := k + 2; far < min(len(way), k+100); far++ {
			if farthest(way[k].points, way[far].points) > thinReach {
				break
			}
			strain, depth := n.straight(edges, way[k], way[far])
			if strain < max(thinStrain, 1.1*own[k], 1.1*own[far]) && depth < thinCrossing {
				next = far
			}
		}
		k = next
		kept = append(kept, way[k])
	}
	return kept
}

// straight returns the greatest strain and crossing on the straight way between stills.
func (n *net) straight(edges []edge, from, to *still) (strain, depth float64) {
	const parts = 6
	m := Motion{course: &course{net: n}, fields: n.triangles, now: n.newStill(0)}
	for i := range n.count {
		m.nodes = append(m.nodes, node{of: i})
	}
	for part := range parts + 1 {
		m.blend(from, to, float64(part)/parts)
		strained, stretched := m.strain(anyLength)
		strain = max(strain, strained, stretched/stretchShare)
		depth = max(depth, crossing(m.now.points, edges, n.triangles))
		if from == to {
			break
		}
	}
	return strain, depth
}
