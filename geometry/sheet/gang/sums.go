package gang

import "slices"

// stack is a length of which so many may stand in a row.
type stack struct {
	length int64
	most   int
}

// sums returns all lengths of rows up to room, in order from 0, or nil where there are
// more than most of them.
func sums(stacks []stack, room int64, most int) []int64 {
	all := []int64{0}
	for _, s := range stacks {
		from := slices.Clone(all)
		for n := 1; n <= s.most && int64(n)*s.length <= room; n++ {
			for _, start := range from {
				if sum := start + int64(n)*s.length; sum <= room {
					all = append(all, sum)
				}
			}
			if len(all) > 16*most {
				return nil
			}
		}
		slices.Sort(all)
		if all = slices.Compact(all); len(all) > most {
			return nil
		}
	}
	return all
}

// floorOf returns the index of the greatest of sorted lengths that is not above length,
// which is not negative.
func floorOf(sorted []int64, length int64) int {
	at, found := slices.BinarySearch(sorted, length)
	if found {
		return at
	}
	return at - 1
}
