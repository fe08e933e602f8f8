package steps

import (
	"fmt"
	"image/color"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/render/ink"
	"gussetwright/render/solid"
)

func newArtworkPage(b *bench) *page {
	p := newPage(b)
	p.addPieces()
	p.named(lang.L("Margins"), "print.bleed_mm", "print.safe_mm")
	p.addBackground()
	p.named(lang.L("More"), "print.")
	p.Add(entry.NewColumn(1.5,
		entry.NewText(lang.L("What they do"), entry.Heading),
		entry.NewText(lang.L("Bleed: colour that reaches an edge must run past it by this much, for no knife cuts twice in the same place. The gap between blanks and the margins of the sheet have to hold it."), entry.Small),
		entry.NewText(lang.L("Safe margin: keep text, codes and marks this far from cuts, creases and holes, for every fold wanders a little."), entry.Small),
	))
	return p
}

// addPieces adds what is done with artwork itself.
func (p *page) addPieces() {
	p.Add(p.art.Column)
	p.art.OnFocus(p.explain)
	p.enter, p.leave = p.art.Enter, p.art.Leave
	p.shows = append(p.shows, p.art.Follow)
	p.forgets = append(p.forgets, p.art.Forget)
}

// addBackground adds the inks under all artwork and shows the colour they make.
func (p *page) addBackground() {
	g := p.named(lang.L("Background"), "print.background_")
	colour := newSwatch()
	g.Add(colour)
	p.shows = append(p.shows, func(state document.State) {
		spec := &state.Spec
		colour.show(inkOn(solid.PaperOf(spec.Paper).Print, spec.Print.Background), inkWords(spec.Print.Background))
	})
}

// inkOn returns roughly the colour of inks on paper, the one that the panes show: what
// the inks look like on white paper, times the colour of the paper.
func inkOn(paper color.RGBA, inks bag.Background) color.RGBA {
	looks := ink.RGB(inks.Cyan/100, inks.Magenta/100, inks.Yellow/100, inks.Black/100)
	through := func(ink, paper uint8) uint8 { return uint8((int(ink)*int(paper) + 127) / 255) }
	return color.RGBA{through(looks.R, paper.R), through(looks.G, paper.G), through(looks.B, paper.B), 255}
}

// inkWords says which inks make the background.
func inkWords(inks bag.Background) string {
	if inks == (bag.Background{}) {
		return lang.L("Bare paper")
	}
	percent := func(ink float64) string { return geometry.FormatNumber(ink, 1) }
	return fmt.Sprintf(lang.L("C %s, M %s, Y %s, K %s; a screen shows it only roughly."),
		percent(inks.Cyan), percent(inks.Magenta), percent(inks.Yellow), percent(inks.Black))
}
