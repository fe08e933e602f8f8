package jobsheet

import (
	"bytes"
	"context"
	"errors"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
)

func pageOf(t testing.TB, order Order) report.Page {
	t.Helper()
	page, err := makerOf(t, order).page()
	if err != nil {
		t.Fatal(err)
	}
	return page
}

// read returns the text of a PDF file as poppler lays it out, row by row, and once more
// column by column, with single spaces.
func read(t *testing.T, path string) string {
	t.Helper()
	rows := geomtest.Run(t, "pdftotext", "-enc", "UTF-8", "-layout", path, "-")
	columns := geomtest.Run(t, "pdftotext", "-enc", "UTF-8", path, "-")
	return spaced(string(rows)) + " " + spaced(string(columns))
}

func TestTextAsItWas(t *testing.T) {
	for name, spec := range map[string]bag.Spec{"demo": demo(t), "priced": priced(), "fullest": fullest(), "sparsest": sparsest()} {
		text := geomtest.Run(t, "pdftotext", "-enc", "UTF-8", "-layout", written(t, orderOf(t, spec)), "-")
		var lines strings.Builder
		for line := range strings.Lines(string(text)) {
			if line = spaced(line); line != "" {
				lines.WriteString(line + "\n")
			}
		}
		geomtest.Golden(t, "jobsheet/"+name+".txt", []byte(lines.String()))
	}
}

func TestPageLooksAsItDid(t *testing.T) {
	for name, spec := range map[string]bag.Spec{"demo": demo(t), "fullest": fullest()} {
		picture, err := report.Draw(pageOf(t, orderOf(t, spec)), 4)
		if err != nil {
			t.Fatal(err)
		}
		geomtest.GoldenPicture(t, "jobsheet/"+name+".png", picture, 0.002)
	}
}

// It is one page of the right size with all letters embedded, as two readers of PDF find
// (poppler and MuPDF), for every bag.
func TestOnePageForEveryBag(t *testing.T) {
	for name, spec := range kinds(t) {
		for unit, size := range map[geometry.Unit][2]float64{geometry.Millimetre: {595.276, 841.89}, geometry.Inch: {612, 792}} {
			order := orderOf(t, spec)
			order.Unit = unit
			path := written(t, order)
			about := string(geomtest.Run(t, "pdfinfo", path))
			if !regexp.MustCompile(`(?m)^Pages:\s+1$`).MatchString(about) {
				t.Errorf("%s, %s: poppler finds\n%s", name, unit, about)
			}
			var width, height float64
			if found := regexp.MustCompile(`Page size:\s+([\d.]+) x ([\d.]+) pts`).FindStringSubmatch(about); found != nil {
				width, height = float(t, found[1]), float(t, found[2])
			}
			// MuPDF names each page with its MediaBox.
			boxes := string(geomtest.Run(t, "mutool", "pages", path))
			found := regexp.MustCompile(`<MediaBox l="0" b="0" r="([\d.]+)" t="([\d.]+)"`).FindAllStringSubmatch(boxes, -1)
			if len(found) != 1 {
				t.Fatalf("%s, %s: MuPDF finds\n%s", name, unit, boxes)
			}
			for i, sides := range [][2]float64{{width, height}, {float(t, found[0][1]), float(t, found[0][2])}} {
				if math.Abs(sides[0]-size[0]) > 0.01 || math.Abs(sides[1]-size[1]) > 0.01 {
					t.Errorf("%s, %s: reader %d finds %v points, want %v", name, unit, i+1, sides, size)
				}
			}
			fonts := strings.Split(strings.TrimSpace(string(geomtest.Run(t, "pdffonts", path))), "\n")[2:]
			for _, font := range fonts {
				if words := strings.Fields(font); len(fonts) < 1 || words[len(words)-5] != "yes" || words[len(words)-3] != "yes" {
					t.Errorf("%s, %s: a font is not embedded, or has no letters to copy: %s", name, unit, font)
				}
			}
		}
	}
}

func float(t *testing.T, text string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

// What the fullest page leaves out it counts: entries shown and left out are all there are.
func TestWhatIsLeftOutIsCounted(t *testing.T) {
	m := makerOf(t, orderOf(t, fullest()))
	all := m.full()
	if all.members != 13 || all.breaks != 13 || all.lines != 17 {
		t.Fatalf("the fullest bag has %+v", all)
	}
	text := spaced(string(geomtest.Run(t, "pdftotext", "-enc", "UTF-8", "-layout", written(t, m.Order), "-")))
	more := 0
	for _, found := range regexp.MustCompile(`and (\d+) more`).FindAllStringSubmatch(text, -1) {
		more += int(float(t, found[1]))
	}
	shown := 0
	for _, line := range m.quote.Lines {
		if strings.Contains(text, " "+m.money(line.Amount)) && strings.Contains(text, string(line.Name)+" ") {
			shown++
		}
	}
	for _, b := range m.breaks {
		if strings.Contains(text, m.money(b.Total)) && b.Quantity != m.quote.Quantity {
			shown++
		}
	}
	if strings.Contains(text, m.each(m.quote.PerBag)+" "+m.money(m.quote.Total)) {
		shown++ // the quantity of the run among the others
	}
	for _, member := range m.members {
		b := member.Spec.Body
		if strings.Contains(text, spaced(strings.ReplaceAll(m.size(b.Width, b.Gusset, b.Height), space, " "))+" "+count(member.Spec.Run.Quantity)) {
			shown++
		}
	}
	if shown+more != all.members+all.breaks+all.lines || shown < 15 {
		t.Errorf("%d entries are shown and %d left out of %+v:\n%s", shown, more, all, text)
	}
}

// Errors come before warnings, and those without room are counted.
func TestManyFindingsAreCounted(t *testing.T) {
	order := orderOf(t, priced())
	snapshot := *order.Snapshot
	snapshot.Findings = nil
	for i := range 40 {
		severity := check.Warning
		if i >= 38 {
			severity = check.Error
		}
		snapshot.Findings = append(snapshot.Findings, check.Finding{Severity: severity, Message: phrase.New("point number %d is open", i)})
	}
	order.Snapshot = &snapshot
	text := read(t, written(t, order))
	for _, want := range []string{"Open findings: errors 2, warnings 38", "Error Point number 38 is open.", "Warning Point number 0 is open.", "Point number 3 is open.", "and 34 more"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in %s", want, text)
		}
	}
	if strings.Contains(text, "Point number 4 ") {
		t.Error("more than six are listed")
	}
}

// What is not known is not said, and cautions always are.
func TestPageSaysWhatIsKnown(t *testing.T) {
	always := []string{"Cutting dies are sharp", "die-maker check the drawing", "Have samples tested", "Job sheet", "2026-11-25", "Version 2026-11-25 · 0a1b2c"}
	for name, c := range map[string]struct{ says, unsaid []string }{
		"demo": {[]string{
			"Quillmoor Tea House, gift bag", "190 mm wide, 95 mm deep, 265 mm high · 1500 bags", "W × D × H 190 × 95 × 265 mm", "12 mm on the long edge",
			"2-up, bags from a sheet: 2", "proven: no layout holds more", "788 with spoilage", "along the long side, 900 mm", "Nothing is open.", "only a test of samples tells",
		}, []string{"Quote", "Family", "Prices by quantity", "Eyelets"}},
		"priced": {[]string{
			"700 × 500 mm, Moor half", "1100 with spoilage, 50 of them for make-ready", "121.00", "44.90", "493.90", "0.4939 a bag", "1100 m for the run",
			"Not in this quote: Cutting die, Rule in the die, Die-cutting, Board for cards, Adhesive, Fitting handles, Carton, Pallet", "0.6336 316.80",
		}, []string{"Family", "Eyelets"}},
		"sparsest":                {[]string{"160 mm wide, 240 mm high, flat", "Paper carrier bag"}, []string{"Load", "Quote", "apart"}},
		"two seams":               {[]string{"Front piece", "Back piece", "form 1 of 2", "2 forms", "Handle patch", "from the press sheet"}, nil},
		"does not pack":           {[]string{"The bag cannot be packed flat."}, []string{"Cartons"}},
		"fits no sheet":           {[]string{"the blank does not fit: ", "too wide and", "the blank does not fit on it"}, []string{"in the dies", "make-ready", "Waste"}},
		"hand hole, small pallet": {[]string{"90 × 30 mm", "a carton is too large or too heavy for the pallet"}, nil},
	} {
		text := read(t, written(t, orderOf(t, kinds(t)[name])))
		for _, want := range slices.Concat(always, c.says) {
			if !strings.Contains(text, want) {
				t.Errorf("%s: %q is not in %s", name, want, text)
			}
		}
		for _, not := range c.unsaid {
			if strings.Contains(text, not) {
				t.Errorf("%s: says %q", name, not)
			}
		}
	}
}

// Inches: 190, 95 and 265 mm over 25.4, and no millimetre anywhere.
func TestInches(t *testing.T) {
	order := orderOf(t, demo(t))
	order.Unit = geometry.Inch
	text := read(t, written(t, order))
	if !strings.Contains(text, "W × D × H 7.48 × 3.74 × 10.433 in") || strings.Contains(text, " mm") || strings.Contains(text, "cm²") {
		t.Errorf("says %s", text)
	}
}

// turned turns all letters into others, but for verbs of a format.
func turned(text string) string {
	letters := []rune(text)
	for i, r := range letters {
		isVerb := i > 0 && letters[i-1] == '%'
		if !isVerb && r < 128 && unicode.IsLetter(r) {
			letters[i] = 'ж'
		}
	}
	return string(letters)
}

// own are words that are no text of ours: names, and units.
var own = regexp.MustCompile(`^(Ferrow|Lake|Bakery|winter|carriers|all|sizes|for|the|shops|lake|region|and|market|halls|third|edition|Size|counter|Moor|half|worked|example|Quillmoor|Tea|House|gift|bag|EUR|cou|SRA|RA)$`)

// Every word is asked of Say, on the page as in the table.
func TestEveryWordIsTranslated(t *testing.T) {
	word := regexp.MustCompile(`[A-Za-z]{3,}`)
	for name, spec := range kinds(t) {
		order := orderOf(t, spec)
		if strings.HasPrefix(name, "random") {
			continue // their names are those of others
		}
		order.Say = turned
		for _, item := range pageOf(t, order).Items {
			if text, is := item.(report.Text); is {
				for _, found := range word.FindAllString(text.Text, -1) {
					if !own.MatchString(found) {
						t.Errorf("%s: %q in %q was not asked of Say", name, found, text.Text)
					}
				}
			}
		}
		_, rows, _ := bytes.Cut(tableOf(t, order), []byte("\r\n"))
		for _, found := range word.FindAllString(string(rows), -1) {
			if !own.MatchString(found) && found != "window" {
				t.Errorf("%s: %q in the table was not asked of Say", name, found)
			}
		}
	}
}

func TestSameOrderGivesSameBytes(t *testing.T) {
	for name, make := range map[string]func(*bytes.Buffer) error{
		"page":  func(out *bytes.Buffer) error { return PDF(context.Background(), out, orderOf(t, fullest())) },
		"table": func(out *bytes.Buffer) error { return CSV(context.Background(), out, orderOf(t, fullest())) },
	} {
		var first, second bytes.Buffer
		if err := errors.Join(make(&first), make(&second)); err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(first.Bytes(), second.Bytes()) || first.Len() == 0 {
			t.Errorf("%s: other bytes the second time", name)
		}
	}
}

func TestCancelWritesNothing(t *testing.T) {
	cancelled, cancel := context.WithCancel(context.Background())
	cancel()
	for _, spec := range []bag.Spec{fullest(), sparsest()} {
		var out bytes.Buffer
		order := orderOf(t, spec)
		for _, err := range []error{PDF(cancelled, &out, order), CSV(cancelled, &out, order)} {
			if !errors.Is(err, context.Canceled) || out.Len() > 0 {
				t.Errorf("error %v, %d bytes written", err, out.Len())
			}
		}
	}
}

// A text that no page holds is an error that says what to do.
func TestTooLongForAnyPage(t *testing.T) {
	snapshot := *derive(t, sparsest())
	snapshot.Spec.Name = strings.Repeat("no end ", 20_000)
	err := PDF(context.Background(), &bytes.Buffer{}, Order{Snapshot: &snapshot, Date: day})
	if err == nil || !strings.Contains(err.Error(), "shorten the name") {
		t.Errorf("error %v", err)
	}
}

func BenchmarkPDF(b *testing.B) {
	order := orderOf(b, fullest())
	b.ReportAllocs()
	for b.Loop() {
		if err := PDF(context.Background(), &bytes.Buffer{}, order); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCSV(b *testing.B) {
	order := orderOf(b, fullest())
	b.ReportAllocs()
	for b.Loop() {
		if err := CSV(context.Background(), &bytes.Buffer{}, order); err != nil {
			b.Fatal(err)
		}
	}
}
