package meeting

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"

	"gussetwright/geometry/check"
)

// drag moves a measure of what is seen. All until settle is one step to undo.
func (v *View) drag(a axis, value float64) {
	if !v.moving {
		v.moving, v.from = true, v.state.Spec
		v.note = v.preserve()
	}
	spec, moved := v.doc.State().Spec, v.seenSize()
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
	v.note = ""
}

// compare shows the variants side by side, or one again.
func (v *View) compare() {
	v.settle()
	if v.kept.empty() {
		v.Say(lang.L("Keep a size first, then compare it with others."))
		return
	}
	v.comparing = !v.comparing
	v.tell("", nil)
}

// proof has the proof of what is shown written. Of a bag that cannot be made there is one
// only when that is asked for once more.
func (v *View) proof() {
	v.settle()
	seen := v.seenTrouble()
	switch {
	case v.chosen == none && v.state.Err != nil:
		v.Say(cannotBeMade())
	case seen.text != "" && seen.severity == check.Error:
		v.tell(seen.text+" "+lang.L("Is a proof wanted all the same?"), &answer{lang.L("Write the proof"), theme.DocumentSaveIcon(), v.writeProof})
	default:
		v.writeProof()
	}
}

// writeProof has the proof written. A variant is made the bag for it, so that the client
// signs what the bag is.
func (v *View) writeProof() {
	v.takeChosen()
	if v.state.Err != nil {
		v.Say(cannotBeMade())
		return
	}
	v.around.Proof()
}

// answer is what can be done about what is said, by a button.
type answer struct {
	label string
	icon  fyne.Resource
	do    func()
}

// tell says something to the people at the table, or nothing, until the bag changes. a may
// be nil.
func (v *View) tell(text string, a *answer) {
	v.said, v.answer = text, a
	v.update()
}

// Say says something to the people at the table, until the bag changes.
func (v *View) Say(text string) { v.tell(text, nil) }

// Said returns what the people at the table were told last, or "".
func (v *View) Said() string { return v.said }
