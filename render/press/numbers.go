package press

import (
	"math"
	"slices"
	"strconv"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// numbers writes into each blank its number on the sheet, upright as the blank is; and
// which piece it is where there are several.
func (d *drafter) numbers() {
	kinds, several := map[source]bool{}, d.severalBags()
	for _, laid := range d.Blanks {
		kinds[source{laid.Blank, laid.Piece}] = true
	}
	for i, laid := range d.Blanks {
		text := strconv.Itoa(i + 1)
		if len(kinds) > 1 {
			text += " " + d.kindName(laid, several)
		}
		spot := d.spotFor(text, i)
		turn := spot.turn + float64(laid.At.Turn)*math.Pi/180
		d.centred(scene.PieceNumbers, text, laid.Motion().At(spot.middle), spot.size, turn, true)
	}
}

// spot is where a text stands on a piece.
type spot struct {
	middle     geometry.Vec2
	size, turn float64
}

// spotFor returns where the text of the i-th blank stands: in the middle of its widest
// panel, or on a printed piece where it can be read on any artwork. A pale field under it
// would be taken out of the print, but the seam flap goes without ink.
func (d *drafter) spotFor(text string, i int) spot {
	laid := d.Blanks[i]
	if print := d.stock.printed(ink{source{laid.Blank, laid.Piece}, d.within(i)}); print != nil {
		if free, found := d.besideInk(text, laid, print); found {
			return free
		}
	}
	usual := spot{middle: laid.Blank.Pieces[laid.Piece].Box().Center(), size: 2 * d.u}
	if panel, found := widest(laid.Blank, laid.Piece); found {
		usual.middle = panel.Box.Center()
		usual.size = fitted(text, usual.size, panel.Box.Width())
	}
	return usual
}

// besideInk returns where a text stands on the part of a seam flap that has no ink, across
// it or, where it is too long, along it; and whether there is room.
func (d *drafter) besideInk(text string, laid Laid, print *scene.Part) (spot, bool) {
	piece := &laid.Blank.Pieces[laid.Piece]
	flap, found := piece.Panel("seam-flap")
	if !found {
		return spot{}, false
	}
	room := flap.Box
	room.Min.X += laid.Blank.Spec.Print.Bleed // ink runs that far under what is glued on
	if room.Empty() || inkIn(print.Items, room) {
		return spot{}, false
	}
	const height = 0.75 // of the letters, of the room that they take across
	free := spot{middle: room.Center(), size: 2 * d.u}
	if fitted(text, free.size, room.Width()) < free.size {
		free.turn = math.Pi / 2
		free.size = fitted(text, min(free.size, height*room.Width()), room.Height())
	}
	return free, free.size >= d.u/2
}

// inkIn tells whether what is printed reaches into a box. White over all of it, which is
// how ink is kept off, takes away what lies under it.
func inkIn(print []scene.Item, box geometry.Rect) bool {
	inked := false
	for _, item := range print {
		switch item := item.(type) {
		case scene.Fill:
			around, white := item.Path.Bounds(), item.Ink != nil && *item.Ink == (scene.CMYK{})
			switch {
			case clearOf(around, box):
			case !white:
				inked = true
			case around.Contains(box.Min) && around.Contains(box.Max):
				inked = false
			}
		case scene.Placed:
			inked = inked || len(item.Clip.Vertices) == 0 || !clearOf(item.Clip.Bounds(), box)
		}
	}
	return inked
}

// fitted returns the size of a text that is to be no wider than some room.
func fitted(text string, size, room float64) float64 {
	return min(size, size*0.9*room/typeface.Advance(text, size, true))
}

// severalBags tells whether the sheet holds more than one bag.
func (d *drafter) severalBags() bool {
	return slices.ContainsFunc(d.Blanks, func(l Laid) bool { return l.Blank != d.Blanks[0].Blank })
}

// kindName names a piece, and its bag where the sheet holds several.
func (d *drafter) kindName(laid Laid, several bool) string {
	piece := d.voice.Word(phrase.Word(laid.Blank.Pieces[laid.Piece].Name))
	switch {
	case several && len(laid.Blank.Pieces) > 1:
		return laid.Blank.Spec.Name + ", " + piece
	case several:
		return laid.Blank.Spec.Name
	}
	return piece
}

// widest returns the face of a piece.
func widest(b *blank.Blank, piece int) (blank.Panel, bool) {
	face, found := b.Pieces[piece].Panel("front")
	if !found {
		face, found = b.Pieces[piece].Panel("back")
	}
	return face, found
}
