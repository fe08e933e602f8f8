package entry_test

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/entry"
	"gussetwright/app/words"
	"gussetwright/geometry"
)

// speak makes the window speak a language until the test ends.
func speak(t *testing.T, language string) {
	t.Helper()
	load := func(language string) {
		if err := words.Load(language); err != nil {
			t.Fatal(err)
		}
	}
	load(language)
	t.Cleanup(func() { load("en") })
}

// Both decimal marks can be typed in either language, and that of the language is shown
// afterwards. German writes a comma (DIN 1333; Duden, rules on figures: value from memory).
func TestNumbersInGerman(t *testing.T) {
	for _, test := range []struct {
		path  string
		unit  geometry.Unit
		typed string
		value float64
		shown string
	}{
		{"bag.seam_flap_mm", geometry.Millimetre, "18,5", 18.5, "18,5"},
		{"bag.seam_flap_mm", geometry.Millimetre, "18.5", 18.5, "18,5"},
		{"bag.width_mm", geometry.Centimetre, "24,125", 241.25, "24,125"},
		{"bag.width_mm", geometry.Centimetre, "24 cm + 1,25 mm", 241.25, "24,125"},
		{"bag.width_mm", geometry.Inch, "9,5", 241.3, "9,5"},
		{"bag.width_mm", geometry.Inch, "9 1/2", 241.3, "9,5"},
		{"run.quantity", geometry.Millimetre, "3.000", 3000, "3000"},
		{"run.quantity", geometry.Millimetre, "3,000", 3000, "3000"},
		{"run.quantity", geometry.Millimetre, "12 500", 12500, "12500"},
		{"run.spoilage_percent", geometry.Millimetre, "7,5 %", 7.5, "7,5"},
		{"prices.rope_per_m", geometry.Millimetre, "0,125", 0.125, "0,125"},
		{"prices.rope_per_m", geometry.Millimetre, "1.250,50", 1250.5, "1250,50"},
		{"prices.rope_per_m", geometry.Millimetre, "1.1", 1.1, "1,10"},
	} {
		d := at(t, test.path)
		speak(t, "de")
		d.set.SetUnit(test.unit)
		d.typeIn(test.typed)
		d.tap(fyne.KeyReturn)
		if d.value() != test.value || d.number.Text() != test.shown || d.number.Message() != "" {
			t.Errorf("%s: %q becomes %v, shown as %q (%s); want %v as %q",
				test.path, test.typed, d.value(), d.number.Text(), d.number.Message(), test.value, test.shown)
		}
	}
}

// A point before three digits may part thousands in German: nothing is taken over, and the
// entry says both readings.
func TestAPointThatMayPartThousandsIsRefusedInGerman(t *testing.T) {
	for path, typed := range map[string]string{
		"sheet.width_mm": "1.250", "product.weight_g": "1.400", "paper.caliper_um": "1.250 µm", "prices.rope_per_m": "1.250",
	} {
		d := at(t, path)
		speak(t, "de")
		before := d.value()
		d.typeIn(typed)
		d.tap(fyne.KeyReturn)
		number := strings.TrimSuffix(typed, " µm")
		says := []string{`"` + number + `"`, strings.TrimRight(strings.Replace(number, ".", ",", 1), "0"), strings.Replace(number, ".", "", 1), "Punkt"}
		for _, want := range says {
			if !strings.Contains(d.number.Message(), want) {
				t.Errorf("%s: of %q it is said %q, which lacks %q", path, typed, d.number.Message(), want)
			}
		}
		if d.value() != before || d.number.Text() != typed {
			t.Errorf("%s: %q becomes %v, shown as %q", path, typed, d.value(), d.number.Text())
		}
	}
}

// Limits and complaints are written as the entry is.
func TestLimitsAndComplaintsInGerman(t *testing.T) {
	d := at(t, "bag.width_mm")
	speak(t, "de")
	d.set.SetUnit(geometry.Inch)
	d.typeIn("1")
	d.tap(fyne.KeyReturn)
	for _, says := range []string{"1,181 in", "1,182", "39,37 in"} {
		if !strings.Contains(d.number.Message(), says) {
			t.Errorf("%q lacks %q", d.number.Message(), says)
		}
	}
	if _, text := d.number.Explanation(); !strings.Contains(text, "1,182 in") {
		t.Errorf("the explanation %q lacks the least", text)
	}
}

// Counts of a list may have their thousands parted as German does it.
func TestListOfCountsInGerman(t *testing.T) {
	test.NewTempApp(t)
	speak(t, "de")
	list, complaint := entry.ReadCounts("1.500; 2500, 12 000")
	if complaint != "" || !slices.Equal(list, []float64{1500, 2500, 12000}) {
		t.Errorf("read %v, %q", list, complaint)
	}
}
