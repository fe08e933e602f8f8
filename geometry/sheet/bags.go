package sheet

// Way is a way to print whole bags of several pieces: on how many kinds of sheet, and
// how many bags one sheet of each kind makes together.
type Way struct {
	Sheets int // 1 when all pieces of a bag lie on one sheet, 2 when each has its own
	Bags   int
}

// BagsPerSheet returns the number of whole or half bags that a sheet makes.
func (p Plan) BagsPerSheet() float64 {
	if p.Piece.PerBag == 0 {
		return 0
	}
	return float64(p.Up()) / float64(p.Piece.PerBag)
}

// Ways returns how whole bags can be printed. A bag of one piece has one way. The
// pieces of a bag with two seams lie together on one sheet, of which a place stays
// empty when their number is odd, or each on a sheet of its own, which takes
// two sets of plates and as many sheets of the one as of the other.
func (p Plan) Ways() []Way {
	var ways []Way
	if p.Piece.PerBag < 1 {
		return nil
	}
	if bags := p.Up() / p.Piece.PerBag; bags > 0 {
		ways = append(ways, Way{1, bags})
	}
	if p.Piece.PerBag > 1 && p.Up() > 0 {
		ways = append(ways, Way{p.Piece.PerBag, p.Up()})
	}
	return ways
}

// SheetsFor returns how many sheets the bags take this way, all kinds together.
func (w Way) SheetsFor(bags int) int { return w.Sheets * ((bags + w.Bags - 1) / w.Bags) }

// PerSheet returns the bags per sheet.
func (w Way) PerSheet() float64 { return float64(w.Bags) / float64(w.Sheets) }

// WholeBags returns the way that makes the most bags of a sheet; all pieces on one
// sheet when that makes as many. The second value is false when no bag can be made.
func (p Plan) WholeBags() (Way, bool) {
	ways := p.Ways()
	if len(ways) == 0 {
		return Way{}, false
	}
	best := ways[0]
	for _, way := range ways[1:] {
		if way.PerSheet() > best.PerSheet() {
			best = way
		}
	}
	return best, true
}
