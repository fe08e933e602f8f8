//go:build linux

package window

import (
	"math"
	"slices"
	"testing"
	"time"
)

// series is a measure in the course of time.
type series []point

type point struct {
	at    time.Time
	value float64
}

// between returns the part from one share of the whole time to another.
func (s series) between(from, to float64) series {
	if len(s) == 0 {
		return nil
	}
	begin, whole := s[0].at, s[len(s)-1].at.Sub(s[0].at).Seconds()
	after := func(share float64) time.Time {
		return begin.Add(time.Duration(share * whole * float64(time.Second)))
	}
	return s.within(after(from), after(to))
}

// within returns the part from one time to another.
func (s series) within(from, to time.Time) (part series) {
	for _, p := range s {
		if !p.at.Before(from) && !p.at.After(to) {
			part = append(part, p)
		}
	}
	return part
}

// least returns the least value, NaN where there is none.
func (s series) least() float64 {
	var values []float64
	for _, p := range s {
		values = append(values, p.value)
	}
	return quantile(values, 0)
}

// near returns the median of what was measured in the half minute around a time, which
// one short peak does not change.
func (s series) near(at time.Time) float64 {
	const around = 15 * time.Second
	var values []float64
	for _, p := range s {
		if p.at.Sub(at).Abs() <= around {
			values = append(values, p.value)
		}
	}
	return quantile(values, 0.5)
}

// slope returns the rise per minute of the line with the least squares.
func (s series) slope() float64 {
	if len(s) < 2 {
		return math.NaN()
	}
	var t, v, tt, tv float64
	for _, p := range s {
		minutes := p.at.Sub(s[0].at).Minutes()
		t, v, tt, tv = t+minutes, v+p.value, tt+minutes*minutes, tv+minutes*p.value
	}
	n := float64(len(s))
	return (n*tv - t*v) / (n*tt - t*t)
}

// quantile returns the value that a share of the values does not exceed (the nearest
// rank), or NaN of none.
func quantile(values []float64, share float64) float64 {
	if len(values) == 0 {
		return math.NaN()
	}
	sorted := slices.Sorted(slices.Values(values))
	return sorted[min(max(int(math.Ceil(share*float64(len(sorted))))-1, 0), len(sorted)-1)]
}

// The line 2 + 3x with a peak at both ends alike keeps its slope; the numbers follow from
// the definition of least squares.
func TestSeries(t *testing.T) {
	begin := time.Unix(1000, 0)
	var s series
	for minute := range 11 {
		s = append(s, point{begin.Add(time.Duration(minute) * time.Minute), 2 + 3*float64(minute)})
	}
	if got := s.slope(); math.Abs(got-3) > 1e-9 {
		t.Errorf("slope %g, want 3", got)
	}
	if part := s.between(0.5, 1); len(part) != 6 || part[0].value != 17 {
		t.Errorf("the last half is %v", part)
	}
	if got := s.near(begin.Add(4 * time.Minute)); got != 14 {
		t.Errorf("near the fourth minute %g, want 14", got)
	}
	s[5].value = 1000 // in the middle a peak lifts the line and does not turn it
	if got := s.slope(); math.Abs(got-3) > 1e-9 {
		t.Errorf("slope with a peak in the middle %g, want 3", got)
	}
	if got := s.least(); got != s[0].value {
		t.Errorf("the least of a rise is %g, want %g", got, s[0].value)
	}
	if !math.IsNaN(series{}.least()) || !math.IsNaN(series{}.slope()) || !math.IsNaN(series{}.near(begin)) {
		t.Error("nothing was measured and has a slope or a value")
	}
}

// The values are those of the nearest-rank method for the numbers 1 to 100.
func TestQuantile(t *testing.T) {
	var values []float64
	for i := range 100 {
		values = append(values, float64(100-i))
	}
	for share, want := range map[float64]float64{0: 1, 0.5: 50, 0.95: 95, 0.99: 99, 1: 100} {
		if got := quantile(values, share); got != want {
			t.Errorf("quantile %g is %g, want %g", share, got, want)
		}
	}
}

// The text is laid out as in proc_pid_status(5).
func TestResidentMemory(t *testing.T) {
	got, err := residentOf([]byte("Name:\tgussetwright\nVmHWM:\t  300000 kB\nVmRSS:\t  250000 kB\nThreads:\t9\n"))
	if err != nil || got != 256000 {
		t.Errorf("got %g, %v; want 256000", got, err)
	}
	if _, err := residentOf([]byte("Name:\tgussetwright\nState:\tZ (zombie)\n")); err == nil {
		t.Error("a program that has ended has memory")
	}
}
