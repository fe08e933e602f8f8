package meeting

import (
	"fmt"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/foldedpane"
)

// write says of every bag what it is.
func (v *View) write() {
	v.stage.beside.caption = caption{}
	v.stage.beside.caption.size[0] = foldedpane.BesideName(v.stage.reference)
	v.stage.beside.caption.brief = v.stage.beside.caption.size[0]
	v.writePresent()
	now := v.kept.find(sizeOf(&v.state.Spec))
	for place, kept := range v.kept {
		if kept == nil {
			continue
		}
		name := letter(place)
		switch {
		case !v.comparing:
		case place == v.chosen:
			name = fmt.Sprintf(lang.L("%s – chosen"), name)
		case place == now:
			name = fmt.Sprintf(lang.L("%s – the bag now"), name)
		}
		v.stage.kept[place].caption = v.captionOf(name, kept.size, complaint(kept.snapshot))
	}
}

// writePresent says what the bag of the document is. Alone it needs no words: the numbers
// stand below it.
func (v *View) writePresent() {
	v.stage.present.caption = caption{}
	if v.comparing {
		v.stage.present.caption = v.captionOf(lang.L("The bag now"), sizeOf(&v.state.Spec), v.presentTrouble())
	}
}

func (v *View) captionOf(name string, s size, trouble string) caption {
	unit := v.set.Unit()
	return caption{name: name, size: s.lines(unit), brief: s.brief(unit), trouble: trouble}
}

// seenSize is the size of the bag, or of the variant that is chosen.
func (v *View) seenSize() size {
	if v.chosen != none {
		return v.kept[v.chosen].size
	}
	return sizeOf(&v.state.Spec)
}

// seenTrouble says why that cannot be made, or "".
func (v *View) seenTrouble() string {
	if v.chosen != none {
		return complaint(v.kept[v.chosen].snapshot)
	}
	return v.presentTrouble()
}

func (v *View) presentTrouble() string {
	if v.state.Err != nil {
		return cannotBeMade()
	}
	return complaint(v.state.Snapshot)
}

// showSizes brings numbers and sliders up to date, and what is said of the size.
func (v *View) showSizes() {
	seen := v.seenSize()
	for a, d := range v.dials {
		low, high := d.slider.low, d.slider.high
		if !v.state.Dragging && (seen[a] <= low || seen[a] >= high || low == 0 && high == 1) {
			low, high = axis(a).span(seen[a], &v.state.Spec)
		}
		d.show(seen[a], low, high, v.set.Unit())
	}
	v.page.speak()
}
