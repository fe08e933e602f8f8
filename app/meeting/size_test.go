package meeting

import (
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/plain"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
)

// Holes half a face apart stay so; holes that somebody placed stay where they are.
func TestHolesMoveAlong(t *testing.T) {
	for _, test := range []struct{ before, after float64 }{{120, 150}, {90, 90}} {
		spec := bag.OfSize(240, 100, 360)
		spec.Handle.Spacing = test.before
		spec.Handle.Drop, spec.Body.TurnIn = 33, 61 // none of the usual values
		got := size{300, 120, 400}.of(spec)
		want := spec
		want.Body.Width, want.Body.Gusset, want.Body.Height, want.Handle.Spacing = 300, 120, 400, test.after
		if document.Difference(&want, &got) != (document.Change{}) {
			t.Errorf("holes %g mm apart: %+v", test.before, document.Difference(&want, &got))
		}
	}
}

func TestSizesInWords(t *testing.T) {
	for _, test := range []struct {
		size         size
		unit         geometry.Unit
		words, brief string
	}{
		{size{240, 100, 360}, geometry.Millimetre, "240 mm wide, 100 mm deep, 360 mm high", "240 × 100 × 360 mm"},
		{size{240, 100, 362.5}, geometry.Centimetre, "24 cm wide, 10 cm deep, 36.25 cm high", "24 × 10 × 36.25 cm"},
		{size{254, 101.6, 361.95}, geometry.Inch, "10 in wide, 4 in deep, 14.25 in high", "10 × 4 × 14.25 in"},
		{size{240, 0, 360}, geometry.Millimetre, "240 mm wide, 360 mm high, flat", "240 × 0 × 360 mm"},
	} {
		if words, brief := test.size.words(test.unit), test.size.brief(test.unit); words != test.words || brief != test.brief {
			t.Errorf("%v in %s: %q, %q", test.size, test.unit, words, brief)
		}
	}
	if got := (size{240, 0, 360}).lines(geometry.Millimetre); got != [axes]string{"240 mm wide", "flat", "360 mm high"} {
		t.Errorf("flat: %q", got)
	}
}

func TestSteps(t *testing.T) {
	for _, test := range []struct{ value, step, near, above, below float64 }{
		{240, 5, 240, 245, 235},
		{242, 5, 240, 245, 240},
		{243, 5, 245, 245, 240},
		{242, 1, 242, 243, 241},
		{254, 6.35, 254, 260.35, 247.65},     // 10 in
		{250, 6.35, 247.65, 254, 247.65},     // between 9 3/4 and 10 in
		{1.5875, 1.5875, 1.5875, 3.175, 0},   // 1/16 in
		{240.0000001, 5, 240, 245, 235},      // noise is no step
		{239.9999999, 5, 240, 245, 235},      // nor is it below
		{12.5, 5, 15, 15, 10},                // halves go up
		{361.95, 6.35, 361.95, 368.3, 355.6}, // 14 1/4 in
	} {
		got := [3]float64{nearest(test.value, test.step), next(test.value, test.step, true), next(test.value, test.step, false)}
		if want := [3]float64{test.near, test.above, test.below}; got != want {
			t.Errorf("%g by %g: %v, want %v", test.value, test.step, got, want)
		}
	}
}

// Whatever a slider gives can be drawn, for any bag, and the slider covers the value.
func TestSlidersGiveBagsThatCanBeDrawn(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 6))
	for range 300 {
		spec := geomtest.RandomBag(random)
		if spec.Body.Top == bag.TopZigzag {
			continue // a coarse zigzag needs a wide face
		}
		for a := range axes {
			now := sizeOf(&spec)
			low, high := a.span(now[a], &spec)
			if !(low <= now[a] && now[a] <= high && low < high) {
				t.Fatalf("%s: %g to %g for %g", a.name(), low, high, now[a])
			}
			for _, share := range []float64{0, random.Float64(), 1} {
				moved := now
				moved[a] = a.allowed(nearest(low+share*(high-low), metricStep), &spec)
				changed := moved.of(spec)
				if err := changed.Validate(); err != nil {
					t.Fatalf("%s from %g to %g: %v", a.name(), now[a], moved[a], err)
				}
			}
		}
	}
}

func TestFlatBagsBecomeDeep(t *testing.T) {
	spec := bag.OfSize(240, 0, 360)
	low, high := depth.span(0, &spec)
	if low != 0 || high != 100 {
		t.Errorf("the depth of a flat bag goes from %g to %g", low, high)
	}
	for value, want := range map[float64]float64{0: 0, 4: 0, 5: 10, 9: 10, 10: 10, 35: 35} {
		if got := depth.allowed(value, &spec); got != want {
			t.Errorf("a depth of %g becomes %g, want %g", value, got, want)
		}
	}
	block := bag.OfSize(240, 100, 360)
	if got := depth.allowed(0, &block); got != leastDepth {
		t.Errorf("a bag that stands becomes %g deep", got)
	}
}

// trade are words that a client need not know.
var trade = []string{"gusset", "turn-in", "flap", "seam", "crease", "blank", "dieline", "caliper", "bleed", "trim", "overlap", "patch", "sheet of 1"}

// errorsInSource returns the codes of findings that are always errors, as the packages
// that make them write them.
func errorsInSource(t *testing.T) (codes []string) {
	t.Helper()
	written := regexp.MustCompile(`\bError, "([a-z-]+)"`)
	for _, folder := range []string{"geometry/check", "render/artcheck"} {
		paths, err := filepath.Glob(filepath.Join(geomtest.Root(t), folder, "*.go"))
		if err != nil || len(paths) == 0 {
			t.Fatalf("%s: %v, %v", folder, paths, err)
		}
		for _, path := range paths {
			source, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if strings.HasSuffix(path, "_test.go") {
				continue
			}
			for _, found := range written.FindAllSubmatch(source, -1) {
				codes = append(codes, string(found[1]))
			}
		}
	}
	return codes
}

// Every error that there is has words of its own, none of them of the trade.
func TestErrorsInPlainWords(t *testing.T) {
	for code, sentence := range plain.Stops() {
		for _, word := range trade {
			if strings.Contains(strings.ToLower(string(sentence)), word) {
				t.Errorf("%s: %q speaks of %q", code, sentence, word)
			}
		}
	}
	random, found := rand.New(rand.NewPCG(2, 3)), map[string]bool{}
	for range 1500 {
		spec := geomtest.RandomBag(random)
		now := sizeOf(&spec)
		for a := range axes {
			now[a] = a.allowed(now[a]*math.Exp(random.NormFloat64()/2), &spec)
		}
		snapshot, err := document.Derive(now.of(spec))
		if err != nil {
			continue
		}
		for _, finding := range snapshot.Findings {
			if finding.Severity == check.Error {
				found[finding.Code] = true
			}
		}
		if got := complaint(snapshot); (got != "") != check.HasError(snapshot.Findings) {
			t.Errorf("%v: it says %q", now, got)
		}
	}
	for _, code := range errorsInSource(t) {
		found[code] = true
	}
	for code := range found {
		if plain.Stops()[code] == "" {
			t.Errorf("no plain words for %s", code)
		}
	}
	if len(found) < 15 {
		t.Errorf("there are only the errors %v", found)
	}
	if complaint(nil) == "" {
		t.Error("nothing is said of a bag that cannot be drawn")
	}
}
