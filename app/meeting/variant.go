package meeting

import (
	"reflect"
	"slices"

	"gussetwright/app/document"
	"gussetwright/geometry/bag"
)

// mostKept is how many variants can be kept: as many as fit side by side.
const mostKept = 4

// none is the place of no variant, where the bag itself is meant.
const none = -1

// variant is a size that was kept, under the letter of its place. What else there is to
// the bag is that of the document, now as ever.
type variant struct {
	size     size
	snapshot *document.Snapshot // nil where the bag cannot be drawn in this size
}

// letter names a place.
func letter(place int) string { return string(rune('A' + place)) }

// shelf are the variants by their places; nil where none is.
type shelf [mostKept]*variant

// free returns the first place that is free, or none.
func (s *shelf) free() int { return slices.Index(s[:], nil) }

// find returns the place of the variant in a size, or none.
func (s *shelf) find(wanted size) int {
	return slices.IndexFunc(s[:], func(v *variant) bool { return v != nil && v.size.is(wanted) })
}

// empty tells whether nothing is kept.
func (s *shelf) empty() bool { return *s == shelf{} }

// derive brings the variants up to date with what else there is to the bag.
func (s *shelf) derive(doc *document.Document, state document.State) {
	for _, v := range s {
		if v == nil {
			continue
		}
		spec := v.size.of(state.Spec)
		if v.snapshot != nil && reflect.DeepEqual(spec, v.snapshot.Spec) && sameArt(v.snapshot, state.Snapshot) {
			continue
		}
		v.snapshot, _ = doc.Derive(spec) // why it cannot be drawn is said in its place
	}
}

// sameArt tells whether two bags show the same artwork, opened as far.
func sameArt(a, b *document.Snapshot) bool {
	return slices.EqualFunc(a.Hung, b.Hung, func(one, other document.Hanging) bool {
		return one.Art == other.Art && (one.Err == nil) == (other.Err == nil)
	})
}

// changeTo names the step from one bag to the same in another size. That holes move
// along is no change that anybody made.
func changeTo(from bag.Spec, wanted size) document.Change {
	to := from
	to.Body.Width, to.Body.Gusset, to.Body.Height = wanted[width], wanted[depth], wanted[height]
	return document.Difference(&from, &to)
}
