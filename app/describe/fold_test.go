package describe_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"gussetwright/app/describe"
	"gussetwright/app/document"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

func folded(t testing.TB, spec bag.Spec) *describe.Fold {
	t.Helper()
	snapshot, err := document.Derive(spec)
	if err != nil {
		t.Fatal(err)
	}
	return describe.FoldOf(snapshot)
}

// The stages of the worked example; what is measured is looked at below.
func TestGoldenFold(t *testing.T) {
	fold := folded(t, geomtest.WorkedExample())
	for i := range fold.Stages {
		s := &fold.Stages[i]
		s.MaxStrain, s.MaxCrossing, s.MaxStep, s.MeanStep = 0, 0, 0, 0
	}
	out, err := json.MarshalIndent(fold, "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	geomtest.Golden(t, "describe/worked-example-fold.json", append(out, '\n'))
}

// Stages that are not sketches move paper without stretching it or passing through
// itself, and no step is far longer than the others.
func TestStagesAreMeasured(t *testing.T) {
	pinch, two := geomtest.WorkedExample(), geomtest.WorkedExample()
	pinch.Body.Base, two.Body.Seams = bag.BasePinch, bag.SeamsTwo
	for name, spec := range map[string]bag.Spec{"one seam": geomtest.WorkedExample(), "pinch base": pinch, "two seams": two} {
		moved := 0
		for _, s := range folded(t, spec).Stages {
			if !s.Foldable || s.Steps != 100 {
				t.Errorf("%s, %s: %d steps, foldable: %t", name, s.Name, s.Steps, s.Foldable)
			}
			mostStrain, mostCrossing := 1e-6, 0.2
			if s.Name == "packed" {
				mostStrain, mostCrossing = 0.02, 1 // faces bend, as a net of triangles
			}
			if !s.Schematic && (s.MaxStrain > mostStrain || s.MaxCrossing > mostCrossing) {
				t.Errorf("%s, %s: strain %g, crossing %g mm", name, s.Name, s.MaxStrain, s.MaxCrossing)
			}
			if s.MaxStep < s.MeanStep || !s.Schematic && s.MaxStep > 2*s.MeanStep {
				t.Errorf("%s, %s: a step of %g mm, %g mm on average", name, s.Name, s.MaxStep, s.MeanStep)
			}
			if s.MeanStep > 0.5 {
				moved++
			}
		}
		if moved < 5 {
			t.Errorf("%s: only %d stages move", name, moved)
		}
	}
}

// The turn-in swings by half a turn: its edge of 50 mm goes π · 50 mm in 100 steps. The
// flat blank does not move at all.
func TestStepsAreMillimetres(t *testing.T) {
	for _, s := range folded(t, geomtest.WorkedExample()).Stages {
		switch s.Name {
		case "blank":
			if s.MaxStep != 0 {
				t.Errorf("the blank goes %g mm", s.MaxStep)
			}
		case "turn-in":
			if s.MaxStep < 1.5 || s.MaxStep > 1.7 {
				t.Errorf("the turn-in goes %g mm in a step, want about 1.57", s.MaxStep)
			}
		}
	}
}

func TestObstacleIsNamed(t *testing.T) {
	low := bag.OfSize(200, 150, 120)
	fold := folded(t, low)
	last := fold.Stages[len(fold.Stages)-1]
	if last.Name != "packed" || last.Foldable || last.Steps != 0 || !strings.Contains(fold.Obstacle, "lower than its base is deep") {
		t.Errorf("%+v, obstacle %q", last, fold.Obstacle)
	}
	snapshot, err := document.Derive(low)
	if err != nil {
		t.Fatal(err)
	}
	description := describe.Describe(snapshot)
	description.Fold = fold
	var out bytes.Buffer
	if err := description.Text(&out); err != nil {
		t.Fatal(err)
	}
	if text := out.String(); !strings.Contains(text, "no further: the bag is lower") || strings.Contains(text, "Packed") || !strings.Contains(text, "turn-in       strain 0.00 %") {
		t.Errorf("says %s", text)
	}
}

func BenchmarkFoldOf(b *testing.B) {
	snapshot, err := document.Derive(geomtest.WorkedExample())
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		describe.FoldOf(snapshot)
	}
}
