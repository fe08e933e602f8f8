package gang

import (
	"context"
	"slices"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// solver is a problem with the best result so far.
type solver struct {
	*problem
	ctx        context.Context
	options    Options
	result     Result
	best       []run
	sets       map[uint]run
	shortestOf map[uint]int
}

// allWork is how many places and counts are tried for one job.
const allWork = 800_000

// Solve gangs the items on sheets like s so that their quantities take the least
// sheets, as far as it finds. With as many forms as items or more, or any number, they
// never take more than each bag on sheets of its own.
//
// When ctx is done Solve returns its error, and with it the best result that was found
// until then: its forms are valid, and make all bags, if it has any. Without forms
// nothing was found yet.
func Solve(ctx context.Context, s bag.Sheet, items []Item, options Options) (Result, error) {
	result := Result{Sheet: s, Items: items, Over: make([]int, len(items))}
	if err := check(s, items, options); err != nil {
		return result, err
	}
	var wanted []Item
	var index []int
	for i := range items {
		if items[i].Bags > 0 {
			wanted, index = append(wanted, items[i]), append(index, i)
		}
	}
	if len(wanted) == 0 {
		result.Proven = true
		return result, ctx.Err()
	}
	p, err := newProblem(ctx, s, wanted)
	if err != nil {
		return result, err
	}
	p.work = allWork
	v := solver{problem: p, ctx: ctx, options: options, sets: map[uint]run{}, shortestOf: map[uint]int{}}
	v.result = Result{Sheet: s, Items: wanted, Usable: p.usable}
	v.solve()
	return v.finish(result, index)
}

// finish gives the items back their places in the job.
func (s *solver) finish(result Result, index []int) (Result, error) {
	found := s.result
	found.Items = result.Items
	for _, form := range found.Forms {
		for i := range form.Placements {
			form.Placements[i].Item = index[form.Placements[i].Item]
		}
	}
	for i, over := range found.Over {
		result.Over[index[i]] = over
	}
	found.Over = result.Over
	found.Proven = s.found() && found.Sheets <= found.Bound
	if err := s.ctx.Err(); err != nil {
		return found, err
	}
	if !s.found() && s.options.MostForms == 1 {
		return found, phrase.Errorf("gang on one sheet: no one form was found that holds all %d bags; allow more forms or take a larger sheet", len(s.items))
	}
	if !s.found() {
		return found, phrase.Errorf("gang on one sheet: no %d forms were found that hold all %d bags; allow more forms or take a larger sheet",
			s.options.MostForms, len(s.items))
	}
	return found, nil
}

func (s *solver) found() bool { return len(s.best) > 0 }

// offer takes runs when they are better: less sheets, or as many of less forms.
func (s *solver) offer(runs []run) {
	if len(runs) == 0 || s.options.MostForms > 0 && len(runs) > s.options.MostForms || !none(s.missing(runs)) {
		return
	}
	sheets := sheetsOf(runs)
	if s.found() && (sheets > s.result.Sheets || sheets == s.result.Sheets && len(runs) >= len(s.best)) {
		return
	}
	better := !s.found() || sheets < s.result.Sheets
	s.best = slices.Clone(runs)
	s.result.take(s.best)
	if better {
		s.report()
	}
}

func (s *solver) setBound(bound int) {
	if bound > s.result.Bound {
		s.result.Bound = bound
		s.report()
	}
}

func (s *solver) report() {
	if s.options.Progress != nil {
		s.options.Progress(s.result.Sheets, s.result.Bound)
	}
}

// separate offers each item on sheets of its own.
func (s *solver) separate() {
	var runs []run
	for i, q := range s.pure {
		runs = append(runs, run{q, (s.demand[i] + q.counts[i] - 1) / q.counts[i]})
	}
	s.offer(runs)
}

// solve takes the ways to a result in turn.
func (s *solver) solve() {
	s.separate()
	if s.options.MostForms == 1 {
		s.oneForm()
		return
	}
	s.byCuts()
	s.raise(350_000, true, look)
	s.raise(250_000, false, look)
	s.gather(150_000, glance)
	s.roundUp()
	s.fewer()
}

// fewer looks for results of few forms: as many as are allowed, or as few as take no
// more sheets than are known.
func (s *solver) fewer() {
	most := len(s.best) - 1
	if s.options.MostForms > 0 {
		most = min(s.options.MostForms, len(s.items))
	}
	for forms := 1; forms <= most && s.ctx.Err() == nil; forms++ {
		if s.options.MostForms == 0 && forms > 3 {
			return
		}
		s.few(forms)
		if s.found() && len(s.best) <= forms && s.result.Sheets <= s.result.Bound {
			return
		}
	}
}
