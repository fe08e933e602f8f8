package batch_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gussetwright/app/batch"
)

const family = `{"name": "Large", "bag": {"width_mm": 240, "gusset_mm": 100, "height_mm": 360}, "run": {"quantity": 1000, "make_ready_sheets": 50},
	"family": [{"name": "Medium", "width_mm": 180, "gusset_mm": 80, "height_mm": 240, "quantity": 1500},
		{"name": "Small", "width_mm": 120, "gusset_mm": 60, "height_mm": 160, "quantity": 3000}]}`

func written(t *testing.T, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "bag.json")
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// Whatever way the sizes are ganged, every bag is printed as often as wanted with its
// spoilage, and the sheets add up.
func TestGangMakesEveryBag(t *testing.T) {
	code, out, errors := run("", "gang", "--json", written(t, family))
	if code != batch.Fine {
		t.Fatalf("exit %d: %s", code, errors)
	}
	var report struct {
		Bags []struct {
			Printed, Over int
		}
		Forms []struct {
			Sheets     int
			Pieces     []int
			Placements []struct{ Bag int }
		}
		Sheets, Print int
		AtLeast       int `json:"at_least"`
	}
	if err := json.Unmarshal([]byte(out), &report); err != nil {
		t.Fatal(err)
	}
	made, print := make([]int, 3), 0
	for _, form := range report.Forms {
		counted := make([]int, 3)
		for _, p := range form.Placements {
			counted[p.Bag]++
		}
		for i, n := range counted {
			if n != form.Pieces[i] {
				t.Errorf("%d places of bag %d, said to be %d", n, i, form.Pieces[i])
			}
			made[i] += n * form.Sheets
		}
		print += form.Sheets
	}
	for i, want := range []int{1050, 1575, 3150} { // 5 % spoilage
		if bag := report.Bags[i]; bag.Printed != want || made[i] != want+bag.Over {
			t.Errorf("bag %d: %d made, %d over, %d said to be printed; want %d", i, made[i], bag.Over, bag.Printed, want)
		}
	}
	if report.Print != print || report.Sheets != print+50*len(report.Forms) || report.AtLeast > print {
		t.Errorf("%d sheets to print and %d in all, %d in forms, at least %d", report.Print, report.Sheets, print, report.AtLeast)
	}
}

func TestGangSaysWhatItNeeds(t *testing.T) {
	if code, _, errors := run("", "gang", written(t, `{"name": "One"}`)); code != batch.Unreadable || !strings.Contains(errors, `"family"`) {
		t.Errorf("exit %d: %s", code, errors)
	}
	if code, _, errors := run("", "gang", "--forms", "-1", written(t, family)); code != batch.Unreadable || !strings.Contains(errors, "-1") {
		t.Errorf("exit %d: %s", code, errors)
	}
}

// A sheet of the project's own stands in the ranking with its cost, and the usual ones
// with that of their weight.
func TestSheetsRanksOwnSheets(t *testing.T) {
	text := `{"name": "Own", "paper": {"grammage_gsm": 170}, "prices": {"paper_per_kg": 2},
		"stock": [{"name": "roll ends", "width_mm": 710, "height_mm": 500, "price": 0.01}]}`
	code, out, errors := run("", "sheets", "--by", "cost", "--json", written(t, text))
	if code != batch.Fine {
		t.Fatalf("exit %d: %s", code, errors)
	}
	var report struct {
		Ranked []struct {
			Name  string
			Up    int
			Width float64 `json:"width_mm"`
			High  float64 `json:"height_mm"`
			Cost  float64 `json:"cost_per_1000_bags"`
		}
	}
	if err := json.Unmarshal([]byte(out), &report); err != nil {
		t.Fatal(err)
	}
	// A thousand sheets of one bag each at 0.01.
	if first := report.Ranked[0]; first.Name != "roll ends" || first.Up != 1 || first.Cost != 10 {
		t.Errorf("first is %+v", first)
	}
	for _, r := range report.Ranked[1:] {
		if r.Up > 0 {
			want := 1000 / float64(r.Up) * r.Width * r.High * 170 / 1e9 * 2
			if r.Cost < want*(1-1e-9) || r.Cost > want*(1+1e-9) {
				t.Errorf("%s costs %g for 1000 bags, want %g", r.Name, r.Cost, want)
			}
		}
	}
	if code, _, errors := run("", "sheets", "--by", "price", written(t, text)); code != batch.Unreadable || !strings.Contains(errors, "waste, paper or cost") {
		t.Errorf("exit %d: %s", code, errors)
	}
}
