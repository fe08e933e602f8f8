package entry

import "testing"

// A quantity that says what its slider covers gets more where the value lies outside.
func TestSlideRangeThatIsGiven(t *testing.T) {
	q := Quantity{Least: -5000, Most: 5000, Low: -200, High: 200}
	for _, c := range []struct{ value, low, high float64 }{
		{0, -200, 200}, {-199, -200, 200}, {200, -200, 400}, {-1000, -1200, 200}, {4990, -200, 5000}, {-5000, -5000, 200},
	} {
		if low, high := q.slideRange(c.value); low != c.low || high != c.high {
			t.Errorf("at %g the slider covers %g to %g, want %g to %g", c.value, low, high, c.low, c.high)
		}
	}
}
