package describe_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"gussetwright/app/describe"
	"gussetwright/app/document"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

// priced is the worked example in an invented shop that has not priced everything yet.
func priced() bag.Spec {
	spec := geomtest.WorkedExample()
	spec.Currency, spec.Breaks, spec.Run.MakeReady = "EUR", []float64{500, 5000}, 50
	spec.Prices = bag.Prices{MakeReady: 80, Printing: 30, Folding: 120, Rope: 0.05, Once: 40, Markup: 10}
	spec.Stock = []bag.StockSheet{{Name: "half sheet", Width: 700, Height: 500, Grain: bag.GrainEither, Price: 0.11}}
	return spec
}

func describedAs(t *testing.T, spec bag.Spec) describe.Description {
	t.Helper()
	snapshot, err := document.Derive(spec)
	if err != nil {
		t.Fatal(err)
	}
	return describe.Describe(snapshot)
}

func textOf(t *testing.T, description describe.Description) string {
	t.Helper()
	var out bytes.Buffer
	if err := description.Text(&out); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestGoldenQuote(t *testing.T) {
	description := describedAs(t, priced())
	out, err := json.MarshalIndent(description.Job, "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	geomtest.Golden(t, "describe/priced-job.json", append(out, '\n'))
	geomtest.Golden(t, "describe/priced.txt", []byte(textOf(t, description)))
}

// The lines of the text add up to the total that stands below them: by hand for 1000 bags
// on 1100 sheets 121 of paper, 80 for a form, 33 of printing, 120 of folding, 55 of rope
// and 40 once are 449, and a tenth more 493.90.
func TestQuoteText(t *testing.T) {
	text := textOf(t, describedAs(t, priced()))
	for _, line := range []string{
		"Cost       121.00 EUR: Paper, 1100 sheets at 0.11\n",
		"Cost       80.00 EUR: Plates and make-ready, 1 form at 80.00\n",
		"Cost       33.00 EUR: Printing, 1100 sheets at 30.00 for 1000\n",
		"Cost       40.00 EUR: Other, once\n",
		"Cost       44.90 EUR: markup\n",
		"Total      493.90 EUR, 0.4939 EUR a bag\n",
	} {
		if !strings.Contains(text, line) {
			t.Errorf("%q is not in\n%s", line, text)
		}
	}
	if strings.Contains(text, " 0.00 EUR") {
		t.Errorf("something costs nothing:\n%s", text)
	}
}

// What a bag has not is not in its text: no cartons where it does not pack, no load
// without handle, no quote without prices.
func TestWhatIsNotReckonedIsNotSaid(t *testing.T) {
	low := bag.OfSize(200, 150, 120)
	low.Handle.Kind = bag.HandleNone
	description := describedAs(t, low)
	text := textOf(t, description)
	for _, label := range []string{"Packed", "Cartons", "Pallets", "Load", "Cost", "Total", "Left out", "Quantity"} {
		if strings.Contains(text, "\n"+label) {
			t.Errorf("says %s:\n%s", label, text)
		}
	}
	out, err := json.Marshal(description.Job)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(out, []byte(`"quote"`)) || bytes.Contains(out, []byte(`"load":`)) || !bytes.Contains(out, []byte(`"load_estimate_kg":0`)) {
		t.Errorf("job %s", out)
	}
}

// A bag with two seams whose pieces are on sheets of their own says so, and a carton that
// no pallet takes too.
func TestFormsAndTooLargeCarton(t *testing.T) {
	spec := geomtest.WorkedExample()
	spec.Body.Seams, spec.Handle.Kind = bag.SeamsTwo, bag.HandleTwisted
	spec.Packing.PalletWidth, spec.Packing.PalletDepth = 300, 300
	text := textOf(t, describedAs(t, spec))
	for _, part := range []string{"2100 sheets, 2 forms,", "in the dies of all forms", "fits no pallet", "handle patch: 51 on the press sheet (700 × 500 mm), 42 sheets"} {
		if !strings.Contains(text, part) {
			t.Errorf("%q is not in\n%s", part, text)
		}
	}
}
