// Package creases says in plain words what the creases of a bag are called and counts
// them, for what is printed for trainers. Its words are English, to be put through a
// translation by who shows them.
package creases

import (
	"cmp"
	"math"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/geometry/phrase"
)

// Name returns what the creases of a role are called, "" for a role without creases.
func Name(role blank.Role) phrase.Word {
	switch role {
	case blank.RolePanelEdge:
		return "Panel edge"
	case blank.RoleGusset:
		return "Gusset crease"
	case blank.RoleTopFold:
		return "Top fold"
	case blank.RoleBase:
		return "Base crease"
	case blank.RoleFlatFold:
		return "Flat-fold crease"
	case blank.RoleBaseCorner:
		return "Base corner crease"
	case blank.RolePack:
		return "Pack crease"
	}
	return ""
}

// Fold returns what a fold direction is called, "" for none.
func Fold(fold blank.Fold) phrase.Word {
	switch fold {
	case blank.Mountain:
		return "mountain"
	case blank.Valley:
		return "valley"
	}
	return ""
}

// ReverseUp tells whether the print side lies on the table in a stage, so that the hands
// see the reverse of the blank. In all others they see the print side.
func ReverseUp(stage *fold.Stage) bool {
	return slices.Contains([]string{"blank", "top-cards", "turn-in", "tube"}, stage.Name)
}

// Seen returns the creases of a stage with their folds as seen from the side that is up in
// it: from the reverse a mountain is a valley.
func Seen(stage *fold.Stage) []fold.Crease {
	seen := slices.Clone(stage.Creases)
	if ReverseUp(stage) {
		for i := range seen {
			seen[i].Fold = seen[i].Fold.Opposite()
		}
	}
	return seen
}

// Run is a number of creases that are alike.
type Run struct {
	Role   blank.Role
	Fold   blank.Fold // as in the creases that were counted
	Length float64    // mm, of each
	Count  int
}

// alike is the difference of lengths in mm up to which creases are counted together.
const alike = 0.05

// Runs counts creases: by role and fold in the order in which they come, the longest
// first. Parts that lie end to end on one line are one crease.
func Runs(list []fold.Crease) []Run {
	var runs []Run
	var order []Run // without lengths
	for _, c := range Joined(list) {
		length := c.Length()
		kind := Run{Role: c.Role, Fold: c.Fold}
		if !slices.Contains(order, kind) {
			order = append(order, kind)
		}
		at := slices.IndexFunc(runs, func(r Run) bool {
			return r.Role == c.Role && r.Fold == c.Fold && math.Abs(r.Length-length) < alike
		})
		if at < 0 {
			runs = append(runs, Run{c.Role, c.Fold, length, 1})
			continue
		}
		runs[at].Count++
	}
	slices.SortStableFunc(runs, func(a, b Run) int {
		first := slices.Index(order, Run{Role: a.Role, Fold: a.Fold})
		second := slices.Index(order, Run{Role: b.Role, Fold: b.Fold})
		return cmp.Or(cmp.Compare(first, second), cmp.Compare(b.Length, a.Length))
	})
	return runs
}

// Joined returns the creases with those joined that lie end to end on one line and are
// alike but for their length.
func Joined(list []fold.Crease) []fold.Crease {
	var joined []fold.Crease
	for _, next := range list {
		for {
			at := slices.IndexFunc(joined, func(c fold.Crease) bool { return continues(c, next) })
			if at < 0 {
				break
			}
			next.Edge = around(joined[at].Edge, next.Edge)
			joined = slices.Delete(joined, at, at+1)
		}
		joined = append(joined, next)
	}
	return joined
}

// continues tells whether two creases touch end to end and run the same way.
func continues(a, b fold.Crease) bool {
	if a.Piece != b.Piece || a.Role != b.Role || a.Fold != b.Fold {
		return false
	}
	along, other := a.To.Sub(a.From).Unit(), b.To.Sub(b.From).Unit()
	if math.Abs(along.Cross(other)) > 1e-9 {
		return false
	}
	for _, p := range [2]geometry.Vec2{a.From, a.To} {
		if p.Near(b.From) || p.Near(b.To) {
			return true
		}
	}
	return false
}

// around returns the edge from end to end of two that continue each other, in the
// direction of the first.
func around(a, b geometry.Edge) geometry.Edge {
	along := a.To.Sub(a.From)
	for _, p := range [2]geometry.Vec2{b.From, b.To} {
		if p.Sub(a.From).Dot(along) < 0 {
			a.From = p
		}
		if p.Sub(a.To).Dot(along) > 0 {
			a.To = p
		}
	}
	return a
}
