package artcheck_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/placement"
	"gussetwright/render/artcheck"
	"gussetwright/render/artwork"
	"gussetwright/render/printed"
)

// svg returns a drawing of a size in mm, its content in mm from the upper left.
func svg(width, height float64, content string) []byte {
	return fmt.Appendf(nil, `<svg xmlns="http://www.w3.org/2000/svg" width="%gmm" height="%gmm" viewBox="0 0 %g %g">%s</svg>`, width, height, width, height, content)
}

// pixels returns a grey PNG picture.
func pixels(width, height int) []byte {
	picture := image.NewGray(image.Rect(0, 0, width, height))
	for i := range picture.Pix {
		picture.Pix[i] = 200
	}
	return encoded(picture)
}

func encoded(picture image.Image) []byte {
	var out bytes.Buffer
	if err := png.Encode(&out, picture); err != nil {
		panic(err)
	}
	return out.Bytes()
}

// bagWith returns the worked example with one file placed on it.
func bagWith(t *testing.T, data []byte, art bag.Artwork, change func(*bag.Spec)) ([]check.Finding, *blank.Blank) {
	t.Helper()
	spec := geomtest.WorkedExample()
	spec.Artwork = []bag.Artwork{art}
	if change != nil {
		change(&spec)
	}
	b := blank.Lay(spec)
	opened, err := artwork.Open(context.Background(), art.File, data, 1)
	if err != nil {
		t.Fatal(err)
	}
	placed := placement.Lay(&b, func(int) (placement.Source, bool) { return opened.Source, true })
	findings := artcheck.Inspect(&b, []artcheck.Piece{{Art: opened}}, placed)
	white := color.RGBA{255, 255, 255, 255}
	var sides []*printed.Side
	for i := range b.Pieces {
		sides = append(sides, printed.NewSide(&b, i, placed, func(int) []*image.RGBA { return opened.Levels }, white, color.RGBA{0, 160, 220, 255}))
	}
	return append(findings, artcheck.Look(context.Background(), &b, placed, sides)...), &b
}

func on(place string, change func(*bag.Artwork)) bag.Artwork {
	art := bag.NewArtwork("art", place)
	if change != nil {
		change(&art)
	}
	return art
}

func exact(a *bag.Artwork) { a.Fit = bag.FitExact }

const (
	black = ` style="fill:#000"`
	// face is the front of the worked example with its bleed, and inner a mark well
	// within it.
	faceWidth, faceHeight = 246.0, 366.0
	inner                 = `<rect x="100" y="100" width="40" height="40"` + black + `/>`
)

// cases are artwork with the finding that it must lead to; the figures in what it says
// are worked out by the rule of three from the sizes in the case.
var cases = []struct {
	code     string
	severity check.Severity
	says     string
	data     []byte
	art      bag.Artwork
	change   func(*bag.Spec)
}{
	// 600 pixels over 246 mm, the shorter way: 600 ÷ 246 × 25.4 = 62.
	{"artwork-coarse", check.Error, "62 pixels to the inch", pixels(600, 900), on("front", nil), nil},
	{"artwork-soft", check.Warning, "207 pixels to the inch", pixels(2000, 3000), on("front", nil), nil},
	{"artwork-without-place", check.Warning, "does not have", svg(10, 10, inner), on(bag.OnBackPiece, nil), nil},
	{"artwork-without-bleed", check.Warning, "ends 0 mm past", svg(240, 360, inner), on("front", exact), nil},
	{"artwork-without-bleed", check.Warning, "ends 1 mm past", svg(242, 366, inner), on("front", exact), nil},
	{"artwork-other-size", check.Warning, "690 × 480 mm", svg(690, 480, inner), on(bag.OnBlank, exact), nil},
	{"artwork-upside-down", check.Warning, "on its head", svg(246, 366, inner), on("front", func(a *bag.Artwork) { a.Turn = 180 }), nil},
	{"artwork-on-its-side", check.Note, "on its side", svg(246, 366, inner), on("back", func(a *bag.Artwork) { a.Turn = 90 }), nil},
	{"artwork-on-flat-fold", check.Note, "50 mm above the base", svg(246, 366, inner), on("front", nil), nil},
	{"pattern-too-small", check.Warning, "10000 copies", svg(1, 1, `<rect width="1" height="1"/>`), on("front", func(a *bag.Artwork) { a.Fit, a.Repeat = bag.FitExact, bag.RepeatGrid }), nil},
	{"artwork-rgb", check.Note, "RGB", svg(246, 366, `<rect width="9" height="9" style="fill:#f00"/>`), on("front", nil), nil},
	{"artwork-rgb", check.Warning, "RGB", svg(246, 366, `<rect width="9" height="9" style="fill:#f00"/>`), on("front", nil), func(s *bag.Spec) { s.Print.Background.Cyan = 20 }},
	{"background-heavy", check.Warning, "340%", svg(246, 366, inner), on("front", nil), func(s *bag.Spec) { s.Print.Background = bag.Background{Cyan: 90, Magenta: 90, Yellow: 90, Black: 70} }},
	{"artwork-live-text", check.Error, "outlines", svg(246, 366, `<text x="100" y="100">Tea</text>`), on("front", nil), nil},
	{"artwork-note", check.Note, "", svg(246, 366, `<text x="100" y="100">Tea</text>`), on("front", nil), nil},
	// 0.05 mm × 72 ÷ 25.4 = 0.14 pt.
	{"line-thin", check.Warning, "0.14 pt", svg(246, 366, `<path d="M50 50H90" style="stroke:#000;stroke-width:0.05"/>`), on("front", nil), nil},

	// A symbol of 113 modules of 0.330 mm is 37.29 mm wide (GS1 General Specifications).
	{"code-small", check.Error, "27 mm wide with its quiet zones, 72% of the nominal 37.3 mm", svg(27, 19, inner), on("front", code), nil},
	{"code-large", check.Warning, "80 mm wide", svg(80, 56, inner), on("front", code), nil},
	{"code-low", check.Warning, "10 mm high", svg(37.29, 10, inner), on("front", code), nil},
	{"code-slanted", check.Warning, "turned by 10°", svg(37.29, 25.93, inner), on("front", func(a *bag.Artwork) { code(a); a.Turn = 10 }), nil},
	// Moved until its right side is 120 − 98 − 18.645 = 3.4 mm from the panel edge.
	{"code-near-fold", check.Warning, "within 3.4 mm of a crease", svg(37.29, 25.93, inner), on("front", func(a *bag.Artwork) { code(a); a.X = 98 }), nil},

	{"ink-in-glue", check.Error, "glue area", svg(706, 486, `<rect width="706" height="486" style="fill:#444"/>`), on(bag.OnBlank, nil), nil},
	// The mark begins 4 mm from the edge of the file, of which 3 are bleed.
	{"mark-near-edge", check.Warning, "comes within 1 mm", svg(246, 366, `<rect x="4" y="150" width="30" height="30"`+black+`/>`), on("front", nil), nil},
	// The file goes 53 mm past the front on the left.
	{"mark-cut-off", check.Warning, "runs 8 mm over the edge of the Front", svg(346, 366, corner(45, 150, 20)), on("front", nil), nil},
	{"mark-near-hole", check.Warning, "to a hole", svg(246, 366, `<rect x="58" y="23" width="20" height="20"`+black+`/>`), on("front", nil), nil},
	// A slit 22 high in the place of the hole ends 14 mm from the top fold, 17 from the top
	// of the file: what ends at 13 is 4 mm away.
	{
		"mark-near-hole", check.Warning, "to a slit", svg(246, 366, `<rect x="55" y="9" width="16" height="4"`+black+`/>`),
		on("front", nil), func(s *bag.Spec) { s.Handle.Kind = bag.HandleTape },
	},
	// A hand hole 90 × 30 whose middle lies 45 below the top fold reaches down to 63.
	{
		"mark-near-hole", check.Warning, "to a hole", svg(246, 366, `<rect x="100" y="66" width="40" height="20"`+black+`/>`),
		on("front", nil), func(s *bag.Spec) {
			s.Handle.Kind = bag.HandleHandHole
			s.Derive(func(string) bool { return false })
		},
	},
	// The crease lies 50 mm above the base, 363 − 50 = 313 mm from the top of the file.
	{"mark-on-flat-fold", check.Warning, "flat-fold crease runs through a mark", svg(246, 366, `<rect x="100" y="303" width="40" height="20"`+black+`/>`), on("front", nil), nil},
}

func code(a *bag.Artwork) { a.Fit, a.Holds = bag.FitExact, bag.HoldsEAN13 }

func TestEachFinding(t *testing.T) {
	for _, c := range cases {
		t.Run(c.code, func(t *testing.T) {
			findings, b := bagWith(t, c.data, c.art, c.change)
			found := slices.IndexFunc(findings, func(f check.Finding) bool {
				return f.Code == c.code && strings.Contains(f.Message.String(), c.says)
			})
			if found < 0 {
				t.Fatalf("no %s that says %q among\n%s", c.code, c.says, listed(findings))
			}
			f := findings[found]
			if f.Severity != c.severity {
				t.Errorf("it is a %s, want a %s", f.Severity, c.severity)
			}
			if f.Remedy.String() == "" || !b.Pieces[f.Piece].Box().Contains(f.At) {
				t.Errorf("remedy %q, place %v", f.Remedy, f.At)
			}
		})
	}
}

func listed(findings []check.Finding) string {
	var lines strings.Builder
	for _, f := range findings {
		fmt.Fprintf(&lines, "%s %s: %s\n", f.Severity, f.Code, f.Message)
	}
	return lines.String()
}

// Artwork as it should be leads to no warning.
func TestGoodArtworkIsLeftInPeace(t *testing.T) {
	for name, c := range map[string]struct {
		data []byte
		art  bag.Artwork
	}{
		"face with bleed":  {svg(faceWidth, faceHeight, `<rect width="246" height="366" style="fill:#888"/>`+inner), on("front", nil)},
		"sharp picture":    {pixels(2906, 4323), on("front", nil)},
		"code":             {svg(37.29, 25.93, `<rect x="5" y="2" width="25" height="20"`+black+`/>`), on("back", code)},
		"logo":             {svg(60, 60, `<circle cx="30" cy="30" r="28"`+black+`/>`), on("front", func(a *bag.Artwork) { exact(a); a.Y = 60 })},
		"pattern":          {svg(30, 30, `<rect x="5" y="5" width="8" height="8"`+black+`/>`), on("gusset-left", func(a *bag.Artwork) { exact(a); a.Repeat = bag.RepeatGrid })},
		"band that bleeds": {svg(faceWidth, faceHeight, `<rect y="180" width="246" height="20"`+black+`/>`), on("front", nil)},
	} {
		findings, _ := bagWith(t, c.data, c.art, nil)
		for _, f := range findings {
			if f.Severity != check.Note {
				t.Errorf("%s: %s: %s", name, f.Code, f.Message)
			}
		}
	}
}

func TestWhatCannotBeShown(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Artwork = []bag.Artwork{bag.NewArtwork("gone.pdf", "front"), bag.NewArtwork("soon.pdf", "back")}
	b := blank.Lay(spec)
	findings := artcheck.Inspect(&b, []artcheck.Piece{{Err: errors.New("the file is damaged")}, {}}, nil)
	if len(findings) != 1 || findings[0].Code != "artwork-unreadable" || !strings.Contains(findings[0].Message.String(), "damaged") {
		t.Errorf("findings\n%s", listed(findings))
	}
}

func TestLookEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	spec := geomtest.WorkedExample()
	b := blank.Lay(spec)
	spec.Print.Background.Black = 50
	b.Spec = spec
	side := printed.NewSide(&b, 0, nil, func(int) []*image.RGBA { return nil }, color.RGBA{255, 255, 255, 255}, color.RGBA{128, 128, 128, 255})
	if got := artcheck.Look(ctx, &b, nil, []*printed.Side{side}); got != nil {
		t.Errorf("findings %v", got)
	}
}

// Every code in the package has a case, so that none is there that nothing leads to.
func TestEveryCodeHasACase(t *testing.T) {
	tested := []string{"artwork-unreadable", "font-missing", "text-small", "ink-heavy"} // the last three in document_test.go
	for _, c := range cases {
		tested = append(tested, c.code)
	}
	names, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	coded := regexp.MustCompile(`"((?:artwork|code|mark|ink|line|text|font|pattern|background)-[a-z-]+)"`)
	for _, name := range names {
		if strings.HasSuffix(name.Name(), "_test.go") {
			continue
		}
		source, err := os.ReadFile(name.Name())
		if err != nil {
			t.Fatal(err)
		}
		for _, match := range coded.FindAllStringSubmatch(string(source), -1) {
			if !slices.Contains(tested, match[1]) {
				t.Errorf("%s: no case for %s", name.Name(), match[1])
			}
		}
	}
}

func BenchmarkLook(b *testing.B) {
	spec := geomtest.WorkedExample()
	spec.Artwork = []bag.Artwork{bag.NewArtwork("art", "front")}
	laid := blank.Lay(spec)
	opened, err := artwork.Open(context.Background(), "art", svg(246, 366, inner), 1)
	if err != nil {
		b.Fatal(err)
	}
	placed := placement.Lay(&laid, func(int) (placement.Source, bool) { return opened.Source, true })
	side := printed.NewSide(&laid, 0, placed, func(int) []*image.RGBA { return opened.Levels }, color.RGBA{255, 255, 255, 255}, color.RGBA{})
	for b.Loop() {
		artcheck.Look(context.Background(), &laid, placed, []*printed.Side{side})
	}
}
