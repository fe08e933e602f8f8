package solid_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/solid"
)

func meshOf(spec bag.Spec) (solid.Mesh, fold.Body) {
	laid := blank.Lay(spec)
	body := fold.Standing(&laid)
	return solid.NewModel(body).Mesh(), body
}

// triangle is one of a mesh with what it is painted with.
type triangle struct {
	solid.Group
	corners [3]solid.Vertex
}

func trianglesOf(mesh *solid.Mesh) []triangle {
	var list []triangle
	for _, g := range mesh.Groups {
		for _, t := range g.Triangles {
			list = append(list, triangle{g, [3]solid.Vertex{mesh.Vertices[t[0]], mesh.Vertices[t[1]], mesh.Vertices[t[2]]}})
		}
	}
	return list
}

// slope returns the vector that stands on a triangle on the side from which it runs
// anticlockwise, twice the area long.
func (t *triangle) slope() geometry.Vec3 {
	a := t.corners[0].At
	return t.corners[1].At.Sub(a).Cross(t.corners[2].At.Sub(a))
}

// randomSpecs returns bags of every style and random ones.
func randomSpecs(t *testing.T, count int) map[string]bag.Spec {
	specs := styles(t)
	random := rand.New(rand.NewPCG(21, 22))
	for i := range count {
		specs["random "+string(rune('A'+i))] = geomtest.RandomBag(random)
	}
	return specs
}

// The print sides of a bag have together the area of its facets without the holes,
// each reckoned by formula: the shoelace formula for the outline, and n/2·r²·sin(2π/n)
// for the n corners of a round hole. The reverse sides have the same.
func TestMeshHasTheAreaOfThePaper(t *testing.T) {
	const corners = 28 // of a hole
	for name, spec := range randomSpecs(t, 20) {
		mesh, body := meshOf(spec)
		want := 0.0
		for i := range body.Facets {
			f := &body.Facets[i]
			want += geometry.Polygon(f.Corners...).Area()
			for _, o := range f.Openings {
				hole := corners/2*o.Radius*o.Radius*math.Sin(2*math.Pi/corners) + 2*o.Radius*o.To.Sub(o.From).Length()
				if !within(f, o) {
					want = math.NaN() // a hole through a crease: no formula
				}
				want -= hole
			}
		}
		if math.IsNaN(want) {
			continue
		}
		printed, reverse := 0.0, 0.0
		for _, tr := range trianglesOf(&mesh) {
			switch tr.Skin {
			case solid.PrintSide:
				printed += tr.slope().Length() / 2
			case solid.ReverseSide:
				reverse += tr.slope().Length() / 2
			}
		}
		if math.Abs(printed-want) > 1e-6*want || math.Abs(reverse-want) > 1e-6*want {
			t.Errorf("%s: print sides have %.4f mm² and reverse sides %.4f, want %.4f", name, printed, reverse, want)
		}
	}
}

// within tells whether an opening lies within the corners of a facet.
func within(f *fold.Facet, o fold.Opening) bool {
	outline := geometry.Polygon(f.Corners...)
	for _, p := range o.Outline(14) {
		if !outline.Contains(p) {
			return false
		}
	}
	return true
}

// Every point of the paper lies on one triangle of its print side, where the facet
// carries it, and points in holes lie on none: also where a crease runs through a hole.
func TestMeshCoversThePaperOnce(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	specs := randomSpecs(t, 15)
	through := geomtest.WorkedExample()
	through.Handle.Spacing = through.Body.Width // the holes lie on the panel edges
	specs["holes on the panel edges"] = through
	looked := [2]int{}
	for _, name := range names(specs) {
		spec := specs[name]
		mesh, body := meshOf(spec)
		all := trianglesOf(&mesh)
		for i := range body.Facets {
			f := &body.Facets[i]
			box := geometry.Polygon(f.Corners...).Bounds()
			for range 40 {
				p := geometry.Vec2{X: box.Min.X + random.Float64()*box.Width(), Y: box.Min.Y + random.Float64()*box.Height()}
				if len(f.Openings) > 0 && random.IntN(2) == 0 {
					o := f.Openings[random.IntN(len(f.Openings))]
					p = o.From.Add(geometry.Polar(random.Float64()*2*o.Radius, random.Float64()*7))
				}
				if doubtful(f, p) {
					continue
				}
				want, got := 0, 0
				if f.Contains(p) {
					want = 1
				}
				for k := range all {
					if all[k].Skin == solid.PrintSide && all[k].Piece == f.Piece && carries(&all[k], p, f.Pose.At(p)) {
						got++
					}
				}
				looked[want]++
				if got != want {
					t.Fatalf("%s, %s at %v: on %d triangles, want %d", name, f.Panel, p, got, want)
				}
			}
		}
	}
	if looked[0] < 500 || looked[1] < 5000 {
		t.Errorf("only %v points looked at in holes and on paper", looked)
	}
}

// doubtful tells whether a point lies between the circle of a hole and its corners, or
// at the border of the facet.
func doubtful(f *fold.Facet, p geometry.Vec2) bool {
	for step := range 8 {
		q := p.Add(geometry.Polar(0.15, float64(step)*math.Pi/4))
		if f.Contains(q) != f.Contains(p) {
			return true
		}
	}
	return false
}

// carries tells whether a triangle holds a place of the blank at a point in space.
func carries(t *triangle, place geometry.Vec2, at geometry.Vec3) bool {
	a, b, c := t.corners[0].Place, t.corners[1].Place, t.corners[2].Place
	whole := b.Sub(a).Cross(c.Sub(a))
	shareB, shareC := place.Sub(a).Cross(c.Sub(a))/whole, b.Sub(a).Cross(place.Sub(a))/whole
	if !(shareB >= 0 && shareC >= 0 && shareB+shareC < 1) {
		return false
	}
	from := t.corners[0].At
	return from.Add(t.corners[1].At.Sub(from).Scale(shareB)).Add(t.corners[2].At.Sub(from).Scale(shareC)).Sub(at).Length() < 1e-5
}

// A triangle runs anticlockwise seen from the side to which its normals point, and the
// normals are unit vectors. So print and reverse are told apart by the way they face.
func TestMeshFaces(t *testing.T) {
	for name, spec := range randomSpecs(t, 20) {
		mesh, _ := meshOf(spec)
		skins := map[solid.Skin]int{}
		for _, tr := range trianglesOf(&mesh) {
			skins[tr.Skin]++
			for _, v := range tr.corners {
				if math.Abs(v.Normal.Length()-1) > 1e-6 {
					t.Fatalf("%s: a normal of skin %d is %g long", name, tr.Skin, v.Normal.Length())
				}
				slope := tr.slope()
				if slope.Length() < 1e-4 || tr.Skin >= solid.Cloth {
					continue // too thin to have a direction, or round
				}
				if along := slope.Unit().Dot(v.Normal); along < 0.9 || along < 0.9999 && tr.Skin != solid.FoldedEdge {
					t.Fatalf("%s: a triangle of skin %d looks along %v, its normal along %v", name, tr.Skin, slope.Unit(), v.Normal)
				}
			}
		}
		if skins[solid.PrintSide] == 0 || skins[solid.PrintSide] != skins[solid.ReverseSide] || skins[solid.CutEdge] == 0 {
			t.Errorf("%s: triangles by skin %v", name, skins)
		}
		cords := skins[solid.Cloth] + skins[solid.PaperCord]
		if kind := spec.Handle.Kind; (cords > 0) != (kind.IsThreaded() || kind.HasPatch()) {
			t.Errorf("%s: %d triangles of cords for handle %s", name, cords, kind)
		}
	}
}

// Cords are closed all round and face outward: each edge runs once each way, but on the
// inner side of a bend that is tighter than the cord is thick, where it folds over; and the
// volume within is positive (the divergence theorem: a sixth of the sum of the triple
// products of the corners of each triangle). It is about that of the paths times
// 3·wide·deep, the area of an ellipse of twelve corners; less where they bend sharply, since
// the section stands askew there.
func TestCordsAreClosed(t *testing.T) {
	for name, spec := range randomSpecs(t, 20) {
		mesh, body := meshOf(spec)
		runs, volume := map[[2]int]int{}, 0.0
		for _, g := range mesh.Groups {
			if g.Skin < solid.Cloth {
				continue
			}
			for _, tr := range g.Triangles {
				a, b, c := mesh.Vertices[tr[0]].At, mesh.Vertices[tr[1]].At, mesh.Vertices[tr[2]].At
				volume += a.Cross(b).Dot(c) / 6
				for k := range tr {
					runs[[2]int{tr[k], tr[(k+1)%3]}]++
				}
			}
		}
		loose := 0
		for run, count := range runs {
			a, b := mesh.Vertices[run[0]].At, mesh.Vertices[run[1]].At
			if back := runs[[2]int{run[1], run[0]}]; back != count && b.Sub(a).Length() > 1e-3 {
				loose++
			}
		}
		if loose > len(runs)/50 {
			t.Errorf("%s: %d of %d edges of cords do not run once each way", name, loose, len(runs))
		}
		whole := 0.0
		for _, cord := range body.Cords {
			for i, p := range cord.Path[1:] {
				whole += 3 * cord.Wide * cord.Deep * p.Sub(cord.Path[i]).Length()
			}
		}
		if volume < 0.65*whole || volume > 1.5*whole {
			t.Errorf("%s: cords of %.0f mm³, their paths would have %.0f", name, volume, whole)
		}
	}
}

// Where a fold joins two layers, its strip has the print of the crease: every corner of
// it lies on the blank where two facets meet.
func TestMeshFoldsCarryThePrintOfTheirCrease(t *testing.T) {
	for name, spec := range styles(t) {
		mesh, body := meshOf(spec)
		strips := 0
		for _, tr := range trianglesOf(&mesh) {
			if tr.Skin != solid.FoldedEdge {
				continue
			}
			strips++
			for _, v := range tr.corners {
				meet := 0
				for i := range body.Facets {
					f := &body.Facets[i]
					for _, c := range f.Corners {
						if f.Piece == tr.Piece && c.Near(v.Place) && f.Pose.At(c).Sub(v.At).Length() < 1e-5 {
							meet++
						}
					}
				}
				if meet == 0 {
					t.Fatalf("%s: a fold carries the place %v at %v, where no facet has a corner", name, v.Place, v.At)
				}
			}
		}
		if strips == 0 && spec.Body.Top == bag.TopTurnIn {
			t.Errorf("%s: no folds between layers", name)
		}
	}
}

// The turn-in shows its print side to the inside; all else shows its reverse there.
func TestMeshInside(t *testing.T) {
	mesh, body := meshOf(geomtest.WorkedExample())
	fold := 0.0
	for i := range body.Facets {
		if f := &body.Facets[i]; f.Panel == "front" {
			fold = geometry.Polygon(f.Corners...).Bounds().Max.Y
		}
	}
	for _, tr := range trianglesOf(&mesh) {
		middle := (tr.corners[0].Place.Y + tr.corners[1].Place.Y + tr.corners[2].Place.Y) / 3
		if tr.Skin == solid.PrintSide && tr.Inside != (middle > fold) || tr.Skin == solid.ReverseSide && tr.Inside != (middle < fold) {
			t.Fatalf("skin %d at height %.1f of the blank, turn-in from %.1f: inside %v", tr.Skin, middle, fold, tr.Inside)
		}
	}
}
