package jobsheet

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/words"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

// inGerman speaks German until the end of the test.
func inGerman(t *testing.T) {
	t.Helper()
	if err := words.Load("de"); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := words.Load("en"); err != nil {
			t.Fatal(err)
		}
	})
}

func germanOrder(t *testing.T, spec bag.Spec) Order {
	t.Helper()
	order := orderOf(t, spec)
	order.Say = func(english string) string { return lang.L(english) }
	return order
}

// In German decimals stand behind a comma all over the page, as poppler reads it; the
// version of the bag and its date keep their points.
func TestGermanNumbers(t *testing.T) {
	inGerman(t)
	for name, spec := range kinds(t) {
		order := germanOrder(t, spec)
		text := string(geomtest.Run(t, "pdftotext", "-enc", "UTF-8", "-layout", written(t, order), "-"))
		if order.Version != "" {
			text = strings.ReplaceAll(text, order.Version, "")
		}
		for _, line := range strings.Split(text, "\n") {
			if regexp.MustCompile(`\d\.\d`).MatchString(line) {
				t.Errorf("%s: %q", name, line)
			}
		}
		if !regexp.MustCompile(`\d,\d`).MatchString(text) {
			t.Errorf("%s: no number has decimals", name)
		}
	}
}

// A German spreadsheet parts cells at semicolons, takes a comma for that of decimals and
// knows UTF-8 by a byte order mark (common practice, no published source). Python's csv
// module reads the same numbers out of such a table as out of the English one.
func TestGermanTable(t *testing.T) {
	english := map[string][][]string{}
	for name, spec := range kinds(t) {
		english[name] = outside(t, tableOf(t, orderOf(t, spec)))
	}
	inGerman(t)
	decimals := 0
	for name, spec := range kinds(t) {
		table := tableOf(t, germanOrder(t, spec))
		if !bytes.HasPrefix(table, []byte("\xef\xbb\xbfAbschnitt;Posten;")) {
			t.Errorf("%s: begins with %q", name, table[:min(len(table), 40)])
		}
		rows := outside(t, table, ";", "utf-8-sig")
		if len(rows) != len(english[name]) {
			t.Fatalf("%s: %d rows, %d in English", name, len(rows), len(english[name]))
		}
		for i, cells := range rows {
			want := english[name][i][2]
			if _, err := strconv.ParseFloat(want, 64); err != nil {
				continue
			}
			if got := strings.Replace(cells[2], ",", ".", 1); got != want || strings.Contains(cells[2], ".") {
				t.Errorf("%s: %s is %q, in English %q", name, cells[1], cells[2], want)
			}
			if strings.Contains(want, ".") {
				decimals++
			}
		}
	}
	if decimals < 100 {
		t.Errorf("only %d numbers have decimals", decimals)
	}
}
