package arithmetic_test

import (
	"testing"

	"gussetwright/geometry/arithmetic"
)

// A pound is 453.59237 g exactly and has 16 ounces (international yard and pound agreement
// of 1959). It also has 7000 grains of 64.79891 mg, exactly (NIST SP 811, appendix B), by
// which the pounds here are reckoned.
func TestWeights(t *testing.T) {
	const pound = 7000 * 0.06479891
	tests := []struct {
		text, unit string
		want       float64
	}{
		{"1400", "g", 1400},
		{"1400 g", "g", 1400},
		{"1.4 kg", "g", 1400},
		{"1,4 kg", "g", 1400},
		{"1.4KG", "g", 1400},
		{"3 lb", "g", 3 * pound},
		{"1 1/2 lbs", "g", 1.5 * pound},
		{"1/2 pound", "g", pound / 2},
		{"3 lb + 4 oz", "g", 3.25 * pound},
		{"16 oz", "g", pound},
		{"2 * 1.4 kg + 200", "g", 3000},
		{"2*(1 kg + 200)", "g", 2400},
		{"3 kg / 4", "g", 750},
		{"15", "kg", 15},
		{"15 kg", "kg", 15},
		{"15000 g", "kg", 15},
		{"30 lb", "kg", 30 * pound / 1000},
		{"0.3 kg", "kg", 0.3},
	}
	for _, test := range tests {
		got, err := arithmetic.EvaluateNumber(test.text, test.unit)
		if err != nil || !near(got, test.want) {
			t.Errorf("%q in %s: got %v, %v; want %v", test.text, test.unit, got, err, test.want)
		}
	}
}
