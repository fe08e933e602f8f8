package meeting

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
)

// drag moves a measure of what is seen. All until settle is one step to undo.
func (v *View) drag(a axis, value float64) {
	spec, moved := v.doc.State().Spec, v.seenSize()
	if !v.moving {
		v.moving, v.from = true, spec
	}
	moved[a] = a.allowed(value, &spec)
	v.chosen = none
	v.doc.Drag(moved.of(spec))
}

// settle makes one step of what was dragged.
func (v *View) settle() {
	if !v.moving {
		return
	}
	v.moving = false
	if state := v.doc.State(); state.Dragging { // not undone in the midst of it
		v.doc.SetAs(state.Spec, changeTo(v.from, sizeOf(&state.Spec)))
	}
}

// keep keeps the size that is seen as a variant.
func (v *View) keep() {
	v.settle()
	now := v.seenSize()
	place := v.kept.free()
	switch same := v.kept.find(now); {
	case same != none:
		v.Say(fmt.Sprintf(lang.L("This size is kept as %s already."), letter(same)))
		return
	case v.state.Err != nil:
		v.Say(cannotBeMade())
		return
	case place == none:
		v.Say(fmt.Sprintf(lang.L("%d sizes are kept. Remove one first."), mostKept))
		return
	}
	v.kept[place] = &variant{size: now}
	v.kept.derive(v.doc, v.state)
	v.stage.kept[place].take(v.kept[place].snapshot)
	v.Say(fmt.Sprintf(lang.L("Kept as %s: %s."), letter(place), now.words(v.set.Unit())))
}

// choose shows a variant, or the bag itself.
func (v *View) choose(place int) {
	v.settle()
	if place != none && v.kept[place] == nil {
		v.Say(fmt.Sprintf(lang.L("Nothing is kept as %s."), letter(place)))
		return
	}
	v.chosen, v.said = place, ""
	v.update()
}

// takeChosen takes the variant that is shown over as the bag.
func (v *View) takeChosen() {
	if v.chosen == none {
		return
	}
	v.settle()
	name, wanted := letter(v.chosen), v.kept[v.chosen].size
	v.chosen = none
	v.doc.SetAs(wanted.of(v.doc.State().Spec), document.Taking(name))
	v.Say(fmt.Sprintf(lang.L("The bag is %s now: %s."), name, wanted.words(v.set.Unit())))
}

// removeChosen forgets the variant that is shown.
func (v *View) removeChosen() {
	if v.chosen == none {
		return
	}
	name := letter(v.chosen)
	v.kept[v.chosen], v.chosen = nil, none
	v.comparing = v.comparing && !v.kept.empty()
	v.stage.reframe(false)
	v.Say(fmt.Sprintf(lang.L("%s is removed."), name))
}

// compare shows the variants side by side, or one again.
func (v *View) compare() {
	v.settle()
	if v.kept.empty() {
		v.Say(lang.L("Keep a size first, then compare it with others."))
		return
	}
	v.comparing, v.said = !v.comparing, ""
	v.update()
}

// proof has the proof of what is shown written. A variant is taken over for it, so that
// the client signs what the bag is.
func (v *View) proof() {
	v.settle()
	v.takeChosen()
	if v.state.Err != nil {
		v.Say(cannotBeMade())
		return
	}
	v.around.Proof()
}

// TypedKey takes the keys of the view. The window calls it for keys that nothing else
// takes.
func (v *View) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyEscape, fyne.KeyF11:
		v.around.Leave()
	case fyne.KeyRight, fyne.KeyUp:
		v.dials[v.stepped].slider.step(true)
	case fyne.KeyLeft, fyne.KeyDown:
		v.dials[v.stepped].slider.step(false)
	case fyne.KeyReturn, fyne.KeyEnter:
		v.takeChosen()
	case fyne.KeyDelete:
		v.removeChosen()
	}
}

// TypedRune takes the letters of the view.
func (v *View) TypedRune(letter rune) {
	switch letter {
	case '0':
		v.choose(none)
	case '1', '2', '3', '4':
		if place := int(letter - '1'); place == v.chosen {
			v.takeChosen()
		} else {
			v.choose(place)
		}
	case 'k', 'K':
		v.keep()
	case 'c', 'C':
		v.compare()
	case 'p', 'P':
		v.proof()
	}
}
