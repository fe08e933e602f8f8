package steppage

import (
	"strings"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
)

// concerns lists the entries that each finding is about, the one to begin with
// first. A finding is shown at the first of them that applies.
var concerns = map[string][]string{
	"base-flap-short":    {"bag.base_overlap_mm"},
	"base-flap-long":     {"bag.base_overlap_mm", "bag.gusset_mm"},
	"base-corners-cross": {"bag.width_mm", "bag.base_overlap_mm", "bag.base"},
	"base-shallow":       {"bag.gusset_mm", "bag.base"},
	"pinch-short":        {"bag.base_overlap_mm"},
	"gussets-meet":       {"bag.gusset_mm", "bag.width_mm"},
	"too-low-to-pack":    {"bag.height_mm"},
	"turn-in-long":       {"bag.turn_in_mm"},
	"turn-in-on-crease":  {"bag.turn_in_mm"},
	"turn-in-short":      {"bag.turn_in_mm"},
	"seam-flap-narrow":   {"bag.seam_flap_mm"},
	"seam-flap-wide":     {"bag.seam_flap_mm"},

	"hole-near-top":          {"handle.drop_mm", "handle.slit_height_mm"},
	"hole-near-edge":         {"handle.spacing_mm", "handle.hand_hole_width_mm"},
	"hole-low":               {"handle.drop_mm"},
	"hole-not-backed":        {"handle.drop_mm", "bag.turn_in_mm"},
	"hole-near-turn-in-edge": {"handle.drop_mm", "bag.turn_in_mm"},
	"holes-close":            {"handle.spacing_mm"},
	"hand-hole-upright":      {"handle.hand_hole_height_mm"},
	"patch-wide":             {"handle.patch_width_mm"},
	"patch-low":              {"handle.patch_height_mm", "handle.drop_mm"},
	"patch-narrow":           {"handle.patch_width_mm", "handle.spacing_mm"},
	"cord-loop":              {"handle.rise_mm"},
	"card-without-place":     {"cards.top", "cards.base"},
	"card-too-small":         {"cards.top", "cards.base"},
	"card-tight":             {"cards.clearance_mm"},

	"load-over":             {"paper.grammage_gsm"},
	"grammage-light":        {"paper.grammage_gsm"},
	"grammage-heavy":        {"paper.grammage_gsm"},
	"crease-before-folding": {"paper.grammage_gsm"},
	"grain-across":          {"paper.grain"},
	"lamination-glue":       {"paper.lamination"},
	"lamination-recycling":  {"paper.lamination"},

	"no-sheet-fits":          {"sheet.width_mm"},
	"bleed-in-gripper":       {"sheet.room_for_bleed", "print.bleed_mm"},
	"gap-less-than-bleed":    {"sheet.gap_mm", "print.bleed_mm"},
	"margin-less-than-bleed": {"sheet.side_mm", "sheet.tail_mm"},
	"gripper-narrow":         {"sheet.gripper_mm"},
	"other-gripper-edge":     {"sheet.gripper_edge"},
	"near-miss":              {"sheet.width_mm"},
}

// artworkPath stands for the list of artwork, which is no entry of the field table. All
// findings that concerns does not list are about artwork.
const artworkPath = "artwork"

// EntryOf returns the path of the entry at which a finding about a bag is shown.
func EntryOf(f *check.Finding, spec *bag.Spec) string {
	paths := concerns[f.Code]
	if strings.HasPrefix(f.Code, "card-") && len(paths) == 2 && speaksOfBase(f) {
		paths = paths[1:]
	}
	for _, path := range paths {
		if bag.Applies(path, spec) {
			return path
		}
	}
	if len(paths) > 0 {
		return paths[0]
	}
	return artworkPath
}

// speaksOfBase tells whether a finding about a card is about the base card.
func speaksOfBase(f *check.Finding) bool {
	if len(f.Message.Args) == 0 {
		return false
	}
	word, ok := f.Message.Args[0].(phrase.Word)
	return ok && strings.HasPrefix(string(word), "base")
}
