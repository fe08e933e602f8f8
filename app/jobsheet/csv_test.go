package jobsheet

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"gussetwright/app/describe"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

func TestTablesAsTheyWere(t *testing.T) {
	geomtest.Golden(t, "jobsheet/priced.csv", tableOf(t, orderOf(t, priced())))
	geomtest.Golden(t, "jobsheet/fullest.csv", tableOf(t, orderOf(t, fullest())))
}

// outside reads a table with Python's csv module, told how if it is not as RFC 4180 has it.
func outside(t *testing.T, table []byte, how ...string) [][]string {
	t.Helper()
	script := filepath.Join(geomtest.Root(t), "testdata", "outside", "csv-read.py")
	var rows [][]string
	if err := json.Unmarshal(geomtest.Run(t, "python3", append([]string{script, inFile(t, "job.csv", table)}, how...)...), &rows); err != nil {
		t.Fatal(err)
	}
	return rows
}

// kinds are bags of every construction.
func kinds(t testing.TB) map[string]bag.Spec {
	two, patch, low, large, hand := geomtest.WorkedExample(), geomtest.WorkedExample(), bag.OfSize(200, 150, 120), geomtest.WorkedExample(), geomtest.WorkedExample()
	two.Body.Seams, two.Handle.Kind = bag.SeamsTwo, bag.HandleTwisted
	patch.Body.Base, patch.Body.Top, patch.Handle.Kind = bag.BasePinch, bag.TopZigzag, bag.HandleStrip
	large.Body.Width, large.Body.Gusset, large.Body.Height = 900, 300, 1200
	hand.Handle.Kind, hand.Packing.PalletWidth, hand.Packing.PalletDepth = bag.HandleHandHole, 300, 300
	all := map[string]bag.Spec{
		"demo": demo(t), "priced": priced(), "fullest": fullest(), "sparsest": sparsest(), "two seams": two,
		"pinch base": patch, "does not pack": low, "fits no sheet": large, "hand hole, small pallet": hand,
	}
	random := rand.New(rand.NewPCG(6, 6))
	for i := range 8 {
		all["random "+strconv.Itoa(i)] = geomtest.RandomBag(random)
	}
	return all
}

// The table has the form of RFC 4180: lines that end in CR LF, as many cells in each as in
// the header; and it is UTF-8 without a byte order mark. Python's csv module, told to be
// strict, reads the cells that were written, and no two rows are of the same item.
func TestTableHasTheFormOfTheStandard(t *testing.T) {
	for name, spec := range kinds(t) {
		table := tableOf(t, orderOf(t, spec))
		if !utf8.Valid(table) || bytes.HasPrefix(table, []byte("\ufeff")) {
			t.Errorf("%s: not plain UTF-8: begins with %q", name, table[:min(8, len(table))])
		}
		if lone := bytes.Count(table, []byte("\n")) - bytes.Count(table, []byte("\r\n")); lone != 0 || !bytes.HasSuffix(table, []byte("\r\n")) {
			t.Errorf("%s: %d lines do not end in CR LF", name, lone)
		}
		rows := outside(t, table)
		if !slices.Equal(rows[0], []string{"section", "item", "value", "unit", "note"}) {
			t.Errorf("%s: header %q", name, rows[0])
		}
		seen := map[string]bool{}
		for _, cells := range rows[1:] {
			if len(cells) != len(columns) || cells[0] == "" || cells[1] == "" || cells[2] == "" {
				t.Errorf("%s: row %q", name, cells)
				continue
			}
			key := cells[0] + "|" + cells[1]
			if seen[key] {
				t.Errorf("%s: %s stands there twice", name, key)
			}
			seen[key] = true
		}
	}
}

// stated says where the JSON of describe has what rows state, as the keys on the way.
var stated = map[string]string{
	"Bag|Face width W": "bag width_mm", "Bag|Gusset depth D": "bag gusset_mm", "Bag|Standing height H": "bag height_mm",
	"Bag|Volume": "bag volume_l", "Bag|Turn-in as built": "bag turn_in_mm", "Bag|Base flap": "bag base_flap_mm", "Blank|Seams": "bag seams",
	"Paper|Caliper reckoned with": "job caliper_um",
	"Blank|Paper area of a bag":   "job paper_area_mm2", "Blank|Paper of a bag": "job paper_g", "Blank|Film of a bag": "job film_g",
	"Blank|Cards of a bag": "job cards_g", "Blank|Weight of a bag": "job bag_g",
	"Sheet|Sheet width": "sheet width_mm", "Sheet|Sheet height": "sheet height_mm", "Sheet|Usable width": "sheet usable_width_mm",
	"Sheet|Usable height": "sheet usable_height_mm", "Sheet|Up": "sheet up", "Sheet|Bags from a sheet": "sheet bags_per_sheet",
	"Sheet|Waste": "sheet waste_percent", "Sheet|Too long along the width": "sheet too_long_x_mm", "Sheet|Too long along the height": "sheet too_long_y_mm",
	"Sheet|Weight of a sheet": "job sheet_g",
	"Run|Quantity":            "job quantity", "Run|Bags printed": "job bags_printed", "Run|Forms": "job forms", "Run|Sheets": "job sheets",
	"Run|Sheets for make-ready": "job make_ready_sheets", "Run|Paper": "job paper_kg",
	"Cutting and creasing|Cutting rule for a bag": "job cutting_rule_m", "Cutting and creasing|Creasing rule for a bag": "job creasing_rule_m",
	"Cutting and creasing|Cutting rule in the dies": "job rule_cut_m", "Cutting and creasing|Creasing rule in the dies": "job rule_crease_m",
	"Gluing|Area of a bag": "job glue_area_mm2", "Gluing|Length of a bag": "job glue_m", "Gluing|Glue for a bag": "job glue_g", "Gluing|Glue for the run": "job glue_kg",
	"Cards|Board for the run": "job board_kg", "Handle|Length of a handle": "job rope_per_handle_mm", "Handle|Length for the run": "job rope_m",
	"Handle|Eyelets for the run": "job eyelets",
	"Packing|Packed bag, width":  "job packed_width_mm", "Packing|Packed bag, height": "job packed_height_mm", "Packing|Packed bag, thickness": "job packed_thickness_mm",
	"Packing|A bag in the pile": "job pile_thickness_mm", "Packing|Bags in a carton": "job bags_per_carton",
	"Packing|Carton inside, width": "job carton_inside_mm 0", "Packing|Carton inside, length": "job carton_inside_mm 1", "Packing|Carton inside, height": "job carton_inside_mm 2",
	"Packing|Carton outside, width": "job carton_outside_mm 0", "Packing|Carton outside, length": "job carton_outside_mm 1", "Packing|Carton outside, height": "job carton_outside_mm 2",
	"Packing|Full carton": "job carton_kg", "Packing|Cartons": "job cartons", "Packing|All cartons, gross": "job gross_kg",
	"Packing|Cartons in a layer": "job cartons_per_layer", "Packing|Cartons on a pallet": "job cartons_per_pallet", "Packing|Pallets": "job pallets",
	"Packing|Height of the fullest pallet": "job pallet_height_mm", "Packing|Weight of the fullest pallet": "job pallet_kg",
	"Load|Estimate": "job load kg", "Load|Layers there": "job load layers", "Load|Breaks at": "job load breaks_at_n",
	"Load|Strength of the paper": "job load strength_kn_m", "Load|Safety factor": "job load safety_factor",
	"Quote|Sum": "job quote sum", "Quote|Markup": "job quote markup", "Quote|Total": "job quote total", "Quote|Price of a bag": "job quote per_bag",
}

// apart is how far numbers may be from those of describe: half of the last decimal.
const apart = 0.5000001e-6

// at returns what a JSON document has at a path; false where there is none.
func at(document any, path string) (any, bool) {
	for _, key := range strings.Fields(path) {
		switch value := document.(type) {
		case map[string]any:
			next, is := value[key]
			if !is {
				return nil, false
			}
			document = next
		case []any:
			index, err := strconv.Atoi(key)
			if err != nil || index >= len(value) {
				return nil, false
			}
			document = value[index]
		default:
			return nil, false
		}
	}
	return document, true
}

// numbersIn gathers all numbers of a JSON document.
func numbersIn(document any, found *[]float64) {
	switch value := document.(type) {
	case float64:
		*found = append(*found, value)
	case []any:
		for _, part := range value {
			numbersIn(part, found)
		}
	case map[string]any:
		for key, part := range value {
			if key != "placements" { // where blanks lie is on the press sheet
				numbersIn(part, found)
			}
		}
	}
}

// The numbers, as Python's csv module reads them, are those of describe --json: those of
// the table above each in its row, and none of the job's is missing.
func TestNumbersAreThoseOfDescribe(t *testing.T) {
	for name, spec := range kinds(t) {
		order := orderOf(t, spec)
		text, err := json.Marshal(describe.Describe(order.Snapshot))
		if err != nil {
			t.Fatal(err)
		}
		var described map[string]any
		if err := json.Unmarshal(text, &described); err != nil {
			t.Fatal(err)
		}
		var written []float64
		compared := 0
		for _, cells := range outside(t, tableOf(t, order))[1:] {
			value, err := strconv.ParseFloat(cells[2], 64)
			if err == nil {
				written = append(written, value)
			}
			path, is := stated[cells[0]+"|"+cells[1]]
			if !is {
				continue
			}
			want, there := at(described, path)
			if number, isNumber := want.(float64); err != nil || !there || !isNumber || math.Abs(number-value) > apart {
				t.Errorf("%s: %s, %s is %q, describe has %v", name, cells[0], cells[1], cells[2], want)
			}
			compared++
		}
		if least := len(stated) - 9; compared < least { // load and quote may be missing
			t.Errorf("%s: only %d of %d numbers are in the table", name, compared, len(stated))
		}
		var wanted []float64
		for _, part := range []string{"bag", "sheet", "job"} {
			numbersIn(described[part], &wanted)
		}
		for _, number := range wanted {
			if !slices.ContainsFunc(written, func(v float64) bool { return math.Abs(v-number) <= apart }) {
				t.Errorf("%s: describe has %v, the table does not", name, number)
			}
		}
	}
}

// Rows of the quote by hand, see the test of describe: for 1000 bags 121 of paper, 80 for
// a form, 33 of printing, 120 of folding, 55 of rope and 40 once are 449, and a tenth more
// 493.90.
func TestQuoteInTheTable(t *testing.T) {
	table := string(tableOf(t, orderOf(t, priced())))
	for _, line := range []string{
		"Quote,\"Paper, quantity\",1100,sheets,\r\n", "Quote,\"Paper, price\",0.11,EUR/sheet,\r\n", "Quote,Paper,121,EUR,\r\n",
		"Quote,\"Printing, price\",30,EUR/1000 sheets,\r\n", "Quote,Printing,33,EUR,\r\n", "Quote,\"Other, once\",40,EUR,\r\n",
		"Quote,Sum,449,EUR,\r\n", "Quote,Markup,44.9,EUR,10 %\r\n", "Quote,Total,493.9,EUR,\r\n", "Quote,Price of a bag,0.4939,EUR,\r\n",
		"Not in this quote,Cutting die,1,forms,no price is known\r\n", "Prices by quantity,\"1000 bags, a bag\",0.4939,EUR,\r\n",
	} {
		if !strings.Contains(table, line) {
			t.Errorf("%q is not in\n%s", line, table)
		}
	}
	if table := string(tableOf(t, orderOf(t, sparsest()))); strings.Contains(table, "Quote") || strings.Contains(table, "Prices by") || strings.Contains(table, "Load,") {
		t.Errorf("a bag without prices and handle has\n%s", table)
	}
}

// Texts of the user that a spreadsheet would take for a formula are marked as texts; all
// others, and all numbers, stay as they are.
func TestNoTextBecomesAFormula(t *testing.T) {
	for text, want := range map[string]string{
		"": "", "Tea house": "Tea house", "a=b": "a=b", "2 + 2": "2 + 2", "x-y": "x-y", "post@lake": "post@lake", "Тёа": "Тёа",
		"=1+1": "'=1+1", "+49 30": "'+49 30", "-5": "'-5", "@sum(1)": "'@sum(1)", "  =1": "  '=1", "\t=1": " '=1", "\n=1": " '=1",
		`"=1"`: `"'=1"`, "＝1": "'＝1", "a;=1": "a;'=1", "a, -b": "a, '-b", "a|@b": "a|'@b", "'=1": "'=1", "a\r\nb": "a  b",
	} {
		if got := harmless(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
	spec := priced()
	spec.Name, spec.Currency = `=HYPERLINK("http://example.invalid","offer")`, "@E"
	spec.Family = []bag.Size{{Name: "-2+3;=1", Width: 200, Gusset: 100, Height: 300, Quantity: 100}}
	spec.Stock[0].Name = "+half"
	marked := 0
	for _, cells := range outside(t, tableOf(t, orderOf(t, spec)))[1:] {
		for i, cell := range cells {
			if cell != "" && strings.ContainsRune(starters, []rune(cell)[0]) {
				t.Errorf("cell %d of %q begins a formula", i+1, cells)
			}
			if strings.HasPrefix(cell, "'") {
				marked++
			}
		}
	}
	if marked < 10 {
		t.Errorf("only %d cells are marked as texts", marked)
	}
}

// However a text begins and whatever separates its parts, none begins a formula.
func TestNoPartOfATextBecomesAFormula(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 180))
	letters := []rune("=+-@,;|\t \n\"'aä1＝")
	for range 20_000 {
		text := make([]rune, random.IntN(9))
		for i := range text {
			text[i] = letters[random.IntN(len(letters))]
		}
		got := harmless(string(text))
		for _, cell := range strings.FieldsFunc(got, func(r rune) bool { return strings.ContainsRune(separators, r) }) {
			if cell = strings.TrimLeft(cell, ` "`); cell != "" && strings.ContainsRune(starters, []rune(cell)[0]) {
				t.Fatalf("%q becomes %q, in which %q begins a formula", string(text), got, cell)
			}
		}
		if strings.ContainsAny(got, "\n\r\t") {
			t.Fatalf("%q becomes %q", string(text), got)
		}
	}
}
