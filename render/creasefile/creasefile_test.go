package creasefile_test

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/creasefile"
)

func write(t testing.TB, spec bag.Spec) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := creasefile.Write(&out, spec.Name, blank.Patterns(spec)); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestGolden(t *testing.T) {
	geomtest.Golden(t, "worked-example.fold", write(t, geomtest.WorkedExample()))
}

func TestNoPieceIsAnError(t *testing.T) {
	if err := creasefile.Write(&bytes.Buffer{}, "nothing", nil); err == nil {
		t.Error("a file without a piece was written")
	}
}

// report is what testdata/outside/fold-check.cjs prints of one frame.
type report struct {
	Faces             int
	Kawasaki, Maekawa []int
	ClosureError      float64 // mm between two ways to fold one vertex
	FoldedByFold      [][]float64
	FoldedByRabbitEar [][]float64
}

func checkOutside(t *testing.T, data []byte) []report {
	t.Helper()
	path := filepath.Join(t.TempDir(), "bag.fold")
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
	var reports []report
	if err := json.Unmarshal(geomtest.Node(t, "fold-check.cjs", path), &reports); err != nil {
		t.Fatal(err)
	}
	return reports
}

// Two origami libraries from the npm registry, fold 0.12.0 and rabbit-ear 0.9.32,
// read our file: they find the same faces, no vertex against the theorems, and
// they fold the blank flat so that the tube closes.
func TestOrigamiLibrariesAgree(t *testing.T) {
	pinch, slotted, twoSeams := geomtest.WorkedExample(), geomtest.WorkedExample(), geomtest.WorkedExample()
	pinch.Body.Base = bag.BasePinch
	slotted.Body.Base = bag.BaseSlotted
	twoSeams.Body.Seams = bag.SeamsTwo
	specs := []bag.Spec{geomtest.WorkedExample(), pinch, slotted, twoSeams}
	random := rand.New(rand.NewPCG(9, 10))
	for len(specs) < 10 {
		spec := geomtest.RandomBag(random)
		b := spec.Body
		if b.BaseFlap() <= b.Width/2 && b.Gusset <= b.Width && b.Gusset <= b.Height && b.Gusset > 0 {
			specs = append(specs, spec)
		}
	}
	for _, spec := range specs {
		patterns := blank.Patterns(spec)
		reports := checkOutside(t, write(t, spec))
		if len(reports) != len(patterns) {
			t.Fatalf("%d frames, want %d", len(reports), len(patterns))
		}
		for i, got := range reports {
			pattern := &patterns[i]
			if got.Faces != len(pattern.Faces) {
				t.Errorf("%d faces, ours are %d", got.Faces, len(pattern.Faces))
			}
			if len(got.Kawasaki) > 0 || len(got.Maekawa) > 0 {
				t.Errorf("vertices against Kawasaki: %v, against Maekawa: %v, with %+v", got.Kawasaki, got.Maekawa, spec.Body)
			}
			if got.ClosureError > 1e-6 {
				t.Errorf("the folded faces are %g mm apart, with %+v", got.ClosureError, spec.Body)
			}
			for name, folded := range map[string][][]float64{"fold": got.FoldedByFold, "rabbit-ear": got.FoldedByRabbitEar} {
				checkTube(t, name, pattern, folded)
			}
		}
	}
}

// checkTube tells whether the flat-folded tube of a bag with one seam closes: the
// seam crease must land on the left raw edge of the blank, point by point.
func checkTube(t *testing.T, library string, pattern *blank.Pattern, folded [][]float64) {
	t.Helper()
	if len(folded) != len(pattern.Points) {
		t.Fatalf("%s folded %d vertices, want %d", library, len(folded), len(pattern.Points))
	}
	if pattern.Name != "blank" {
		return
	}
	seam := 0.0
	for _, edge := range pattern.Edges {
		if edge.Role == blank.RolePanelEdge {
			seam = max(seam, pattern.Points[edge.A].X)
		}
	}
	pairs := 0
	for i, a := range pattern.Points {
		for j, b := range pattern.Points {
			if a.X != 0 || math.Abs(b.X-seam) > 1e-9 || math.Abs(a.Y-b.Y) > 1e-9 {
				continue
			}
			pairs++
			if gap := math.Hypot(folded[i][0]-folded[j][0], folded[i][1]-folded[j][1]); gap > 1e-6 {
				t.Errorf("%s: at height %g the seam stays %g mm open", library, a.Y, gap)
			}
		}
	}
	if pairs < 3 {
		t.Errorf("only %d points of the seam have a partner", pairs)
	}
}

// A crease turned the wrong way must be noticed by the library.
func TestOrigamiLibraryNoticesAWrongFold(t *testing.T) {
	patterns := blank.Patterns(geomtest.WorkedExample())
	for i := range patterns[0].Edges {
		if edge := &patterns[0].Edges[i]; edge.Role == blank.RoleFlatFold {
			edge.Fold = edge.Fold.Opposite()
			break
		}
	}
	var out bytes.Buffer
	if err := creasefile.Write(&out, "wrong", patterns); err != nil {
		t.Fatal(err)
	}
	if got := checkOutside(t, out.Bytes()); len(got[0].Maekawa) == 0 {
		t.Error("the wrong fold went unnoticed")
	}
}
