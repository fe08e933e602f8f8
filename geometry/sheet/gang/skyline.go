package gang

// step is a stretch of a skyline: from from to the next step the layout reaches up to
// high. In ticks.
type step struct{ from, high int64 }

// lowest returns the leftmost of the lowest steps.
func lowest(line []step) int {
	at := 0
	for i := range line {
		if line[i].high < line[at].high {
			at = i
		}
	}
	return at
}

// end returns where a step ends, in a room of the given width.
func end(line []step, at int, width int64) int64 {
	if at+1 < len(line) {
		return line[at+1].from
	}
	return width
}

// walls returns how high the neighbours of a step are, in a room of the given height.
func walls(line []step, at int, height int64) (left, right int64) {
	left, right = height, height
	if at > 0 {
		left = line[at-1].high
	}
	if at+1 < len(line) {
		right = line[at+1].high
	}
	return left, right
}

// raised appends to a list of steps the skyline with the left part of a step, up to
// right, at high. End is where the step ends. Neighbours are never of one height.
func raised(list, line []step, at int, right, high, end int64) []step {
	start := len(list)
	add := func(next step) {
		if n := len(list); n == start || list[n-1].high != next.high {
			list = append(list, next)
		}
	}
	for _, before := range line[:at] {
		add(before)
	}
	add(step{line[at].from, high})
	if right < end {
		add(step{right, line[at].high})
	}
	for _, behind := range line[at+1:] {
		add(behind)
	}
	return list
}
