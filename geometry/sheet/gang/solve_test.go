package gang_test

import (
	"context"
	"errors"
	"math/rand/v2"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/sheet"
	"gussetwright/geometry/sheet/gang"
)

var press = bag.Sheet{Width: 1000, Height: 700, Gripper: 20, GripperEdge: bag.GripperShort}

func item(name string, width, height float64, bags int) gang.Item {
	return gang.Item{Name: name, Bags: bags, Piece: sheet.Piece{Width: width, Height: height, PerBag: 1, Area: width * height}}
}

func TestErrors(t *testing.T) {
	along := func(i gang.Item, fibres bag.Grain) gang.Item {
		i.Piece.SheetFibres = fibres
		return i
	}
	for _, c := range []struct {
		name    string
		items   []gang.Item
		options gang.Options
		want    string
	}{
		{
			"too large",
			[]gang.Item{item("tea", 300, 300, 5), item("coat", 1200, 710, 5)},
			gang.Options{},
			"gang on one sheet: blank of coat is 1200 mm × 710 mm and does not fit in the 980 mm × 700 mm that gripper and margins leave of the sheet; take a larger sheet, grip the other edge or let the grain lie across",
		},
		{"no size", []gang.Item{item("tea", 0, 300, 5)}, gang.Options{}, "gang on one sheet: blank of tea is 0 mm × 300 mm, both must be more than 0; give its size"},
		{"less than none", []gang.Item{item("tea", 300, 300, -1)}, gang.Options{}, "gang on one sheet: bags of tea is -1, must be at least 0; give the quantity wanted"},
		{"too many", []gang.Item{item("tea", 300, 300, 2e9)}, gang.Options{}, "gang on one sheet: bags of tea is 2000000000, must be at most 1000000000; split the job"},
		{"forms", nil, gang.Options{MostForms: -1}, "gang on one sheet: most forms is -1, must be at least 0; give 0 for as many as help"},
		{
			"not on one form",
			[]gang.Item{item("tea", 700, 480, 5), item("coat", 690, 510, 5)},
			gang.Options{MostForms: 1},
			"gang on one sheet: no one form was found that holds all 2 bags; allow more forms or take a larger sheet",
		},
		{
			"fibres",
			[]gang.Item{along(item("tea", 300, 300, 1), bag.GrainHeight), along(item("coat", 300, 300, 1), bag.GrainWidth)},
			gang.Options{},
			"gang on one sheet: fibres of the sheet of coat lie along its width, of a bag before along its height; give one direction for all",
		},
		{"many bags", make([]gang.Item, 25), gang.Options{}, "gang on one sheet: 25 bags are more than 24; gang them in two jobs"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := gang.Solve(context.Background(), press, c.items, c.options)
			if err == nil || err.Error() != c.want {
				t.Fatalf("got  %v\nwant %s", err, c.want)
			}
			if loud := phrase.ErrorIn(err, strings.ToUpper); !strings.HasPrefix(loud, "GANG ON") {
				t.Errorf("cannot be translated: %s", loud)
			}
		})
	}
}

// TestByHand checks jobs that can be reckoned by hand. 700 × 480 lies twice, and 340 × 480
// four times, on the 980 × 700 that are left of the sheet.
func TestByHand(t *testing.T) {
	two := item("pair", 480, 690, 10)
	two.Piece.PerBag = 2
	for _, c := range []struct {
		name          string
		items         []gang.Item
		most          int
		sheets, forms int
	}{
		{"nothing wanted", []gang.Item{item("tea", 700, 480, 0)}, 0, 0, 0},
		{"one bag", []gang.Item{item("tea", 700, 480, 1000)}, 0, 500, 1},
		{"one bag and a left-over", []gang.Item{item("tea", 700, 480, 1001)}, 0, 501, 1},
		{"both on one form", []gang.Item{item("tea", 480, 700, 1000), item("coat", 490, 700, 1000)}, 1, 1000, 1},
		{"as many alone", []gang.Item{item("tea", 480, 700, 1000), item("coat", 490, 700, 1000)}, 0, 1000, 1},
		{"a half and two quarters", []gang.Item{item("tea", 480, 700, 1000), item("mint", 480, 345, 2000)}, 1, 1000, 1},
		{"two pieces each", []gang.Item{two}, 0, 10, 1},
		{"an empty one among them", []gang.Item{item("none", 300, 300, 0), item("tea", 700, 480, 10)}, 0, 5, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := gang.Solve(context.Background(), press, c.items, gang.Options{MostForms: c.most})
			if err != nil {
				t.Fatal(err)
			}
			verify(t, job{press, c.items}, r)
			if r.Sheets != c.sheets || len(r.Forms) != c.forms || !r.Proven {
				t.Errorf("%d sheets of %d forms, proven %v; want %d of %d", r.Sheets, len(r.Forms), r.Proven, c.sheets, c.forms)
			}
		})
	}
}

// TestGrainOfForm: where only one direction lets both bags lie together, the form takes
// that one, and says so.
func TestGrainOfForm(t *testing.T) {
	tea, coat := item("tea", 480, 700, 100), item("coat", 700, 490, 100)
	tea.Piece.Fibres, coat.Piece.Fibres = bag.GrainHeight, bag.GrainWidth
	r, err := gang.Solve(context.Background(), press, []gang.Item{tea, coat}, gang.Options{MostForms: 1})
	if err != nil {
		t.Fatal(err)
	}
	verify(t, job{press, []gang.Item{tea, coat}}, r)
	if r.Sheets != 100 || r.Forms[0].Fibres != bag.GrainHeight {
		t.Errorf("%d sheets with fibres along %q, want 100 along the height", r.Sheets, r.Forms[0].Fibres)
	}
	coat.Piece.Fibres = bag.GrainHeight // now coat would lie across
	if _, err := gang.Solve(context.Background(), press, []gang.Item{tea, coat}, gang.Options{MostForms: 1}); err == nil {
		t.Error("two bags whose grain crosses lie on one form")
	}
}

func TestProgress(t *testing.T) {
	j := randomJob(rand.New(rand.NewPCG(1, 2)), 5, 8)
	best, bound, calls := 0, 0, 0
	r, err := gang.Solve(context.Background(), j.sheet, j.items, gang.Options{Progress: func(b, low int) {
		if calls++; low < bound || best > 0 && b > best || b > 0 && low > b {
			t.Errorf("after %d sheets and bound %d came %d and %d", best, bound, b, low)
		}
		best, bound = b, low
	}})
	if err != nil || calls == 0 || best != r.Sheets || bound != r.Bound {
		t.Errorf("%v; told %d and %d in %d calls, got %d and %d", err, best, bound, calls, r.Sheets, r.Bound)
	}
}

func TestCancelled(t *testing.T) {
	j := randomJob(rand.New(rand.NewPCG(1, 2)), 8, 30)
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if r, err := gang.Solve(ctx, j.sheet, j.items, gang.Options{}); !errors.Is(err, context.Canceled) || len(r.Forms) > 0 {
		t.Errorf("cancelled before the start: %v, %d forms", err, len(r.Forms))
	}
	ctx, cancel = context.WithCancel(context.Background())
	defer cancel()
	r, err := gang.Solve(ctx, j.sheet, j.items, gang.Options{Progress: func(best, _ int) {
		if best > 0 {
			cancel()
		}
	}})
	if !errors.Is(err, context.Canceled) || len(r.Forms) == 0 {
		t.Fatalf("cancelled at the first result: %v, %d forms", err, len(r.Forms))
	}
	verify(t, j, r)
}
