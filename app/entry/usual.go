package entry

// span is a part of the values of a field.
type span struct{ low, high float64 }

// usualSpans returns what the sliders of fields with wide limits cover, in the unit of the
// field: what is made nearly every day (common practice, no published source). All of the
// limits on a slider of a hundred pixels would leave no fine hand, and most of them nobody
// needs; whatever is beyond is typed.
func usualSpans() map[string]span {
	return map[string]span{
		"product.width_mm":    {20, 500},
		"product.depth_mm":    {10, 250},
		"product.height_mm":   {20, 600},
		"product.weight_g":    {0, 5000},
		"product.headroom_mm": {0, 150},

		"bag.width_mm":        {80, 500},
		"bag.gusset_mm":       {0, 250},
		"bag.height_mm":       {100, 600},
		"bag.turn_in_mm":      {0, 100},
		"bag.base_overlap_mm": {0, 60},

		"handle.spacing_mm":      {40, 300},
		"handle.drop_mm":         {5, 100},
		"handle.rise_mm":         {50, 400},
		"handle.knot_mm":         {0, 100},
		"handle.patch_width_mm":  {60, 250},
		"handle.patch_height_mm": {15, 100},

		"cards.top_grammage_gsm":  {200, 800},
		"cards.base_grammage_gsm": {200, 1000},
		"paper.grammage_gsm":      {60, 350},
		"paper.caliper_um":        {0, 500},

		"sheet.width_mm":  {300, 1500},
		"sheet.height_mm": {300, 1500},

		"run.quantity":          {100, 10_000},
		"run.spoilage_percent":  {0, 20},
		"run.make_ready_sheets": {0, 500},
		"run.glue_gsm":          {0, 100},

		"packing.bags_per_carton":        {10, 500},
		"packing.pile_looseness_percent": {0, 100},
		"packing.carton_g":               {0, 1500},
		"packing.pallet_width_mm":        {600, 1300},
		"packing.pallet_depth_mm":        {600, 1300},
		"packing.pallet_deck_mm":         {0, 200},
		"packing.pallet_most_height_mm":  {800, 2400},
		"packing.pallet_most_kg":         {200, 1500},

		"prices.markup_percent": {0, 100},
	}
}
