package gang

import (
	"cmp"
	"context"
	"slices"
)

// cover looks for few sheets that make the last missing pieces. Prices with which no
// pattern is worth more than a sheet tell how many it takes at least.
type cover struct {
	patterns []*pattern
	prices   []float64
	ctx      context.Context
	effort   int
	chosen   []*pattern
}

// taken returns the sheets that were found.
func (c *cover) taken() []run {
	runs := make([]run, len(c.chosen))
	for i, q := range c.chosen {
		runs[i] = run{q, 1}
	}
	return joined(runs)
}

// meet tells whether so many sheets were found that make what is left.
func (c *cover) meet(left []int, sheets int) bool {
	c.chosen = c.chosen[:0]
	return c.try(left, sheets, 0)
}

// choice is a pattern by what it would make of what is left.
type choice struct {
	at    int
	worth float64
}

// try chooses patterns in order of their index among those of the same worth, as the
// order of sheets does not matter.
func (c *cover) try(left []int, sheets, depth int) bool {
	needed := worth(c.prices, left)
	if none(left) {
		return true
	}
	if c.effort--; c.effort < 0 || sheets == 0 || needed > float64(sheets)+1e-6 || c.effort%64 == 0 && c.ctx.Err() != nil {
		return false
	}
	hardest := 0
	for i, n := range left {
		if c.prices[i]*float64(n) > c.prices[hardest]*float64(left[hardest]) || left[hardest] == 0 {
			hardest = i
		}
	}
	for _, choice := range c.choices(left, hardest) {
		if needed-choice.worth > float64(sheets-1)+1e-6 {
			return false // those behind are worth less still
		}
		rest := slices.Clone(left)
		for i, n := range c.patterns[choice.at].counts {
			rest[i] = max(0, rest[i]-n)
		}
		c.chosen = append(c.chosen, c.patterns[choice.at])
		if c.try(rest, sheets-1, depth+1) {
			return true
		}
		c.chosen = c.chosen[:depth]
	}
	return false
}

// choices returns the patterns that make some of an item, most useful first.
func (c *cover) choices(left []int, item int) []choice {
	var list []choice
	for at, q := range c.patterns {
		if q.counts[item] == 0 {
			continue
		}
		sum := 0.0
		for i, n := range q.counts {
			sum += float64(c.prices[i] * float64(min(n, left[i])))
		}
		list = append(list, choice{at, sum})
	}
	slices.SortStableFunc(list, func(a, b choice) int { return cmp.Compare(b.worth, a.worth) })
	return list
}

func none(left []int) bool {
	for _, n := range left {
		if n > 0 {
			return false
		}
	}
	return true
}
