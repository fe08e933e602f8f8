package fold_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
)

// What is glued holds paper to paper: in the standing bag every point of every glue area
// lies under another layer, so that no glue is on an outside, be it of the bag or of its
// inside. Of the base that goes for all points within 1.9 mm, too: glue stays 2 mm from
// edges and folds, so that none comes out (common practice, no published source).
func TestGlueLiesUnderPaper(t *testing.T) {
	eachBag(t, 300, func(t *testing.T, laid *blank.Blank) {
		if lesson := fold.Fold(laid); lesson.Foldable <= lesson.Standing {
			return
		}
		coverGlue(t, laid, 0)
		tight := laid.Spec
		tight.Body.SeamRelief = 0 // which leaves a slit beside the seam
		coverGlue(t, lay(t, tight), 1.9)
	})
}

// coverGlue looks whether all glue lies under paper, that of the base with so much around
// it in mm.
func coverGlue(t *testing.T, laid *blank.Blank, around float64) {
	t.Helper()
	body := fold.Standing(laid)
	random := rand.New(rand.NewPCG(71, 72))
	for i := range laid.Pieces {
		for _, area := range laid.Pieces[i].Glue {
			ring := 0.0
			if area.Role == blank.GluePinch || strings.HasPrefix(string(area.Role), "base") {
				ring = around
			}
			for _, p := range pointsOf(area, random) {
				if area.Role == blank.GlueSeam && p.X < area.Shape.Bounds().Min.X+laid.Spec.Body.SeamRelief {
					continue // the crease of the seam flap stands off the face
				}
				for k := range 8 {
					at := p.Add(geometry.Polar(ring, float64(k)*math.Pi/4))
					if !underPaper(&body, i, area.Side, at) {
						t.Fatalf("%s on %s: nothing lies on the glue at (%.2f, %.2f)", area.Role, area.Panel, at.X, at.Y)
					}
				}
			}
		}
	}
}

// Hands glue in the order of the lesson: what a stage glues is bare when it begins and lies
// under paper when it ends. So the front flap of a base is not glued for the back flap, and
// no glue sets before its flap comes. The patch of a handle brings its glue along: it may
// come to lie on the turn-in.
func TestEachStageGluesWhatItCloses(t *testing.T) {
	eachBag(t, 60, func(t *testing.T, laid *blank.Blank) {
		lesson := fold.Fold(laid)
		random := rand.New(rand.NewPCG(73, 74))
		for stage := range min(lesson.Foldable, lesson.Standing+1) {
			before, after := lesson.Pose(stage, 0), lesson.Pose(stage, 1)
			for i := range laid.Pieces {
				for _, area := range laid.Pieces[i].Glue {
					if !slices.Contains(lesson.Stages[stage].Glue, area.Role) || area.Role == blank.GluePatch {
						continue
					}
					for _, p := range pointsOf(area, random) {
						if area.Role == blank.GlueSeam && p.X < area.Shape.Bounds().Min.X+laid.Spec.Body.SeamRelief {
							continue
						}
						if underPaper(&before, i, area.Side, p) || !underPaper(&after, i, area.Side, p) {
							t.Fatalf("%s, %s on %s at (%.2f, %.2f): paper lies on the glue before %v, after %v", lesson.Stages[stage].Name,
								area.Role, area.Panel, p.X, p.Y, underPaper(&before, i, area.Side, p), underPaper(&after, i, area.Side, p))
						}
					}
				}
			}
		}
	})
}

// pointsOf returns points all over a glue area: a hair inside of its corners and of
// places on its edges, and some at random. None is in an opening.
func pointsOf(area blank.GlueArea, random *rand.Rand) []geometry.Vec2 {
	shape, box := area.Shape, area.Shape.Bounds()
	middle := geometry.Vec2{}
	for _, v := range shape.Vertices {
		middle = middle.Add(v.Scale(1 / float64(len(shape.Vertices))))
	}
	var points []geometry.Vec2
	for k := range shape.Len() {
		edge := shape.Edge(k)
		for _, share := range []float64{0, 0.123, 0.456, 0.789} {
			p := edge.From.Add(edge.To.Sub(edge.From).Scale(share))
			points = append(points, p.Add(middle.Sub(p).Unit().Scale(0.01)))
		}
	}
	for range 40 {
		points = append(points, box.Min.Add(geometry.Vec2{X: random.Float64() * box.Width(), Y: random.Float64() * box.Height()}))
	}
	return slices.DeleteFunc(points, func(p geometry.Vec2) bool {
		within := func(opening geometry.Path) bool { return opening.Bounds().Contains(p) }
		return !shape.Contains(p) || slices.ContainsFunc(area.Openings, within)
	})
}

// underPaper tells whether another layer lies right on a side of the paper at a point of
// a piece.
func underPaper(body *fold.Body, piece int, side blank.Side, p geometry.Vec2) bool {
	reach := max(2, 15*body.Caliper) // more than all layers between front and back of a closed bag
	for i := range body.Facets {
		own := &body.Facets[i]
		if own.Piece != piece || !own.Contains(p) {
			continue
		}
		out := own.Pose.Out()
		if side == blank.ReverseSide {
			out = out.Scale(-1)
		}
		from := own.Pose.At(p)
		for k := range len(body.Facets) + len(body.Cards) {
			other := facetAt(body, k)
			if k == i || math.Abs(other.Pose.Out().Dot(out)) < 0.99 {
				continue
			}
			if at, hit := strike(other, from, out); hit && other.Pose.At(at).Sub(from).Length() < reach {
				return true
			}
		}
	}
	return false
}

func facetAt(body *fold.Body, i int) *fold.Facet {
	if i < len(body.Facets) {
		return &body.Facets[i]
	}
	return &body.Cards[i-len(body.Facets)]
}

// The base of the worked example done by hand, base flaps 70 long and the base 100 deep
// (the plan of the closed base; no published source): of a gusset flap the front flap
// covers the half of a square of 70 beside its fold, less 2 mm along the fold and along
// the edges.
func TestGlueOfTheBaseByHand(t *testing.T) {
	spec := styles()["block"]
	spec.Body.SeamRelief = 0
	laid := lay(t, spec)
	leg := 70 - 2 - 2 - 2*math.Sqrt2 // from the fold at 45° to the edge, both drawn in
	want := map[blank.GlueRole]float64{
		blank.GlueGussetFront: 2 * leg * leg / 2,
		blank.GlueCornerFront: 2 * leg * leg / 2,
		blank.GlueCornerBack:  2 * leg * leg / 2,
		// 40 deep, drawn in by 2 at both edges; 180 wide in the middle and 100 at the edges,
		// and at 45° to both sides in between.
		blank.GlueBase: func() float64 {
			middle := 240 - 100 - 4*math.Sqrt2
			return 36*(middle-36) + 36*36/2
		}(),
	}
	got := map[blank.GlueRole]float64{}
	for _, area := range laid.Pieces[0].Glue {
		got[area.Role] += area.Shape.Area()
	}
	for role, area := range want {
		if math.Abs(got[role]-area) > 1e-6 {
			t.Errorf("%s: %.4f mm², by hand %.4f", role, got[role], area)
		}
	}
	if spec.Body.Base != bag.BaseBlock || got[blank.GlueGussetBack] <= 0 || got[blank.GlueGussetBack] >= got[blank.GlueGussetFront] {
		t.Errorf("the back flap holds %.1f mm² of the gusset flaps, the front flap %.1f: less is left for it",
			got[blank.GlueGussetBack], got[blank.GlueGussetFront])
	}
}

// Glue inside of the bag meets bare paper: the reverse, or of a turn-in that part which is
// kept free of ink. Ink runs one bleed past the fold and under the edges of what is glued on.
func TestGlueOnTurnInsMeetsBarePaper(t *testing.T) {
	met := map[blank.GlueRole]int{}
	eachBag(t, 300, func(t *testing.T, laid *blank.Blank) {
		if lesson := fold.Fold(laid); lesson.Foldable <= lesson.Standing {
			return
		}
		spec := laid.Spec
		spec.Body.SeamRelief = 0
		laid = lay(t, spec)
		body := fold.Standing(laid)
		random := rand.New(rand.NewPCG(75, 76))
		for i := range laid.Pieces {
			for _, area := range laid.Pieces[i].Glue {
				if area.Role != blank.GlueSeam && area.Role != blank.GluePatch {
					continue
				}
				for _, p := range pointsOf(area, random) {
					next, at := nextLayer(&body, i, area.Side, p)
					if next == nil || next.Row() != blank.RowTurnIn {
						continue
					}
					met[area.Role]++
					if nearEdge(area.Role, spec.Print.Bleed, area.Shape.Bounds(), p) || inkFree(laid, next, at) {
						continue
					}
					t.Fatalf("the glue of the %s at (%.2f, %.2f) meets the print side of %s at (%.2f, %.2f)", area.Role, p.X, p.Y, next.Panel, at.X, at.Y)
				}
			}
		}
	})
	if met[blank.GlueSeam] == 0 || met[blank.GluePatch] == 0 {
		t.Errorf("of what is glued onto a turn-in there is only %v", met)
	}
}

// nearEdge tells whether a point lies within one bleed of the edges of what is glued on,
// but for the left one of the seam flap, which lies at the cut edge of the turn-in.
func nearEdge(role blank.GlueRole, bleed float64, box geometry.Rect, p geometry.Vec2) bool {
	inner := box.Inset(bleed)
	if role == blank.GlueSeam {
		inner.Min.X, inner.Min.Y = box.Min.X, box.Min.Y
	}
	return !inner.Contains(p)
}

// inkFree tells whether a point of a turn-in is kept free of ink.
func inkFree(laid *blank.Blank, turnIn *fold.Facet, p geometry.Vec2) bool {
	return slices.ContainsFunc(laid.Pieces[turnIn.Piece].GluedTurnIns(laid.Spec), func(area blank.PanelArea) bool {
		return area.Panel == turnIn.Panel && area.Box.Contains(p)
	})
}

// nextLayer returns the nearest layer on a side of a piece at a point, and where on its
// blank it is met.
func nextLayer(body *fold.Body, piece int, side blank.Side, p geometry.Vec2) (next *fold.Facet, at geometry.Vec2) {
	least := max(2, 15*body.Caliper)
	for i := range body.Facets {
		own := &body.Facets[i]
		if own.Piece != piece || !own.Contains(p) {
			continue
		}
		from, out := own.Pose.At(p), own.Pose.Out()
		if side == blank.ReverseSide {
			out = out.Scale(-1)
		}
		for k := range body.Facets {
			other := &body.Facets[k]
			if k == i || math.Abs(other.Pose.Out().Dot(out)) < 0.99 {
				continue
			}
			met, hit := strike(other, from, out)
			if !hit {
				continue
			}
			if d := other.Pose.At(met).Sub(from).Dot(out); d >= 0 && d < least {
				next, at, least = other, met, d
			}
		}
	}
	return next, at
}
