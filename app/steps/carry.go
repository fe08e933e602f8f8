package steps

import (
	"fmt"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/steppage"
)

func newCarryPage(b *steppage.Bench) *steppage.Page {
	p := steppage.New(b)
	p.Named(lang.L("How it is carried"), "handle.kind")
	p.Named(lang.L("Holes"), "handle.hole_", "handle.eyelets")
	p.Named(lang.L("Slits"), "handle.slit_")
	p.Named(lang.L("Hand hole"), "handle.hand_hole_")
	p.Named(lang.L("Glued patch"), "handle.patch_")
	p.Named(lang.L("Place and loop"), "handle.drop_mm", "handle.spacing_mm", "handle.rise_mm", "handle.knot_mm")
	p.Named(lang.L("More"), "handle.")
	addRope(p)
	p.Named(lang.L("Cards"), "cards.")
	return p
}

// addRope says how much of it a handle takes.
func addRope(p *steppage.Page) {
	rope := entry.NewText("", entry.Muted)
	p.Add(rope)
	p.OnFollow(func(state document.State) {
		text := ""
		if each := state.Snapshot.Job.RopePerHandle; each > 0 {
			text = fmt.Sprintf(lang.L("Each handle takes %s: the spacing, twice the rise and twice the end allowance. Two handles make a bag."), p.Length(each))
		}
		rope.SetText(text)
	})
}
