package describe

import (
	"gussetwright/app/document"
	"gussetwright/geometry/job"
	"gussetwright/geometry/load"
)

// Job is what the run takes. What is not reckoned, such as cartons of a bag that does not
// pack flat, is 0.
type Job struct {
	Quantity      float64 `json:"quantity"`
	BagsPrinted   float64 `json:"bags_printed"`
	Sheets        float64 `json:"sheets"` // with make-ready
	Caliper       float64 `json:"caliper_um"`
	PaperArea     float64 `json:"paper_area_mm2"`
	PaperGrams    float64 `json:"paper_g"`
	FilmGrams     float64 `json:"film_g"`
	CardGrams     float64 `json:"cards_g"`
	BagGrams      float64 `json:"bag_g"`
	PaperKilos    float64 `json:"paper_kg"`
	RopePerHandle float64 `json:"rope_per_handle_mm"`
	RopeMetres    float64 `json:"rope_m"`
	Eyelets       float64 `json:"eyelets"`
	CutMetres     float64 `json:"cutting_rule_m"`
	CreaseMetres  float64 `json:"creasing_rule_m"`
	GlueArea      float64 `json:"glue_area_mm2"`
	// Of one bag packed flat, without handle and cards; 0 where it cannot be packed.
	PackedWidth     float64 `json:"packed_width_mm"`
	PackedHeight    float64 `json:"packed_height_mm"`
	PackedThickness float64 `json:"packed_thickness_mm"`
	Cards           []Card  `json:"cards"`

	Forms           int     `json:"forms"`
	MakeReadySheets float64 `json:"make_ready_sheets"` // among sheets
	SheetGrams      float64 `json:"sheet_g"`
	DieCutMetres    float64 `json:"rule_cut_m"` // in the dies of all forms
	DieCreaseMetres float64 `json:"rule_crease_m"`
	GlueMetres      float64 `json:"glue_m"` // of one bag, as its grams
	GlueGrams       float64 `json:"glue_g"`
	GlueKilos       float64 `json:"glue_kg"` // of the run

	Cuttings   []Cutting `json:"card_sheets"`
	BoardKilos float64   `json:"board_kg"`
	Packing
	Load  *Load  `json:"load,omitempty"`  // only of a bag with handle
	Quote *Quote `json:"quote,omitempty"` // only where a price is known
	// LoadEstimate is that of Load, 0 without.
	LoadEstimate float64 `json:"load_estimate_kg"`
}

// Card is a loose part.
type Card struct {
	Role     string  `json:"role"`
	Count    int     `json:"count"`
	Width    float64 `json:"width_mm"`
	Height   float64 `json:"height_mm"`
	Grammage float64 `json:"grammage_gsm"`
}

// Cutting is how one kind of card is cut. Patches are cut from the press sheet, which has
// no name here.
type Cutting struct {
	Role         string  `json:"role"`
	Sheet        string  `json:"sheet"`
	Width        float64 `json:"width_mm"`
	Height       float64 `json:"height_mm"`
	Up           int     `json:"up"`
	WastePercent float64 `json:"waste_percent"`
	Sheets       float64 `json:"sheets"`
	Kilos        float64 `json:"kg"`
}

// Packing is the run in cartons and on pallets. Boxes are width, length and height, the
// width and the length those of the bag.
type Packing struct {
	PileThickness    float64    `json:"pile_thickness_mm"` // of one bag, with cards and looseness
	BagsPerCarton    float64    `json:"bags_per_carton"`
	Inside           [3]float64 `json:"carton_inside_mm"`
	Outside          [3]float64 `json:"carton_outside_mm"`
	CartonKilos      float64    `json:"carton_kg"` // full
	Cartons          float64    `json:"cartons"`
	GrossKilos       float64    `json:"gross_kg"` // of all cartons
	CartonsPerLayer  int        `json:"cartons_per_layer"`
	CartonsPerPallet float64    `json:"cartons_per_pallet"`
	Pallets          float64    `json:"pallets"`
	PalletHeight     float64    `json:"pallet_height_mm"` // of the fullest
	PalletKilos      float64    `json:"pallet_kg"`        // of the fullest, with the pallet
}

// Load is what the bag might carry, by the place that decides.
type Load struct {
	Kilos    float64 `json:"kg"`
	Weakest  string  `json:"weakest"`
	Layers   int     `json:"layers"`
	Force    float64 `json:"breaks_at_n"`
	Strength float64 `json:"strength_kn_m"`
	Measured bool    `json:"strength_measured"`
	Safety   float64 `json:"safety_factor"`
	Caution  string  `json:"caution"`
	sentence string
}

func jobOf(s *document.Snapshot) Job {
	j := s.Job
	described := Job{
		Quantity: j.Quantity, BagsPrinted: j.BagsPrinted, Sheets: j.Sheets, Caliper: j.CaliperMicrons,
		PaperArea: j.PaperArea, PaperGrams: j.PaperGrams, FilmGrams: j.FilmGrams, CardGrams: j.CardGrams, BagGrams: j.BagGrams,
		PaperKilos: j.PaperKilograms, RopePerHandle: j.RopePerHandle, RopeMetres: j.RopeMetres,
		Eyelets: j.Eyelets, CutMetres: j.CutMetres, CreaseMetres: j.CreaseMetres, GlueArea: j.GlueArea,
		Forms: j.Forms, MakeReadySheets: j.MakeReadySheets, SheetGrams: j.SheetGrams,
		DieCutMetres: j.DieCutMetres, DieCreaseMetres: j.DieCreaseMetres,
		GlueMetres: j.GlueMetres, GlueGrams: j.GlueGrams, GlueKilos: j.GlueKilograms,
		Cards: []Card{}, Cuttings: []Cutting{}, Load: loadOf(s), Quote: quoteOf(s),
	}
	for _, card := range j.Cards {
		described.Cards = append(described.Cards, Card(card))
	}
	for _, c := range job.CutCards(&s.Blank, &j) {
		described.Cuttings = append(described.Cuttings, Cutting{
			c.Card.Role, c.Sheet.Name, c.Sheet.Width, c.Sheet.Height, c.Up, c.Waste, c.Sheets, c.Kilograms,
		})
		if c.Board() {
			described.BoardKilos += c.Kilograms
		}
	}
	if described.Load != nil {
		described.LoadEstimate = described.Load.Kilos
	}
	described.pack(job.Pack(&s.Blank, &j))
	return described
}

func (j *Job) pack(p job.Packing) {
	j.PackedWidth, j.PackedHeight, j.PackedThickness = p.Width, p.Height, p.Thickness
	j.Packing = Packing{
		PileThickness: p.PileThickness, BagsPerCarton: p.BagsPerCarton, Inside: sides(p.Inside), Outside: sides(p.Outside),
		CartonKilos: p.CartonGrams / 1000, Cartons: p.Cartons, GrossKilos: p.Kilograms,
		CartonsPerLayer: p.Layer.Up(), CartonsPerPallet: p.PerPallet, Pallets: p.Pallets,
		PalletHeight: p.PalletHeight, PalletKilos: p.PalletKilograms,
	}
}

func sides(b job.Box) [3]float64 { return [3]float64{b.Width, b.Length, b.Height} }

func loadOf(s *document.Snapshot) *Load {
	e, some := load.Of(&s.Blank)
	if !some {
		return nil
	}
	return &Load{
		Kilos: e.Kilograms, Weakest: string(e.Weakest.Name), Layers: e.Weakest.Layers, Force: e.Weakest.Force,
		Strength: e.Strength, Measured: e.Measured, Safety: load.Safety, Caution: load.Caution().String(),
		sentence: e.Sentence().String(),
	}
}
