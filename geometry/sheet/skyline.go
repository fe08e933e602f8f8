package sheet

// step is a stretch of a skyline: from from to the next step the layout reaches up
// to high.
type step struct{ from, high place }

// skyline is the upper edge of what is laid already, from left to right. Neighbours
// are never of one height.
type skyline []step

// lowest returns the leftmost of the lowest steps.
func (l skyline) lowest() int {
	at := 0
	for i := range l {
		if l[i].high < l[at].high {
			at = i
		}
	}
	return at
}

// end returns where a step ends, in a room of the given width.
func (l skyline) end(at int, width place) place {
	if at+1 < len(l) {
		return l[at+1].from
	}
	return width
}

// walls returns how high the neighbours of a step are, in a room of the given height.
func (l skyline) walls(at int, height place) (left, right place) {
	left, right = height, height
	if at > 0 {
		left = l[at-1].high
	}
	if at+1 < len(l) {
		right = l[at+1].high
	}
	return left, right
}

// raised appends to a list of steps the skyline with the left part of a step, up to
// right, at high. End is where the step ends.
func (l skyline) raised(list []step, at int, right, high, end place) []step {
	start := len(list)
	add := func(next step) {
		if n := len(list); n == start || list[n-1].high != next.high {
			list = append(list, next)
		}
	}
	for _, before := range l[:at] {
		add(before)
	}
	add(step{l[at].from, high})
	if right < end {
		add(step{right, l[at].high})
	}
	for _, behind := range l[at+1:] {
		add(behind)
	}
	return list
}
