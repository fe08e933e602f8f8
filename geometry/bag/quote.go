package bag

// Packing is how finished bags are packed flat and sent.
type Packing struct {
	BagsPerCarton float64 `json:"bags_per_carton"`
	// Looseness is how much higher a pile of bags is than its paper, in percent: rope,
	// eyelets and air lie between.
	Looseness    float64 `json:"pile_looseness_percent"`
	CartonRoom   float64 `json:"carton_room_mm"` // what a carton is wider and longer inside than the bag
	CartonWall   float64 `json:"carton_wall_mm"`
	CartonWeight float64 `json:"carton_g"`       // empty
	CartonMost   float64 `json:"carton_most_kg"` // full; what one person may lift
	PalletWidth  float64 `json:"pallet_width_mm"`
	PalletDepth  float64 `json:"pallet_depth_mm"`
	PalletDeck   float64 `json:"pallet_deck_mm"` // height of the empty pallet
	PalletHeight float64 `json:"pallet_most_height_mm"`
	PalletWeight float64 `json:"pallet_kg"` // empty
	PalletMost   float64 `json:"pallet_most_kg"`
}

// Prices are what the user pays for the parts of a run, in any one currency. All are 0,
// not known, until the user enters them: none is proposed.
type Prices struct {
	Paper      float64 `json:"paper_per_kg"` // of sheets whose own price is not known
	MakeReady  float64 `json:"make_ready_per_form"`
	Printing   float64 `json:"printing_per_1000_sheets"`
	Lamination float64 `json:"lamination_per_m2"`
	Die        float64 `json:"die_per_form"`
	Rule       float64 `json:"rule_per_m"` // cutting and creasing rule in the die
	Cutting    float64 `json:"cutting_per_1000_sheets"`
	Folding    float64 `json:"folding_per_1000_bags"` // and gluing
	Handles    float64 `json:"handles_per_1000_bags"` // fitting them
	Rope       float64 `json:"rope_per_m"`
	Eyelets    float64 `json:"eyelets_per_1000"`
	Board      float64 `json:"board_per_kg"` // of top and base cards
	Glue       float64 `json:"glue_per_kg"`
	Carton     float64 `json:"carton_each"`
	Pallet     float64 `json:"pallet_each"`
	Once       float64 `json:"other_once"`
	Other      float64 `json:"other_per_1000_bags"`
	Markup     float64 `json:"markup_percent"` // on everything
}

// Known tells whether any price was entered. A markup alone is none.
func (p Prices) Known() bool {
	p.Markup = 0
	return p != Prices{}
}

// StockSheet is a sheet that the user can buy beside the usual ones.
type StockSheet struct {
	Name   string     `json:"name"`
	Width  float64    `json:"width_mm"`
	Height float64    `json:"height_mm"`
	Grain  SheetGrain `json:"grain"`
	Price  float64    `json:"price"` // of one sheet; 0 when it is not known
}

// priced builds the row of one price. No least and no usual value is given: a price is
// the user's own.
func priced(path, label, unit string, at func(*Spec) *float64, help string) Field {
	return number(path, label, "", unit, 0, 1_000_000, at, help, "", "a price beyond a million is a slip of the hand")
}

var quoteFields = []Field{
	whole(number("packing.bags_per_carton", "Bags per carton", "", "", 1, 10_000, func(s *Spec) *float64 { return &s.Packing.BagsPerCarton },
		"Bags that lie flat on each other in one carton; fewer where they would be too heavy.",
		"a carton holds at least one bag", "no carton holds more")),
	number("packing.pile_looseness_percent", "Looseness of the pile", "", "%", 0, 300, func(s *Spec) *float64 { return &s.Packing.Looseness },
		"How much higher a pile of bags is than its paper: handles and air lie between. Measure a pile where it matters.",
		"", "such a pile was not pressed"),
	number("packing.carton_room_mm", "Room in the carton", "", "mm", 0, 100, func(s *Spec) *float64 { return &s.Packing.CartonRoom },
		"How much wider and longer the carton is inside than the packed bag.",
		"", "the bags would slide about"),
	number("packing.carton_wall_mm", "Carton wall", "", "mm", 0, 20, func(s *Spec) *float64 { return &s.Packing.CartonWall },
		"Thickness of the corrugated board of the carton.",
		"", "no corrugated board is thicker"),
	number("packing.carton_g", "Carton weight", "", "g", 0, 10_000, func(s *Spec) *float64 { return &s.Packing.CartonWeight },
		"Weight of one empty carton.",
		"", "a heavier one is a crate"),
	number("packing.carton_most_kg", "Heaviest carton", "", "kg", 1, 50, func(s *Spec) *float64 { return &s.Packing.CartonMost },
		"What a full carton may weigh; local rules on lifting decide.",
		"a carton weighs something", "nobody may be asked to lift more"),
	number("packing.pallet_width_mm", "Pallet width", "", "mm", 300, 1500, func(s *Spec) *float64 { return &s.Packing.PalletWidth },
		"One side of the pallet; 1200 on the flat pallet of EN 13698-1.",
		"no pallet is smaller", "no pallet is larger"),
	number("packing.pallet_depth_mm", "Pallet depth", "", "mm", 300, 1500, func(s *Spec) *float64 { return &s.Packing.PalletDepth },
		"The other side of the pallet; 800 on the flat pallet of EN 13698-1.",
		"no pallet is smaller", "no pallet is larger"),
	number("packing.pallet_deck_mm", "Pallet deck", "", "mm", 0, 300, func(s *Spec) *float64 { return &s.Packing.PalletDeck },
		"Height of the empty pallet.",
		"", "no pallet is higher"),
	number("packing.pallet_most_height_mm", "Highest pallet", "", "mm", 200, 3000, func(s *Spec) *float64 { return &s.Packing.PalletHeight },
		"Height of the loaded pallet with its deck, as the carrier allows.",
		"nothing could be loaded", "it would pass no door"),
	number("packing.pallet_kg", "Pallet weight", "", "kg", 0, 100, func(s *Spec) *float64 { return &s.Packing.PalletWeight },
		"Weight of the empty pallet.",
		"", "no pallet is heavier"),
	number("packing.pallet_most_kg", "Heaviest pallet", "", "kg", 50, 3000, func(s *Spec) *float64 { return &s.Packing.PalletMost },
		"What the loaded pallet may weigh, as the carrier allows.",
		"nothing could be loaded", "no fork-lift of a shop takes more"),

	priced("prices.paper_per_kg", "Paper", "/kg", func(s *Spec) *float64 { return &s.Prices.Paper },
		"Price of the paper by weight, for sheets whose own price is not known."),
	priced("prices.make_ready_per_form", "Plates and make-ready", "/form", func(s *Spec) *float64 { return &s.Prices.MakeReady },
		"Plates and setting up the press, for every form that is printed."),
	priced("prices.printing_per_1000_sheets", "Printing", "/1000 sheets", func(s *Spec) *float64 { return &s.Prices.Printing },
		"Running the press."),
	priced("prices.lamination_per_m2", "Film lamination", "/m²", func(s *Spec) *float64 { return &s.Prices.Lamination },
		"Film and putting it on, by the area of the sheets."),
	priced("prices.die_per_form", "Cutting die", "/form", func(s *Spec) *float64 { return &s.Prices.Die },
		"The die without its rule, for every form; 0 where a die is there already."),
	priced("prices.rule_per_m", "Rule in the die", "/m", func(s *Spec) *float64 { return &s.Prices.Rule },
		"Cutting and creasing rule, by its length in the die."),
	priced("prices.cutting_per_1000_sheets", "Die-cutting", "/1000 sheets", func(s *Spec) *float64 { return &s.Prices.Cutting },
		"Cutting, creasing and stripping."),
	priced("prices.folding_per_1000_bags", "Folding and gluing", "/1000 bags", func(s *Spec) *float64 { return &s.Prices.Folding },
		"From the cut blank to the bag, by hand or by machine."),
	priced("prices.handles_per_1000_bags", "Fitting handles", "/1000 bags", func(s *Spec) *float64 { return &s.Prices.Handles },
		"Threading and knotting, or gluing in."),
	priced("prices.rope_per_m", "Handle material", "/m", func(s *Spec) *float64 { return &s.Prices.Rope },
		"Rope, ribbon, tape, cord or strip by its length."),
	priced("prices.eyelets_per_1000", "Eyelets", "/1000", func(s *Spec) *float64 { return &s.Prices.Eyelets },
		"Eyelets and setting them."),
	priced("prices.board_per_kg", "Board for cards", "/kg", func(s *Spec) *float64 { return &s.Prices.Board },
		"Board of the top and base cards, by the weight of its sheets."),
	priced("prices.glue_per_kg", "Adhesive", "/kg", func(s *Spec) *float64 { return &s.Prices.Glue },
		"Glue as it is bought, by weight."),
	priced("prices.carton_each", "Carton", "each", func(s *Spec) *float64 { return &s.Prices.Carton },
		"One carton."),
	priced("prices.pallet_each", "Pallet", "each", func(s *Spec) *float64 { return &s.Prices.Pallet },
		"One pallet with its wrapping."),
	priced("prices.other_once", "Other, once", "", func(s *Spec) *float64 { return &s.Prices.Once },
		"Whatever is paid once for the run, such as a sample, proofs or carriage."),
	priced("prices.other_per_1000_bags", "Other, by bags", "/1000 bags", func(s *Spec) *float64 { return &s.Prices.Other },
		"Whatever else is paid by the number of bags."),
	number("prices.markup_percent", "Markup", "", "%", 0, 1000, func(s *Spec) *float64 { return &s.Prices.Markup },
		"Added to the sum of all costs.",
		"", "more than ten times the cost is a slip of the hand"),
}
