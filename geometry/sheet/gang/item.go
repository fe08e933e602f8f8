package gang

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/sheet"
)

// Item is one bag of those that share sheets.
type Item struct {
	Name string
	// Piece is the blank of the bag, or one of its PerBag equal pieces; 0 counts as
	// 1. Pieces of different bags are kept apart by their bounding boxes. An outline
	// serves only forms of this bag alone, as in sheet.Lay.
	Piece sheet.Piece
	Bags  int // wanted, spoilage included
}

func (i *Item) perBag() int { return max(1, i.Piece.PerBag) }

// Options are the choices of the user.
type Options struct {
	// MostForms is how many forms there may be; 0 is as many as help.
	MostForms int
	// Progress is called, where it is not nil, whenever a better result or bound is
	// known, with sheets; best is 0 as long as there is no result.
	Progress func(best, bound int)
}

// mostItems keeps the tables of subsets and the search within memory and time.
const mostItems = 24

// mostBags keeps sums of pieces within whole numbers.
const mostBags = 1_000_000_000

// check returns what is wrong with a job before anything is laid.
func check(s bag.Sheet, items []Item, options Options) error {
	if len(items) > mostItems {
		return phrase.Errorf("gang on one sheet: %d bags are more than %d; gang them in two jobs", len(items), mostItems)
	}
	if options.MostForms < 0 {
		return phrase.Errorf("gang on one sheet: most forms is %d, must be at least 0; give 0 for as many as help", options.MostForms)
	}
	fibres := bag.Grain("")
	for i := range items {
		item := &items[i]
		width, height := millimetres(item.Piece.Width), millimetres(item.Piece.Height)
		switch {
		case item.Bags < 0:
			return phrase.Errorf("gang on one sheet: bags of %s is %d, must be at least 0; give the quantity wanted", item.Name, item.Bags)
		case item.Bags > mostBags:
			return phrase.Errorf("gang on one sheet: bags of %s is %d, must be at most %d; split the job", item.Name, item.Bags, mostBags)
		case !(item.Piece.Width > 0) || !(item.Piece.Height > 0):
			return phrase.Errorf("gang on one sheet: blank of %s is %s × %s, both must be more than 0; give its size", item.Name, width, height)
		}
		if f := item.Piece.SheetFibres; f != "" {
			if fibres != "" && f != fibres {
				return phrase.Errorf("gang on one sheet: fibres of the sheet of %s lie along its %s, of a bag before along its %s; give one direction for all",
					item.Name, phrase.Word(f), phrase.Word(fibres))
			}
			fibres = f
		}
	}
	return nil
}

// unfit returns the error for a bag that no form holds.
func unfit(s bag.Sheet, item *Item, plan *sheet.Plan) error {
	room := plan.Usable
	return phrase.Errorf("gang on one sheet: blank of %s is %s × %s and does not fit in the %s × %s that gripper and margins leave of the sheet; take a larger sheet, grip the other edge or let the grain lie across",
		item.Name, millimetres(item.Piece.Width), millimetres(item.Piece.Height), millimetres(max(0, room.Width())), millimetres(max(0, room.Height())))
}

func millimetres(length float64) geometry.Length { return geometry.Length(length) }
