package artcheck_test

import (
	"archive/zip"
	"context"
	"fmt"
	"image"
	"image/color"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
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
)

// marksFound returns the findings about marks at edges, each code once.
func marksFound(findings []check.Finding) string {
	var codes []string
	for _, f := range findings {
		if (f.Code == "mark-cut-off" || f.Code == "mark-near-edge") && !slices.Contains(codes, f.Code) {
			codes = append(codes, f.Code)
		}
	}
	slices.Sort(codes)
	return strings.Join(codes, " ")
}

// corner is a mark like the letter L, in a square of a size.
func corner(x, y, size float64) string {
	bar := size / 4
	return fmt.Sprintf(`<path d="M%g %gv%gh%gv%gh%gv%gz"%s/>`, x, y, size, size, -bar, bar-size, bar-size, black)
}

// ring is a mark like the letter O, in a square of a size.
func ring(x, y, size float64) string {
	return fmt.Sprintf(`<circle cx="%g" cy="%g" r="%g" style="fill:none;stroke:#000;stroke-width:%g"/>`, x+size/2, y+size/2, size*0.4, size*0.2)
}

// The file of 346 × 366 mm covers the front of 240 × 360 mm and its bleed as it is, and
// goes 53 mm past it on the left and the right. So a mark of the size s at the distance d
// from the left edge begins at 53 + d, and one from the right edge at 293 − d − s.
func TestMarksAtAnEdge(t *testing.T) {
	const left, right = 53, 293
	for _, c := range []struct {
		distance float64
		want     string
	}{
		{20, ""},
		{5.6, ""},
		{4, "mark-near-edge"},
		{1, "mark-near-edge"},
		{0.3, "mark-near-edge"},
		{-0.7, "mark-cut-off"},
		{-1.5, "mark-cut-off"},
		{-3, "mark-cut-off"},
	} {
		for _, size := range []float64{4, 40} {
			for side, drawn := range map[string]string{
				"left": corner(left+c.distance, 150, size), "right": ring(right-c.distance-size, 150, size),
			} {
				findings, b := bagWith(t, svg(346, 366, drawn), on("front", nil), nil)
				if got := marksFound(findings); got != c.want {
					t.Errorf("%g mm at %g mm from the %s edge: %q, want %q", size, c.distance, side, got, c.want)
				}
				front, _ := b.Pieces[0].Panel("front")
				at := map[string]float64{"left": front.Box.Min.X, "right": front.Box.Max.X}[side]
				for _, f := range findings {
					if f.Code == "mark-cut-off" && math.Abs(f.At.X-at) > 1 {
						t.Errorf("the %s edge is cut at %v", side, f.At)
					}
				}
			}
		}
	}
}

// What is said is how far the mark runs over; 0.3 mm is a pixel of the picture that is
// looked at.
func TestHowFarAMarkRunsOver(t *testing.T) {
	for _, over := range []float64{1, 4.5, 10, 33} {
		findings := inspected(geomtest.WorkedExample(), open(t, svg(346, 366, corner(53-over, 150, 40))), on("front", nil))
		found := slices.IndexFunc(findings, func(f check.Finding) bool { return f.Code == "mark-cut-off" })
		if found < 0 {
			t.Fatalf("%g mm: nothing found", over)
		}
		var said float64
		if _, after, _ := strings.Cut(findings[found].Message.String(), "runs "); after == "" {
			t.Fatalf("it says %q", findings[found].Message)
		} else if _, err := fmt.Sscanf(after, "%g mm over the edge of the Front", &said); err != nil {
			t.Fatal(err)
		}
		if math.Abs(said-over) > 0.3 {
			t.Errorf("it runs %g mm over, and is said to by %g", over, said)
		}
	}
}

// A word from the left edge of a file that goes past the panel by 53 mm: while the panel
// is made narrower, one letter after the other is lost, and there is no moment at which
// nothing is said.
func TestATornWordIsAlwaysTold(t *testing.T) {
	for _, size := range []float64{4, 12, 30} {
		word := ""
		for i := range 4 {
			word += corner(60+float64(i)*size*1.3, 150, size) // the gaps are 0.3 of the height
		}
		for _, shift := range []float64{0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 1, 1.05, 1.1, 1.15, 1.2, 1.25, 1.35, 1.5, 2.2, 2.5, 2.55} {
			art := on("front", func(a *bag.Artwork) { exact(a); a.X = -7 - shift*size })
			findings := inspected(geomtest.WorkedExample(), open(t, svg(346, 366, word)), art)
			if got := marksFound(findings); !strings.Contains(got, "mark-cut-off") {
				t.Errorf("letters of %g mm, the word %g letters past the edge: %q", size, shift, got)
			}
		}
	}
}

// What is cut off, and what is not or is meant to be.
func TestCutOff(t *testing.T) {
	const cut = "mark-cut-off"
	green := func(s *bag.Spec) { s.Print.Background = bag.Background{Cyan: 70, Yellow: 80} }
	logo := corner(0, 0, 20) + ring(25, 0, 20) + corner(50, 0, 20) // ends with its letters
	for name, c := range map[string]struct {
		data   []byte
		art    bag.Artwork
		change func(*bag.Spec)
		want   string
	}{
		"above":                   {svg(246, 466, corner(100, 45, 20)), on("front", nil), nil, cut},
		"below":                   {svg(246, 466, corner(100, 401, 20)), on("front", nil), nil, cut},
		"turned by a quarter":     {svg(366, 346, corner(100, 45, 20)), on("front", func(a *bag.Artwork) { a.Turn = 90 }), nil, cut},
		"slanted":                 {svg(346, 366, corner(45, 150, 20)), on("front", func(a *bag.Artwork) { exact(a); a.Turn = 3 }), nil, cut},
		"mirrored":                {svg(346, 366, corner(45, 150, 20)), on("front", func(a *bag.Artwork) { a.Mirror = true }), nil, cut},
		"a gusset":                {svg(246, 366, corner(68, 150, 12)), on("gusset-left", nil), nil, cut},
		"moved by hand":           {svg(246, 366, corner(30, 150, 20)), on("front", func(a *bag.Artwork) { a.X = -35 }), nil, cut},
		"made larger by hand":     {svg(246, 366, corner(12, 150, 20)), on("front", func(a *bag.Artwork) { a.Scale = 1.2 }), nil, cut},
		"a close logo moved":      {svg(70, 20, logo), on("front", func(a *bag.Artwork) { exact(a); a.X = -95 }), nil, cut},
		"a close logo enlarged":   {svg(70, 20, ring(0, 0, 20)+logo[len(corner(0, 0, 20)):len(logo)-len(corner(50, 0, 20))]+ring(50, 0, 20)), on("front", func(a *bag.Artwork) { exact(a); a.Scale = 3.6 }), nil, cut},
		"white on the background": {svg(346, 366, strings.ReplaceAll(corner(45, 150, 20), "#000", "#fff")), on("front", nil), green, cut},
		"on a band that bleeds": {
			svg(346, 366, `<rect y="300" width="346" height="66"`+black+`/>`+strings.ReplaceAll(corner(45, 320, 20), "#000", "#fff")), on("front", nil), nil, cut,
		},
		"beside a pattern of other size": {svg(346, 366, corner(43, 150, 40)+dots(346, 366, 4, 23)), on("front", nil), nil, cut},
		"script in one piece": {
			svg(346, 366, `<path d="M40 150C60 110 80 190 100 150S140 190 160 150S200 190 220 150S260 190 290 150S300 160 306 150" style="fill:none;stroke:#000;stroke-width:6"/>`), on("front", nil), nil, cut,
		},
		"over the whole blank": {svg(906, 486, corner(95, 200, 20)), on(bag.OnBlank, nil), nil, cut},

		"white on white paper":           {svg(346, 366, strings.ReplaceAll(corner(45, 150, 20), "#000", "#fff")), on("front", nil), nil, ""},
		"within":                         {svg(346, 366, corner(45, 150, 20)), on("front", func(a *bag.Artwork) { a.Fit = bag.FitContain; a.Scale = 0.9 }), nil, ""},
		"a logo as it is":                {svg(70, 20, logo), on("front", exact), nil, ""},
		"a field":                        {svg(346, 366, `<rect width="346" height="366"`+black+`/>`), on("front", nil), nil, ""},
		"a band":                         {svg(346, 366, `<rect y="180" width="346" height="20"`+black+`/>`), on("front", nil), nil, ""},
		"a band that ends in the bleed":  {svg(246, 366, `<rect x="1" y="180" width="244" height="20"`+black+`/>`), on("front", nil), nil, ""},
		"upright stripes":                {svg(346, 366, stripes(346, 366, 8, 20, false)), on("front", nil), nil, ""},
		"level stripes":                  {svg(346, 366, stripes(346, 366, 8, 20, true)), on("front", nil), nil, ""},
		"upright stripes off the border": {svg(346, 366, `<g transform="translate(0 1)">`+stripes(346, 364, 8, 20, false)+`</g>`), on("front", nil), nil, ""},
		"slanted stripes":                {svg(346, 366, `<path d="M-50 0L316 366M0 0L366 366M50 0L416 366M-100 0L266 366M-200 0L166 366M-300 0L66 366M150 0L516 366M250 0L616 366" style="stroke:#000;stroke-width:6"/>`), on("front", nil), nil, ""},
		"a ruler":                        {svg(346, 366, `<path d="M0 180H346"`+` style="stroke:#000;stroke-width:1"/>`+stripes(346, 12, 1, 5, false)), on("front", nil), nil, ""},
		"a line across":                  {svg(346, 366, `<path d="M10 180H336" style="stroke:#000;stroke-width:1"/>`), on("front", nil), nil, ""},
		"a frame on the border":          {svg(346, 366, `<rect x="2" y="2" width="342" height="362" style="fill:none;stroke:#000;stroke-width:4"/>`), on("front", nil), nil, ""},
		"a frame in the bleed":           {svg(246, 366, `<rect x="2" y="2" width="242" height="362" style="fill:none;stroke:#000;stroke-width:1.5"/>`), on("front", nil), nil, ""},
		"a frame that is cut":            {svg(346, 366, `<rect x="20" y="20" width="306" height="326" style="fill:none;stroke:#000;stroke-width:4"/>`), on("front", nil), nil, ""},
		"dots that bleed":                {svg(346, 366, dots(346, 366, 8, 23)), on("front", nil), nil, ""},
		"large dots that bleed":          {svg(346, 366, dots(346, 366, 40, 75)), on("front", nil), nil, ""},
		"dots without order":             {svg(346, 366, scattered(346, 366, 9, 160)), on("front", nil), nil, ""},
		"dots on a colour":               {svg(346, 366, dots(346, 366, 8, 23)), on("front", nil), green, ""},
		"a repeated mark":                {svg(60, 60, corner(15, 15, 30)), on("front", func(a *bag.Artwork) { exact(a); a.X, a.Repeat = -120, bag.RepeatGrid }), nil, ""},
		"a picture of its own":           {svg(346, 366, `<rect x="30" y="20" width="286" height="300"`+black+`/>`), on("front", nil), nil, ""},
		"cut in the file":                {svg(346, 366, `<circle cx="40" cy="180" r="50"`+black+`/>`), on("front", nil), nil, ""},
		"a branch from the border":       {svg(346, 366, `<path d="M0 180C40 170 60 190 90 150M40 176C55 200 65 210 80 215" style="fill:none;stroke:#000;stroke-width:2"/>`), on("front", nil), nil, ""},
		"not shown":                      {svg(346, 366, corner(45, 150, 20)), on("front", func(a *bag.Artwork) { a.Opacity = 0 }), nil, ""},
		"specks":                         {svg(346, 366, `<rect x="52.8" y="150" width="0.5" height="0.5"`+black+`/>`), on("front", nil), nil, ""},
		"crop marks beyond":              {svg(346, 366, `<path d="M51 190V160M40 150H50M40 250H50" style="stroke:#000;stroke-width:0.3"/>`), on("front", nil), nil, ""},
		"the blank on its template":      {svg(706, 486, corner(0.5, 200, 10)), on(bag.OnBlank, exact), nil, ""},
		"the blank with its bleed":       {svg(706, 486, corner(1, 200, 10)), on(bag.OnBlank, nil), nil, ""},
		"on the turn-in":                 {svg(346, 50, corner(45, 10, 20)), on("front-turn-in", nil), nil, ""},
	} {
		spec := geomtest.WorkedExample()
		if c.change != nil {
			c.change(&spec)
		}
		findings, got := inspected(spec, open(t, c.data), c.art), ""
		for _, f := range findings {
			if f.Code == cut {
				got = cut
			}
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q, among\n%s", name, got, c.want, listed(findings))
		}
	}
}

// dots returns round dots in a grid of which the sides of the file cut some.
func dots(width, height, size, step float64) string {
	var out strings.Builder
	for y := 0.0; y <= height+size; y += step {
		for x := 0.0; x <= width+size; x += step {
			fmt.Fprintf(&out, `<circle cx="%g" cy="%g" r="%g"%s/>`, x, y, size/2, black)
		}
	}
	return out.String()
}

// scattered returns round dots without order, some of them cut by the sides of the file.
func scattered(width, height, size float64, count int) string {
	random := rand.New(rand.NewPCG(5, 8))
	var out strings.Builder
	for range count {
		fmt.Fprintf(&out, `<circle cx="%g" cy="%g" r="%g"%s/>`, random.Float64()*width, random.Float64()*height, size/2, black)
	}
	return out.String()
}

func stripes(width, height, thick, step float64, level bool) string {
	var out strings.Builder
	if level {
		for y := 3.0; y < height; y += step {
			fmt.Fprintf(&out, `<rect y="%g" width="%g" height="%g"%s/>`, y, width, thick, black)
		}
		return out.String()
	}
	for x := 0.0; x < width; x += step {
		fmt.Fprintf(&out, `<rect x="%g" width="%g" height="%g"%s/>`, x, thick, height, black)
	}
	return out.String()
}

// grain returns a picture like a photograph: a sky, and a wood below with twigs.
func grain(width, height int) []byte {
	random := rand.New(rand.NewPCG(1, 2))
	picture := image.NewRGBA(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			wood := math.Sin(float64(x)/23)*40 + math.Sin(float64(x)/7)*12 + float64(y) - float64(height)*0.55
			v := 205 - 30*float64(y)/float64(height) + random.NormFloat64()*3
			if wood > 0 || random.Float64() < 0.02 && wood > -40 {
				v = 60 + 50*math.Sin(float64(x*y)/900) + random.NormFloat64()*25
			}
			g := uint8(max(0, min(255, v)))
			picture.SetRGBA(x, y, color.RGBA{g - g/8, g, g - g/4, 255})
		}
	}
	return encoded(picture)
}

func TestPhotographsAreLeftToTheEye(t *testing.T) {
	files := map[string][]byte{"grain": grain(900, 1100)}
	// Photographs that come with the tests of a library which this program uses.
	folder := strings.TrimSpace(string(geomtest.Run(t, "go", "list", "-m", "-f", "{{.Dir}}", "github.com/pdfcpu/pdfcpu")))
	paths, err := filepath.Glob(filepath.Join(folder, "pkg", "testdata", "resources", "*.jpg"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("photographs in %s: %v, %v", folder, paths, err)
	}
	for _, path := range paths {
		if files[filepath.Base(path)], err = os.ReadFile(path); err != nil {
			t.Fatal(err)
		}
	}
	for name, data := range files {
		opened := open(t, data)
		for width := 120.0; width <= 400; width += 35 {
			for height := 140.0; height <= 500; height += 45 {
				for _, f := range inspected(bag.OfSize(width, 90, height), opened, bag.NewArtwork(name, bag.OnFaces)) {
					if strings.HasPrefix(f.Code, "mark-") {
						t.Errorf("%s on a bag of %g × %g mm: %s", name, width, height, f.Message)
					}
				}
			}
		}
	}
}

func open(t testing.TB, data []byte) *artwork.Art {
	t.Helper()
	opened, err := artwork.Open(context.Background(), "art", data, 1)
	if err != nil {
		t.Fatal(err)
	}
	return opened
}

// inspected returns the findings about opened artwork on a bag, without Look.
func inspected(spec bag.Spec, opened *artwork.Art, art bag.Artwork) []check.Finding {
	spec.Artwork = []bag.Artwork{art}
	b := blank.Lay(spec)
	placed := placement.Lay(&b, func(int) (placement.Source, bool) { return opened.Source, true })
	return artcheck.Inspect(&b, []artcheck.Piece{{Art: opened}}, placed)
}

// However artwork lies, looking ends, and what is found has a place on the paper.
func TestArtworkOfAnyLie(t *testing.T) {
	random := rand.New(rand.NewPCG(25, 11))
	opened := []*artwork.Art{open(t, svg(346, 366, corner(45, 150, 20)+dots(300, 300, 5, 40))), open(t, svg(3, 900, ring(0.5, 5, 2))), open(t, pixels(1, 1))}
	found := 0
	for range 400 {
		spec := geomtest.RandomBag(random)
		art := bag.NewArtwork("art", bag.ArtworkPlaces()[random.IntN(len(bag.ArtworkPlaces()))])
		art.Turn, art.Mirror, art.Scale = 720*random.Float64()-360, random.IntN(2) == 0, math.Exp(2*random.NormFloat64())
		art.X, art.Y = 100*random.NormFloat64(), 100*random.NormFloat64()
		art.Fit = []bag.Fit{bag.FitCover, bag.FitContain, bag.FitExact}[random.IntN(3)]
		for _, f := range inspected(spec, opened[random.IntN(len(opened))], art) {
			if f.Code == "mark-cut-off" {
				found++
			}
			if math.IsNaN(f.At.X+f.At.Y) || f.At.X < 0 || f.At.Y < 0 {
				t.Fatalf("%s lies at %v", f.Code, f.At)
			}
		}
	}
	if found == 0 {
		t.Error("nothing was ever cut off")
	}
}

// The same artwork on both faces is cut on both, each in its place.
func TestBothFacesAreCut(t *testing.T) {
	findings, b := bagWith(t, svg(346, 366, corner(45, 150, 20)), on(bag.OnFaces, nil), nil)
	for _, panel := range []string{"front", "back"} {
		face, _ := b.Pieces[0].Panel(panel)
		if !slices.ContainsFunc(findings, func(f check.Finding) bool {
			return f.Code == "mark-cut-off" && math.Abs(f.At.X-face.Box.Min.X) < 1 && f.At.Y > face.Box.Min.Y && f.At.Y < face.Box.Max.Y
		}) {
			t.Errorf("nothing at the left edge of the %s, among\n%s", panel, listed(findings))
		}
	}
}

// demo returns the face of the demo project.
func demo(t testing.TB) *artwork.Art {
	t.Helper()
	project, err := zip.OpenReader(filepath.Join(geomtest.Root(t), "assets", "demo", "tea-house.gusset"))
	if err != nil {
		t.Fatal(err)
	}
	defer project.Close()
	file, err := project.Open("artwork/moor.svg")
	if err != nil {
		t.Fatal(err)
	}
	data, err := io.ReadAll(file)
	if err != nil {
		t.Fatal(err)
	}
	return open(t, data)
}

func demoBag(width, height float64) bag.Spec {
	spec := bag.OfSize(width, 95, height)
	spec.Print.Background = bag.Background{Cyan: 22, Magenta: 4, Yellow: 26}
	return spec
}

func BenchmarkInspect(b *testing.B) {
	opened := demo(b)
	for name, size := range map[string][2]float64{"whole": {190, 265}, "cut": {160, 285}} {
		b.Run(name, func(b *testing.B) {
			spec := demoBag(size[0], size[1])
			spec.Artwork = []bag.Artwork{bag.NewArtwork("moor.svg", bag.OnFaces)}
			laid := blank.Lay(spec)
			placed := placement.Lay(&laid, func(int) (placement.Source, bool) { return opened.Source, true })
			b.ReportAllocs()
			for b.Loop() {
				artcheck.Inspect(&laid, []artcheck.Piece{{Art: opened}}, placed)
			}
		})
	}
}
