package steps

import (
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/entry"
)

func newArtworkPage(b *bench) *page {
	p := newPage(b)
	p.named(lang.L("Margins"), "print.bleed_mm", "print.safe_mm")
	p.named(lang.L("More"), "print.")
	p.Add(entry.NewColumn(1.5,
		entry.NewText(lang.L("What they do"), entry.Heading),
		entry.NewText(lang.L("Bleed: colour that reaches an edge must run past it by this much, for no knife cuts twice in the same place. The gap between blanks and the margins of the sheet have to hold it."), entry.Small),
		entry.NewText(lang.L("Safe margin: keep text, codes and marks this far from cuts, creases and holes, for every fold wanders a little."), entry.Small),
	))
	return p
}
