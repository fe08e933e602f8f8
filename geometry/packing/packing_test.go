package packing

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
)

// sizes are those the motion is judged by, W × D × H in mm.
var sizes = [][3]float64{{240, 100, 360}, {190, 95, 265}, {260, 150, 300}, {120, 60, 200}, {320, 110, 400}}

// exact is the share by which a length may differ from that on the blank where the
// motion is exact.
const exact = 1e-9

func laidOut(width, gusset, height float64, change ...func(*bag.Spec)) *blank.Blank {
	spec := geomtest.WorkedExample()
	spec.Body.Width, spec.Body.Gusset, spec.Body.Height = width, gusset, height
	spec.Body.TurnIn, spec.Body.BaseOverlap = 40, 15
	for _, c := range change {
		c(&spec)
	}
	laid := blank.Lay(spec)
	return &laid
}

func solved(t testing.TB, laid *blank.Blank) *Motion {
	t.Helper()
	m, err := Solve(context.Background(), laid, nil)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// The bag packs without being stretched by more than 2 % along an edge,
// without anything passing through anything by more than a mm, and without a jump. Strain, crossing and step
// count together: a path that crosses itself proves nothing by a small strain.
func TestMotionIsClean(t *testing.T) {
	// Beside the five: the narrowest face and the lowest bag that can be packed, and one
	// as large as bags get.
	for _, s := range append(slices.Clone(sizes), [3]float64{150, 150, 400}, [3]float64{300, 120, 120}, [3]float64{540, 250, 600}) {
		m := solved(t, laidOut(s[0], s[1], s[2]))
		r := m.Measured
		t.Logf("%v: strain %.4f of edges, %.4f across, crossing %.3f mm, step %.2f mm, mean %.2f mm", s, r.MaxStrain, r.MaxStretch, r.MaxCrossing, r.MaxStep, r.MeanStep)
		if r.MaxStrain > 0.015 || r.MaxStretch > 0.06 || r.MaxCrossing > 0.5 || r.MaxStep > 1.5*r.MeanStep || m.Schematic {
			t.Errorf("%v: not clean: %+v, schematic %v", s, r, m.Schematic)
		}
		if r.MaxStrain == 0 || r.MeanStep == 0 {
			t.Errorf("%v: nothing measured: %+v", s, r)
		}
	}
}

// The body that is drawn, with all flaps and turn-ins, measured by package fold.
func TestBodyIsClean(t *testing.T) {
	var gauge fold.Gauge
	for _, s := range sizes {
		laid := laidOut(s[0], s[1], s[2])
		m := solved(t, laid)
		strain, crossing := 0.0, 0.0
		for k := range 21 {
			body := m.Body(float64(k) / 20)
			strain = max(strain, fold.Strain(&body))
			crossing = max(crossing, gauge.Crossing(&body))
		}
		t.Logf("%v: strain %.4f, crossing %.3f mm", s, strain, crossing)
		if strain > 0.02 || crossing > 1 {
			t.Errorf("%v: strain %.4f, parts of the body cross by %.2f mm", s, strain, crossing)
		}
	}
}

// Both ends are exact, for the five sizes and fifty others of all kinds.
func TestEndsAreExact(t *testing.T) {
	bags := []*blank.Blank{}
	for _, s := range sizes {
		bags = append(bags, laidOut(s[0], s[1], s[2]))
	}
	random := rand.New(rand.NewPCG(7, 5))
	for len(bags) < len(sizes)+50 {
		spec := geomtest.RandomBag(random)
		if fits(&spec.Body) == nil {
			laid := blank.Lay(spec)
			bags = append(bags, &laid)
		}
	}
	for _, laid := range bags {
		m, err := fitted(laid)
		if err != nil {
			t.Fatal(err)
		}
		for _, moment := range []float64{0, 1} {
			body := m.Body(moment)
			if strain := fold.Strain(&body); strain > exact {
				t.Errorf("%+v: strain %g at moment %g", laid.Spec.Body, strain, moment)
			}
			if area, want := areaOf(&body), areaOf(&m.standing); math.Abs(area-want) > 1e-5*want {
				t.Errorf("%+v: area %.3f mm² at moment %g, %.3f of the standing bag", laid.Spec.Body, area, moment, want)
			}
		}
	}
}

func areaOf(body *fold.Body) float64 {
	area := 0.0
	for i := range body.Facets {
		area += geometry.Polygon(body.Facets[i].Corners...).Area()
	}
	return area
}

// At its beginning the motion is the standing bag, at its end the packed one of
// package fold, which folds them facet by facet: seen from the front, every point of
// the paper lies where it does there.
func TestEndsAreThoseOfFold(t *testing.T) {
	for _, seams := range []bag.Seams{bag.SeamsOne, bag.SeamsTwo} {
		for _, s := range sizes {
			laid := laidOut(s[0], s[1], s[2], func(spec *bag.Spec) { spec.Body.Seams = seams; spec.Body.TurnIn = 30 })
			m := solved(t, laid)
			standing, packed := fold.Standing(laid), fold.Packed(laid)
			begin, end := m.Body(0), m.Body(1)
			compare(t, &begin, &standing, 0)
			compare(t, &end, &packed, 40*standing.Caliper)
		}
	}
}

// compare looks for the middle of every facet on the facets of another body.
func compare(t *testing.T, got, want *fold.Body, depth float64) {
	t.Helper()
	for i := range got.Facets {
		f := &got.Facets[i]
		var middle geometry.Vec2
		var point geometry.Vec3
		for k, c := range f.Corners {
			middle = middle.Add(c.Scale(1 / float64(len(f.Corners))))
			point = point.Add(f.Points[k].Scale(1 / float64(len(f.Corners))))
		}
		found := false
		for j := range want.Facets {
			g := &want.Facets[j]
			if g.Panel != f.Panel || g.Piece != f.Piece || !g.Contains(middle) {
				continue
			}
			found = true
			off := g.Pose.At(middle).Sub(point)
			if math.Hypot(off.X, off.Z) > 1e-4 || math.Abs(off.Y) > depth+1e-4 {
				t.Fatalf("%s at %v: %v, not %v", f.Panel, middle, point, g.Pose.At(middle))
			}
		}
		if !found && len(f.Openings) == 0 {
			t.Fatalf("%s at %v is not on the other body", f.Panel, middle)
		}
	}
}

// With a the turn of the gusset halves and b that of the base, the plane parts keep
// their lengths: checked by distances, not by the formula.
func TestLinkage(t *testing.T) {
	corner := geometry.Vec3{Y: 1}
	for swing := 1.0; swing < 90; swing++ {
		l := linkageAt(swing * degree)
		for name, length := range map[string][2]float64{
			"pack crease at the front": {l.apex.Sub(l.frontFoot).Length(), math.Sqrt2 / 2},
			"pack crease at the back":  {l.apex.Sub(corner).Length(), math.Sqrt2 / 2},
			"base":                     {l.frontFoot.Sub(corner).Length(), 1},
			"front half of the gusset": {l.apex.Sub(l.frontCrest).Length(), 0.5},
		} {
			if math.Abs(length[0]-length[1]) > 1e-12 {
				t.Errorf("base at %g°: %s is %.15f long, want %.15f", swing, name, length[0], length[1])
			}
		}
		if swing > 1 && swing < 80 && math.Abs(l.frontCrest.Sub(l.frontFoot).Length()-0.5) < 1e-3 {
			t.Errorf("base at %g°: the strip of the front would not have to bend", swing)
		}
	}
}

// The closed form stretches nothing at any swing, and is free of crossings where it is
// used and well beyond.
func TestOpeningKeepsLengths(t *testing.T) {
	n := newNet(keptWidth)
	edges := edgesOf(n.triangles)
	for swing := 0.25; swing <= 85; swing += 0.25 {
		s := n.opening(swing * degree)
		if strain, depth := n.straight(edges, s, s); strain > exact || depth > 0 && swing <= 15 {
			t.Errorf("base at %g°: strain %g, crossing %g D", swing, strain, depth)
		}
	}
}

func TestWhatCannotBePacked(t *testing.T) {
	for _, c := range []struct {
		name   string
		laid   *blank.Blank
		phrase string
	}{
		{"low", laidOut(240, 150, 120), "H = 120 mm"},
		{"deep", laidOut(140, 150, 300), "gussets meet"},
		{"pinch", laidOut(240, 100, 360, func(s *bag.Spec) { s.Body.Base = bag.BasePinch }), "pinch base"},
	} {
		_, err := Solve(context.Background(), c.laid, nil)
		if err == nil || !strings.Contains(err.Error(), c.phrase) {
			t.Errorf("%s: error %v does not tell %q", c.name, err, c.phrase)
		}
	}
}

func TestSolveStops(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	told := 0
	_, err := Solve(ctx, laidOut(240, 100, 360), func(float64) {
		told++
		stop()
	})
	if !errors.Is(err, context.Canceled) || told != 1 {
		t.Errorf("error %v after progress was told %d times", err, told)
	}
	if _, err := find(ctx, keptWidth, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("finding a motion: error %v", err)
	}
}

func TestSameBagSameMotion(t *testing.T) {
	laid := laidOut(190, 95, 265)
	first, second := solved(t, laid), solved(t, laid)
	second.Body(0.9)
	if first.Measured != second.Measured || !reflect.DeepEqual(first.Body(0.37), second.Body(0.37)) {
		t.Error("two motions of the same bag differ")
	}
}

func TestReadStillsFailsOnOthers(t *testing.T) {
	n := newNet(keptWidth)
	var data bytes.Buffer
	if err := writeStills(&data, []*still{n.opening(firstSwing)}); err != nil {
		t.Fatal(err)
	}
	if _, err := readStills(data.Bytes(), n); err != nil {
		t.Error(err)
	}
	if _, err := readStills(data.Bytes()[:data.Len()/2], n); err == nil {
		t.Error("half a file was read")
	}
	if _, err := readStills([]byte("no stills"), n); err == nil {
		t.Error("something else was read")
	}
}

func FuzzReadStills(f *testing.F) {
	f.Add(kept[:2000])
	f.Add([]byte{})
	n := newNet(keptWidth)
	f.Fuzz(func(t *testing.T, data []byte) {
		if stills, err := readStills(data, n); err == nil && len(stills) == 0 {
			t.Error("nothing read, and no error")
		}
	})
}

// BenchmarkSolve solves the packing of each size, and reports how clean the motion is.
func BenchmarkSolve(b *testing.B) {
	for _, s := range sizes {
		laid := laidOut(s[0], s[1], s[2])
		b.Run(fmt.Sprintf("%gx%gx%g", s[0], s[1], s[2]), func(b *testing.B) {
			var measured Measure
			for b.Loop() {
				measured = solved(b, laid).Measured
			}
			b.ReportMetric(100*measured.MaxStrain, "strain-%")
			b.ReportMetric(measured.MaxCrossing, "crossing-mm")
			b.ReportMetric(measured.MaxStep/measured.MeanStep, "step/mean")
		})
	}
}

func BenchmarkBody(b *testing.B) {
	m := solved(b, laidOut(240, 100, 360))
	moment := 0.0
	for b.Loop() {
		moment = math.Mod(moment+0.0137, 1)
		m.Body(moment)
	}
}

// The bag goes to where it is packed without going back, as it does where it buckles and
// snaps: the corner that is farthest from its place there never goes away from it by more
// than 2 mm of a gusset 100 mm deep. What was found does so before it is cut off.
func TestMotionIsCalm(t *testing.T) {
	back := func(stills []*still) (most float64) {
		packed, nearest := stills[len(stills)-1], math.Inf(1)
		for _, s := range stills {
			left := farthest(s.points, packed.points)
			most, nearest = max(most, left-nearest), min(nearest, left)
		}
		return most
	}
	whole, err := wholeCourse()
	if err != nil {
		t.Fatal(err)
	}
	if went := back(whole.stills); went > 0.02 {
		t.Errorf("a corner goes back by %.3f D", went)
	}
	all, err := readStills(kept, whole.net)
	if err != nil {
		t.Fatal(err)
	}
	if went := back(append(all, whole.net.packed(all[len(all)-1].places))); went < 0.1 {
		t.Errorf("all that was found goes back by %.3f D only: it need not be cut off", went)
	}
}
