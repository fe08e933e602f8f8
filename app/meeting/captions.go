package meeting

import (
	"fmt"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/foldedpane"
	"gussetwright/geometry/check"
)

// write says of every bag what it is.
func (v *View) write() {
	v.stage.beside.caption = caption{name: foldedpane.BesideName(v.stage.reference)}
	v.writePresent()
	now := v.kept.find(sizeOf(&v.state.Spec))
	for place, kept := range v.kept {
		if kept == nil {
			continue
		}
		name := kept.letter()
		switch {
		case !v.comparing:
		case place == v.chosen:
			name = fmt.Sprintf(lang.L("%s – chosen"), name)
		case place == now:
			name = fmt.Sprintf(lang.L("%s – the bag now"), name)
		}
		v.stage.kept[place].caption = v.captionOf(name, kept.size, troubleOf(kept.snapshot))
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

func (v *View) captionOf(name string, s size, t trouble) caption {
	unit := v.set.Unit()
	return caption{name: name, size: s.lines(unit), brief: s.brief(unit), trouble: t}
}

// seenSize is the size of the bag, or of the variant that is chosen.
func (v *View) seenSize() size {
	if v.chosen != none {
		return v.kept[v.chosen].size
	}
	return sizeOf(&v.state.Spec)
}

// trouble is what is wrong with a bag, and how bad that is; none without a text.
type trouble struct {
	severity check.Severity
	text     string
}

// troubleOf says what is wrong with a bag; nil stands for one that cannot be drawn.
func troubleOf(snapshot *document.Snapshot) trouble {
	severity := check.Warning
	if snapshot == nil || check.HasError(snapshot.Findings) {
		severity = check.Error
	}
	return trouble{severity, complaint(snapshot)}
}

// seenTrouble says what is wrong with what is seen.
func (v *View) seenTrouble() trouble {
	if v.chosen != none {
		return troubleOf(v.kept[v.chosen].snapshot)
	}
	return v.presentTrouble()
}

func (v *View) presentTrouble() trouble {
	if v.state.Err != nil {
		return troubleOf(nil)
	}
	return troubleOf(v.state.Snapshot)
}

// showSizes brings numbers and sliders up to date, and what is said of the size.
func (v *View) showSizes() {
	const edge = 0.06 // of a slider, where there is no room to go on
	seen := v.seenSize()
	for a, d := range v.dials {
		low, high := d.slider.low, d.slider.high
		least, most := low+edge*(high-low), high-edge*(high-low)
		if !v.state.Dragging && (seen[a] <= least || seen[a] >= most || low == 0 && high == 1) {
			low, high = axis(a).span(seen[a], &v.state.Spec)
		}
		d.show(seen[a], low, high, v.set.Unit())
	}
	v.page.speak()
}
