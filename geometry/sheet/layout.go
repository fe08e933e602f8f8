package sheet

// layout is the best known way to lay an instance.
type layout struct {
	cells []cell
	bound int // no layout holds more
}

// stage is how hard the finer methods try: cuts into blocks, and places that a search
// looks at in each of so many orders. They are counted, not timed, so that a layout
// is the same on every machine.
type stage struct{ cuts, places, orders int }

var stages = []stage{{10_000, 1_000, 4}, {20_000, 4_000, 4}, {40_000, 32_000, 2}}

// solve lays pieces that may lie and stand on one sheet.
func (in instance) solve() layout {
	count, _ := in.uniform(in.width, in.height)
	best := layout{bound: in.bound()}
	if int(count) >= best.bound {
		best.cells = in.alikeCells(nil, in.width, in.height, 0, 0)
		return best
	}
	rows := newRows(in)
	if rows == nil {
		best.cells = in.twoBlocks()
		return best
	}
	best.improve(rows)
	return best
}

func (l *layout) done() bool { return len(l.cells) >= l.bound }

func (l *layout) improve(r *rows) {
	blocks := newBlocks(r)
	var scales []measure
	for i, stage := range stages {
		l.cells = blocks.lay(l.bound, stage.cuts)
		if l.done() {
			return
		}
		if i == 0 {
			l.bound = min(l.bound, r.rodBound())
			scales = r.measures()
		}
		for _, how := range approaches[:stage.orders] {
			if l.searchFor(newSearch(r, scales, how), stage.places); l.done() {
				return
			}
		}
	}
}

// searchFor lowers the bound as long as the search shows that it cannot be met.
func (l *layout) searchFor(s *search, effort int) {
	for !l.done() {
		switch s.find(l.bound, effort) {
		case possible:
			l.cells = s.cells()
			return
		case undecided:
			return
		}
		l.bound--
	}
}

// twoBlocks returns the best layout of two blocks, each of which is laid alike.
func (in instance) twoBlocks() []cell {
	whole, _ := in.uniform(in.width, in.height)
	most, right, top := whole, in.width, in.height
	for _, side := range [2]int64{in.long, in.short} {
		for x := side; x < in.width; x += side {
			if n := in.both(x, in.height, in.width-x, in.height); n > most {
				most, right, top = n, x, in.height
			}
		}
		for y := side; y < in.height; y += side {
			if n := in.both(in.width, y, in.width, in.height-y); n > most {
				most, right, top = n, in.width, y
			}
		}
	}
	cells := in.alikeCells(make([]cell, 0, most), right, top, 0, 0)
	if right < in.width {
		return in.alikeCells(cells, in.width-right, in.height, right, 0)
	}
	return in.alikeCells(cells, in.width, in.height-top, 0, top)
}

func (in instance) both(width1, height1, width2, height2 int64) int64 {
	one, _ := in.uniform(width1, height1)
	other, _ := in.uniform(width2, height2)
	return one + other
}
