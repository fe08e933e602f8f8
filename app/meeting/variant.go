package meeting

import (
	"reflect"
	"slices"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/geometry/bag"
)

// mostKept is how many variants can be kept: as many as fit side by side.
const mostKept = project.MostKept

// none is the place of no variant, where the bag itself is meant.
const none = -1

// variant is a size that was kept under a letter, now or in a meeting before. What else
// there is to the bag is that of the document, now as ever.
type variant struct {
	number   int // of the letter, from 0; none is given twice, for people take notes
	size     size
	snapshot *document.Snapshot // nil where the bag cannot be drawn in this size
}

func (v *variant) letter() string { return project.Letter(v.number) }

// shelf are the variants by their places; nil where none is.
type shelf [mostKept]*variant

// free returns the first place that is free, or none.
func (s *shelf) free() int { return slices.Index(s[:], nil) }

// find returns the place of the variant in a size, or none.
func (s *shelf) find(wanted size) int {
	return slices.IndexFunc(s[:], func(v *variant) bool { return v != nil && v.size.is(wanted) })
}

// numbered returns the place of the variant of that number, or none.
func (s *shelf) numbered(number int) int {
	return slices.IndexFunc(s[:], func(v *variant) bool { return v != nil && v.number == number })
}

// order returns the places of the variants in the order of their letters.
func (s *shelf) order() (places []int) {
	for place, v := range s {
		if v != nil {
			places = append(places, place)
		}
	}
	slices.SortFunc(places, func(a, b int) int { return s[a].number - s[b].number })
	return places
}

// shelfOf returns the variants that a project keeps. A size without a letter is none.
func shelfOf(sizes []project.KeptSize) (s shelf) {
	for _, kept := range sizes {
		if place := s.free(); place != none && kept.Number() >= 0 {
			s[place] = &variant{number: kept.Number(), size: size{kept.Width, kept.Gusset, kept.Height}}
		}
	}
	return s
}

// sizes returns the variants as a project keeps them, in the order of their letters.
func (s *shelf) sizes() (sizes []project.KeptSize) {
	for _, place := range s.order() {
		v := s[place]
		sizes = append(sizes, project.KeptSize{Letter: v.letter(), Width: v.size[width], Gusset: v.size[depth], Height: v.size[height]})
	}
	return sizes
}

// given returns how many letters were given at least, so that the next one is new.
func (s *shelf) given() (letters int) {
	for _, v := range s {
		if v != nil {
			letters = max(letters, v.number+1)
		}
	}
	return letters
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
