package appearance

import (
	"testing"

	"fyne.io/fyne/v2"
)

func TestGrowth(t *testing.T) {
	growth := Growth{Larger: 1.25, Most: 1.6, Text: 1.6}
	for _, c := range []struct {
		width, height float32
		text          float64
		want          float32
	}{
		{1024, 700, 1, 1.25}, {2048, 1400, 1, 2}, {2048, 700, 1, 1.25}, {1024, 700, 2, 0.8}, {100, 100, 1, 0.8},
	} {
		if got := growth.For(fyne.NewSize(c.width, c.height), c.text); got < c.want-1e-5 || got > c.want+1e-5 {
			t.Errorf("%g × %g at %g: %g, want %g", c.width, c.height, c.text, got, c.want)
		}
	}
}
