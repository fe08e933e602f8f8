package words_test

import (
	"testing"

	"gussetwright/app/words"
	"gussetwright/geometry/bag"
)

// Every place has a name of its own.
func TestEveryPlaceHasAName(t *testing.T) {
	seen := map[string]string{}
	for _, on := range bag.ArtworkPlaces() {
		name := words.Place(on)
		if name == on {
			t.Errorf("%q has no name", on)
		}
		if other, taken := seen[name]; taken {
			t.Errorf("%q and %q are both called %q", on, other, name)
		}
		seen[name] = on
	}
	if got := words.Place("lid"); got != "lid" {
		t.Errorf("an unknown place is called %q", got)
	}
}
