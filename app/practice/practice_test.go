package practice

import (
	"bytes"
	"context"
	"errors"
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"gussetwright/app/creases"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/report"
	"gussetwright/render/scene"
)

// Every page is of the paper that was chosen, else of A4 or with inches Letter, upright or
// lying, as poppler's pdfinfo measures it. Sizes: ISO 216 for A3 and A4, 11 × 17 inches for
// Tabloid (value from memory).
func TestPagesAreOfOnePaper(t *testing.T) {
	for name, order := range orders(t) {
		path := written(t, order)
		m := maker{order}.whole()
		tiles := 0
		for _, s := range m.sheets() {
			tiles += s.grid.count()
		}
		want := 1 + tiles + len(order.Snapshot.Blank.Pieces)
		sizes := regexp.MustCompile(`Page +\d+ size: +(.*)`).FindAllStringSubmatch(string(geomtest.Run(t, "pdfinfo", "-l", "-1", path)), -1)
		if len(sizes) != want {
			t.Errorf("%s: %d pages, want %d", name, len(sizes), want)
		}
		paperOf := map[string]Paper{"usual": A4, "pinch base": A4, "two pieces": A4, "not to be tiled": A4, "in inches": Letter, "on A3": A3, "on Tabloid": Tabloid}
		allowed := map[Paper][2]string{
			A4:      {"595.276 x 841.89 pts (A4)", "841.89 x 595.276 pts (A4)"},
			A3:      {"841.89 x 1190.55 pts (A3)", "1190.55 x 841.89 pts (A3)"},
			Letter:  {"612 x 792 pts (letter)", "792 x 612 pts (letter)"},
			Tabloid: {"792 x 1224 pts", "1224 x 792 pts"},
		}[paperOf[name]]
		for i, size := range sizes {
			if size[1] != allowed[0] && size[1] != allowed[1] {
				t.Errorf("%s: page %d is %s", name, i+1, size[1])
			}
		}
	}
}

// The margin of the printer is white on every page, the bar on every tile is 100 mm
// long, and the reduced blank is as large as its scale says: measured on what pdftoppm
// draws.
func TestMeasuredOnPaper(t *testing.T) {
	for name, order := range orders(t) {
		if name == "usual" || name == "two pieces" {
			continue // much like the others, and drawing takes its time
		}
		pages := rasterised(t, written(t, order))
		m := maker{order}.whole()
		for i, page := range pages {
			inner := page.Rect.Inset(int(m.Margin*perMM) - 1)
			for y := range page.Rect.Dy() {
				for x := range page.Rect.Dx() {
					if !image.Pt(x, y).In(inner) && page.RGBAAt(x, y) != (color.RGBA{255, 255, 255, 255}) {
						t.Fatalf("%s: page %d has ink in its margin, %d, %d pixels from the upper left", name, i+1, x, y)
					}
				}
			}
			if i > 0 {
				if length := barOn(page, m.Margin); math.Abs(length-100) > 0.3 {
					t.Errorf("%s: the bar on page %d is %.2f mm long", name, i+1, length)
				}
			}
		}
		m.checkReduced(t, name, pages[len(pages)-1])
	}
}

// barOn returns the length of the bar at the foot of a page in mm.
func barOn(page *image.RGBA, margin float64) float64 {
	y := page.Rect.Dy() - int((margin+1)*perMM)
	length := 0.0
	for x := range page.Rect.Dx() {
		deepest := 0.0
		for _, row := range []int{y - 1, y, y + 1} {
			deepest = max(deepest, float64(255-int(page.RGBAAt(x, row).R)))
		}
		if deepest > 30 {
			length++
		}
	}
	return length / perMM
}

// checkReduced measures the outline on a reduced page, which alone is quite black.
func (m maker) checkReduced(t *testing.T, name string, page *image.RGBA) {
	t.Helper()
	var pages []report.Page
	pages, err := pagesOf(m)
	if err != nil {
		t.Fatal(err)
	}
	heading := ""
	for _, item := range pages[len(pages)-1].Items {
		if text, is := item.(report.Text); is && text.Bold {
			heading = text.Text
		}
	}
	stated := regexp.MustCompile(`1 : ([\d.]+)$`).FindStringSubmatch(heading)
	if stated == nil {
		t.Fatalf("%s: no scale in %q", name, heading)
	}
	divisor, err := geometry.ParseLength(stated[1], geometry.Millimetre)
	if err != nil {
		t.Fatal(err)
	}
	var box image.Rectangle
	for y := range page.Rect.Dy() {
		for x := range page.Rect.Dx() {
			if c := page.RGBAAt(x, y); c.R < 20 && c.G < 20 && c.B < 20 {
				box = box.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	piece := &m.Snapshot.Blank.Pieces[0]
	const line, pixel = 0.35, 1.0 / perMM
	width, height := float64(box.Dx())/perMM-line, float64(box.Dy())/perMM-line
	if math.Abs(width-piece.Width/divisor) > 2*pixel || math.Abs(height-piece.Height/divisor) > 2*pixel {
		t.Errorf("%s: at 1 : %g the blank of %g × %g mm is %.2f × %.2f mm on paper", name, divisor, piece.Width, piece.Height, width, height)
	}
}

func pagesOf(m maker) ([]report.Page, error) { return pages(context.Background(), m.Order) }

// No smaller number would do for the reduced page.
func TestReducedNoFurtherThanNeeded(t *testing.T) {
	small := maker{orders(t)["not to be tiled"]}.whole()
	usual := maker{orders(t)["usual"]}.whole()
	// The small blank of 219.5 × 170 mm would fit, its dimensions beside it do not.
	for _, c := range []struct {
		m    maker
		want string
	}{{small, "1 : 1.5"}, {usual, "1 : 3.5"}} {
		text := textOf([]report.Page{c.m.reduced(0)})
		if !strings.Contains(text, "reduced to "+c.want+"\n") {
			t.Errorf("want %s in %.300s", c.want, text)
		}
	}
}

// textOf returns all texts of pages, one to a line.
func textOf(pages []report.Page) string {
	var text strings.Builder
	var add func(items []report.Item)
	add = func(items []report.Item) {
		for _, item := range items {
			switch item := item.(type) {
			case report.Text:
				text.WriteString(item.Text + "\n")
			case report.Window:
				add(item.Items)
			}
		}
	}
	for _, page := range pages {
		add(page.Items)
	}
	return text.String()
}

// The tiles cover the drawing, and take no more pages than needed.
func TestGrid(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 2000 {
		drawing := geometry.RectAt(-2, -2, 50+random.Float64()*2000, 50+random.Float64()*1500)
		paper := Papers()[random.IntN(len(Papers()))].Size()
		margin := 3 + random.Float64()*20
		g := newGrid(drawing, paper, margin)
		all := g.part(place{0, g.rows - 1}).Union(g.part(place{g.columns - 1, 0}))
		if all.Union(drawing).Area() > all.Area()+1e-6 {
			t.Fatalf("%v is not covered by %v", drawing, all)
		}
		for _, length := range []struct {
			tiles                 int
			step, window, drawing float64
		}{{g.columns, g.step().X, g.window.Width(), drawing.Width()}, {g.rows, g.step().Y, g.window.Height(), drawing.Height()}} {
			if length.tiles > 1 && float64(length.tiles-2)*length.step+length.window > length.drawing {
				t.Fatalf("%d tiles of %g for %g", length.tiles, length.window, length.drawing)
			}
		}
		for number := range g.count() {
			p := g.place(number)
			part := g.part(p)
			if right := p.right(); g.has(right) && math.Abs(part.Max.X-g.part(right).Min.X-overlap) > 1e-9 {
				t.Fatal("overlap to the right")
			}
			if above := p.above(); g.has(above) && math.Abs(part.Max.Y-g.part(above).Min.Y-overlap) > 1e-9 {
				t.Fatal("overlap above")
			}
		}
	}
	for row, want := range map[int]string{0: "3A", 25: "3Z", 26: "3AA", 27: "3AB", 52: "3BA"} {
		if got := (place{2, row}).name(0); got != want {
			t.Errorf("row %d is called %s, want %s", row, got, want)
		}
	}
	if got := (place{0, 1}).name(3); got != "1E" {
		t.Errorf("the second row after three is called %s", got)
	}
}

// Each crease with room for it says what it is, beside it and on no other line.
func TestCreasesAreLabelled(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	labelled, bare := 0, 0
	for range 60 {
		m := maker{Order{Snapshot: derive(t, geomtest.RandomBag(random))}}.whole()
		for i := range m.Snapshot.Blank.Pieces {
			piece := &m.Snapshot.Blank.Pieces[i]
			d := m.fullSize(i)
			var all []fold.Crease
			for _, line := range piece.Lines {
				if line.Kind == blank.Crease {
					all = append(all, fold.Crease{Edge: line.Edge, Role: line.Role, Fold: line.Fold})
				}
			}
			for _, crease := range creases.Joined(all) {
				if crease.Length() < 25 {
					continue
				}
				if says(t, d, crease) {
					labelled++
				} else {
					bare++
				}
			}
		}
	}
	if labelled < 1000 || bare*100 > labelled {
		t.Errorf("%d creases are labelled, %d are not", labelled, bare)
	}
}

// says tells whether a label beside a crease says how it is folded.
func says(t *testing.T, d scene.Drawing, crease fold.Crease) bool {
	t.Helper()
	for _, item := range d.Items {
		label, is := item.(scene.Label)
		if !is || !isFold(label.Role) {
			continue
		}
		along := crease.To.Sub(crease.From).Unit()
		from := label.At.Sub(crease.From)
		beside := math.Abs(along.Cross(from)) < 1.2*label.Size && from.Dot(along) > 0 && from.Dot(along) < crease.Length()
		level := math.Abs(along.Cross(geometry.Polar(1, label.Turn))) < 1e-6
		if beside && level && strings.HasSuffix(label.Text, string(creases.Fold(crease.Fold))) {
			return true
		}
	}
	return false
}

// Every word is asked of Say: none is the same when Say turns all letters into others,
// but for names of papers, units and tiles, and the letters of dimensions.
func TestEveryWordIsTranslated(t *testing.T) {
	turn := func(text string) string {
		turned := []rune(text)
		for i, r := range turned {
			isVerb := i > 0 && turned[i-1] == '%'
			if !isVerb && r < 128 && unicode.IsLetter(r) {
				turned[i] = 'ж'
			}
		}
		return string(turned)
	}
	for name, order := range orders(t) {
		order.Say = turn
		pages, err := pages(context.Background(), order)
		if err != nil {
			t.Fatal(err)
		}
		for _, word := range regexp.MustCompile(`[A-Za-z]{3,}`).FindAllString(textOf(pages), -1) {
			if slices.Contains(Papers(), Paper(word)) {
				continue
			}
			t.Errorf("%s: %q was not asked of Say", name, word)
		}
	}
}

func TestSameOrderGivesSameBytes(t *testing.T) {
	var first, second bytes.Buffer
	order := orders(t)["two pieces"]
	order.Date = day
	if err := errors.Join(Write(context.Background(), &first, order), Write(context.Background(), &second, order)); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("other bytes the second time")
	}
}

func TestErrors(t *testing.T) {
	cancelled, cancel := context.WithCancel(context.Background())
	cancel()
	snapshot := derive(t, bag.Default())
	for _, c := range []struct {
		ctx    context.Context
		margin float64
		says   string
	}{
		{cancelled, 0, "context canceled"},
		{context.Background(), 2, "give 3\u00a0mm to 25\u00a0mm"},
		{context.Background(), 26, "margin of the printer is 26\u00a0mm"},
		{context.Background(), math.NaN(), "margin of the printer"},
	} {
		var out bytes.Buffer
		err := Write(c.ctx, &out, Order{Snapshot: snapshot, Date: day, Margin: c.margin})
		if err == nil || !strings.Contains(err.Error(), c.says) || out.Len() > 0 {
			t.Errorf("error %v, %d bytes written; want one that says %q", err, out.Len(), c.says)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	order := Order{Snapshot: derive(b, bag.Default()), Date: day}
	b.ReportAllocs()
	for b.Loop() {
		var out bytes.Buffer
		if err := Write(context.Background(), &out, order); err != nil {
			b.Fatal(err)
		}
	}
}

// Lines are creased while they can be seen: that comes before the side with the lines goes
// down. Where there are no round holes none are to be punched.
func TestStepsCreaseBeforeTurning(t *testing.T) {
	for name, order := range orders(t) {
		text := strings.Join(strings.Fields(string(geomtest.Run(t, "pdftotext", "-enc", "UTF-8", "-l", "1", written(t, order), "-"))), " ")
		creased, turned := strings.Index(text, "press in every crease along its line"), strings.Index(text, "Turn the blank over")
		if creased < 0 || turned < creased {
			t.Errorf("%s: creased at %d, turned over at %d of %q", name, creased, turned, text)
		}
		if punched := strings.Contains(text, "punch the holes"); punched != order.Snapshot.Spec.Handle.Kind.HasHoles() {
			t.Errorf("%s: holes are punched: %v", name, punched)
		}
	}
}
