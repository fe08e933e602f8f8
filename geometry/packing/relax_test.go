package packing

import (
	"bytes"
	"context"
	"flag"
	"math"
	"math/rand/v2"
	"os"
	"testing"

	"gussetwright/geometry"
)

var refind = flag.Bool("find", false, "find the kept motion anew, which takes minutes, and keep it")

// With bending forbidden and nothing wandering the bag cannot follow the base without
// being stretched (Balkcom, Demaine, Demaine, Ochsendorf and You, "Folding paper
// shopping bags", 2006: with its creases alone a bag is stuck). The same relaxation
// with bending allowed hardly stretches it.
func TestStuckWithoutBending(t *testing.T) {
	stiff := drivenTo(t, 25, func(w *weights) { w.bend, w.place, w.stretch = 1e3, 1e6, 1 })
	soft := drivenTo(t, 25, func(*weights) {})
	t.Logf("strain %.4f without bending, %.5f with", stiff, soft)
	if stiff < 0.05 {
		t.Errorf("strain %.4f with bending forbidden, expected more than 5 %%", stiff)
	}
	if soft > 0.01 {
		t.Errorf("strain %.4f with bending allowed, expected less than 1 %%", soft)
	}
}

// drivenTo swings the base to an angle in degrees and returns the strain then.
func drivenTo(t *testing.T, swing float64, change func(*weights)) float64 {
	t.Helper()
	n := newNet(keptWidth)
	r := newRelaxer(n, n.opening(firstSwing))
	r.weights = weights{
		stretch: 1000, bend: 1e-4, contact: 1e-5, near: 0.006,
		still: 0.02, place: 0.01, lean: 0.01, shape: 0.03, stride: 1,
	}
	change(&r.weights)
	for r.now.swing < swing*degree {
		r.relax(8)
		r.drive(r.now.swing+degree/2, 0)
	}
	r.relax(30)
	strain, _ := n.straight(r.edges, r.now, r.now)
	return strain
}

// jittered returns a relaxer of a net that is folded a little and shaken a little.
func jittered() *relaxer {
	n := newNet(keptWidth)
	r := newRelaxer(n, n.opening(8*degree))
	random := rand.New(rand.NewPCG(1, 2))
	jitter := func() float64 { return 0.02 * (random.Float64() - 0.5) }
	for i := range r.now.points {
		r.now.points[i] = r.now.points[i].Add(geometry.Vec3{X: jitter(), Y: jitter(), Z: jitter()})
		r.now.places[i] = r.now.places[i].Add(geometry.Vec2{X: jitter(), Y: jitter()})
	}
	r.before = n.opening(8 * degree).points
	r.targets = r.layersApart()
	return r
}

// The slopes that the relaxation goes by, against differences. Edges weigh by their
// length, which a step takes as it is, so it is kept here as well.
func TestSlopes(t *testing.T) {
	r := jittered()
	r.weights = weights{
		stretch: 1, widen: 1, contact: 1, near: 0.04, still: 1, place: 1, lean: 1, pull: 1, shape: 1, stride: 1,
	}
	length := make([]float64, len(r.edges))
	for k, e := range r.edges {
		length[k] = r.now.places[e.b].Sub(r.now.places[e.a]).Length()
	}
	energy := func() float64 {
		var sum equations
		for _, add := range []func(*equations){r.widening, r.holding, r.pulling, r.shaping} {
			add(&sum)
		}
		r.contacts(&sum)
		for k, e := range r.edges {
			if e.a <= frontMiddle && e.b <= frontMiddle {
				continue
			}
			flat := r.now.places[e.b].Sub(r.now.places[e.a]).Length()
			taut := r.now.points[e.b].Sub(r.now.points[e.a]).Length()
			sum.energy += (taut - flat) * (taut - flat) / length[k]
		}
		return sum.energy
	}
	sum := newEquations(r.unknown)
	r.energy(sum)
	if math.Abs(energy()-sum.energy) > 1e-9*sum.energy {
		t.Fatalf("energy %g, want %g", sum.energy, energy())
	}
	const small = 1e-7
	for u := range r.unknown {
		way := make([]float64, r.unknown)
		way[u] = 1
		r.move(way, small)
		ahead := energy()
		r.move(way, -2*small)
		slope := (ahead - energy()) / (4 * small) // half of that of the square
		r.move(way, small)
		if math.Abs(slope-sum.gradient[u]) > 1e-4*max(1, math.Abs(slope)) {
			t.Errorf("unknown %d: slope %g, by differences %g", u, sum.gradient[u], slope)
		}
	}
}

// The slopes of the angle at a hinge, against differences.
func TestAngleSlopes(t *testing.T) {
	r := jittered()
	const small = 1e-7
	for _, h := range r.hinges {
		_, slopes := r.angle(h)
		for k, i := range []int{h.a, h.b, h.c, h.d} {
			for axis, want := range []float64{slopes[k].X, slopes[k].Y, slopes[k].Z} {
				way := [3]geometry.Vec3{{X: small}, {Y: small}, {Z: small}}[axis]
				at := r.now.points[i]
				r.now.points[i] = at.Add(way)
				ahead, _ := r.angle(h)
				r.now.points[i] = at.Sub(way)
				behind, _ := r.angle(h)
				r.now.points[i] = at
				slope := math.Remainder(ahead-behind, 2*math.Pi) / (2 * small)
				if math.Abs(slope-want) > 1e-4*max(1, math.Abs(want)) {
					t.Errorf("hinge %v, corner %d, axis %d: slope %g, by differences %g", h, k, axis, want, slope)
				}
			}
		}
	}
}

func TestThrough(t *testing.T) {
	flat := [3]geometry.Vec3{{}, {X: 10}, {Y: 10}}
	for _, c := range []struct {
		name string
		a, b geometry.Vec3
		want float64
	}{
		{"beside", geometry.Vec3{X: 8, Y: 8, Z: -1}, geometry.Vec3{X: 8, Y: 8, Z: 1}, 0},
		{"above", geometry.Vec3{X: 2, Y: 2, Z: 1}, geometry.Vec3{X: 2, Y: 2, Z: 3}, 0},
		{"by its end", geometry.Vec3{X: 3, Y: 3, Z: -0.5}, geometry.Vec3{X: 3, Y: 3, Z: 9}, 0.5},
		{"near the border", geometry.Vec3{X: 3, Y: 0.25, Z: -5}, geometry.Vec3{X: 3, Y: 0.25, Z: 5}, 0.25},
	} {
		if got := through(c.a, c.b, flat); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
}

// The kept motion is what find finds, to the byte on the same kind of processor.
func TestFind(t *testing.T) {
	if !*refind {
		t.Skip("takes minutes; run with -find")
	}
	next := 0.0
	stills, err := find(context.Background(), keptWidth, func(swing float64) {
		if swing >= next {
			t.Logf("base at %.1f°", swing/degree)
			next = swing + 5*degree
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	var data bytes.Buffer
	if err := writeStills(&data, stills); err != nil {
		t.Fatal(err)
	}
	t.Logf("%d stills, %d bytes", len(stills), data.Len())
	if err := os.WriteFile("kept.gz", data.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}
