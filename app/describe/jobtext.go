package describe

import (
	"strings"

	"gussetwright/geometry"
)

var cardNames = map[string]string{"top": "top card", "base": "base card", "patch": "handle patch"}

// text writes the run for people: sheets, one bag, its parts, the die, packing, load and
// quote.
func (j *Job) text(row func(label, format string, values ...any)) {
	j.runText(row)
	j.partsText(row)
	j.packingText(row)
	if j.Load != nil {
		row("Load", "%s; %d layers, which break at %.0f N", j.Load.sentence, j.Load.Layers, j.Load.Force)
		row("", "%s", j.Load.Caution)
	}
	if j.Quote != nil {
		j.Quote.text(row)
	}
}

func (j *Job) runText(row func(label, format string, values ...any)) {
	ready := ""
	if j.MakeReadySheets > 0 {
		ready = " (" + number(j.MakeReadySheets) + " of them for make-ready)"
	}
	forms := ""
	if j.Forms > 1 {
		forms = ", " + number(float64(j.Forms)) + " forms"
	}
	row("Run", "%s bags, %s printed, %s sheets%s%s, %s kg of paper", number(j.Quantity), number(j.BagsPrinted), number(j.Sheets), ready, forms, number(j.PaperKilos))
	with := "cards"
	if j.FilmGrams > 0 {
		with = "film and cards"
	}
	row("One bag", "%s g with %s, without handle and glue; caliper %s µm", number(j.BagGrams), with, number(j.Caliper))
	row("Glue", "on %s cm², %s m long, %s g a bag; %s kg for the run", number(j.GlueArea/100), number(j.GlueMetres), number(j.GlueGrams), number(j.GlueKilos))
}

func (j *Job) partsText(row func(label, format string, values ...any)) {
	if j.RopeMetres > 0 {
		row("Handles", "%s mm each, %s m for the run", number(j.RopePerHandle), number(j.RopeMetres))
	}
	for _, card := range j.Cards {
		row("Cards", "%d × %s, %s × %s mm, %s g/m²", card.Count, cardNames[card.Role], number(card.Width), number(card.Height), number(card.Grammage))
	}
	for _, c := range j.Cuttings {
		if c.Up == 0 {
			row("Board", "%s fits no sheet", cardNames[c.Role])
			continue
		}
		name := c.Sheet
		if name == "" {
			name = "the press sheet"
		}
		row("Board", "%s: %d on %s (%s × %s mm), %s sheets, %s kg", cardNames[c.Role], c.Up, name, number(c.Width), number(c.Height), number(c.Sheets), number(c.Kilos))
	}
	die := ""
	if j.Forms > 0 {
		die = "; " + number(j.DieCutMetres) + " m and " + number(j.DieCreaseMetres) + " m in the die"
		if j.Forms > 1 {
			die += "s of all forms"
		}
	}
	row("Die", "%s m of cutting rule, %s m of creasing rule for one bag%s", number(j.CutMetres), number(j.CreaseMetres), die)
}

func (j *Job) packingText(row func(label, format string, values ...any)) {
	if j.PackedThickness > 0 {
		row("Packed", "flat: %s × %s mm, %s mm thick without handle and cards", number(j.PackedWidth), number(j.PackedHeight), number(j.PackedThickness))
	}
	if j.Cartons == 0 {
		return
	}
	row("Cartons", "%s of %s bags, %s mm inside, %s mm outside, %s kg full", number(j.Cartons), number(j.BagsPerCarton), box(j.Inside), box(j.Outside), number(j.CartonKilos))
	if j.Pallets == 0 {
		row("Pallets", "a carton fits no pallet: it is too large or too heavy")
		return
	}
	row("Pallets", "%s of %s cartons, %d in a layer; the fullest %.0f mm high, %s kg", number(j.Pallets), number(j.CartonsPerPallet), j.CartonsPerLayer, j.PalletHeight, number(j.PalletKilos))
}

// box writes the sides of a box to a whole millimetre.
func box(sides [3]float64) string {
	texts := make([]string, len(sides))
	for i, side := range sides {
		texts[i] = geometry.FormatNumber(side, 0)
	}
	return strings.Join(texts, " × ")
}
