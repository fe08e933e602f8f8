package handout

import (
	"bytes"
	"context"
	"encoding/xml"
	"errors"
	"image"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode"

	"gussetwright/app/document"
	"gussetwright/app/folding"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
)

var day = time.Date(2026, time.March, 31, 0, 0, 0, 0, time.UTC)

// kinds are bags that are folded in different ways, with what their lessons say.
var kinds = map[string]struct {
	change func(*bag.Spec)
	unit   geometry.Unit
	says   []string
	unsaid []string
}{
	"usual": {func(s *bag.Spec) {}, "", []string{
		"Bell Lane", "Width 240 mm, gusset 100 mm, height 360 mm", "699.5 × 480 mm", "paper of 170 g/m²", "Top card 2 236 × 45 mm",
		"Base card 1 236 × 96 mm", "Rope 2 550 mm", "hole punch", "Panel edge, valley: 4 × 360 mm", "Top fold, valley: 1 × 699.5 mm", "as seen from the reverse, which is up",
		"Base crease, mountain: 1 × 240 mm",
		"board of 350 g/m², with 2 holes like the face", "Cords: a handle makes a loop of 480 mm", "Hot glue", "within 1 mm", "drawn as a sketch", "2026-03-31",
	}, []string{"Eyelet", "no further", "Film:", "Top fold, mountain", "Base crease, valley"}},
	"pinch base": {func(s *bag.Spec) { s.Body.Base, s.Handle.Kind = bag.BasePinch, bag.HandleTwisted }, "", []string{
		"Twisted paper cord 2", "Handle patch 2", "Fold over the bottom",
	}, []string{"hole punch", "Base corner crease", "drawn as a sketch"}},
	"two pieces, inches": {func(s *bag.Spec) {
		s.Body.Seams, s.Handle.Kind, s.Handle.Eyelets = bag.SeamsTwo, bag.HandleRibbon, true
		s.Paper.Lamination = bag.LaminationMatt
	}, geometry.Inch, []string{
		"Blank, front piece 1", "Blank, back piece 1", "Ribbon 2", "Eyelet 4", "tool for the eyelets", "Bring the pieces together", "Film: glue does not hold",
		"Width 9.449 in, gusset 3.937 in, height 14.173 in", "in²", "a loop of 18.898 in",
	}, []string{"cm²"}},
	"hand hole": {func(s *bag.Spec) {
		s.Handle.Kind, s.Cards.Top, s.Handle.Drop, s.Body.TurnIn = bag.HandleHandHole, true, 35, 60
	}, "", []string{
		"with the hand hole of the face", "Make the hand holes in the cards first", "Cut with the knife away from your hand",
	}, []string{"Cords:", "small children", "hole punch"}},
	"tape, short loop": {func(s *bag.Spec) { s.Handle.Kind, s.Handle.Rise, s.Handle.Spacing = bag.HandleTape, 120, 100 }, "", []string{
		"Flat tape 2", "with 2 slits like the face", "Make the slits in the cards first",
	}, []string{"Cords:", "small children"}},
	"too low": {func(s *bag.Spec) { s.Body.Gusset, s.Body.Height = 150, 120 }, "", []string{
		"This bag can be folded no further", "The bag is lower than its base is deep, so the base cannot be folded up against the face.",
	}, []string{"Pack it flat"}},
}

func orderOf(t testing.TB, name string) Order {
	t.Helper()
	spec := bag.Default()
	spec.Name = "Bell Lane"
	kinds[name].change(&spec)
	snapshot, err := document.Derive(spec)
	if err != nil {
		t.Fatal(err)
	}
	return Order{Snapshot: snapshot, Date: day, Unit: kinds[name].unit}
}

// written returns the path of the PDF file of an order.
func written(t testing.TB, order Order) string {
	t.Helper()
	var out bytes.Buffer
	if err := Write(context.Background(), &out, order); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "lesson.pdf")
	if err := os.WriteFile(path, out.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// spaced returns a text with single spaces, none of them such that no line ends there.
func spaced(text string) string { return strings.Join(strings.Fields(text), " ") }

// The file, as poppler reads it, says all that the lesson of the bag says, step by step.
func TestSaysEveryStep(t *testing.T) {
	for name, kind := range kinds {
		order := orderOf(t, name)
		path := written(t, order)
		text := spaced(string(geomtest.Run(t, "pdftotext", "-enc", "UTF-8", "-layout", path, "-")))
		raw := spaced(string(geomtest.Run(t, "pdftotext", "-enc", "UTF-8", path, "-")))
		lesson := fold.Fold(&order.Snapshot.Blank)
		at := 0
		for i, stage := range lesson.Stages[:lesson.Foldable] {
			title := strconv.Itoa(i+1) + ". " + spaced(stage.Title.String())
			found := strings.Index(raw[at:], title)
			if found < 0 {
				t.Errorf("%s: no step %q after the last", name, title)
				continue
			}
			at += found
			for _, said := range []phrase.Phrase{stage.Caption, stage.Tip, stage.Caution, stage.Check} {
				part := (maker{Order: order}).whole().tell(said)
				if !strings.Contains(raw[at:], spaced(part)) {
					t.Errorf("%s, %s: lacks %q", name, stage.Name, part)
				}
			}
		}
		for _, want := range kind.says {
			if !strings.Contains(text, want) && !strings.Contains(raw, want) {
				t.Errorf("%s: lacks %q", name, want)
			}
		}
		for _, not := range kind.unsaid {
			if strings.Contains(raw, not) {
				t.Errorf("%s: says %q", name, not)
			}
		}
		// Two to four steps to a page, and not all on the last.
		pages, size := pagesOf(t, path)
		if steps := lesson.Foldable; pages < 1+steps/5 || pages > 1+(steps+1)/2 {
			t.Errorf("%s: %d pages for %d steps", name, pages, steps)
		}
		want := "595.276 x 841.89 pts (A4)"
		if kind.unit == geometry.Inch {
			want = "612 x 792 pts (letter)"
		}
		if size != want {
			t.Errorf("%s: paper %s", name, size)
		}
	}
}

// pagesOf asks poppler's pdfinfo for the number and the size of pages.
func pagesOf(t *testing.T, path string) (count int, size string) {
	t.Helper()
	for line := range strings.Lines(string(geomtest.Run(t, "pdfinfo", path))) {
		name, value, _ := strings.Cut(line, ":")
		switch name {
		case "Pages":
			count, _ = strconv.Atoi(strings.TrimSpace(value))
		case "Page size":
			size = strings.TrimSpace(value)
		}
	}
	return count, size
}

// Each step that has a check has a box to tick and a picture.
func TestBoxesAndPictures(t *testing.T) {
	m := maker{Order: orderOf(t, "usual")}.whole()
	pages, err := m.pages(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	boxes, pictures := 0, 0
	for _, page := range pages {
		for _, item := range page.Items {
			switch item.(type) {
			case report.Box:
				boxes++
			case report.Picture:
				pictures++
			}
		}
	}
	if lesson := fold.Fold(&m.Snapshot.Blank); boxes != len(lesson.Stages) || pictures != len(lesson.Stages) {
		t.Errorf("%d boxes and %d pictures for %d steps", boxes, pictures, len(lesson.Stages))
	}
}

// Steps that fold creases show blue lines, the others none; the picture of the end is
// another than that on the way.
func TestCreasesStandOut(t *testing.T) {
	m := maker{Order: orderOf(t, "usual")}.whole()
	var err error
	if m.studio, err = folding.New(context.Background(), m.Snapshot, m.Say); err != nil {
		t.Fatal(err)
	}
	for i, stage := range m.studio.Lesson.Stages {
		picture := m.pictures(i).(*image.RGBA)
		blue, differ := 0, 0
		half := picture.Rect.Dx() / 2
		for y := range picture.Rect.Dy() {
			for x := range picture.Rect.Dx() {
				if c := picture.RGBAAt(x, y); int(c.B) > int(c.R)+90 {
					blue++
				}
				if x < half-10 && picture.RGBAAt(x, y) != picture.RGBAAt(x+half+6, y) {
					differ++
				}
			}
		}
		if folds := len(stage.Creases) > 0; folds != (blue > 300) || !folds && blue > 0 {
			t.Errorf("%s: %d pixels are blue, %d creases", stage.Name, blue, len(stage.Creases))
		}
		if i > 0 && stage.Name != "seam" && differ < 300 {
			t.Errorf("%s: both pictures are alike but for %d pixels", stage.Name, differ)
		}
	}
}

// Every word is asked of Say: none is the same when Say turns all letters into others,
// but for units and the name of the project.
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
	for name := range kinds {
		m := maker{Order: orderOf(t, name)}
		m.Say = turn
		pages, err := m.whole().pages(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		for _, page := range pages {
			for _, item := range page.Items {
				text, is := item.(report.Text)
				if word := regexp.MustCompile(`[A-Za-z]{3,}`).FindString(text.Text); is && word != "" && word != "Bell" {
					t.Errorf("%s: %q was not asked of Say", name, text.Text)
				}
			}
		}
	}
}

// Words of twice the length stay within the margins. Boxes of words as poppler finds
// them.
func TestLongWordsStayWithinTheMargins(t *testing.T) {
	order := orderOf(t, "usual")
	order.Say = func(text string) string {
		if strings.Contains(text, "%") || len(text) < 4 {
			return text
		}
		return text + "-" + strings.ReplaceAll(text, " ", "")
	}
	decoder := xml.NewDecoder(bytes.NewReader(geomtest.Run(t, "pdftotext", "-bbox", written(t, order), "-")))
	words := 0
	for token, _ := decoder.Token(); token != nil; token, _ = decoder.Token() {
		element, isStart := token.(xml.StartElement)
		if !isStart || element.Name.Local != "word" {
			continue
		}
		words++
		const point, margin = 72 / 25.4, 15
		for _, a := range element.Attr {
			at, err := strconv.ParseFloat(a.Value, 64)
			if err != nil {
				t.Fatal(err)
			}
			low, high := margin*point, (210-margin)*point
			if strings.HasPrefix(a.Name.Local, "y") {
				high = (297 - margin) * point
			}
			if at < low || at > high {
				t.Errorf("a word lies at %s = %g, outside of %g to %g", a.Name.Local, at, low, high)
			}
		}
	}
	if words < 300 {
		t.Errorf("only %d words", words)
	}
}

func TestSameOrderGivesSameBytes(t *testing.T) {
	var first, second bytes.Buffer
	order := orderOf(t, "usual")
	if err := errors.Join(Write(context.Background(), &first, order), Write(context.Background(), &second, order)); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first.Bytes(), second.Bytes()) {
		t.Error("other bytes the second time")
	}
}

func TestNothingIsWrittenOnError(t *testing.T) {
	cancelled, cancel := context.WithCancel(context.Background())
	cancel()
	usual := orderOf(t, "usual")
	spec := usual.Snapshot.Spec
	spec.Artwork = []bag.Artwork{bag.NewArtwork("lost.png", bag.OnFaces)}
	broken, err := document.DeriveWithArt(context.Background(), spec, map[string][]byte{"lost.png": []byte("not a picture")})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		ctx      context.Context
		snapshot *document.Snapshot
		says     string
	}{{cancelled, usual.Snapshot, "context canceled"}, {context.Background(), broken, "lost.png"}} {
		var out bytes.Buffer
		err := Write(c.ctx, &out, Order{Snapshot: c.snapshot, Date: day})
		if err == nil || !strings.Contains(err.Error(), c.says) || out.Len() > 0 {
			t.Errorf("error %v, %d bytes written; want one that says %q", err, out.Len(), c.says)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	order := orderOf(b, "usual")
	b.ReportAllocs()
	for b.Loop() {
		var out bytes.Buffer
		if err := Write(context.Background(), &out, order); err != nil {
			b.Fatal(err)
		}
	}
}

// The list of parts calls what is threaded or glued in by a name of its own: a new
// carrying style must not pass for a rope.
func TestEveryHandleHasItsName(t *testing.T) {
	field, _ := bag.FieldAt("handle.kind")
	seen := map[phrase.Word]string{}
	for _, option := range field.Options {
		kind := bag.HandleKind(option)
		if kind == bag.HandleNone || kind == bag.HandleHandHole {
			continue // there is nothing to lay out
		}
		name := kind.Name()
		if other, known := seen[name]; known {
			t.Errorf("%s and %s are both called %q", other, kind, name)
		}
		seen[name] = option
	}
}
