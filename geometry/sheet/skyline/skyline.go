// Package skyline holds the upper edge of what is laid already, for searches that lay
// pieces from below.
package skyline

// Step is a stretch of a skyline: from From to the next step the layout reaches up to
// High, both in units of whoever lays.
type Step[T ~int16 | ~int64] struct{ From, High T }

// Line is a skyline from left to right, of at least one step. Neighbours are never of
// one height.
type Line[T ~int16 | ~int64] []Step[T]

// Lowest returns the leftmost of the lowest steps.
func (l Line[T]) Lowest() int {
	at := 0
	for i := range l {
		if l[i].High < l[at].High {
			at = i
		}
	}
	return at
}

// End returns where a step ends, in a room of the given width.
func (l Line[T]) End(at int, width T) T {
	if at+1 < len(l) {
		return l[at+1].From
	}
	return width
}

// Walls returns how high the neighbours of a step are, in a room of the given height.
func (l Line[T]) Walls(at int, height T) (left, right T) {
	left, right = height, height
	if at > 0 {
		left = l[at-1].High
	}
	if at+1 < len(l) {
		right = l[at+1].High
	}
	return left, right
}

// Raised appends to list the skyline with the left part of a step, up to right, at high.
// End is where the step ends.
func (l Line[T]) Raised(list []Step[T], at int, right, high, end T) []Step[T] {
	start := len(list)
	add := func(next Step[T]) {
		if n := len(list); n == start || list[n-1].High != next.High {
			list = append(list, next)
		}
	}
	for _, before := range l[:at] {
		add(before)
	}
	add(Step[T]{l[at].From, high})
	if right < end {
		add(Step[T]{right, l[at].High})
	}
	for _, behind := range l[at+1:] {
		add(behind)
	}
	return list
}
