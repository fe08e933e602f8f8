package document_test

import (
	"testing"

	"gussetwright/app/document"
	"gussetwright/geometry/bag"
)

func TestDifferenceOfArtwork(t *testing.T) {
	front, back, logo := bag.NewArtwork("front.svg", "front"), bag.NewArtwork("back.svg", "back"), bag.NewArtwork("logo.svg", "faces")
	with := func(change func(*bag.Artwork)) []bag.Artwork {
		changed := back
		change(&changed)
		return []bag.Artwork{front, changed, logo}
	}
	all := []bag.Artwork{front, back, logo}
	for _, test := range []struct {
		name     string
		from, to []bag.Artwork
		want     document.Change
	}{
		{"first piece", nil, []bag.Artwork{front}, document.Change{Label: "place %s on %s", File: "front.svg", Place: "front"}},
		{"piece between", []bag.Artwork{front, logo}, all, document.Change{Label: "place %s on %s", File: "back.svg", Place: "back"}},
		{"the same twice", []bag.Artwork{front}, []bag.Artwork{front, front}, document.Change{Label: "place %s on %s", File: "front.svg", Place: "front"}},
		{"taken out", all, []bag.Artwork{front, logo}, document.Change{Label: "take out %s", File: "back.svg"}},
		{"several", all, []bag.Artwork{logo}, document.Change{Label: "artwork"}},
		{"all others", all, []bag.Artwork{logo, logo, logo}, document.Change{Label: "artwork"}},
		{"order", all, []bag.Artwork{back, front, logo}, document.Change{Label: "order of the artwork"}},
		{"order from end to end", all, []bag.Artwork{logo, back, front}, document.Change{Label: "order of the artwork"}},
		{"moved sideways", all, with(func(a *bag.Artwork) { a.X = 5 }), document.Change{Label: "move %s", File: "back.svg"}},
		{"moved", all, with(func(a *bag.Artwork) { a.X, a.Y = 5, -3 }), document.Change{Label: "move %s", File: "back.svg"}},
		{"scaled", all, with(func(a *bag.Artwork) { a.Scale = 2 }), document.Change{Label: "scale %s", File: "back.svg"}},
		{"scaled by a corner", all, with(func(a *bag.Artwork) { a.Scale, a.X, a.Y = 2, 5, -3 }), document.Change{Label: "scale %s", File: "back.svg"}},
		{"turned", all, with(func(a *bag.Artwork) { a.Turn = 2 }), document.Change{Label: "turn %s", File: "back.svg"}},
		{"mirrored", all, with(func(a *bag.Artwork) { a.Mirror = true }), document.Change{Label: "mirror %s", File: "back.svg"}},
		{"fit", all, with(func(a *bag.Artwork) { a.Fit = bag.FitExact }), document.Change{Label: "fit of %s", File: "back.svg"}},
		{"repeat", all, with(func(a *bag.Artwork) { a.Repeat = bag.RepeatGrid }), document.Change{Label: "repeat of %s", File: "back.svg"}},
		{"page", all, with(func(a *bag.Artwork) { a.Page = 2 }), document.Change{Label: "page of %s", File: "back.svg"}},
		{"opacity", all, with(func(a *bag.Artwork) { a.Opacity = 50 }), document.Change{Label: "opacity of %s", File: "back.svg"}},
		{"content", all, with(func(a *bag.Artwork) { a.Holds = bag.HoldsEAN13 }), document.Change{Label: "content of %s", File: "back.svg"}},
		{"other panel", all, with(func(a *bag.Artwork) { a.On, a.X = "front", 0 }), document.Change{Label: "place %s on %s", File: "back.svg", Place: "front"}},
		{"other file", all, with(func(a *bag.Artwork) { a.File, a.Page = "new.svg", 3 }), document.Change{Label: "replace %s", File: "back.svg"}},
		{"two entries", all, with(func(a *bag.Artwork) { a.Scale, a.Turn = 2, 3 }), document.Change{Label: "change %s", File: "back.svg"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			from, to := bag.Default(), bag.Default()
			from.Artwork, to.Artwork = test.from, test.to
			if got := document.Difference(&from, &to); got != test.want {
				t.Errorf("got %+v, want %+v", got, test.want)
			}
		})
	}
}
