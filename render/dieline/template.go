package dieline

import (
	"slices"

	"gussetwright/geometry/blank"
	"gussetwright/render/scene"
)

// Templates returns one drawing for each piece of the bag for artwork to be drawn
// under: lines, glue areas, bleed, safe areas and the names of the panels, without
// dimensions and title block. The page is the bleed box, so that a page drawn on it
// fits the blank to its bleed. The names are in a voice; nil is English.
func Templates(laid *blank.Blank, voice scene.Voice) []scene.Drawing {
	drawings := make([]scene.Drawing, len(laid.Pieces))
	for i := range laid.Pieces {
		piece := &laid.Pieces[i]
		d := drafter{laid: laid, spec: laid.Spec, piece: piece, u: letterHeight(piece), voice: scene.OrEnglish(voice)}
		d.names()
		d.glue()
		d.zones()
		d.lines()
		d.holes()
		d.grain()
		items := slices.DeleteFunc(d.items, func(item scene.Item) bool { return item.Layer() == scene.Dimensions })
		page := piece.Box().Inset(-laid.Spec.Print.Bleed)
		drawings[i] = scene.Drawing{Title: d.title(), Media: page, Bleed: page, Trim: piece.Box(), Items: items}
	}
	return drawings
}
