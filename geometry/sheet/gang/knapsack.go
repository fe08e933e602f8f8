package gang

import (
	"cmp"
	"math"
	"slices"
)

// knapsack looks for the counts of pieces that are worth most, among all that keep the
// limits of a mode and are not ruled out.
type knapsack struct {
	lies    []lie
	limits  []limit // the combined one first
	prices  []float64
	ruled   func(counts []int) bool // out
	most    []int                   // of each item
	order   []int                   // lies, those worth most for their area first
	density [][]float64             // of each limit: the most worth per share of what follows
	rest    []float64               // the most worth of what follows
	slack   [][]float64             // of each depth and limit
	counts  []int                   // of items
	lying   []int                   // of lies
	best    []int
	bestLie []int
	value   float64
	ceiling float64 // of what was not looked at
	effort  int
}

// knapsack returns a search for counts that are worth more than toBeat, which tries no
// more than effort of them. Its ceiling is a worth that no counts pass, toBeat where
// none are worth more.
func (m *mode) knapsack(prices []float64, toBeat float64, ruled func([]int) bool, effort int) *knapsack {
	return &knapsack{
		lies: m.lies, limits: m.limits, most: m.most, prices: prices, ruled: ruled, value: toBeat, ceiling: toBeat, effort: effort,
		counts: make([]int, len(prices)), lying: make([]int, len(m.lies)),
	}
}

// roughKnapsack is knapsack with limits of items, whichever way they lie: it is weaker,
// and quicker.
func (m *mode) roughKnapsack(prices []float64, toBeat float64, ruled func([]int) bool, effort int) *knapsack {
	k := m.knapsack(prices, toBeat, ruled, effort)
	k.lies, k.limits, k.lying = make([]lie, len(prices)), m.rough, make([]int, len(prices))
	for i := range k.lies {
		k.lies[i].item = i
	}
	return k
}

// combine puts all limits together into the one that by itself leaves least, as the
// linear program of the knapsack does.
func (k *knapsack) combine() {
	worths := make([]float64, len(k.lies))
	for i, l := range k.lies {
		if k.most[l.item] > 0 {
			worths[i] = max(0, k.prices[l.item])
		}
	}
	columns := make([][]float64, len(k.limits))
	for j, l := range k.limits {
		columns[j] = l
	}
	const dear = 1e3
	sum, weights, _, _ := leastSum(columns, worths, dear)
	if sum <= 0 {
		return
	}
	combined := make(limit, len(k.lies))
	for j, l := range k.limits {
		if weights[j] > 0 {
			for i, share := range l {
				combined[i] += float64(weights[j] / sum * share)
			}
		}
	}
	k.limits = append([]limit{combined}, k.limits...)
}

// search returns the best counts, or nil.
func (k *knapsack) search() []int {
	k.combine()
	k.sort()
	k.try(0, 0)
	k.ceiling = max(k.ceiling, k.value)
	return k.best
}

func (k *knapsack) sort() {
	for i, l := range k.lies {
		if k.prices[l.item] > 0 && k.most[l.item] > 0 {
			k.order = append(k.order, i)
		}
	}
	density := make([]float64, len(k.lies))
	for _, i := range k.order {
		sum := 0.0
		for _, l := range k.limits {
			sum += l[i]
		}
		density[i] = k.prices[k.lies[i].item] / max(sum, shade)
	}
	slices.SortStableFunc(k.order, func(a, b int) int { return cmp.Compare(density[b], density[a]) })
	n := len(k.order)
	k.rest, k.slack, k.density = make([]float64, n+1), make([][]float64, n+1), make([][]float64, n+1)
	k.slack[n], k.density[n] = make([]float64, len(k.limits)), make([]float64, len(k.limits))
	seen := make([]bool, len(k.prices))
	for depth := n - 1; depth >= 0; depth-- {
		k.slack[depth], k.density[depth] = make([]float64, len(k.limits)), make([]float64, len(k.limits))
		i := k.order[depth]
		item := k.lies[i].item
		if k.rest[depth] = k.rest[depth+1]; !seen[item] {
			seen[item] = true
			k.rest[depth] += float64(k.prices[item] * float64(k.most[item]))
		}
		for j, l := range k.limits {
			here := math.Inf(1)
			if l[i] > 0 {
				here = k.prices[item] / l[i]
			}
			k.density[depth][j] = max(here, k.density[depth+1][j])
		}
	}
	for j := range k.slack[0] {
		k.slack[0][j] = 1 + shade
	}
}

// hope returns what the lies from depth on may add at most.
func (k *knapsack) hope(depth int) float64 {
	most := k.rest[depth]
	for j, slack := range k.slack[depth] {
		if hope := k.density[depth][j] * slack; hope < most {
			most = hope
		}
	}
	return most
}

func (k *knapsack) try(depth int, value float64) {
	if depth == len(k.order) {
		if value > k.value+nought {
			k.value, k.best, k.bestLie = value, slices.Clone(k.counts), slices.Clone(k.lying)
		}
		return
	}
	hope := value + k.hope(depth)
	if hope <= k.value+nought {
		return
	}
	if k.effort--; k.effort < 0 {
		k.ceiling = max(k.ceiling, hope)
		return
	}
	i := k.order[depth]
	item := k.lies[i].item
	before := k.counts[item]
	for n := k.mostOf(depth, i); n >= 0; n-- {
		k.counts[item], k.lying[i] = before+n, n
		if k.effort < 0 {
			k.ceiling = max(k.ceiling, hope)
			break
		}
		if n > 0 && k.ruled(k.counts) {
			k.effort--
			continue
		}
		for j, slack := range k.slack[depth] {
			k.slack[depth+1][j] = slack - float64(k.limits[j][i]*float64(n))
		}
		k.try(depth+1, value+float64(k.prices[item]*float64(n)))
	}
	k.counts[item], k.lying[i] = before, 0
}

// mostOf returns how many pieces of a lie the limits leave.
func (k *knapsack) mostOf(depth, i int) int {
	item := k.lies[i].item
	most := k.most[item] - k.counts[item]
	for j, slack := range k.slack[depth] {
		if share := k.limits[j][i]; float64(share*float64(most)) > slack {
			most = int(max(0, slack) / share)
		}
	}
	return most
}
