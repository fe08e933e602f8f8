package proof

import (
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// The client reads of each carrying style by a name of its own: a new one must not pass
// for a bag without a handle.
func TestEveryHandleHasItsWord(t *testing.T) {
	field, _ := bag.FieldAt("handle.kind")
	seen := map[phrase.Word]string{}
	for _, kind := range field.Options {
		word := handleWord(bag.Handle{Kind: bag.HandleKind(kind)})
		if other, known := seen[word]; known {
			t.Errorf("%s and %s are both called %q", other, kind, word)
		}
		seen[word] = kind
	}
}
