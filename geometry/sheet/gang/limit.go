package gang

import (
	"cmp"
	"slices"

	"gussetwright/geometry"
)

// shade is added before rounded numbers are compared with a limit, so that no layout
// is ruled out by an error of arithmetic.
const shade = 1e-9

// limit is a share of the sheet that a piece takes at least, for each lie of a mode, in
// some measure: no layout takes more than 1.
type limit []float64

// mostLimits is how many limits a mode begins with, the strongest ones.
const mostLimits = 16

// mostRough is how many limits of items are kept.
const mostRough = 48

// setLimits sets the limits of a mode. Lengths along x and along y may be measured
// anew by any dual feasible function, with which what fits in a row still fits, and
// areas compared then (Fekete & Schepers, "A general framework for bounds for
// higher-dimensional orthogonal packing problems", Math. Methods Oper. Res. 60,
// 2004). Where pieces of different bleed are grown too much for a limit to hold, they
// are grown too little, in two ways.
func (p *problem) setLimits(m *mode) {
	var all []limit
	if p.exact {
		all = p.limitsGrown(m, p.half)
		m.x, m.y = axesOf(p, m, p.usableOf(0).Inset(-p.half[0]), p.half)
		m.x.ready()
		m.y.ready()
	} else {
		gap, bleed := make([]float64, len(p.items)), make([]float64, len(p.items))
		for i := range p.items {
			gap[i], bleed[i] = p.sheet.Gap/2, p.items[i].Piece.Bleed
		}
		all = append(p.limitsGrown(m, gap), p.limitsGrown(m, bleed)...)
	}
	m.rough = m.byItem(all)
	m.limits = strongest(all, mostLimits)
}

// limitsGrown returns the limits of pieces grown by half on each side in the least
// room around all of their rooms.
func (p *problem) limitsGrown(m *mode, half []float64) []limit {
	var room geometry.Rect
	for i := range p.items {
		grown := p.usableOf(i).Inset(-half[i])
		if i == 0 {
			room = grown
		}
		room.Min.X, room.Min.Y = min(room.Min.X, grown.Min.X), min(room.Min.Y, grown.Min.Y)
		room.Max.X, room.Max.Y = max(room.Max.X, grown.Max.X), max(room.Max.Y, grown.Max.Y)
	}
	x, y := axesOf(p, m, room, half)
	return products(x.measures(), y.measures(), x, y)
}

// axesOf returns the axes of a room with the pieces of a mode grown by half.
func axesOf(p *problem, m *mode, room geometry.Rect, half []float64) (x, y axis) {
	const slack = geometry.Tolerance / 2
	x.room, y.room = toTicks(room.Width()+slack), toTicks(room.Height()+slack)
	for _, l := range m.lies {
		piece := &p.items[l.item].Piece
		width, height := toTicks(piece.Width+float64(2*half[l.item])), toTicks(piece.Height+float64(2*half[l.item]))
		if l.turn == 90 {
			width, height = height, width
		}
		fits := width <= x.room && height <= y.room
		x.add(width, m.most[l.item], fits)
		y.add(height, m.most[l.item], fits)
	}
	x.cutDown()
	y.cutDown()
	return x, y
}

// axis holds the room along x or y and the sides of the pieces along it.
type axis struct {
	room  int64
	sides []stack // of each lie; most is 0 where it does not fit at all
	// measured and rows are for tighter limits.
	measured []measure
	rows     [][]int
}

func (a *axis) add(side int64, most int, fits bool) {
	if !fits {
		most = 0
	}
	a.sides = append(a.sides, stack{side, most})
}

// cutDown makes the room as short as the fullest row in it.
func (a *axis) cutDown() {
	if rows := sums(a.sides, a.room, 4000); rows != nil {
		a.room = max(1, rows[len(rows)-1])
	}
}

// measure holds the sides of an axis measured anew, as shares of the room.
type measure []float64

// measures returns sides measured by many dual feasible functions: by themselves, by
// rounding to parts of the room, and by calling long what is more than the room less
// some side.
func (a *axis) measures() []measure {
	list := []measure{a.by(func(side int64) float64 { return float64(side) / float64(a.room) })}
	for k := int64(1); k <= 9; k++ {
		list = append(list, a.by(func(side int64) float64 { return inParts(side, a.room, k) }))
	}
	var lengths []int64
	for _, side := range a.sides {
		if side.most > 0 && 2*side.length <= a.room {
			lengths = append(lengths, side.length)
		}
	}
	slices.Sort(lengths)
	for _, short := range slices.Compact(lengths) {
		list = append(list,
			a.by(func(side int64) float64 { return longAndShort(side, a.room, short) }),
			a.by(func(side int64) float64 { return counted(side, a.room, short) }))
	}
	return list
}

func (a *axis) by(function func(int64) float64) measure {
	m := make(measure, len(a.sides))
	for i, side := range a.sides {
		if side.most > 0 {
			m[i] = function(side.length)
		}
	}
	return m
}

// inParts measures a side in k-ths of the room, as many as k + 1 of it pass whole;
// what fills (k + 1)-ths exactly stays as it is.
func inParts(side, room, k int64) float64 {
	if (k+1)*side%room == 0 {
		return float64(side) / float64(room)
	}
	return float64((k+1)*side/room) / float64(k)
}

// longAndShort calls nothing what is shorter than short, and the whole room what leaves
// less than short.
func longAndShort(side, room, short int64) float64 {
	switch {
	case side > room-short:
		return 1
	case side < short:
		return 0
	}
	return float64(side) / float64(room)
}

// counted measures what is at most half of the room as one of those short sides that
// fit in it, and what is longer by how many it leaves room for.
func counted(side, room, short int64) float64 {
	fit := float64(room / short)
	switch {
	case 2*side > room:
		return 1 - float64((room-side)/short)/fit
	case side >= short:
		return 1 / fit
	}
	return 0
}

// products returns the limits by all pairs of measures.
func products(across, up []measure, x, y axis) []limit {
	list := make([]limit, 0, len(across)*len(up))
	for _, mx := range across {
		for _, my := range up {
			list = append(list, product(mx, my, x, y))
		}
	}
	return list
}

func product(mx, my measure, x, y axis) limit {
	l := make(limit, len(mx))
	for i := range l {
		if l[i] = mx[i] * my[i]; x.sides[i].most == 0 || y.sides[i].most == 0 {
			l[i] = 2 // it does not lie in the room at all
		}
	}
	return l
}

// strongest returns at most so many limits of the greatest shares, without those that another one
// includes.
func strongest(list []limit, most int) []limit {
	total := func(l limit) float64 {
		sum := 0.0
		for _, share := range l {
			sum += share
		}
		return sum
	}
	slices.SortFunc(list, func(a, b limit) int { return cmp.Or(cmp.Compare(total(b), total(a)), slices.Compare(a, b)) })
	var kept []limit
	for _, l := range list {
		if len(kept) == most {
			break
		}
		if !slices.ContainsFunc(kept, func(k limit) bool { return includes(k, l) }) {
			kept = append(kept, l)
		}
	}
	return kept
}

func includes(a, b limit) bool {
	for i := range a {
		if a[i] < b[i] {
			return false
		}
	}
	return true
}

// byItem returns limits of items from those of their lies: a piece takes at least the
// lesser share.
func (m *mode) byItem(limits []limit) []limit {
	list := make([]limit, len(limits))
	for j, l := range limits {
		list[j] = make(limit, len(m.most))
		for i := range list[j] {
			list[j][i] = 2
		}
		for i, share := range l {
			item := m.lies[i].item
			list[j][item] = min(list[j][item], share)
		}
	}
	return strongest(list, mostRough)
}

// mayKeep tells quickly whether counts may keep all limits of the mode.
func (m *mode) mayKeep(counts []int) bool {
	for i, n := range counts {
		if n > m.most[i] {
			return false
		}
	}
	for _, l := range m.rough {
		if worth([]float64(l), counts) > 1+shade {
			return false
		}
	}
	return true
}

// keeps tells whether counts can lie so that they keep all limits of the mode.
func (m *mode) keeps(counts []int) bool {
	if !m.mayKeep(counts) {
		return false
	}
	ones, total := make([]float64, len(counts)), 0
	for i, n := range counts {
		ones[i] = 1
		total += n
	}
	const effort = 500
	k := m.knapsack(ones, float64(total)-0.5, func([]int) bool { return false }, effort)
	k.most = counts
	return k.search() != nil || k.effort < 0
}
