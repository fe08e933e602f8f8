package sheet_test

import (
	"math"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

// size is a sheet as tables print it, short side first, in mm.
type size struct{ short, long float64 }

// isoSizes are the dimensions of ISO 216 (A, B) and ISO 217 (RA, SRA) as several
// published tables print them alike. A0 is stocked by nobody for bags and stands
// here for the construction of the rest.
var isoSizes = map[string]size{
	"A0": {841, 1189}, "A1": {594, 841}, "A2": {420, 594}, "A3": {297, 420},
	"B0": {1000, 1414}, "B1": {707, 1000}, "B2": {500, 707}, "B3": {353, 500},
	"RA0": {860, 1220}, "RA1": {610, 860}, "RA2": {430, 610},
	"SRA0": {900, 1280}, "SRA1": {640, 900}, "SRA2": {450, 640}, "SRA3": {320, 450},
}

func usual(t *testing.T, name string) (sheet.Usual, bool) {
	t.Helper()
	for _, u := range sheet.UsualSheets() {
		if u.Name == name {
			return u, true
		}
	}
	return sheet.Usual{}, false
}

func TestIsoSheetsAreThoseOfTheTables(t *testing.T) {
	for name, want := range isoSizes {
		got, listed := usual(t, name)
		if !listed {
			if name != "A0" {
				t.Errorf("%s is not listed", name)
			}
			continue
		}
		if got.Width != want.long || got.Height != want.short {
			t.Errorf("%s is %g × %g, want %g × %g", name, got.Width, got.Height, want.long, want.short)
		}
	}
}

// The rule by which ISO 216 makes its sizes, from memory: A0 has an area of 1 m² and sides as
// 1 to √2, each size is half of the one before with fractions of a millimetre
// dropped, and a B size lies between two A sizes as their geometric mean.
func TestRuleOfISO216(t *testing.T) {
	a0 := isoSizes["A0"]
	if area := a0.short * a0.long / 1e6; math.Abs(area-1) > 0.001 {
		t.Errorf("A0 has %g m²", area)
	}
	if want := math.Round(1000 / math.Pow(2, 0.25)); a0.short != want {
		t.Errorf("short side of A0 is %g, want %g", a0.short, want)
	}
	if want := math.Round(1000 * math.Pow(2, 0.25)); a0.long != want {
		t.Errorf("long side of A0 is %g, want %g", a0.long, want)
	}
	for _, row := range [][]string{{"A0", "A1", "A2", "A3"}, {"B0", "B1", "B2", "B3"}} {
		for i := 1; i < len(row); i++ {
			whole, half := isoSizes[row[i-1]], listedSize(t, row[i])
			if want := (size{math.Floor(whole.long / 2), whole.short}); half != want {
				t.Errorf("%s is %v, half of %s is %v", row[i], half, row[i-1], want)
			}
		}
	}
	// The mean of rounded sizes misses the rounded mean by up to a millimetre.
	for b, of := range map[string][2]string{"B1": {"A0", "A1"}, "B2": {"A1", "A2"}, "B3": {"A2", "A3"}} {
		larger, smaller, got := isoSizes[of[0]], isoSizes[of[1]], listedSize(t, b)
		if math.Abs(got.short-math.Sqrt(larger.short*smaller.short)) > 1 ||
			math.Abs(got.long-math.Sqrt(larger.long*smaller.long)) > 1 {
			t.Errorf("%s is %v, not between %v and %v", b, got, larger, smaller)
		}
	}
}

// Rule of ISO 217, from memory: untrimmed sheets of 1.05 m² (RA0) and 1.15 m²
// (SRA0) with sides in whole centimetres, each size half of the one before.
func TestRuleOfISO217(t *testing.T) {
	for name, want := range map[string]float64{"RA0": 1.05, "SRA0": 1.15} {
		got := listedSize(t, name)
		if area := got.short * got.long / 1e6; math.Abs(area-want) > 0.005 {
			t.Errorf("%s has %g m², want about %g", name, area, want)
		}
	}
	for _, row := range [][]string{{"RA0", "RA1", "RA2"}, {"SRA0", "SRA1", "SRA2", "SRA3"}} {
		for i := 1; i < len(row); i++ {
			whole, half := listedSize(t, row[i-1]), listedSize(t, row[i])
			if want := (size{math.Floor(whole.long/20) * 10, whole.short}); half != want {
				t.Errorf("%s is %v, half of %s is %v", row[i], half, row[i-1], want)
			}
		}
	}
	// What is trimmed off an untrimmed sheet leaves the A size of the same number.
	for _, number := range []string{"0", "1", "2"} {
		a, ra, sra := isoSizes["A"+number], listedSize(t, "RA"+number), listedSize(t, "SRA"+number)
		if !(a.short < ra.short && ra.short < sra.short && a.long < ra.long && ra.long < sra.long) {
			t.Errorf("A%s %v, RA%s %v, SRA%s %v do not grow", number, a, number, ra, number, sra)
		}
	}
}

func listedSize(t *testing.T, name string) size {
	t.Helper()
	u, listed := usual(t, name)
	if !listed {
		t.Fatalf("%s is not listed", name)
	}
	return size{u.Height, u.Width}
}

func TestNoSizeIsListedTwice(t *testing.T) {
	named := map[size]string{}
	for _, u := range sheet.UsualSheets() {
		if other, twice := named[size{u.Height, u.Width}]; twice {
			t.Errorf("%s is %s", u.Name, other)
		}
		named[size{u.Height, u.Width}] = u.Name
	}
}

// Sizes in centimetres and inches are common practice, no published source; an
// inch is 25.4 mm.
func TestTradeSheets(t *testing.T) {
	tests := []struct {
		name        string
		long, short float64
	}{
		{"50 × 35 cm", 50 * 10, 35 * 10},
		{"70 × 50 cm", 70 * 10, 50 * 10},
		{"100 × 70 cm", 100 * 10, 70 * 10},
		{"102 × 72 cm", 102 * 10, 72 * 10},
		{"35 × 23 in", 35 * 25.4, 23 * 25.4},
		{"38 × 25 in", 38 * 25.4, 25 * 25.4},
		{"40 × 28 in", 40 * 25.4, 28 * 25.4},
	}
	for _, test := range tests {
		got, listed := usual(t, test.name)
		if !listed || math.Abs(got.Width-test.long) > 1e-9 || math.Abs(got.Height-test.short) > 1e-9 {
			t.Errorf("%s is %g × %g, want %g × %g", test.name, got.Width, got.Height, test.long, test.short)
		}
	}
	if got, want := len(sheet.UsualSheets()), len(isoSizes)-1+len(tests); got != want {
		t.Errorf("%d sheets are listed, %d are checked here", got, want)
	}
}

func TestUsualSheetsAreACopy(t *testing.T) {
	sheet.UsualSheets()[0].Width = 1
	if sheet.UsualSheets()[0].Width == 1 {
		t.Error("a caller changed the list")
	}
}

func TestEveryUsualSheetCanBeEntered(t *testing.T) {
	for _, u := range sheet.UsualSheets() {
		spec := bag.Default()
		spec.Sheet.Width, spec.Sheet.Height = u.Width, u.Height
		if err := spec.Validate(); err != nil {
			t.Errorf("%s: %v", u.Name, err)
		}
	}
}
