package fold_test

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/creasefile"
)

// packable returns one bag of each construction without relief, which crease patterns
// leave out, and random ones, all of which pack.
func packable(t *testing.T, count int) []bag.Spec {
	t.Helper()
	var specs []bag.Spec
	for _, spec := range styles() {
		specs = append(specs, spec)
	}
	random := rand.New(rand.NewPCG(31, 32))
	for len(specs) < count+len(styles()) {
		spec := geomtest.RandomBag(random)
		if width, _, _ := fold.PackedSize(lay(t, spec)); width > 0 {
			specs = append(specs, spec)
		}
	}
	return specs
}

// An independent origami library, rabbit-ear 0.9.32 from the npm registry, folds our
// crease pattern flat from the FOLD file. Its points are those of the packed bag to
// 1e-6 of the size, moved or turned over as a whole.
func TestOrigamiLibraryFoldsThePackedBag(t *testing.T) {
	for _, spec := range packable(t, 12) {
		spec.Body.SeamRelief = 0
		spec.Handle.Kind = bag.HandleNone
		laid := lay(t, spec)
		if laid.Seams == 1 {
			spec.Body.Seams = bag.SeamsOne
		}
		patterns := blank.Patterns(spec)
		var file bytes.Buffer
		if err := creasefile.Write(&file, "bag", patterns); err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(t.TempDir(), "bag.fold")
		if err := os.WriteFile(path, file.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		var frames []struct{ FoldedByRabbitEar [][]float64 }
		if err := json.Unmarshal(geomtest.Node(t, "fold-check.cjs", path), &frames); err != nil {
			t.Fatal(err)
		}
		body := fold.Packed(laid)
		for i, pattern := range patterns {
			compareFolded(t, &body, i, &pattern, frames[i].FoldedByRabbitEar)
		}
		if t.Failed() {
			t.Fatalf("with %+v", spec.Body)
		}
	}
}

// compareFolded compares the points of a piece with those of a library: where two of
// them, far from each other, lie in both fixes how the library laid the piece down.
func compareFolded(t *testing.T, body *fold.Body, piece int, pattern *blank.Pattern, folded [][]float64) {
	t.Helper()
	var ours, theirs []geometry.Vec2
	for i, p := range pattern.Points {
		at, found := packedPoint(body, piece, p)
		if !found {
			continue // a round end of a slot, which both draw in chords of their own
		}
		ours = append(ours, at)
		theirs = append(theirs, geometry.Vec2{X: folded[i][0], Y: folded[i][1]})
	}
	if len(ours) < 3*len(pattern.Points)/4 {
		t.Fatalf("only %d of %d points of the pattern found", len(ours), len(pattern.Points))
	}
	far, size := 0, 0.0
	for i := range ours {
		if d := ours[i].Sub(ours[0]).Length(); d > size {
			far, size = i, d
		}
	}
	best := math.Inf(1)
	for _, mirrored := range []bool{false, true} {
		worst := 0.0
		for i := range ours {
			worst = max(worst, laidDown(ours[i], ours[0], ours[far], mirrored).Sub(laidDown(theirs[i], theirs[0], theirs[far], false)).Length())
		}
		best = min(best, worst)
	}
	if best > 1e-6*size {
		t.Errorf("%s: a point lies %g mm from where the library folds it", pattern.Name, best)
	}
}

// laidDown returns p as seen from a with b straight ahead.
func laidDown(p, a, b geometry.Vec2, mirrored bool) geometry.Vec2 {
	ahead := b.Sub(a).Unit()
	at := geometry.Vec2{X: p.Sub(a).Dot(ahead), Y: ahead.Cross(p.Sub(a))}
	if mirrored {
		at.Y = -at.Y
	}
	return at
}

// packedPoint returns where a point of the blank lies in the packed bag, seen from
// the front. All facets that have it as a corner must agree.
func packedPoint(body *fold.Body, piece int, p geometry.Vec2) (at geometry.Vec2, found bool) {
	for i := range body.Facets {
		f := &body.Facets[i]
		for c, corner := range f.Corners {
			if f.Piece == piece && corner.Near(p) {
				at, found = geometry.Vec2{X: f.Points[c].X, Y: f.Points[c].Z}, true
			}
		}
	}
	return at, found
}

// The packed bag is the blank folded: every distance within a facet to 1e-9, every
// facet flat and upright, every crease closed but for layers, and layers that cover
// the same place at least a quarter of a caliper apart.
func TestPackedIsExact(t *testing.T) {
	for _, spec := range packable(t, 60) {
		laid := lay(t, spec)
		body := fold.Packed(laid)
		if strain := fold.Strain(&body); strain > 1e-9 {
			t.Errorf("strain %g", strain)
		}
		if depth := fold.Crossing(&body); depth > body.Caliper {
			t.Errorf("crossing %g mm", depth)
		}
		area := 0.0
		for i := range body.Facets {
			f := &body.Facets[i]
			area += areaVector(f.Points).Length()
			if across := math.Abs(f.Pose.Out().Y); across < 1-1e-12 {
				t.Errorf("%s stands out of the plane: %v", f.Panel, f.Pose.Out())
			}
			for j := range body.Facets[:i] {
				g := &body.Facets[j]
				if f.Piece == g.Piece && f.Pose.Origin.Near(g.Pose.Origin) {
					continue // two parts of one plane
				}
				if apart := math.Abs(f.Points[0].Y - g.Points[0].Y); apart < body.Caliper/4 && overlap(f, g) {
					t.Errorf("%s and %s lie %v mm apart, the caliper is %v", f.Panel, g.Panel, apart, body.Caliper)
				}
			}
		}
		want := 0.0
		for i := range laid.Pieces {
			for _, panel := range laid.Pieces[i].Panels {
				want += panel.Shape.Area()
			}
		}
		if math.Abs(area-want) > 1e-4*want {
			t.Errorf("%v mm² of paper, want %v", area, want)
		}
		if t.Failed() {
			t.Fatalf("with %+v", spec.Body)
		}
	}
}

// From the back of a packed block bag: back, upper halves of the gussets, front, its
// strip, small triangles, triangles beside the base, base; of this the gusset flaps
// first and the back flap last.
func TestPackedLayers(t *testing.T) {
	for _, name := range []string{"block", "two seams", "slotted"} {
		body := fold.Packed(lay(t, styles()[name]))
		for _, column := range []string{"gusset-right", "gusset-left"} {
			var order []*fold.Facet
			gusset := facetsOf(&body, column)
			front := facetsOf(&body, "front")
			order = append(order, facetsOf(&body, "back")[0], gusset[1], gusset[0], front[0], front[1], gusset[2], gusset[3],
				facetsOf(&body, column+"-base")[0], facetsOf(&body, "front-base")[0], facetsOf(&body, "back-base")[0])
			for i := range order[1:] {
				if behind, before := order[i].Points[0].Y, order[i+1].Points[0].Y; before > behind-body.Caliper/4 {
					t.Errorf("%s: layer %d (%s) at %v is not before %s at %v", name, i+1, order[i+1].Panel, before, order[i].Panel, behind)
				}
			}
		}
	}
}

// A packed bag is as wide as its face and as high as it stands. Its thickness is what
// a search with many points finds at most: this may miss a narrow place, so it must
// not find more, and on the plain styles it finds as much.
func TestPackedSize(t *testing.T) {
	random := rand.New(rand.NewPCG(41, 42))
	for i, spec := range packable(t, 30) {
		laid := lay(t, spec)
		width, height, thickness := fold.PackedSize(laid)
		b := spec.Body
		if want := max(b.Height, b.BaseFlap()); math.Abs(width-b.Width) > 1e-6 || b.Base != bag.BasePinch && math.Abs(height-b.Height) > 1e-6 || height > want+1e-6 {
			t.Errorf("packed %v × %v, want %v × %v", width, height, b.Width, b.Height)
		}
		body := fold.Packed(laid)
		found := 0
		for range 4000 {
			found = max(found, layersAt(&body, geometry.Vec2{X: random.Float64() * width, Y: random.Float64() * height}))
		}
		layers := thickness / body.Caliper
		if float64(found) > layers+1e-3 || i < len(styles()) && float64(found) < layers-1e-3 {
			t.Errorf("%v layers, a search finds %d, with %+v", layers, found, b)
		}
	}
}

// layersAt counts the facets that cover a point seen from the front; holes count as
// paper.
func layersAt(body *fold.Body, p geometry.Vec2) int {
	count := 0
	for i := range body.Facets {
		f := body.Facets[i]
		f.Openings = nil
		at := geometry.Vec3{X: p.X, Z: p.Y}.Sub(f.Pose.Origin)
		if f.Contains(geometry.Vec2{X: at.Dot(f.Pose.Right), Y: at.Dot(f.Pose.Up)}) {
			count++
		}
	}
	return count
}

// The layers of a flat bag can be counted by hand: at the corner of the pinch base
// front, seam flap and back, and each once more folded over.
func TestLayersOfFlatBag(t *testing.T) {
	spec := styles()["flat"]
	spec.Body.Top = bag.TopStraight
	width, height, thickness := fold.PackedSize(lay(t, spec))
	if want := 6 * spec.Paper.Thickness(); width != spec.Body.Width || height != spec.Body.Height || math.Abs(thickness-want) > 1e-6 {
		t.Errorf("%v × %v × %v, want %v × %v × %v", width, height, thickness, spec.Body.Width, spec.Body.Height, want)
	}
}

func TestNoSizeWithoutPacking(t *testing.T) {
	spec := styles()["block"]
	spec.Body.Height, spec.Body.TurnIn = 90, 30
	if width, height, thickness := fold.PackedSize(lay(t, spec)); width != 0 || height != 0 || thickness != 0 {
		t.Errorf("a bag that does not pack measures %v × %v × %v", width, height, thickness)
	}
}
