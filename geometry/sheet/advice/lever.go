package advice

import (
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/sheet"
)

// lever is an entry that may become less.
type lever struct {
	field *bag.Field
	name  phrase.Word
	ease  sheet.Ease
	most  float64 // by how much at most, in mm
	felt  float64 // how much the change counts beside others
}

// rule says how much less an entry may become.
type rule struct {
	path  string
	name  phrase.Word
	felt  float64
	least func(s *bag.Spec) float64 // the least useful value, in mm
}

// What is inside the bag or on the sheet changes before the size of the bag does.
const (
	hidden = 1
	seen   = 4
)

// share returns what is left of a length that may lose so many percent, but no more
// than 20 mm: a bag is still the bag that was asked for.
func share(length float64) float64 { return length - min(0.05*length, 20) }

// rules are in the order in which a change is least felt. How far an entry may go
// down is common practice, no published source.
var rules = []rule{
	{"sheet.gap_mm", "gap", hidden, func(s *bag.Spec) float64 { return 2 * s.Print.Bleed }},
	{"sheet.tail_mm", "tail margin", hidden, func(s *bag.Spec) float64 { return s.Print.Bleed }},
	{"sheet.side_mm", "side margin", hidden, func(s *bag.Spec) float64 { return s.Print.Bleed }},
	{"sheet.gripper_mm", "gripper", hidden, func(*bag.Spec) float64 { return 8 }},
	{"print.bleed_mm", "bleed", hidden, func(*bag.Spec) float64 { return 2 }},
	{"bag.seam_flap_mm", "seam flap", hidden, func(s *bag.Spec) float64 { return s.Body.SeamFlap - 10 }},
	{"bag.base_overlap_mm", "base overlap", hidden, func(s *bag.Spec) float64 { return s.Body.BaseOverlap - 10 }},
	{"bag.turn_in_mm", "turn-in", hidden, func(s *bag.Spec) float64 { return s.Body.TurnIn - 20 }},
	{"bag.height_mm", "standing height", seen, func(s *bag.Spec) float64 { return share(s.Body.Height) }},
	{"bag.gusset_mm", "gusset", seen, func(s *bag.Spec) float64 { return share(s.Body.Gusset) }},
	{"bag.width_mm", "face width", seen, func(s *bag.Spec) float64 { return share(s.Body.Width) }},
}

// easeOfSheet are the eases of entries that do not change the blank.
var easeOfSheet = map[string]sheet.Ease{
	"sheet.gap_mm": {Gap: 1}, "sheet.tail_mm": {Tail: 1}, "sheet.side_mm": {Side: 1},
	"sheet.gripper_mm": {Gripper: 1}, "print.bleed_mm": {Bleed: 1},
}

// levers returns the entries that may become less and would make room on a sheet.
func (a *adviser) levers() []lever {
	var list []lever
	for _, r := range rules {
		field, _ := bag.FieldAt(r.path)
		l := lever{field: field, name: r.name, felt: r.felt}
		l.most = field.Number(&a.spec) - max(r.least(&a.spec), field.Least)
		if l.most <= 0 || !bag.Applies(r.path, &a.spec) {
			continue
		}
		ofSheet := false
		if l.ease, ofSheet = easeOfSheet[r.path]; !ofSheet {
			l.ease = a.easeOfBlank(field)
			l.most = a.allowed(&l)
		}
		if l.ease.Bleed > 0 && a.piece.Bleed == 0 || l.ease == (sheet.Ease{}) || l.most <= 0 {
			continue
		}
		list = append(list, l)
	}
	return list
}

// easeOfBlank returns what a millimetre less takes from the blank: its sides are sums
// of multiples of the entries.
func (a *adviser) easeOfBlank(field *bag.Field) sheet.Ease {
	spec := a.spec
	const less = 1
	field.SetNumber(&spec, field.Number(&spec)-less)
	smaller := blank.Lay(spec)
	return sheet.Ease{
		Width:  max(0, a.piece.Width-smaller.Pieces[0].Width) / less,
		Height: max(0, a.piece.Height-smaller.Pieces[0].Height) / less,
	}
}

// allowed returns how much less an entry may become, up to l.most, before package
// check complains: halving finds it to a twentieth of a millimetre.
func (a *adviser) allowed(l *lever) float64 {
	plan := sheet.Lay(bag.Sheet{Width: 2 * a.piece.Width, Height: 2 * a.piece.Height}, a.piece)
	before := check.Inspect(a.blank, &plan)
	fine := func(less float64) bool {
		spec := a.spec
		l.field.SetNumber(&spec, l.field.Number(&spec)-less)
		laid := blank.Lay(spec)
		return !complains(before, check.Inspect(&laid, &plan))
	}
	if fine(l.most) {
		return l.most
	}
	good, bad := 0.0, l.most
	for bad-good > 0.05 {
		if middle := (good + bad) / 2; fine(middle) {
			good = middle
		} else {
			bad = middle
		}
	}
	return good
}

// complains tells whether there is an error or a warning that was not there before.
func complains(before, after []check.Finding) bool {
	known := map[string]bool{}
	for _, f := range before {
		known[f.Code] = true
	}
	for _, f := range after {
		if f.Severity != check.Note && !known[f.Code] {
			return true
		}
	}
	return false
}
