package fold_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
)

// names returns the names of the stages of a lesson.
func names(l *fold.Lesson) []string {
	list := make([]string, len(l.Stages))
	for i := range l.Stages {
		list[i] = l.Stages[i].Name
	}
	return list
}

// stageOf returns the index of a stage.
func stageOf(t *testing.T, l *fold.Lesson, name string) int {
	t.Helper()
	i := slices.Index(names(l), name)
	if i < 0 {
		t.Fatalf("no stage %q among %v", name, names(l))
	}
	return i
}

func TestStages(t *testing.T) {
	for name, want := range map[string][]string{
		"block": {
			"blank", "top-cards", "turn-in", "tube", "seam", "upend",
			"base-gussets", "base-front", "base-back", "standing", "base-card", "handle", "packed",
		},
		"two seams": {
			"blank", "top-cards", "turn-in", "tube", "pieces", "seam", "upend",
			"base-gussets", "base-front", "base-back", "standing", "base-card", "handle", "packed",
		},
		"straight": {
			"blank", "tube", "seam", "upend",
			"base-gussets", "base-front", "base-back", "standing", "base-card", "handle", "packed",
		},
		"pinch": {"blank", "top-cards", "turn-in", "tube", "seam", "flatten", "base-pinch", "standing", "handle", "packed"},
		"flat":  {"blank", "top-cards", "turn-in", "tube", "seam", "base-pinch", "standing", "handle", "packed"},
	} {
		spec := styles()[name]
		if got := names(fold.Fold(lay(t, spec))); !slices.Equal(got, want) {
			t.Errorf("%s: stages %v, want %v", name, got, want)
		}
	}
}

// Every stage has words for a learner, and each area of glue is used in one.
func TestStagesAreTold(t *testing.T) {
	for name, spec := range styles() {
		laid := lay(t, spec)
		l := fold.Fold(laid)
		used := map[blank.GlueRole]bool{}
		for _, stage := range l.Stages {
			if stage.Title.Empty() || stage.Caption.Empty() || stage.Check.Empty() {
				t.Errorf("%s: stage %s lacks words", name, stage.Name)
			}
			for _, role := range stage.Glue {
				used[role] = true
			}
		}
		for i := range laid.Pieces {
			for _, area := range laid.Pieces[i].Glue {
				if !used[area.Role] {
					t.Errorf("%s: the glue area %s on %s is used in no stage", name, area.Role, area.Panel)
				}
			}
		}
	}
}

// Where a stage begins the one before ended, and where the last one ends that still
// stands is the standing bag.
func TestStagesJoin(t *testing.T) {
	eachBag(t, 100, func(t *testing.T, laid *blank.Blank) {
		l := fold.Fold(laid)
		for i := 1; i < min(l.Foldable, l.Standing+1); i++ {
			if apart := farthestApart(l.Pose(i-1, 1), l.Pose(i, 0)); apart > 1e-9 {
				t.Errorf("%s begins %v mm from where %s ended", l.Stages[i].Name, apart, l.Stages[i-1].Name)
			}
		}
		if l.Foldable <= l.Standing {
			return
		}
		got, want := l.Pose(l.Standing, 1), fold.Standing(laid)
		if apart := farthestApart(got, want); apart > 0 || len(got.Cards) != len(want.Cards) || len(got.Cords) != len(want.Cords) {
			t.Errorf("the lesson ends %v mm from the standing bag, with %d cards and %d cords for %d and %d",
				apart, len(got.Cards), len(got.Cords), len(want.Cards), len(want.Cords))
		}
	})
}

func farthestApart(a, b fold.Body) float64 {
	if len(a.Facets) != len(b.Facets) {
		return math.Inf(1)
	}
	most := 0.0
	for i := range a.Facets {
		for c, p := range a.Facets[i].Points {
			most = max(most, p.Sub(b.Facets[i].Points[c]).Length())
		}
	}
	return most
}

// eachBag runs a check on a bag of each construction and on random ones.
func eachBag(t *testing.T, count int, check func(t *testing.T, laid *blank.Blank)) {
	t.Helper()
	for name, spec := range styles() {
		t.Run(name, func(t *testing.T) { check(t, lay(t, spec)) })
	}
	random := rand.New(rand.NewPCG(21, 22))
	for i := range count {
		spec := geomtest.RandomBag(random)
		t.Run(fmt.Sprintf("random %d", i), func(t *testing.T) {
			check(t, lay(t, spec))
			if t.Failed() {
				t.Logf("with %+v %+v", spec.Body, spec.Handle)
			}
		})
	}
}

// The packed stage begins with the standing bag: each of its facets lies where the
// facet of the standing bag carries that part of the blank.
func TestPackingBeginsStanding(t *testing.T) {
	for name, spec := range styles() {
		laid := lay(t, spec)
		l := fold.Fold(laid)
		standing, packing := fold.Standing(laid), l.Pose(stageOf(t, l, "packed"), 0)
		for i := range packing.Facets {
			f := &packing.Facets[i]
			within := middleOn(f.Corners)
			k := slices.IndexFunc(standing.Facets, func(s fold.Facet) bool {
				s.Openings = nil
				return s.Piece == f.Piece && s.Panel == f.Panel && s.Contains(within)
			})
			if k < 0 {
				t.Fatalf("%s: nothing of %s at %v in the standing bag", name, f.Panel, within)
			}
			for c, corner := range f.Corners {
				if apart := standing.Facets[k].Pose.At(corner).Sub(f.Points[c]).Length(); apart > 1e-9 {
					t.Errorf("%s: %s begins to pack %v mm from where it stands", name, f.Panel, apart)
				}
			}
		}
	}
}

func middleOn(corners []geometry.Vec2) geometry.Vec2 {
	var sum geometry.Vec2
	for _, c := range corners {
		sum = sum.Add(c)
	}
	return sum.Scale(1 / float64(len(corners)))
}

// On the way to the standing bag no paper is stretched and none is lost: every
// distance within a facet stays to 1e-9, the areas sum to those of the panels, and
// the paper stays on the ground. Creases hold but for layers and relief.
func TestPaperStaysPaper(t *testing.T) {
	eachBag(t, 60, func(t *testing.T, laid *blank.Blank) {
		l := fold.Fold(laid)
		want := 0.0
		for i := range laid.Pieces {
			for _, panel := range laid.Pieces[i].Panels {
				want += panel.Shape.Area()
			}
		}
		for stage := range min(l.Foldable, l.Standing+1) {
			for _, moment := range []float64{0, 0.13, 0.5, 0.81, 1} {
				body := l.Pose(stage, moment)
				name := fmt.Sprintf("%s at %v", l.Stages[stage].Name, moment)
				if strain := fold.Strain(&body); strain > 1e-9 {
					t.Errorf("%s: strain %g", name, strain)
				}
				area, lowest := 0.0, math.Inf(1)
				for i := range body.Facets {
					area += areaVector(body.Facets[i].Points).Length()
					for _, p := range body.Facets[i].Points {
						lowest = min(lowest, p.Z)
					}
				}
				if math.Abs(area-want) > 1e-4*want { // round ends of slots are chords
					t.Errorf("%s: %v mm² of paper, want %v", name, area, want)
				}
				leaning := 0.0 // layers of a pinch base that lean with the back
				if laid.Spec.Body.Base == bag.BasePinch && stage >= stageOf(t, l, "standing") {
					leaning = 4 * body.Caliper
				}
				if lowest > 1e-6 || lowest < -leaning-1e-6 {
					t.Errorf("%s: the paper lies %v mm above the ground", name, lowest)
				}
				checkCreasesHold(t, name, &body, laid.Spec.Body.SeamRelief)
			}
		}
	})
}

func checkCreasesHold(t *testing.T, name string, body *fold.Body, relief float64) {
	t.Helper()
	most := 18*body.Caliper + 2*relief // the front passes all layers of a closed bag at a pinch base
	for i := range body.Facets {
		for j := range body.Facets[:i] {
			a, b := &body.Facets[i], &body.Facets[j]
			if a.Piece != b.Piece {
				continue
			}
			for c, p := range a.Corners {
				for d, q := range b.Corners {
					if apart := a.Points[c].Sub(b.Points[d]).Length(); p.Near(q) && apart > most {
						t.Errorf("%s: %s and %s share (%.1f, %.1f) on the blank and are %.2f mm apart", name, a.Panel, b.Panel, p.X, p.Y, apart)
					}
				}
			}
		}
	}
}

// No facet passes through another by more than a caliper from the blank to the
// standing bag: 200 random bags, 100 moments each spread over all stages.
func TestNothingPassesThrough(t *testing.T) {
	eachBag(t, 200, func(t *testing.T, laid *blank.Blank) {
		l := fold.Fold(laid)
		stages := min(l.Foldable, l.Standing+1)
		var gauge fold.Gauge
		for i := range 100 {
			at := float64(i) / 99 * float64(stages)
			stage := min(int(at), stages-1)
			body := l.Pose(stage, at-float64(stage))
			if depth := gauge.Crossing(&body); depth > body.Caliper {
				t.Errorf("%s at %.2f: paper passes %.3f mm through paper, the caliper is %.3f", l.Stages[stage].Name, at-float64(stage), depth, body.Caliper)
			}
		}
	})
}

// Nothing jumps: from one of 100 moments to the next no corner goes farther than
// twice the mean of such steps. Of the packing, what is exact, that of pinch bases,
// is held to the same, and neither to stretch.
func TestNothingJumps(t *testing.T) {
	eachBag(t, 60, func(t *testing.T, laid *blank.Blank) {
		l := fold.Fold(laid)
		for stage := range l.Foldable {
			got := l.Measure(stage, 100)
			if got.MaxStep > 2*got.MeanStep {
				t.Errorf("%s: a step of %.2f mm, the mean is %.2f", l.Stages[stage].Name, got.MaxStep, got.MeanStep)
			}
			exact := stage <= l.Standing || !l.Stages[stage].Schematic
			if exact && (got.MaxStrain > 1e-9 || got.MaxCrossing > laid.Spec.Paper.Thickness()) {
				t.Errorf("%s: strain %g, crossing %.3f mm", l.Stages[stage].Name, got.MaxStrain, got.MaxCrossing)
			}
		}
	})
}

// A bag that cannot be made is folded as far as it goes, and the lesson says why no
// farther.
func TestLessonStopsAtObstacle(t *testing.T) {
	for name, test := range map[string]struct {
		change func(*bag.Spec)
		stop   string
	}{
		"corner creases cross":  {func(s *bag.Spec) { s.Body.Width = 130 }, "base-gussets"},
		"flap longer than base": {func(s *bag.Spec) { s.Body.BaseOverlap = 51 }, "base-gussets"},
		"gussets meet":          {func(s *bag.Spec) { s.Body.Base, s.Body.Gusset = bag.BasePinch, 250 }, "flatten"},
		"too low to pack":       {func(s *bag.Spec) { s.Body.Height = 90; s.Body.TurnIn = 30 }, "packed"},
		"wide seam flap":        {func(s *bag.Spec) { s.Body.Width, s.Body.SeamFlap = 70, 71 }, "tube"},
	} {
		spec := styles()["block"]
		test.change(&spec)
		laid := lay(t, spec)
		l := fold.Fold(laid)
		if l.Foldable == len(l.Stages) || l.Stages[l.Foldable].Name != test.stop || l.Obstacle.Empty() {
			t.Errorf("%s: %d of %v, %q; want a stop before %s", name, l.Foldable, names(l), l.Obstacle, test.stop)
			continue
		}
		if apart := farthestApart(l.Pose(l.Foldable, 0.5), l.Pose(l.Foldable-1, 1)); apart > 0 {
			t.Errorf("%s: past its end the lesson shows something else", name)
		}
	}
}

// The creases of the stages are those of the blank, each whole: panel edges in
// tube, and every part of a base crease in one of the stages of the base.
func TestCreasesOfStages(t *testing.T) {
	laid := lay(t, styles()["block"])
	l := fold.Fold(laid)
	lengths := map[blank.Role]float64{}
	for _, name := range []string{"turn-in", "tube", "base-gussets", "base-front", "base-back", "packed"} {
		for _, crease := range l.Stages[stageOf(t, l, name)].Creases {
			if crease.Fold == blank.NoFold {
				t.Errorf("%s: a crease without direction", name)
			}
			if name != "base-gussets" || crease.Role != blank.RolePanelEdge {
				lengths[crease.Role] += crease.Length()
			}
		}
	}
	want := map[blank.Role]float64{}
	for _, line := range laid.Pieces[0].Lines {
		if line.Kind == blank.Crease {
			want[line.Role] += line.Length()
		}
	}
	want[blank.RoleBase] -= laid.Spec.Body.SeamFlap // the seam flap goes with the front
	for role, length := range want {
		if math.Abs(lengths[role]-length) > 1e-6 {
			t.Errorf("%s: %v mm of creases in the stages, want %v", role, lengths[role], length)
		}
	}
}
