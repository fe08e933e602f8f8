package job_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/geometry/job"
	"gussetwright/geometry/sheet"
)

func laidOut(spec bag.Spec) (*blank.Blank, *sheet.Plan) {
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	return &laid, &plan
}

func quoteFor(spec bag.Spec) job.Quote {
	laid, plan := laidOut(spec)
	return job.QuoteFor(laid, plan, spec.Run.Quantity)
}

// prices of an invented shop, all of them known.
func prices() bag.Prices {
	return bag.Prices{
		Paper: 1.2, MakeReady: 80, Printing: 30, Lamination: 0.4, Die: 50, Rule: 9, Cutting: 25, Folding: 120,
		Handles: 60, Rope: 0.05, Eyelets: 12, Board: 1.1, Glue: 3, Carton: 1.5, Pallet: 14, Once: 40, Other: 7, Markup: 10,
	}
}

// Done by hand for 1000 bags of the worked example on paper of 150 g/m², with 50 sheets to
// make ready; what a run takes is worked out beside the other tests. There is no film.
func TestQuoteByHand(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Paper.Grammage, spec.Run.MakeReady, spec.Handle.Eyelets = 150, 50, true
	spec.Prices = prices()
	laid, plan := laidOut(spec)
	run := job.Reckon(laid, plan)
	_, glued := glueByHand()
	want := []struct {
		path   string
		amount float64
	}{
		{"prices.paper_per_kg", 1100 * 0.7 * 0.5 * 0.150 * 1.2}, // 57.75 kg
		{"prices.make_ready_per_form", 80},
		{"prices.printing_per_1000_sheets", 33}, // 1100 sheets
		{"prices.die_per_form", 50},
		{"prices.rule_per_m", (run.CutMetres + run.CreaseMetres) * 9},
		{"prices.cutting_per_1000_sheets", 27.5},
		{"prices.board_per_kg", (38*0.9652*0.635*0.350 + 35*1.016*0.7112*0.400) * 1.1},
		{"prices.glue_per_kg", 1050 * glued * 40 / 1e9 * 3},
		{"prices.folding_per_1000_bags", 120},
		{"prices.handles_per_1000_bags", 60},
		{"prices.rope_per_m", 55},       // 1100 m
		{"prices.eyelets_per_1000", 48}, // 4000
		{"prices.carton_each", 15},      // 10
		{"prices.pallet_each", 14},      // 1
		{"prices.other_once", 40},
		{"prices.other_per_1000_bags", 7},
	}
	got := job.QuoteFor(laid, plan, 1000)
	if len(got.Lines) != len(want) || len(got.Missing) != 0 {
		t.Fatalf("%d lines, %d missing: %+v", len(got.Lines), len(got.Missing), got)
	}
	sum := 0.0
	for i, line := range got.Lines {
		if line.Path != want[i].path {
			t.Errorf("line %d is %s, want %s", i, line.Path, want[i].path)
		}
		near(t, line.Path, line.Amount, want[i].amount, 1e-9)
		sum += want[i].amount
	}
	near(t, "sum", got.Sum, sum, 1e-9)
	near(t, "markup", got.Markup, sum/10, 1e-9)
	near(t, "total", got.Total, sum*1.1, 1e-9)
	near(t, "per bag", got.PerBag, sum*1.1/1000, 1e-12)

	spec.Paper.Lamination = bag.LaminationMatt
	for _, line := range quoteFor(spec).Lines {
		if line.Path == "prices.lamination_per_m2" {
			near(t, "film on 1100 sheets of 0.35 m²", line.Amount, 385*0.4, 1e-9)
			return
		}
	}
	t.Error("the film has no line")
}

// A price that is not known is missed and not taken for nothing. A markup alone is no
// price, and what a run need not have is not missed.
func TestMissingPrices(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Prices.Markup = 30
	got := quoteFor(spec)
	if got.Known() || got.Total != 0 {
		t.Errorf("without prices: %+v", got)
	}
	if breaks := job.Breaks(laidOut(spec)); breaks != nil {
		t.Errorf("without prices: breaks %v", breaks)
	}
	spec.Prices = bag.Prices{Printing: 30}
	got = quoteFor(spec)
	if len(got.Lines) != 1 || got.Lines[0].Path != "prices.printing_per_1000_sheets" {
		t.Errorf("lines %+v", got.Lines)
	}
	var missing []string
	for _, item := range got.Missing {
		missing = append(missing, item.Path)
	}
	for _, path := range []string{"prices.paper_per_kg", "prices.rope_per_m", "prices.board_per_kg", "prices.pallet_each"} {
		if !slices.Contains(missing, path) {
			t.Errorf("%s is not missed, only %v", path, missing)
		}
	}
	for _, path := range []string{"prices.lamination_per_m2", "prices.eyelets_per_1000", "prices.other_once", "prices.other_per_1000_bags"} {
		if slices.Contains(missing, path) {
			t.Errorf("%s is missed", path)
		}
	}
	spec.Prices = prices()
	spec.Sheet.Width = 300
	if got := quoteFor(spec); got.Known() || got.Missing != nil {
		t.Errorf("a bag that fits no sheet: %+v", got)
	}
}

// A sheet of the stock is paid by the sheet, whichever way round it is entered.
func TestPaperFromTheStock(t *testing.T) {
	tests := []struct {
		name  string
		press bag.SheetGrain
		stock []bag.StockSheet
		path  string
		price float64
	}{
		{"none", bag.GrainEither, nil, "prices.paper_per_kg", 1.2},
		{"its size", bag.GrainEither, []bag.StockSheet{{Width: 700, Height: 500, Grain: bag.GrainEither, Price: 0.3}}, "stock[0].price", 0.3},
		{"turned", bag.GrainEither, []bag.StockSheet{{Width: 500, Height: 700, Grain: bag.GrainAlongWidth, Price: 0.3}}, "stock[0].price", 0.3},
		{"turned, with its grain", bag.GrainAlongHeight, []bag.StockSheet{{Width: 500, Height: 700, Grain: bag.GrainAlongWidth, Price: 0.3}}, "stock[0].price", 0.3},
		{"turned, with the other grain", bag.GrainAlongWidth, []bag.StockSheet{{Width: 500, Height: 700, Grain: bag.GrainAlongWidth, Price: 0.3}}, "prices.paper_per_kg", 1.2},
		{"another size", bag.GrainEither, []bag.StockSheet{{Width: 700, Height: 510, Grain: bag.GrainEither, Price: 0.3}}, "prices.paper_per_kg", 1.2},
		{"without a price", bag.GrainEither, []bag.StockSheet{{Width: 700, Height: 500, Grain: bag.GrainEither}}, "prices.paper_per_kg", 1.2},
		{"its grain comes first", bag.GrainAlongWidth, []bag.StockSheet{
			{Width: 700, Height: 500, Grain: bag.GrainEither, Price: 0.3}, {Width: 700, Height: 500, Grain: bag.GrainAlongWidth, Price: 0.4},
		}, "stock[1].price", 0.4},
	}
	for _, test := range tests {
		spec := geomtest.WorkedExample()
		spec.Prices.Paper, spec.Stock = 1.2, test.stock
		laid, plan := laidOut(spec)
		laid.Spec.Sheet.Grain = test.press // the plan stays as it is: only the price is looked at
		got := job.QuoteFor(laid, plan, 1000)
		if line := got.Lines[0]; line.Path != test.path || line.Price != test.price || string(line.Name) != "Paper" {
			t.Errorf("%s: %+v", test.name, line)
		}
		if strings.HasPrefix(test.path, "stock") {
			near(t, test.name, got.Lines[0].Amount, 1050*test.price, 1e-9)
		}
	}
}

// Every quantity is reckoned anew: 150 bags need 158 prints, 2 cartons and a pallet, each
// rounded up on its own.
func TestBreaks(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Prices = bag.Prices{Printing: 1000, Carton: 100, Pallet: 1000, MakeReady: 10_000}
	spec.Breaks = []float64{2000, 150, 1000, 2000}
	got := job.Breaks(laidOut(spec))
	want := []job.Break{
		{150, 10_000 + 158 + 200 + 1000, (10_000 + 158 + 200 + 1000) / 150.0},
		{1000, 10_000 + 1050 + 1000 + 1000, 13.05},
		{2000, 10_000 + 2100 + 2000 + 1000, 15_100 / 2000.0},
	}
	if len(got) != len(want) {
		t.Fatalf("breaks %v", got)
	}
	for i := range want {
		near(t, "quantity", got[i].Quantity, want[i].Quantity, 0)
		near(t, "total", got[i].Total, want[i].Total, 1e-9)
		near(t, "per bag", got[i].PerBag, want[i].PerBag, 1e-9)
	}
	if spec.Breaks[0] != 2000 || spec.Breaks[1] != 150 {
		t.Errorf("the quantities of the project were moved: %v", spec.Breaks)
	}
}

// priced returns the spec with some of its prices set at random.
func priced(random *rand.Rand, spec bag.Spec) bag.Spec {
	for _, field := range bag.Fields() {
		if strings.HasPrefix(field.Path, "prices.") && random.IntN(3) > 0 {
			field.SetNumber(&spec, 100*random.Float64())
		}
	}
	return spec
}

// More bags never cost less in all, as each part of a run grows with it; and a quote is
// the sum of its lines, each with a price and a quantity.
func TestQuotesAddUpAndGrow(t *testing.T) {
	random := rand.New(rand.NewPCG(64, 1))
	known := 0
	for range 60 {
		spec := priced(random, geomtest.RandomBag(random))
		spec.Run.MakeReady = float64(random.IntN(100))
		laid, plan := laidOut(spec)
		last, quantity := 0.0, 1.0
		for range 12 {
			got := job.QuoteFor(laid, plan, quantity)
			sum := 0.0
			for _, line := range got.Lines {
				if line.Price <= 0 || line.Quantity <= 0 || line.Amount <= 0 {
					t.Errorf("a line of nothing: %+v", line)
				}
				sum += line.Amount
			}
			for _, item := range got.Missing {
				if item.Quantity <= 0 {
					t.Errorf("nothing is missing: %+v", item)
				}
			}
			if math.Abs(sum-got.Sum) > 1e-9*sum || math.Abs(got.Sum+got.Markup-got.Total) > 1e-9*sum || math.Abs(got.PerBag*quantity-got.Total) > 1e-9*sum {
				t.Errorf("%g lines, sum %g + markup %g = %g", sum, got.Sum, got.Markup, got.Total)
			}
			if got.Total < last*(1-1e-12) {
				t.Errorf("%g bags cost %g, fewer cost %g", quantity, got.Total, last)
			}
			if got.Known() {
				known++
			}
			last = got.Total
			quantity = math.Ceil(quantity * (1 + 2*random.Float64()))
		}
	}
	if known < 200 {
		t.Errorf("only %d quotes with a price", known)
	}
}

// Every price of the project that applies is in a quote, and no other: none is forgotten,
// and none is named that does not exist.
func TestEveryPriceIsAsked(t *testing.T) {
	random := rand.New(rand.NewPCG(65, 1))
	asked := map[string]bool{}
	for range 200 {
		spec := geomtest.RandomBag(random)
		spec.Prices, spec.Handle.Eyelets = prices(), true
		if random.IntN(2) == 0 {
			spec.Paper.Lamination = bag.LaminationGloss
		}
		for _, line := range quoteFor(spec).Lines {
			asked[line.Path] = true
			if !bag.Applies(line.Path, &spec) {
				t.Errorf("%s is charged and does not apply", line.Path)
			}
		}
	}
	for _, field := range bag.Fields() {
		if strings.HasPrefix(field.Path, "prices.") && field.Path != "prices.markup_percent" && !asked[field.Path] {
			t.Errorf("%s is never charged", field.Path)
		}
	}
}

func ExampleQuoteFor() {
	spec := bag.Default()
	spec.Prices = bag.Prices{Paper: 1.2, Printing: 30, Markup: 20}
	laid := blank.Lay(spec)
	plan := sheet.Lay(spec.Sheet, laid.SheetPiece())
	quote := job.QuoteFor(&laid, &plan, 1000)
	for _, line := range quote.Lines {
		fmt.Printf("%s: %.2f %s, %.2f\n", line.Name, line.Quantity, line.Unit, line.Amount)
	}
	fmt.Printf("%.2f with the markup; %d parts have no price yet\n", quote.Total, len(quote.Missing))
	// Output:
	// Paper: 124.95 kg, 149.94
	// Printing: 1050.00 sheets, 31.50
	// 217.73 with the markup; 11 parts have no price yet
}

func BenchmarkBreaks(b *testing.B) {
	spec := bag.Default()
	spec.Prices = prices()
	spec.Breaks = []float64{250, 500, 1000, 2500, 5000, 10_000, 20_000, 50_000, 100_000, 200_000, 500_000, 1_000_000}
	laid, plan := laidOut(spec)
	for b.Loop() {
		job.Breaks(laid, plan)
	}
}
