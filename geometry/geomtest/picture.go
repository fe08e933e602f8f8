package geomtest

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"
)

// leastVisible is the difference of a channel, of 255, that no one sees: another
// processor rounds that much differently.
const leastVisible = 12

// GoldenPicture compares got with the PNG file testdata/golden/NAME. Under -update it
// writes it there where it differs by more than tolerance, which is the share of pixels
// that may differ visibly, from 0 to 1.
func GoldenPicture(t *testing.T, name string, got image.Image, tolerance float64) {
	t.Helper()
	path := filepath.Join(Root(t), "testdata", "golden", filepath.FromSlash(name))
	complaint := unlike(path, got, tolerance)
	switch {
	case complaint == "":
	case *update:
		var out bytes.Buffer
		if err := png.Encode(&out, got); err != nil {
			t.Fatal(err)
		}
		Golden(t, name, out.Bytes())
	default:
		t.Errorf("%s; run the test with -update and look at the picture", complaint)
	}
}

// unlike says how a picture differs from a file, or nothing.
func unlike(path string, got image.Image, tolerance float64) string {
	data, err := os.ReadFile(path)
	if err != nil {
		return fmt.Sprintf("read golden picture: %v", err)
	}
	want, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		return fmt.Sprintf("read golden picture %s: %v", path, err)
	}
	size := got.Bounds().Size()
	if size != want.Bounds().Size() {
		return fmt.Sprintf("%s is %v pixels and now %v", path, want.Bounds().Size(), size)
	}
	if share := float64(differing(got, want)) / float64(size.X*size.Y); share > tolerance {
		return fmt.Sprintf("%s: %.2f %% of the pixels differ, more than %.2f %%", path, 100*share, 100*tolerance)
	}
	return ""
}

// differing counts the pixels that look different.
func differing(a, b image.Image) int {
	count := 0
	from, with := a.Bounds().Min, b.Bounds().Min
	for y := range a.Bounds().Dy() {
		for x := range a.Bounds().Dx() {
			r1, g1, b1, a1 := a.At(from.X+x, from.Y+y).RGBA()
			r2, g2, b2, a2 := b.At(with.X+x, with.Y+y).RGBA()
			if max(apart(r1, r2), apart(g1, g2), apart(b1, b2), apart(a1, a2)) > leastVisible<<8 {
				count++
			}
		}
	}
	return count
}

func apart(a, b uint32) uint32 { return max(a, b) - min(a, b) }
