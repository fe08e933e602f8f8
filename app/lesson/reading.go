package lesson

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"gussetwright/app/appearance"
	"gussetwright/app/steady"
)

// reading is where the words of a stage are read. Their letters grow with the page, but do
// not become smaller than the user chose where a small window makes the rest of the page
// smaller: what has no room then is scrolled to.
type reading struct {
	text     *explanation
	scroll   *steady.Scroll
	theme    *appearance.Larger
	override *container.ThemeOverride

	course *course // that was shown last, and its stage
	stage  int
}

func newReading(text *explanation) *reading {
	r := &reading{text: text, scroll: steady.NewScroll(text), theme: &appearance.Larger{Factor: 1}}
	r.override = container.NewThemeOverride(r.scroll, r.theme)
	return r
}

// scale takes the factor of the page.
func (r *reading) scale(factor float32) {
	r.theme.Factor = max(factor, 1)
	r.override.Refresh()
}

// lay puts the words in their place, given in whole pixels.
func (r *reading) lay(x, y, width, height float32) {
	put(r.override, x, y, width, height)
	r.scroll.Refresh()
}

// begin shows the beginning of a stage.
func (r *reading) begin(c *course, stage int) {
	if c != r.course || stage != r.stage {
		r.course, r.stage = c, stage
		r.scroll.ScrollToTop()
	}
}

// readOn shows the words that follow those in sight, and from the end the beginning again.
func (r *reading) readOn() {
	const share = 0.8 // of what is seen; the rest stays in sight
	sight := r.scroll.Size().Height
	if r.scroll.Offset.Y+sight >= r.text.HeightFor(r.text.width)-1 {
		r.scroll.ScrollToTop()
		return
	}
	r.scroll.ScrollToOffset(r.scroll.Offset.Add(fyne.NewPos(0, share*sight)))
}
