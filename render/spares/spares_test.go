package spares_test

import (
	"image"
	"sync"
	"testing"

	"gussetwright/render/spares"
)

func TestSparesAreUsedAgain(t *testing.T) {
	var p spares.Pictures
	first := p.Take(30, 20)
	if first.Rect != image.Rect(0, 0, 30, 20) {
		t.Fatalf("asked for 30 x 20, got %v", first.Rect)
	}
	p.Give(nil)
	p.Give(first)
	if p.Take(30, 20) != first {
		t.Error("a spare picture of the size was not used")
	}
	if p.Take(30, 20) == first {
		t.Error("a picture was handed out twice")
	}
	p.Give(first)
	if other := p.Take(20, 30); other == first || other.Rect != image.Rect(0, 0, 20, 30) {
		t.Errorf("asked for 20 x 30, got %v", other.Rect)
	}
	if p.Take(30, 20) == first {
		t.Error("a picture of another size was kept")
	}
}

// However many are given, few are kept.
func TestFewAreKept(t *testing.T) {
	var p spares.Pictures
	given := map[*image.RGBA]bool{}
	for range 10 {
		picture := image.NewRGBA(image.Rect(0, 0, 5, 5))
		given[picture] = true
		p.Give(picture)
	}
	kept := 0
	for range 10 {
		if given[p.Take(5, 5)] {
			kept++
		}
	}
	if kept != 3 {
		t.Errorf("%d of 10 pictures were kept, want 3", kept)
	}
}

// Several goroutines never hold the same picture.
func TestSeveralTakeAndGive(t *testing.T) {
	var p spares.Pictures
	var all sync.WaitGroup
	for mark := range 4 {
		all.Go(func() {
			for range 1000 {
				picture := p.Take(4, 4)
				picture.Pix[0] = byte(mark)
				if picture.Pix[0] != byte(mark) {
					t.Errorf("goroutine %d shares its picture", mark)
				}
				p.Give(picture)
			}
		})
	}
	all.Wait()
}
