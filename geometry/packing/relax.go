package packing

import (
	"math"

	"gussetwright/geometry"
)

// weights are what the net is relaxed by: how much it costs to stretch an edge, to bend
// a facet, to come near another, and to move at all.
type weights struct {
	stretch float64 // of an edge, by its length on the blank
	widen   float64 // of a triangle, whatever its size
	bend    float64 // of an edge within a part, by its length
	contact float64 // of two things within the distance of near
	near    float64 // D
	still   float64 // of a corner that moves in space
	place   float64 // of a corner that wanders on the blank
	lean    float64 // of the back that leaves its plane
	pull    float64 // of a corner that is not where it is pulled to
	shape   float64 // of a triangle that gets thin on the blank
	stride  float64 // greatest way of a corner in one relaxation, D
}

// relaxer moves the corners of a net to where its energy is least, by steps of Gauss
// and Newton. Energies are sums of weighted squares, so a step solves one system of
// linear equations. No step is taken that leads through the net or near to that.
type relaxer struct {
	net     *net
	weights weights
	edges   []edge
	hinges  []hinge
	beside  []map[int]bool // corners that share an edge

	now     *still
	home    []geometry.Vec2 // places before anything wandered
	prefer  []geometry.Vec2 // places that corners are held to
	before  []geometry.Vec3 // points that corners are held to
	targets map[int]geometry.Vec3

	point   [][3]int // the unknown of each coordinate, or −1
	place   [][2]int
	unknown int
}

// hinge is an edge within a part, from a to b, with the other corners of its two
// triangles.
type hinge struct{ a, b, c, d int }

// newRelaxer returns a relaxer of a net that is in the state of closed form.
func newRelaxer(n *net, start *still) *relaxer {
	r := &relaxer{net: n, now: start, edges: edgesOf(n.triangles)}
	r.home = append([]geometry.Vec2(nil), start.places...)
	r.prefer = append([]geometry.Vec2(nil), start.places...)
	r.beside = make([]map[int]bool, n.count)
	for i := range r.beside {
		r.beside[i] = map[int]bool{}
	}
	for _, e := range r.edges {
		r.beside[e.a][e.b], r.beside[e.b][e.a] = true, true
	}
	r.hinges = n.hinges(r.edges)
	r.free()
	return r
}

// hinges returns the edges between two triangles of one part.
func (n *net) hinges(edges []edge) []hinge {
	type side struct {
		part  part
		third int
	}
	sides := map[[2]int][]side{}
	for _, t := range n.triangles {
		for k, a := range t.corners {
			b := t.corners[(k+1)%3]
			key := [2]int{min(a, b), max(a, b)}
			sides[key] = append(sides[key], side{t.part, t.corners[(k+2)%3]})
		}
	}
	var hinges []hinge
	for _, e := range edges {
		if s := sides[[2]int{e.a, e.b}]; len(s) == 2 && s[0].part == s[1].part {
			hinges = append(hinges, hinge{e.a, e.b, s[0].third, s[1].third})
		}
	}
	return hinges
}

// free numbers the unknowns. The base and the upper edge are driven; all of the upper
// edge has one height. Corners on the middle of a face stay on it.
func (r *relaxer) free() {
	top := -1
	next := func() int { r.unknown++; return r.unknown - 1 }
	r.point, r.place = make([][3]int, r.net.count), make([][2]int, r.net.count)
	for i := range r.net.count {
		r.point[i], r.place[i] = [3]int{-1, -1, -1}, [2]int{-1, -1}
		switch {
		case i <= frontMiddle:
			continue
		case isTop(i):
			if top < 0 {
				top = next()
			}
			r.point[i][2] = top
			continue
		}
		if !r.net.isMiddle(i) {
			r.point[i][0] = next()
		}
		r.point[i][1], r.point[i][2] = next(), next()
		along, up := r.wanders(i)
		if along {
			r.place[i][0] = next()
		}
		if up {
			r.place[i][1] = next()
		}
	}
}

// wanders tells which way a corner may wander on the blank: not off its crease, and
// not off the middle of a face.
func (r *relaxer) wanders(i int) (along, up bool) {
	switch i {
	case edgeDent, stripMiddle:
		return false, true
	case stripBend:
		return true, true
	}
	row, column := (i-rowStart)/columnCount, (i-rowStart)%columnCount
	switch column {
	case columnBackBetween, columnBackGusset, columnFrontGusset, columnFrontBetween:
		along = true
	}
	return along, row > 0 || column <= columnBackGusset
}

// drive puts base and upper edge where they are when the base has swung by an angle:
// the upper edge as far as by the linkage.
func (r *relaxer) drive(swing, thickness float64) {
	sin, cos := math.Sincos(swing)
	s := r.now
	s.swing = swing
	s.points[frontCorner] = geometry.Vec3{Y: 1 - cos, Z: sin}
	s.points[frontMiddle] = geometry.Vec3{X: r.net.width, Y: 1 - cos, Z: sin}
	closed := linkageAt(swing).front * (1 - thickness)
	open := (1 - closed) / 2
	reach := math.Sqrt(max(0.25-open*open, 0))
	at := func(column int, x, y float64) {
		p := &s.points[corner(len(rows)-1, column)]
		p.X, p.Y = x, y
	}
	between := r.net.between()
	at(columnBackGusset, reach/2, 1-open/2)
	at(columnCrease, reach, 1-open)
	at(columnFrontGusset, reach/2, closed+open/2)
	at(columnFrontEdge, 0, closed)
	at(columnFrontBetween, between, closed)
	at(columnFrontMiddle, r.net.width, closed)
}

// relax takes at most so many steps and tells whether it came to rest before it had
// gone the stride.
func (r *relaxer) relax(steps int) (atRest bool) {
	r.before = append(r.before[:0], r.now.points...)
	for range steps {
		moved, settled := r.step()
		if !moved || settled {
			return r.strayed() <= 0.8*r.weights.stride
		}
		if r.strayed() > 0.8*r.weights.stride {
			return false
		}
	}
	return r.strayed() <= 0.75*r.weights.stride
}

// step takes one step, shortened until the energy falls and nothing passes through
// anything, and tells whether it could and whether it was too small to matter.
func (r *relaxer) step() (moved, settled bool) {
	sum := newEquations(r.unknown)
	least := r.energy(sum)
	way := sum.solve(1e-6)
	greatest := 0.0
	for _, w := range way {
		greatest = max(greatest, math.Abs(w))
	}
	const longest = 0.03
	share := min(1, longest/greatest)
	saved := &still{r.now.swing, append([]geometry.Vec2(nil), r.now.places...), append([]geometry.Vec3(nil), r.now.points...)}
	for range 24 {
		r.move(way, share)
		if r.strayed() <= r.weights.stride {
			after := &equations{}
			near := r.energy(after)
			apart := near > 0.3*least || near > 0.3*r.weights.near
			if after.energy < sum.energy && apart && crossing(r.now.points, r.edges, r.net.triangles) == 0 {
				return true, greatest*share < 1e-6 || sum.energy-after.energy < 1e-7*sum.energy
			}
		}
		copy(r.now.places, saved.places)
		copy(r.now.points, saved.points)
		share /= 2
	}
	return false, true
}

// strayed returns the way of the corner that went farthest in this relaxation.
func (r *relaxer) strayed() float64 { return farthest(r.before, r.now.points) }

func (r *relaxer) move(way []float64, share float64) {
	step := func(unknown int) float64 {
		if unknown < 0 {
			return 0
		}
		return share * way[unknown]
	}
	for i, u := range r.point {
		r.now.points[i] = r.now.points[i].Add(geometry.Vec3{X: step(u[0]), Y: step(u[1]), Z: step(u[2])})
		r.now.places[i] = r.now.places[i].Add(geometry.Vec2{X: step(r.place[i][0]), Y: step(r.place[i][1])})
	}
}
