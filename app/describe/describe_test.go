package describe_test

import (
	"bytes"
	"encoding/json"
	"testing"

	"gussetwright/app/describe"
	"gussetwright/app/document"
	"gussetwright/geometry/geomtest"
)

func described(t *testing.T) describe.Description {
	t.Helper()
	snapshot, err := document.Derive(geomtest.WorkedExample())
	if err != nil {
		t.Fatal(err)
	}
	return describe.Describe(snapshot)
}

func TestGoldenJSON(t *testing.T) {
	out, err := json.MarshalIndent(described(t), "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	geomtest.Golden(t, "describe/worked-example.json", append(out, '\n'))
}

func TestGoldenText(t *testing.T) {
	description := described(t)
	var out bytes.Buffer
	if err := description.Text(&out); err != nil {
		t.Fatal(err)
	}
	geomtest.Golden(t, "describe/worked-example.txt", out.Bytes())
}

// The keys that other programs rely on: they may be added to, never renamed.
func TestKeysStay(t *testing.T) {
	description := describedAs(t, priced())
	description.Fold = folded(t, geomtest.WorkedExample())
	out, err := json.Marshal(description)
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{
		"name", "bag", "width_mm", "gusset_mm", "height_mm", "volume_l", "pieces", "count", "outline_area_mm2",
		"panels", "id", "x_mm", "y_mm", "lines", "kind", "role", "fold", "x1_mm", "y1_mm", "x2_mm", "y2_mm",
		"holes", "diameter_mm", "glue", "area_mm2", "sheet", "usable_width_mm", "usable_height_mm", "up",
		"bags_per_sheet", "waste_percent", "placements", "turn_deg", "job", "sheets", "paper_kg", "bag_g", "rope_m",
		"packed_width_mm", "packed_height_mm", "packed_thickness_mm",
		"stages", "steps", "schematic", "max_strain", "max_crossing_mm", "max_step_mm", "mean_step_mm",
		"forms", "make_ready_sheets", "sheet_g", "rule_cut_m", "rule_crease_m", "glue_m", "glue_g", "glue_kg",
		"card_sheets", "board_kg", "bags_per_carton", "carton_inside_mm", "carton_outside_mm", "carton_kg", "cartons", "gross_kg",
		"cartons_per_layer", "cartons_per_pallet", "pallets", "pallet_height_mm", "pallet_kg", "load_estimate_kg",
		"load", "weakest", "layers", "caution", "quote", "currency", "missing", "total", "per_bag", "price_breaks", "price_for", "amount",
		"findings", "severity", "code", "message", "remedy",
	} {
		if !bytes.Contains(out, []byte(`"`+key+`":`)) {
			t.Errorf("no key %q", key)
		}
	}
}
