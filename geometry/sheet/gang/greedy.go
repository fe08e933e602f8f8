package gang

import (
	"math"
	"math/rand/v2"
	"slices"
)

// greedy lays counts of pieces in one go, at each lowest place the one that suits it
// best, and starts again with other tastes. Chance is the same on every machine.
type greedy struct {
	*search
	random *rand.Rand
	taste  []float64 // of each kind
	rule   int
}

// tastes is how many ways there are to judge which piece suits.
const tastes = 3

// layGreedily returns a layout of all counts, or the fullest that was found.
func layGreedily(p *problem, m *mode, counts []int, tries int) (cells []cell, all bool) {
	random := rand.New(rand.NewPCG(1, 2))
	fullest := -1.0
	for try := range tries {
		g := greedy{search: newSearch(p, m, counts, try%2 == 1, false), random: random, rule: try / 2 % tastes}
		for range g.kinds {
			taste := 1.0
			if try >= 2*tastes {
				taste = 0.6 + float64(0.8*random.Float64())
			}
			g.taste = append(g.taste, taste)
		}
		all = g.lay()
		if g.filled > fullest {
			fullest, cells = g.filled, g.cells(g.laid)
		}
		p.work -= 1 + len(g.laid)/2
		if all {
			break
		}
	}
	return cells, all
}

// lay goes up once and tells whether everything was laid.
func (g *greedy) lay() bool {
	line := upperEdge{{}}
	for !g.done() {
		line = slices.Clone(g.settle(line))
		g.lines = g.lines[:0]
		at := line.Lowest()
		if line[at].High >= g.height {
			return false
		}
		best, most := -1, math.Inf(-1)
		for i := range g.kinds {
			if suits := g.suits(line, at, i); suits > most {
				best, most = i, suits
			}
		}
		if best < 0 {
			line = g.leave(line, at)
			continue
		}
		k := &g.kinds[best]
		from, low := line[at].From, line[at].High
		g.search.lay(k, from, low)
		line = g.raise(line, at, from+k.width, low+k.height)
	}
	return true
}

// suits returns how well a kind suits a step, −Inf where it does not fit.
func (g *greedy) suits(line upperEdge, at, i int) float64 {
	k := &g.kinds[i]
	wide := line.End(at, g.width) - line[at].From
	if g.left[k.item] == 0 || k.width > wide || line[at].High+k.height > g.height {
		return math.Inf(-1)
	}
	score := 0.0
	width, height := float64(k.width)/float64(g.width), float64(k.height)/float64(g.height)
	switch g.rule {
	case 0:
		score = width
	case 1:
		score = float64(width * height)
	case 2:
		score = height
	}
	if k.width == wide {
		score += 0.5
	} else if n := int64(g.left[k.item]); k.width*n >= wide && wide%k.width == 0 {
		score += 0.3
	}
	left, right := line.Walls(at, g.height)
	if top := line[at].High + k.height; top == left || top == right || top == g.height {
		score += 0.2
	}
	return float64(score * g.taste[i])
}
