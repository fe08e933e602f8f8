package bag

import "slices"

// Spec is everything that a user can set about one bag. It is a plain value:
// copies do not share anything but the backing arrays of its lists, which are never
// changed in place.
type Spec struct {
	Name string `json:"name,omitempty"`
	// Date is the day of the last change, as YYYY-MM-DD, or empty when unknown.
	Date    string  `json:"date,omitempty"`
	Product Product `json:"product"`
	Body    Body    `json:"bag"`
	Handle  Handle  `json:"handle"`
	Cards   Cards   `json:"cards"`
	Paper   Paper   `json:"paper"`
	Sheet   Sheet   `json:"sheet"`
	Print   Print   `json:"print"`
	Run     Run     `json:"run"`
	Packing Packing `json:"packing"`
	Prices  Prices  `json:"prices"`
	// Currency names the currency of all prices, or is empty.
	Currency string `json:"currency,omitempty"`
	// Breaks are further quantities to quote for.
	Breaks []float64 `json:"price_breaks,omitempty"`
	// Family holds further sizes of the same design, and Stock the user's own sheets.
	Family  []Size       `json:"family,omitempty"`
	Stock   []StockSheet `json:"stock,omitempty"`
	Artwork []Artwork    `json:"artwork,omitempty"`
	// Profile is the name of the ICC file of the printing condition, or empty.
	Profile string `json:"profile,omitempty"`
}

// RunsOff tells whether ink may run off the edges of the blank: there is a background, a
// pattern, or artwork that covers its place or lies on the whole blank.
func (s *Spec) RunsOff() bool {
	return s.Print.Background.Total() > 0 || slices.ContainsFunc(s.Artwork, func(a Artwork) bool {
		return a.Fit == FitCover || a.Repeat == RepeatGrid || a.Repeat == RepeatHalfDrop || a.On == OnBlank || a.On == OnFrontPiece || a.On == OnBackPiece
	})
}

// FileNames returns the names of the files that belong to the bag, each once: the
// artwork in its order, then the profile.
func (s *Spec) FileNames() []string {
	var names []string
	add := func(name string) {
		if name != "" && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	for i := range s.Artwork {
		add(s.Artwork[i].File)
	}
	add(s.Profile)
	return names
}

// Product is what the bag is made for. It has no bearing on the blank: package product
// proposes a size from it.
type Product struct {
	Kind     ProductKind `json:"kind"`
	Width    float64     `json:"width_mm"` // the diameter of a bottle
	Depth    float64     `json:"depth_mm"` // a bottle has none
	Height   float64     `json:"height_mm"`
	Weight   float64     `json:"weight_g"`    // 0 when it is not known
	Ease     float64     `json:"ease_mm"`     // what the bag is wider and deeper than the product
	Headroom float64     `json:"headroom_mm"` // what the bag is higher than the product
}

// Body is the size and the construction of the bag.
type Body struct {
	Width       float64 `json:"width_mm"`
	Gusset      float64 `json:"gusset_mm"`
	Height      float64 `json:"height_mm"`
	TurnIn      float64 `json:"turn_in_mm"`
	BaseOverlap float64 `json:"base_overlap_mm"`
	SeamFlap    float64 `json:"seam_flap_mm"`
	SeamRelief  float64 `json:"seam_relief_mm"`
	// Chamfer is the least angle between the slanted end of the seam flap and
	// the seam crease.
	Chamfer     float64 `json:"chamfer_deg"`
	Seams       Seams   `json:"seams"`
	Base        Base    `json:"base"`
	SlotWidth   float64 `json:"slot_width_mm"`
	Top         Top     `json:"top"`
	ZigzagPitch float64 `json:"zigzag_pitch_mm"`
	ZigzagDepth float64 `json:"zigzag_depth_mm"`
}

// Handle is how the bag is carried.
type Handle struct {
	Kind           HandleKind `json:"kind"`
	HoleDiameter   float64    `json:"hole_diameter_mm"`
	Spacing        float64    `json:"spacing_mm"`
	Drop           float64    `json:"drop_mm"`
	Rise           float64    `json:"rise_mm"`
	Knot           float64    `json:"knot_mm"`
	Eyelets        bool       `json:"eyelets"`
	HandHoleWidth  float64    `json:"hand_hole_width_mm"`
	HandHoleHeight float64    `json:"hand_hole_height_mm"`
	PatchWidth     float64    `json:"patch_width_mm"`
	PatchHeight    float64    `json:"patch_height_mm"`
	SlitHeight     float64    `json:"slit_height_mm"`
}

// Cards are the loose pieces of board that stiffen the top edge and the base.
type Cards struct {
	Top           bool    `json:"top"`
	Base          bool    `json:"base"`
	Clearance     float64 `json:"clearance_mm"`
	TopGrammage   float64 `json:"top_grammage_gsm"`
	BaseGrammage  float64 `json:"base_grammage_gsm"`
	TopEdgeMargin float64 `json:"top_edge_margin_mm"`
}

// Paper is what the blank is cut from. Caliper 0 means grammage × bulk.
type Paper struct {
	Kind       PaperKind   `json:"kind"`
	Colour     PaperColour `json:"colour"`
	Grammage   float64     `json:"grammage_gsm"`
	Caliper    float64     `json:"caliper_um"`
	Grain      Grain       `json:"grain"`
	Lamination Lamination  `json:"lamination"`
	// Strength is the tensile strength in kN/m along the weaker direction, as ISO 1924-2
	// measures it; 0 takes an estimate of the kind.
	Strength float64 `json:"strength_kn_m"`
}

// Sheet is the press sheet and what must stay free on it.
type Sheet struct {
	Width        float64     `json:"width_mm"`
	Height       float64     `json:"height_mm"`
	Gripper      float64     `json:"gripper_mm"`
	GripperEdge  GripperEdge `json:"gripper_edge"`
	Side         float64     `json:"side_mm"`
	Tail         float64     `json:"tail_mm"`
	Gap          float64     `json:"gap_mm"`
	Grain        SheetGrain  `json:"grain"`
	GrainRule    GrainRule   `json:"grain_rule"`
	Interlock    bool        `json:"interlock"`
	RoomForBleed bool        `json:"room_for_bleed"`
}

// Print holds the margins that artwork must keep and the ink beneath all of it.
type Print struct {
	Bleed float64 `json:"bleed_mm"`
	Safe  float64 `json:"safe_mm"`
	Background
}

// Background is the colour of the whole blank as the four process inks print it,
// each in percent of full strength. The zero value is bare paper.
type Background struct {
	Cyan    float64 `json:"background_cyan_percent"`
	Magenta float64 `json:"background_magenta_percent"`
	Yellow  float64 `json:"background_yellow_percent"`
	Black   float64 `json:"background_black_percent"`
}

// Total returns the sum of the four inks in percent, 0 to 400.
func (b Background) Total() float64 { return b.Cyan + b.Magenta + b.Yellow + b.Black }

// Run is how many bags are wanted and what more is spent to get them.
type Run struct {
	Quantity  float64 `json:"quantity"`
	Spoilage  float64 `json:"spoilage_percent"`
	MakeReady float64 `json:"make_ready_sheets"` // for every form
	GlueCoat  float64 `json:"glue_gsm"`          // wet, on every glue area
	MostForms float64 `json:"most_forms"`        // on which a family is ganged; 0 is as many as help
}

// Artwork is one placed file. X and Y move it from where Fit puts it, to the right
// and up as the panel hangs on the blank; Scale and Turn act about its middle. What
// is later in the list lies over what is earlier.
type Artwork struct {
	File    string  `json:"file"`
	Page    float64 `json:"page"` // of a file with several, counted from 1
	On      string  `json:"on"`
	Fit     Fit     `json:"fit"`
	X       float64 `json:"x_mm"`
	Y       float64 `json:"y_mm"`
	Scale   float64 `json:"scale"`
	Turn    float64 `json:"turn_deg"` // anticlockwise
	Mirror  bool    `json:"mirror"`   // left and right exchanged, before it is turned
	Opacity float64 `json:"opacity_percent"`
	Repeat  Repeat  `json:"repeat"`
	Holds   Content `json:"holds"`
}

// NewArtwork returns the file placed as a drop places it: covering the panel.
func NewArtwork(file, on string) Artwork {
	return Artwork{File: file, Page: 1, On: on, Fit: FitCover, Scale: 1, Opacity: 100, Repeat: RepeatNone, Holds: HoldsPicture}
}
