package gang

import (
	"context"
	"slices"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

// turnsOf is how the pieces of each item may lie while the fibres of the sheet lie as
// told; both turns, the better one first, or one.
type turnsOf struct {
	fibres bag.Grain
	turns  [][]int
}

// turnsOfModes returns the ways in which the grain lets the pieces of one form lie.
// Items that must keep the grain of a sheet whose fibres are not given lie along those
// that the form decides on. Where the fibres of the item itself are not given, all
// such pieces lie alike.
func (p *problem) turnsOfModes() []turnsOf {
	fibres, required, unknown := bag.Grain(""), false, false
	for i := range p.items {
		piece := &p.items[i].Piece
		if piece.SheetFibres != "" {
			fibres = piece.SheetFibres
		}
		if piece.Grain == sheet.GrainRequired {
			required = required || piece.Fibres != ""
			unknown = unknown || piece.Fibres == ""
		}
	}
	sides := []bag.Grain{fibres}
	if fibres == "" && required {
		sides = []bag.Grain{bag.GrainHeight, bag.GrainWidth}
	}
	alike := []int{0}
	if unknown {
		alike = []int{0, 90}
	}
	var modes []turnsOf
	for _, side := range sides {
		for _, turn := range alike {
			modes = append(modes, p.turnsWhen(side, turn))
		}
	}
	return modes
}

func (p *problem) turnsWhen(fibres bag.Grain, alike int) turnsOf {
	t := turnsOf{fibres: fibres, turns: make([][]int, len(p.items))}
	for i := range p.items {
		piece := &p.items[i].Piece
		along := 0
		if piece.Fibres != "" && fibres != "" && piece.Fibres != fibres {
			along = 90
		}
		switch {
		case piece.Grain != sheet.GrainRequired:
			t.turns[i] = []int{along, 90 - along}
		case piece.Fibres == "":
			t.turns[i] = []int{alike}
		default:
			t.turns[i] = []int{along}
		}
	}
	return t
}

// newMode lays each item alone as the mode allows: its best form, and how many of its
// pieces no sheet holds.
func (p *problem) newMode(ctx context.Context, t turnsOf) (*mode, error) {
	m := &mode{fibres: t.fibres, most: make([]int, len(p.items)), shapes: make([][]shape, len(p.items))}
	for i := range p.items {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		for _, turn := range t.turns[i] {
			m.shapes[i] = append(m.shapes[i], shape{turn: turn})
		}
		piece := p.items[i].Piece
		if len(t.turns[i]) == 1 {
			piece.Grain, piece.SheetFibres, piece.Fibres = sheet.GrainRequired, bag.GrainHeight, bag.GrainHeight
			if t.turns[i][0] == 90 {
				piece.Fibres = bag.GrainWidth
			}
		}
		plan := sheet.Lay(p.sheet, piece)
		if up := p.pure[i]; plan.Up() > 0 && (up == nil || plan.Up() > up.counts[i]) {
			p.pure[i] = p.alone(i, t.fibres, &plan)
		}
		if plan.Up() > 0 {
			m.learn(p.alone(i, t.fibres, &plan))
		}
		if piece.Outline != nil {
			piece.Outline = nil
			plan = sheet.Lay(p.sheet, piece)
		}
		m.most[i] = min(plan.Bound, p.demand[i])
	}
	return m, nil
}

// alone returns the pattern of a plan of one item.
func (p *problem) alone(item int, fibres bag.Grain, plan *sheet.Plan) *pattern {
	q := &pattern{counts: make([]int, len(p.items)), fibres: fibres}
	for _, at := range plan.Placements {
		q.placed = append(q.placed, Placed{item, at})
	}
	q.counts[item] = len(q.placed)
	return q
}

// addShapes grows the pieces. One that is as wide as high lies in its better turn only.
func (p *problem) addShapes(m *mode) {
	for i := range m.shapes {
		width, height := toTicks(p.items[i].Piece.Width+float64(2*p.half[i])), toTicks(p.items[i].Piece.Height+float64(2*p.half[i]))
		for k := range m.shapes[i] {
			s := &m.shapes[i][k]
			if s.width, s.height = width, height; s.turn == 90 {
				s.width, s.height = height, width
			}
		}
		if len(m.shapes[i]) == 2 && width == height {
			m.shapes[i] = m.shapes[i][:1]
		}
		for _, s := range m.shapes[i] {
			m.lies = append(m.lies, lie{i, s.turn})
		}
	}
}

// dropShapes forgets the turns in which a piece does not fit in the room.
func (p *problem) dropShapes(m *mode) {
	for i := range m.shapes {
		m.shapes[i] = slices.DeleteFunc(m.shapes[i], func(s shape) bool { return s.width > p.width || s.height > p.height })
	}
}
