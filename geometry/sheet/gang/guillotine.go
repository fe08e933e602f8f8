package gang

// guillotine lays the pieces that are worth most by straight cuts from edge to edge, cut
// by cut from small rooms to the whole one (Gilmore & Gomory, "Multistage cutting stock
// problems of two and more dimensions", Operations Research 13, 1965).
type guillotine struct {
	kinds  []kind
	xs, ys []int64
	lessX  []int // lessX[a*n+b] is the fullest row in xs[a] − xs[b]
	lessY  []int
	value  []float64 // of each room
	how    []int32   // of each room: a kind, or a cut across, or up; none is 0
}

// mostRows is how many lengths of rows are told apart; where there are more, all are
// rounded up to parts of the room.
const mostRows = 110

func newGuillotine(p *problem, m *mode) *guillotine {
	g := &guillotine{}
	var across, up []stack
	for item, shapes := range m.shapes {
		for _, s := range shapes {
			g.kinds = append(g.kinds, kind{item, s.turn, s.width, s.height})
			across, up = append(across, stack{s.width, m.most[item]}), append(up, stack{s.height, m.most[item]})
		}
	}
	g.xs, g.ys = rowsOf(across, p.width), rowsOf(up, p.height)
	g.lessX, g.lessY = differences(g.xs), differences(g.ys)
	g.value, g.how = make([]float64, len(g.xs)*len(g.ys)), make([]int32, len(g.xs)*len(g.ys))
	return g
}

func rowsOf(stacks []stack, room int64) []int64 {
	if rows := sums(stacks, room, mostRows); rows != nil {
		return rows
	}
	rows := make([]int64, mostRows+1)
	for i := range rows {
		rows[i] = room * int64(i) / mostRows
	}
	return rows
}

func differences(rows []int64) []int {
	n := len(rows)
	less := make([]int, n*n)
	for a := range n {
		row := a
		for b := 0; b <= a; b++ {
			for rows[row] > rows[a]-rows[b] {
				row--
			}
			less[a*n+b] = row
		}
	}
	return less
}

// best returns the layout that is worth most at the prices.
func (g *guillotine) best(prices []float64) []cell {
	for i := range g.xs {
		for j := range g.ys {
			g.cut(i, j, prices)
		}
	}
	return g.cells(nil, len(g.xs)-1, len(g.ys)-1, 0, 0)
}

// cut finds the best use of a room whose parts are known.
func (g *guillotine) cut(i, j int, prices []float64) {
	nx, ny := len(g.xs), len(g.ys)
	best, how := 0.0, int32(0)
	for k := range g.kinds {
		if kind := &g.kinds[k]; kind.width <= g.xs[i] && kind.height <= g.ys[j] && prices[kind.item] > best {
			best, how = prices[kind.item], int32(k+1)
		}
	}
	for a := 1; 2*g.xs[a%nx] <= g.xs[i] && a <= i; a++ {
		if v := g.value[a*ny+j] + g.value[g.lessX[i*nx+a]*ny+j]; v > best+nought {
			best, how = v, -int32(2*a)
		}
	}
	for b := 1; 2*g.ys[b%ny] <= g.ys[j] && b <= j; b++ {
		if v := g.value[i*ny+b] + g.value[i*ny+g.lessY[j*ny+b]]; v > best+nought {
			best, how = v, -int32(2*b+1)
		}
	}
	g.value[i*ny+j], g.how[i*ny+j] = best, how
}

// cells adds the pieces of a room whose lower left corner lies at (x, y).
func (g *guillotine) cells(list []cell, i, j int, x, y int64) []cell {
	nx, ny := len(g.xs), len(g.ys)
	switch how := g.how[i*ny+j]; {
	case how == 0:
		return list
	case how > 0:
		k := g.kinds[how-1]
		return append(list, cell{k.item, k.turn, x, y})
	case how%2 == 0:
		a := int(-how) / 2
		list = g.cells(list, a, j, x, y)
		return g.cells(list, g.lessX[i*nx+a], j, x+g.xs[a], y)
	default:
		b := int(-how) / 2
		list = g.cells(list, i, b, x, y)
		return g.cells(list, i, g.lessY[j*ny+b], x, y+g.ys[b])
	}
}
