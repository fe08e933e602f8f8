package meeting

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/geometry/bag"
)

// keep keeps the size that is seen as a variant.
func (v *View) keep() {
	v.settle()
	now := v.seenSize()
	switch same := v.kept.find(now); {
	case same != none:
		v.Say(fmt.Sprintf(lang.L("This size is kept as %s already."), v.kept[same].letter()))
	case v.state.Err != nil:
		v.Say(cannotBeMade())
	case v.kept.free() == none:
		v.Say(fullShelf())
	default:
		place := v.put(now)
		v.Say(fmt.Sprintf(lang.L("Kept as %s in the project: %s."), v.kept[place].letter(), now.words(v.set.Unit())))
	}
}

func fullShelf() string { return fmt.Sprintf(lang.L("%d sizes are kept. Remove one first."), mostKept) }

// put keeps a size under the next letter, at a place that must be free, and returns that.
func (v *View) put(s size) (place int) {
	place = v.kept.free()
	v.kept[place] = &variant{number: v.nextLetter(), size: s}
	v.store()
	return place
}

// nextLetter gives a letter that was not given before. Should all have been, it is the first
// that nothing has which is kept or can be put back.
func (v *View) nextLetter() (number int) {
	if v.letters < project.MostLetters {
		v.letters++
		return v.letters - 1
	}
	isTaken := func(number int) bool {
		return v.kept.numbered(number) != none ||
			slices.ContainsFunc(v.removed, func(r removal) bool { return r.variant.number == number })
	}
	for isTaken(number) {
		number++
	}
	return number
}

// store hands what is kept to the project, to be saved with it.
func (v *View) store() {
	v.derive()
	v.doc.Keep(v.kept.sizes())
}

// recall brings the variants of the project that is open, of this meeting and of those
// before, and forgets what there was of another.
func (v *View) recall() {
	v.kept = shelfOf(v.doc.Kept())
	v.letters, v.removed, v.chosen = v.kept.given(), nil, none
}

// derive brings the variants up to date and onto the stage.
func (v *View) derive() {
	v.kept.derive(v.doc, v.state)
	for place, kept := range v.kept {
		if kept != nil {
			v.stage.kept[place].takeVariant(kept)
		}
	}
}

// preserve keeps the size of the bag before that of a variant takes its place, unless it is
// kept already, and says so; "" where there is nothing to say.
func (v *View) preserve() string {
	now := sizeOf(&v.state.Spec)
	switch {
	case v.chosen == none || v.kept.find(now) != none:
		return ""
	case v.state.Err != nil || v.kept.free() == none:
		return lang.L("Undo brings the size before back.")
	}
	return fmt.Sprintf(lang.L("The size before is kept as %s."), v.kept[v.put(now)].letter())
}

// choose shows a variant, or the bag itself.
func (v *View) choose(place int) {
	v.settle()
	v.chosen = place
	v.tell("", nil)
}

// chooseLetter shows the variant of a letter; a second time it becomes the bag.
func (v *View) chooseLetter(number int) {
	switch place := v.kept.numbered(number); place {
	case none:
		v.Say(fmt.Sprintf(lang.L("Nothing is kept as %s."), project.Letter(number)))
	case v.chosen:
		v.takeChosen()
	default:
		v.choose(place)
	}
}

// isTaken tells whether the bag has the size of the variant that is shown.
func (v *View) isTaken() bool {
	return v.chosen != none && v.kept[v.chosen].size.is(sizeOf(&v.state.Spec))
}

// takeChosen makes the variant that is shown the bag.
func (v *View) takeChosen() {
	if v.chosen == none {
		return
	}
	v.settle()
	taken := v.kept[v.chosen]
	before := v.preserve()
	v.chosen = none
	v.doc.SetAs(taken.size.of(v.doc.State().Spec), document.Taking(taken.letter()))
	said := fmt.Sprintf(lang.L("The bag is %s now: %s."), taken.letter(), taken.size.words(v.set.Unit()))
	if before != "" {
		said += " " + before
	}
	v.Say(said)
}

// removal is a variant that was removed, and the bag as it was then.
type removal struct {
	variant *variant
	bag     bag.Spec
}

// removeChosen takes the variant that is shown away. It can be put back.
func (v *View) removeChosen() {
	if v.chosen == none {
		return
	}
	v.settle()
	gone := v.kept[v.chosen]
	v.removed = append(v.removed, removal{gone, v.state.Spec})
	v.kept[v.chosen], v.chosen = nil, none
	v.comparing = v.comparing && !v.kept.empty()
	v.store()
	v.stage.reframe(true)
	v.tell(fmt.Sprintf(lang.L("%s is removed."), gone.letter()),
		&answer{fmt.Sprintf(lang.L("Put %s back"), gone.letter()), appearance.UndoIcon(), v.putBack})
}

// putBack brings the variant back that was removed last, and shows it.
func (v *View) putBack() {
	last := len(v.removed) - 1
	place := v.kept.free()
	switch {
	case last < 0:
		return
	case place == none:
		v.Say(fullShelf())
		return
	}
	v.settle()
	v.kept[place], v.chosen = v.removed[last].variant, place
	v.removed = v.removed[:last]
	v.store()
	v.stage.reframe(true)
	v.Say(fmt.Sprintf(lang.L("%s is back."), v.kept[place].letter()))
}

// wasRemoving tells whether a removal is the last that was done: since then the bag is the
// same, or has become so again.
func (v *View) wasRemoving() bool {
	last := len(v.removed) - 1
	return last >= 0 && document.Difference(&v.removed[last].bag, &v.state.Spec) == document.Change{}
}

// Undo takes the last back that was done here, a removal or a step of the document.
func (v *View) Undo() {
	if v.wasRemoving() {
		v.putBack()
		return
	}
	v.doc.Undo()
}

// canUndo tells whether there is something to take back.
func (v *View) canUndo() bool {
	return v.wasRemoving() || v.state.Dragging || v.state.Undo.Label != ""
}
