package bag

// Seams says from how many pieces the tube of the bag is glued.
type Seams string

// The ways to count seams. SeamsAuto takes two only where the blank with one
// seam does not fit the sheet and the pieces with two seams do.
const (
	SeamsOne  Seams = "one"
	SeamsTwo  Seams = "two"
	SeamsAuto Seams = "auto"
)

// Base is the construction of the base.
type Base string

// The base styles.
const (
	BaseBlock   Base = "block"   // block base with envelope corners
	BaseSlotted Base = "slotted" // block base, panel edges cut below the base crease
	BasePinch   Base = "pinch"   // tube folded over once and glued flat
)

// Top is the construction of the top edge.
type Top string

// The top styles.
const (
	TopTurnIn   Top = "turn-in"
	TopStraight Top = "straight"
	TopZigzag   Top = "zigzag"
)

// HandleKind is how the bag is carried.
type HandleKind string

// The carrying styles.
const (
	HandleNone     HandleKind = "none"
	HandleRope     HandleKind = "rope"
	HandleRibbon   HandleKind = "ribbon"
	HandleHandHole HandleKind = "hand-hole"
	HandleTwisted  HandleKind = "twisted"
	HandleStrip    HandleKind = "strip"
)

// HasHoles tells whether the handle passes through round holes in the faces.
func (k HandleKind) HasHoles() bool { return k == HandleRope || k == HandleRibbon }

// HasPatch tells whether the handle is glued in under a paper patch.
func (k HandleKind) HasPatch() bool { return k == HandleTwisted || k == HandleStrip }

// PaperKind is a family of papers with a common bulk.
type PaperKind string

// The kinds of paper.
const (
	PaperGloss    PaperKind = "gloss-coated"
	PaperMatt     PaperKind = "matt-coated"
	PaperUncoated PaperKind = "uncoated"
	PaperKraft    PaperKind = "kraft"
	PaperBoard    PaperKind = "board"
)

// Grain is the side of the bag along which the fibres of the paper lie.
type Grain string

// The grain directions.
const (
	GrainHeight Grain = "height"
	GrainWidth  Grain = "width"
)

// GripperEdge is the side of the sheet that the press grips.
type GripperEdge string

// The edges that a press can grip.
const (
	GripperLong  GripperEdge = "long"
	GripperShort GripperEdge = "short"
)

// Fit is how artwork fills the panel it is placed on.
type Fit string

// The ways to fit.
const (
	FitCover   Fit = "cover"
	FitContain Fit = "contain"
	FitExact   Fit = "exact"
)

// artworkPlaces lists the names that Artwork.On may take.
var artworkPlaces = []string{
	"blank", "front", "back", "gusset-left", "gusset-right",
	"front-turn-in", "back-turn-in", "gusset-left-turn-in", "gusset-right-turn-in",
	"front-base", "back-base", "gusset-left-base", "gusset-right-base",
}
