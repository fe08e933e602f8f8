package blank_test

import (
	"math"
	"slices"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
)

// The cards of the worked example are 236 × 45, their upper edge on the top fold: the holes,
// 60 either side of the middle and 25 below the fold, lie 58 and 178 from the left and 20
// from the lower edge.
func TestCardOpenings(t *testing.T) {
	spec := geomtest.WorkedExample()
	for _, test := range []struct {
		kind   bag.HandleKind
		middle []geometry.Vec2
		area   float64 // of one
	}{
		{bag.HandleNone, nil, 0},
		{bag.HandleTwisted, nil, 0},
		{bag.HandleRope, []geometry.Vec2{{X: 58, Y: 20}, {X: 178, Y: 20}}, math.Pi * 2.5 * 2.5},
		{bag.HandleTape, []geometry.Vec2{{X: 58, Y: 20}, {X: 178, Y: 20}}, 20.5*1.5 + math.Pi*0.75*0.75},
		{bag.HandleHandHole, []geometry.Vec2{{X: 118, Y: 20}}, 60*30 + math.Pi*15*15},
	} {
		spec.Handle.Kind = test.kind
		spec.Cards.Top, spec.Cards.Base = true, true
		laid := blank.Lay(spec)
		for i := range laid.Cards {
			card := &laid.Cards[i]
			openings := laid.CardOpenings(card)
			if card.Role != "top" {
				if len(openings) > 0 {
					t.Errorf("%s: the %s card has %d openings", test.kind, card.Role, len(openings))
				}
				continue
			}
			if len(openings) != len(test.middle) {
				t.Fatalf("%s: %d openings in a card, want %d", test.kind, len(openings), len(test.middle))
			}
			for k, o := range openings {
				if at := o.Bounds().Center(); !at.Near(test.middle[k]) {
					t.Errorf("%s: an opening at %v, want %v", test.kind, at, test.middle[k])
				}
				near(t, "area of the opening", o.Area(), test.area)
			}
			near(t, "area of the card", laid.CardArea(card), 236*45-float64(len(openings))*test.area)
		}
	}
}

// Glue keeps 2 mm off every opening, on the card and on the turn-in over it alike (common
// practice, no published source).
func TestGlueKeepsOffOpenings(t *testing.T) {
	eachBag(t, func(t *testing.T, spec bag.Spec, laid blank.Blank) {
		for i := range laid.Pieces {
			piece := &laid.Pieces[i]
			var punched []geometry.Rect
			for _, hole := range piece.Holes {
				punched = append(punched, geometry.Rect{Min: hole.Center, Max: hole.Center}.Inset(-hole.Diameter/2))
			}
			for _, cut := range piece.CutOuts() {
				punched = append(punched, cut.Shape.Bounds())
			}
			for k := range piece.Glue {
				area := &piece.Glue[k]
				for _, hole := range punched {
					if !area.Shape.Contains(hole.Center()) {
						continue
					}
					spared := func(free geometry.Path) bool {
						box := free.Bounds()
						return box.Center().Near(hole.Center()) &&
							math.Abs(box.Width()-hole.Width()-4) < 1e-6 && math.Abs(box.Height()-hole.Height()-4) < 1e-6
					}
					if !slices.ContainsFunc(area.Openings, spared) {
						t.Errorf("%s on %s: glue on the opening at %v", area.Role, area.Panel, hole.Center())
					}
				}
				if got := area.Area(); got < 0 || got > area.Shape.Area() || len(area.Openings) == 0 && got != area.Shape.Area() {
					t.Errorf("%s on %s: %g mm² of %g are glued", area.Role, area.Panel, got, area.Shape.Area())
				}
			}
		}
	})
}
