package sheet

// blocks lays pieces in up to five blocks, four around one in the middle, each of
// which is laid in blocks again (the first-order non-guillotine patterns; Morabito &
// Morales, "A simple and effective recursive procedure for the manufacturer's pallet
// loading problem", J. Oper. Res. Soc. 49, 1998). Straight cuts from edge to edge are
// among them. Rooms are cut down to the fullest rows and remembered.
type blocks struct {
	*rows
	pieces float64 // in a unit of area
	known  map[room]split
	effort int // cuts that may still be tried
}

// room is the size of a block, not higher than wide.
type room struct{ wide, high place }

// split is the best known way to lay a room: alike, or in the blocks around the
// rectangle from (x1, y1) to (x2, y2).
type split struct {
	count          int32
	depth          int8 // how deep its blocks were looked into
	cut            bool
	x1, x2, y1, y2 place
}

func newBlocks(r *rows) *blocks {
	return &blocks{rows: r, pieces: 1 / (float64(r.long) * float64(r.short)), known: map[room]split{}}
}

// lay looks for a layout of enough pieces, deeper and deeper, at no more cuts than
// effort, and returns the best. Called again it goes on.
func (b *blocks) lay(enough, effort int) []cell {
	b.effort = effort
	const deepest = 5
	for depth := int8(1); depth <= deepest; depth++ {
		if int(b.best(b.wide, b.high, depth).count) >= enough || b.effort <= 0 {
			break
		}
	}
	return b.cells(nil, b.wide, b.high, 0, 0)
}

// most returns a number that a room cannot pass.
func (b *blocks) most(width, height place) int32 {
	return int32(float64(b.length[width])*float64(b.length[height])*b.pieces + shade)
}

func (b *blocks) alike(width, height place) int32 {
	count, _ := b.uniform(b.length[width], b.length[height])
	return int32(count)
}

// best returns how to lay a room with blocks in blocks down to depth.
func (b *blocks) best(width, height place, depth int8) split {
	if width < height {
		width, height = height, width
	}
	key := room{width, height}
	now, seen := b.known[key]
	if !seen {
		now = split{count: b.alike(width, height)}
	}
	bound := b.most(width, height)
	if now.count >= bound || seen && now.depth >= depth || depth <= 0 || b.effort <= 0 {
		b.known[key] = now
		return now
	}
	now = b.try(width, height, depth, now, bound)
	if b.effort > 0 {
		now.depth = depth
	}
	b.known[key] = now
	return now
}

// try goes through all places of the five blocks.
func (b *blocks) try(width, height place, depth int8, now split, bound int32) split {
	across, up := b.raster(width), b.raster(height)
	for i, x1 := range across {
		for _, x2 := range across[i:] {
			for k, y1 := range up {
				if x1 == 0 && y1 > 0 {
					break // the left block is empty: the lower one is all that it adds
				}
				for _, y2 := range up[k:] {
					if b.effort--; b.effort < 0 {
						return now
					}
					s := split{cut: true, x1: x1, x2: x2, y1: y1, y2: y2}
					if s.count = b.count(width, height, s, depth, now.count); s.count > now.count {
						now = s
						if now.count >= bound {
							return now
						}
					}
				}
			}
		}
	}
	return now
}

// around returns the sizes of the five blocks of a split: below, right, above, left
// and in the middle.
func (b *blocks) around(width, height place, s split) [5]room {
	return [5]room{
		{s.x2, s.y1},
		{b.minus(width, s.x2), s.y2},
		{b.minus(width, s.x1), b.minus(height, s.y2)},
		{s.x1, b.minus(height, s.y1)},
		{b.minus(s.x2, s.x1), b.minus(s.y2, s.y1)},
	}
}

// count returns how many pieces the blocks of a split take, or less than that when
// it cannot beat what is known already.
func (b *blocks) count(width, height place, s split, depth int8, toBeat int32) int32 {
	parts := b.around(width, height, s)
	hope := int32(0)
	for _, p := range parts {
		hope += b.most(p.wide, p.high)
	}
	if hope <= toBeat {
		return 0
	}
	sum := int32(0)
	for _, p := range parts {
		hope -= b.most(p.wide, p.high)
		if p != (room{width, height}) {
			sum += b.best(p.wide, p.high, depth-1).count
		}
		if sum+hope <= toBeat {
			return 0
		}
	}
	return sum
}

// cells adds the pieces of a room whose lower left corner lies at (x, y).
func (b *blocks) cells(list []cell, width, height place, x, y int64) []cell {
	if width < height {
		from := len(list)
		list = b.cells(list, height, width, 0, 0)
		for i := range list[from:] {
			c := &list[from+i]
			*c = cell{x + c.y, y + c.x, !c.along}
		}
		return list
	}
	s := b.known[room{width, height}]
	if !s.cut {
		return b.alikeCells(list, b.length[width], b.length[height], x, y)
	}
	parts := b.around(width, height, s)
	x1, x2, y1, y2 := b.length[s.x1], b.length[s.x2], b.length[s.y1], b.length[s.y2]
	list = b.cells(list, parts[0].wide, parts[0].high, x, y)
	list = b.cells(list, parts[1].wide, parts[1].high, x+x2, y)
	list = b.cells(list, parts[2].wide, parts[2].high, x+x1, y+y2)
	list = b.cells(list, parts[3].wide, parts[3].high, x, y+y1)
	return b.cells(list, parts[4].wide, parts[4].high, x+x1, y+y1)
}

// alikeCells adds as many pieces as fit in a room all alike.
func (in instance) alikeCells(list []cell, width, height, x, y int64) []cell {
	_, along := in.uniform(width, height)
	across, up := in.size(along)
	for bottom := up; bottom <= height; bottom += up {
		for right := across; right <= width; right += across {
			list = append(list, cell{x + right - across, y + bottom - up, along})
		}
	}
	return list
}
