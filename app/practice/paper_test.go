package practice

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/report"
)

// On larger paper the blank has fewer tiles and is reduced less, and says which paper it is
// made for; words and map take the same part of the page.
func TestLargerPaper(t *testing.T) {
	for _, order := range []Order{orders(t)["usual"], orders(t)["two pieces"]} {
		pagesFor := func(paper Paper) (m maker, cover report.Page, tiles int, divisor float64) {
			order.Paper = paper
			m = maker{order}.whole()
			all, err := pagesOf(m)
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range m.sheets() {
				tiles += s.grid.count()
			}
			stated := regexp.MustCompile(`1 : ([\d.]+)`).FindStringSubmatch(textOf(all[len(all)-1:]))
			if stated == nil {
				t.Fatalf("%s: no scale", paper)
			}
			divisor, err = strconv.ParseFloat(stated[1], 64)
			if err != nil {
				t.Fatal(err)
			}
			if text := textOf(all[:1]); !strings.Contains(text, fmt.Sprintf("%d pages %s,", tiles, paper)) {
				t.Errorf("%s: the first page says %q", paper, text)
			}
			return m, all[0], tiles, divisor
		}
		for _, pair := range [][2]Paper{{A4, A3}, {Letter, Tabloid}} {
			_, smallCover, smallTiles, smallDivisor := pagesFor(pair[0])
			m, cover, tiles, divisor := pagesFor(pair[1])
			if float64(tiles) > 0.7*float64(smallTiles) || divisor >= smallDivisor {
				t.Errorf("%s: %d tiles and 1 : %g, on %s %d and 1 : %g", pair[1], tiles, divisor, pair[0], smallTiles, smallDivisor)
			}
			grown := cover.Width / smallCover.Width
			if got := largest(cover) / largest(smallCover); math.Abs(got-grown) > 0.01 || math.Abs(m.Paper.growth()-grown) > 1e-9 {
				t.Errorf("%s: the title is %.3f times as large as on %s, the page %.3f times", pair[1], got, pair[0], grown)
			}
		}
	}
}

// largest returns the height of the largest heading of a page, which is black.
func largest(page report.Page) (size float64) {
	for _, item := range page.Items {
		if text, is := item.(report.Text); is && text.Colour == dark {
			size = max(size, text.Size)
		}
	}
	return size
}

// What is typed for a paper is understood in capitals or not; what is no paper is refused
// with those that there are.
func TestPaperNamed(t *testing.T) {
	for name, want := range map[string]Paper{"a3": A3, "A4": A4, "letter": Letter, "TABLOID": Tabloid, "": ""} {
		if got, err := PaperNamed(name); got != want || err != nil {
			t.Errorf("%q is %q, %v; want %q", name, got, err, want)
		}
	}
	const says = `paper "A5" is not known; choose from A4, A3, Letter, Tabloid`
	if _, err := PaperNamed("A5"); err == nil || err.Error() != says {
		t.Errorf("of A5 it says %v", err)
	}
	var out bytes.Buffer
	order := orders(t)["usual"]
	order.Paper = "A5"
	if err := Write(context.Background(), &out, order); err == nil || !strings.Contains(err.Error(), says) || out.Len() > 0 {
		t.Errorf("written on A5: %v, %d bytes", err, out.Len())
	}
}

// The bar on each tile says its length in the unit of the reader too: rulers may have no
// other. An inch is 25.4 mm (value from memory).
func TestBarIsMeasuredInTheUnit(t *testing.T) {
	for unit, want := range map[geometry.Unit]string{
		geometry.Millimetre: "must be 100\u00a0mm long", geometry.Centimetre: "100\u00a0mm = 10\u00a0cm long", geometry.Inch: "100\u00a0mm = 3.937\u00a0in long",
	} {
		m := maker{Order{Snapshot: orders(t)["usual"].Snapshot, Unit: unit}}.whole()
		if text := textOf([]report.Page{m.reduced(0)}); !strings.Contains(text, want) {
			t.Errorf("in %s the bar does not say %q: %.400s", unit, want, text)
		}
	}
}

// In a language with a decimal comma no number has a point.
func TestDecimalMark(t *testing.T) {
	order := orders(t)["two pieces"]
	order.Unit = geometry.Centimetre
	order.Say = func(text string) string { return strings.ReplaceAll(text, "0.5", "0,5") }
	all, err := pages(context.Background(), order)
	if err != nil {
		t.Fatal(err)
	}
	text := textOf(all)
	if point := regexp.MustCompile(`.*\d\.\d.*`).FindString(text); point != "" {
		t.Errorf("a number has a point: %q", point)
	}
	if commas := regexp.MustCompile(`\d,\d`).FindAllString(text, -1); len(commas) < 20 {
		t.Errorf("only %d numbers have a comma", len(commas))
	}
}
