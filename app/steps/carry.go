package steps

import (
	"fmt"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
)

func newCarryPage(b *bench) *page {
	p := newPage(b)
	p.named(lang.L("How it is carried"), "handle.kind")
	p.named(lang.L("Holes"), "handle.hole_", "handle.eyelets")
	p.named(lang.L("Slits"), "handle.slit_")
	p.named(lang.L("Hand hole"), "handle.hand_hole_")
	p.named(lang.L("Glued patch"), "handle.patch_")
	p.named(lang.L("Place and loop"), "handle.drop_mm", "handle.spacing_mm", "handle.rise_mm", "handle.knot_mm")
	p.named(lang.L("More"), "handle.")
	p.addRope()
	p.named(lang.L("Cards"), "cards.")
	return p
}

// addRope says how much of it a handle takes.
func (p *page) addRope() {
	rope := entry.NewText("", entry.Muted)
	p.Add(rope)
	p.shows = append(p.shows, func(state document.State) {
		text := ""
		if each := state.Snapshot.Job.RopePerHandle; each > 0 {
			text = fmt.Sprintf(lang.L("Each handle takes %s: the spacing, twice the rise and twice the knot allowance. Two handles make a bag."), p.length(each))
		}
		rope.SetText(text)
	})
}
