package press

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/sheet"
)

// Form is one laid sheet: what one set of plates and one die are made for. The pieces
// keep at least the gap of the sheet between their outlines.
type Form struct {
	Sheet  bag.Sheet
	Fibres bag.Grain // side of the sheet along which its fibres lie; empty where it is not known
	Blanks []Laid
	Title  string      // such as "Tea house, sheet 1 of 2"; may be empty
	Part   phrase.Word // piece of the bag that the form has alone, such as "front piece"
	Notes  []phrase.Phrase
}

// Laid is a piece of a blank in its place.
type Laid struct {
	Blank *blank.Blank
	Piece int // index in Blank.Pieces
	At    sheet.Placement
}

// plan returns a plan in which the piece lies alone.
func (l Laid) plan() *sheet.Plan {
	piece := &l.Blank.Pieces[l.Piece]
	return &sheet.Plan{
		Piece:      sheet.Piece{Width: piece.Width, Height: piece.Height},
		Placements: []sheet.Placement{l.At},
	}
}

// Box returns the bounding box of the piece on the sheet.
func (l Laid) Box() geometry.Rect { return l.plan().Box(0) }

// Motion returns the way from points of the piece to points of the sheet.
func (l Laid) Motion() geometry.Affine { return l.plan().Motion(0) }

// Forms returns the forms for the bags of a plan, in the way that makes the most of a
// sheet: one, or one for each piece of a bag with two seams. Pieces that share a sheet
// take turns, so that those of one bag lie beside each other and print alike; a place
// without a whole bag stays empty. There are no forms where no whole bag fits.
func Forms(b *blank.Blank, plan *sheet.Plan) []Form {
	way, possible := plan.WholeBags()
	if !possible {
		return nil
	}
	pieces := piecesOf(b)
	form := Form{Sheet: plan.Sheet, Fibres: sheet.Fibres(plan.Sheet.Grain), Title: b.Spec.Name}
	if form.Fibres == "" {
		form.Fibres = plan.GrainAlong(b.Spec.Paper.Grain)
	}
	if way.Sheets == 1 {
		for i, at := range plan.Placements[:way.Bags*len(pieces)] {
			form.Blanks = append(form.Blanks, Laid{b, pieces[i%len(pieces)], at})
		}
		form.Notes = []phrase.Phrase{bagsFromEach(way.Bags)}
		return []Form{form}
	}
	return apart(form, b, pieces, plan)
}

// apart returns a form for each piece of a bag.
func apart(common Form, b *blank.Blank, pieces []int, plan *sheet.Plan) []Form {
	var forms []Form
	for _, piece := range pieces {
		form := common
		form.Part = phrase.Word(b.Pieces[piece].Name)
		form.Notes = []phrase.Phrase{bagsFromAll(plan.Up(), len(pieces))}
		for _, at := range plan.Placements {
			form.Blanks = append(form.Blanks, Laid{b, piece, at})
		}
		forms = append(forms, form)
	}
	return forms
}

// bagsFromEach says how many bags a sheet holds.
func bagsFromEach(bags int) phrase.Phrase {
	if bags == 1 {
		return phrase.New("1 bag from each sheet")
	}
	return phrase.New("%d bags from each sheet", bags)
}

// bagsFromAll says how many bags come from a sheet of each of several forms.
func bagsFromAll(bags, forms int) phrase.Phrase {
	if bags == 1 {
		return phrase.New("1 bag from one sheet each of %d forms", forms)
	}
	return phrase.New("%d bags from one sheet each of %d forms", bags, forms)
}

// piecesOf lists the pieces of one bag, each as often as the bag has it.
func piecesOf(b *blank.Blank) []int {
	var list []int
	for i := range b.Pieces {
		for range b.Pieces[i].Count {
			list = append(list, i)
		}
	}
	return list
}
