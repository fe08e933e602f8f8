package quotestep

import (
	"fmt"
	"math"
	"slices"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/steppage"
	"gussetwright/geometry/bag"
)

// The next smaller size has a face of this share of the smallest, the next larger one of
// the largest.
const smaller, larger = 0.75, 1.3

// proposals returns a smaller and a larger size with the proportions of the bag, where
// such bags can be drawn.
func proposals(spec *bag.Spec) []bag.Size {
	least, most := spec.Body.Width, spec.Body.Width
	for _, size := range spec.Family {
		least, most = min(least, size.Width), max(most, size.Width)
	}
	var list []bag.Size
	taken := func(name string) bool {
		return spec.Name == name || slices.ContainsFunc(spec.Family, func(s bag.Size) bool { return s.Name == name })
	}
	propose := func(name string, width float64) {
		const round = 10
		size := spec.Scaled(steppage.FreeName(name, taken), math.Round(width/round)*round)
		if member := spec.Member(size); size.Width != spec.Body.Width && member.Validate() == nil {
			list = append(list, size)
		}
	}
	propose(lang.L("Small"), least*smaller)
	propose(lang.L("Large"), most*larger)
	return list
}

// showAdds offers further sizes, where the list has room for them.
func (f *family) showAdds(state document.State) {
	if state.Dragging {
		return
	}
	f.adds = nil
	full := ""
	switch {
	case len(state.Spec.Family) >= mostSizes:
		full = fmt.Sprintf(lang.L("No more than %d further sizes. Remove one to add another."), mostSizes)
	case state.Err == nil:
		f.adds = proposals(&state.Spec)
	}
	for i, add := range f.add {
		if i < len(f.adds) {
			add.SetGain(fmt.Sprintf(lang.L("%s: %s"), f.adds[i].Name, f.sizeText(f.adds[i])))
		}
		f.Reveal(add, i < len(f.adds))
	}
	f.full.SetText(full)
}

// appendSize adds a proposed size and opens it.
func (f *family) appendSize(i int) {
	if i >= len(f.adds) {
		return
	}
	spec := f.Doc.State().Spec
	f.chosen = len(spec.Family)
	spec.Family = append(slices.Clone(spec.Family), f.adds[i])
	f.Doc.Set(spec)
}
