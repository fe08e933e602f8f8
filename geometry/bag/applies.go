package bag

// Applies tells whether the entry with the given path has a bearing on the bag: a
// zigzag pitch has none while the top edge is turned in. What does not apply keeps
// its value for the day it does. A switch that is on always applies, so that it can
// be switched off.
func Applies(path string, s *Spec) bool {
	b, h, c := &s.Body, &s.Handle, &s.Cards
	switch path {
	case "product.depth_mm":
		return s.Product.Kind != ProductBottle
	case "bag.turn_in_mm":
		return b.Top == TopTurnIn
	case "bag.zigzag_pitch_mm", "bag.zigzag_depth_mm":
		return b.Top == TopZigzag
	case "bag.slot_width_mm":
		return b.Base == BaseSlotted
	case "handle.hole_diameter_mm", "handle.eyelets":
		return h.Kind.HasHoles()
	case "handle.slit_height_mm":
		return h.Kind.HasSlits()
	case "handle.spacing_mm", "handle.rise_mm", "handle.knot_mm":
		return h.Kind.IsThreaded() || h.Kind.HasPatch()
	case "handle.drop_mm":
		return h.Kind != HandleNone
	case "handle.hand_hole_width_mm", "handle.hand_hole_height_mm":
		return h.Kind == HandleHandHole
	case "handle.patch_width_mm", "handle.patch_height_mm":
		return h.Kind.HasPatch()
	case "cards.top":
		return c.Top || b.TurnInDepth() > 0
	case "cards.base":
		return c.Base || b.Base != BasePinch
	case "cards.top_edge_margin_mm", "cards.top_grammage_gsm":
		return s.hasTopCards()
	case "cards.base_grammage_gsm":
		return s.hasBaseCard()
	case "cards.clearance_mm":
		return s.hasTopCards() || s.hasBaseCard()
	case "run.most_forms":
		return len(s.Family) > 0
	case "prices.lamination_per_m2":
		return s.Paper.Lamination != LaminationNone
	case "prices.handles_per_1000_bags", "prices.rope_per_m":
		return h.Kind.IsThreaded() || h.Kind.HasPatch()
	case "prices.eyelets_per_1000":
		return h.Kind.HasHoles() && h.Eyelets
	case "prices.board_per_kg":
		return s.hasTopCards() || s.hasBaseCard()
	}
	return true
}

func (s *Spec) hasTopCards() bool { return s.Cards.Top && s.Body.TurnInDepth() > 0 }

func (s *Spec) hasBaseCard() bool { return s.Cards.Base && s.Body.Base != BasePinch }
