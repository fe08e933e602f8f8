package steps

import (
	"fmt"
	"image/color"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/artstep"
	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/steppage"
	"gussetwright/app/words"
	"gussetwright/geometry/bag"
	"gussetwright/render/ink"
	"gussetwright/render/solid"
)

func newArtworkPage(b *steppage.Bench, art *artstep.Step) *steppage.Page {
	p := steppage.New(b)
	addPieces(p, art)
	p.Named(lang.L("Margins"), "print.bleed_mm", "print.safe_mm")
	addBackground(p)
	p.Named(lang.L("More"), "print.")
	p.Add(entry.NewColumn(1.5,
		entry.NewText(lang.L("What they do"), entry.Heading),
		entry.NewText(lang.L("Bleed: colour that reaches an edge must run past it by this much, for no knife cuts twice in the same place. The gap between blanks and the margins of the sheet have to hold it."), entry.Small),
		entry.NewText(lang.L("Safe margin: keep text, codes and marks this far from cuts, creases and holes, for every fold wanders a little."), entry.Small),
	))
	return p
}

// addPieces adds what is done with artwork itself.
func addPieces(p *steppage.Page, art *artstep.Step) {
	p.Add(art.Column)
	art.OnFocus(p.Explain)
	p.Enter, p.Leave = art.Enter, art.Leave
	p.OnFollow(art.Follow)
	p.OnForget(art.Forget)
}

// addBackground adds the inks under all artwork and shows the colour they make.
func addBackground(p *steppage.Page) {
	background := p.Named(lang.L("Background"), "print.background_")
	colour := newSwatch()
	background.Add(colour)
	p.OnFollow(func(state document.State) {
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
	percent := func(ink float64) string { return words.Number(ink, 1) }
	return fmt.Sprintf(lang.L("C %s, M %s, Y %s, K %s; a screen shows it only roughly."),
		percent(inks.Cyan), percent(inks.Magenta), percent(inks.Yellow), percent(inks.Black))
}
