package advice

import (
	"cmp"
	"math"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/sheet"
)

// Change is an entry of the bag with another value.
type Change struct {
	Path     string // as in bag.Fields, never sheet.gripper_edge
	Name     phrase.Word
	From, To float64 // mm
}

// NearMiss is a least change that makes a sheet hold one piece more, or several where
// one more cannot be had alone.
type NearMiss struct {
	Changes []Change // one, two, or none where the other gripper edge does it
	// Edge is the edge to grip, and OtherEdge tells that it is not that of the plan
	// which misses.
	Edge      bag.GripperEdge
	OtherEdge bool
	// Exact is the least amount of each change; From − To is that amount rounded up
	// to a tenth of a millimetre.
	Exact []float64
	Plan  sheet.Plan // of the changed bag
	// Share is how much of what may be changed at all the changes take, to compare;
	// the size of the bag counts four times.
	Share float64
}

// Phrase says the near miss, such as "2-up if the seam flap were 15 mm instead of
// 20 mm".
func (n *NearMiss) Phrase() phrase.Phrase {
	up := n.Plan.Up()
	short := n.Edge == bag.GripperShort
	switch {
	case len(n.Changes) == 0 && short:
		return phrase.New("%d-up with the gripper on the short edge", up)
	case len(n.Changes) == 0:
		return phrase.New("%d-up with the gripper on the long edge", up)
	case n.OtherEdge && short:
		return phrase.New("%d-up with the gripper on the short edge, if %s", up, n.conditions())
	case n.OtherEdge:
		return phrase.New("%d-up with the gripper on the long edge, if %s", up, n.conditions())
	}
	return phrase.New("%d-up if %s", up, n.conditions())
}

func (n *NearMiss) conditions() phrase.Phrase {
	mm := func(length float64) geometry.Length { return geometry.Length(length) }
	first := n.Changes[0]
	if len(n.Changes) == 1 {
		return phrase.New("the %s were %s instead of %s", first.Name, mm(first.To), mm(first.From))
	}
	second := n.Changes[1]
	return phrase.New("the %s were %s instead of %s and the %s %s instead of %s",
		first.Name, mm(first.To), mm(first.From), second.Name, mm(second.To), mm(second.From))
}

// Apply makes the changes in a spec and takes the sheet of the plan.
func (n *NearMiss) Apply(spec *bag.Spec) {
	spec.Sheet.Width, spec.Sheet.Height, spec.Sheet.GripperEdge = n.Plan.Sheet.Width, n.Plan.Sheet.Height, n.Edge
	for _, c := range n.Changes {
		field, _ := bag.FieldAt(c.Path)
		field.SetNumber(spec, c.To)
	}
}

// attempt is a set of levers and how far they must go, before it is verified.
type attempt struct {
	levers  []*lever
	amounts []float64
	on      bag.Sheet
	other   bool
	share   float64
}

// single returns the least amount of every lever alone on a sheet.
func (a *adviser) single(on bag.Sheet, up int, other bool) []attempt {
	var list []attempt
	for i := range a.all {
		l := &a.all[i]
		if amount, ok := l.ease.Least(on, a.piece, up, l.most); ok {
			list = append(list, attempt{[]*lever{l}, []float64{amount}, on, other, l.felt * amount / l.most})
		}
	}
	return list
}

// double returns the least amounts of every pair of levers. The bleed is left out: it
// acts together with gap and margins already.
func (a *adviser) double(on bag.Sheet, up int, other bool) []attempt {
	var list []attempt
	for i := range a.all {
		for k := range a.all[:i] {
			p, q := &a.all[k], &a.all[i]
			if p.ease.Bleed > 0 || q.ease.Bleed > 0 {
				continue
			}
			if x, y, ok := sheet.Both(on, a.piece, up, p.ease, p.most, q.ease, q.most); ok {
				list = append(list, attempt{[]*lever{p, q}, []float64{x, y}, on, other, p.felt*x/p.most + q.felt*y/q.most})
			}
		}
	}
	return list
}

// hopeless tells whether all levers together cannot make the sheet hold enough.
func (a *adviser) hopeless(on bag.Sheet, up int) bool {
	piece := a.piece
	for i := range a.all {
		on, piece = a.all[i].ease.By(a.all[i].most, on, piece)
	}
	return !sheet.Holds(on, piece, up)
}

// verified returns the attempts that hold what they promise when the changed bag is
// drawn and laid again, the smallest first, and no more than most of them.
func (a *adviser) verified(list []attempt, up, most int) []NearMiss {
	slices.SortStableFunc(list, func(x, y attempt) int { return cmp.Compare(x.share, y.share) })
	var near []NearMiss
	for i := range list {
		if len(near) == most {
			break
		}
		if n, ok := a.verify(&list[i], up); ok {
			near = append(near, n)
		}
	}
	return near
}

func (a *adviser) verify(t *attempt, up int) (NearMiss, bool) {
	a.shorten(t, up)
	n := NearMiss{Edge: t.on.GripperEdge, OtherEdge: t.other, Exact: t.amounts, Share: t.share}
	spec := a.spec
	spec.Sheet = t.on
	for i, l := range t.levers {
		from := l.field.Number(&spec)
		to := roundDown(from - t.amounts[i])
		if from-to > l.most+0.1 {
			return n, false
		}
		l.field.SetNumber(&spec, to)
		n.Changes = append(n.Changes, Change{l.field.Path, l.name, from, to})
	}
	laid := blank.Lay(spec)
	n.Plan = sheet.Lay(spec.Sheet, a.pieceOf(&laid, a.piece.SheetFibres))
	if n.Plan.Up() < up || spec.Validate() != nil {
		return n, false
	}
	before := *a.blank
	before.Spec.Sheet = t.on
	return n, !complains(check.Inspect(&before, &n.Plan), check.Inspect(&laid, &n.Plan))
}

// shorten takes back what a single change need not do where outlines reach into each
// other: the attempt was reckoned from boxes.
func (a *adviser) shorten(t *attempt, up int) {
	if a.piece.Outline == nil || len(t.levers) != 1 {
		return
	}
	holds := func(amount float64) bool {
		spec, field := a.spec, t.levers[0].field
		spec.Sheet = t.on
		field.SetNumber(&spec, field.Number(&spec)-amount)
		laid := blank.Lay(spec)
		plan := sheet.Lay(spec.Sheet, a.pieceOf(&laid, a.piece.SheetFibres))
		return plan.Up() >= up
	}
	const hair = 0.02 // mm
	enough, less := t.amounts[0], max(0, t.amounts[0]-hair)
	if enough <= hair || !holds(less) {
		return
	}
	for enough, less = less, 0; enough-less > hair/2; {
		if middle := (enough + less) / 2; holds(middle) {
			enough = middle
		} else {
			less = middle
		}
	}
	t.share *= enough / t.amounts[0]
	t.amounts[0] = enough
}

// roundDown cuts a length to tenths of a millimetre, as it is shown and set.
func roundDown(length float64) float64 {
	return math.Floor(length*10+1e-6) / 10
}
