package filestep

import (
	"slices"
	"testing"
)

// However much is told before it can be shown, it is shown once, and the latest.
func TestOnlyTheLatestIsShown(t *testing.T) {
	var queue []func()
	var shown []string
	n := &news{
		later: func(do func()) { queue = append(queue, do) },
		show:  func(_ float64, kind string) { shown = append(shown, kind) },
	}
	arrive := func() {
		for _, do := range queue {
			do()
		}
		queue = nil
	}
	for _, kind := range []string{"dieline", "svg", "dxf"} {
		n.tell(0, kind)
	}
	arrive()
	n.tell(0, "proof")
	arrive()
	if want := []string{"dxf", "proof"}; !slices.Equal(shown, want) {
		t.Errorf("shown %q, want %q", shown, want)
	}
}
