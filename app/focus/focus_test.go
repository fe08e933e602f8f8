package focus_test

import (
	"testing"

	"gussetwright/app/focus"
)

func TestChooseArtwork(t *testing.T) {
	f := focus.New()
	told := 0
	f.Listen(func() { told++ })
	if f.Artwork() != focus.NoArtwork {
		t.Errorf("at first %d is chosen", f.Artwork())
	}
	f.ChooseArtwork(0)
	f.ChooseArtwork(0)
	f.ChooseArtwork(focus.NoArtwork)
	if told != 2 || f.Artwork() != focus.NoArtwork {
		t.Errorf("told %d times, want 2; chosen is %d", told, f.Artwork())
	}
}
