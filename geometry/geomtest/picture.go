package geomtest

import (
	"bytes"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"
)

// leastVisible is the difference of a channel, of 255, that no one sees: another
// processor rounds that much differently.
const leastVisible = 12

// GoldenPicture compares got with the PNG file testdata/golden/NAME, or writes it
// there under -update. tolerance is the share of pixels that may differ visibly,
// from 0 to 1.
func GoldenPicture(t *testing.T, name string, got image.Image, tolerance float64) {
	t.Helper()
	if *update {
		var out bytes.Buffer
		if err := png.Encode(&out, got); err != nil {
			t.Fatal(err)
		}
		Golden(t, name, out.Bytes())
		return
	}
	path := filepath.Join(Root(t), "testdata", "golden", filepath.FromSlash(name))
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("read golden picture: %v (run the test with -update to write it)", err)
	}
	want, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatalf("read golden picture %s: %v", path, err)
	}
	if got.Bounds().Size() != want.Bounds().Size() {
		t.Errorf("%s is %v pixels and now %v", path, want.Bounds().Size(), got.Bounds().Size())
		return
	}
	size := got.Bounds().Size()
	share := float64(differing(got, want)) / float64(size.X*size.Y)
	if share > tolerance {
		t.Errorf("%s: %.2f %% of the pixels differ, more than %.2f %%; run the test with -update and look at the picture",
			path, 100*share, 100*tolerance)
	}
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
