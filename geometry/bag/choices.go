package bag

import "slices"

// ProductKind is what goes into the bag.
type ProductKind string

// The kinds of product.
const (
	ProductBox     ProductKind = "box"
	ProductBottle  ProductKind = "bottle"
	ProductGarment ProductKind = "garment"
	ProductFree    ProductKind = "free" // loose goods that take the shape of the bag
)

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
	HandleTape     HandleKind = "tape" // flat cotton tape through upright slits
)

// HasHoles tells whether the handle passes through round holes in the faces.
func (k HandleKind) HasHoles() bool { return k == HandleRope || k == HandleRibbon }

// HasSlits tells whether the handle passes through upright slits in the faces.
func (k HandleKind) HasSlits() bool { return k == HandleTape }

// IsThreaded tells whether the handle passes through the faces, by holes or by slits.
func (k HandleKind) IsThreaded() bool { return k.HasHoles() || k.HasSlits() }

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

// PaperColour is the colour of the bare paper.
type PaperColour string

// The colours of paper.
const (
	ColourWhite   PaperColour = "white"
	ColourNatural PaperColour = "natural" // unbleached, brown
)

// Lamination is a film on the print side.
type Lamination string

// The laminations.
const (
	LaminationNone  Lamination = "none"
	LaminationGloss Lamination = "gloss"
	LaminationMatt  Lamination = "matt"
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

// SheetGrain is the side of the press sheet along which its fibres lie.
type SheetGrain string

// The grain of a sheet. GrainEither is for sheets that can be ordered as needed.
const (
	GrainEither      SheetGrain = "either"
	GrainAlongWidth  SheetGrain = "width"
	GrainAlongHeight SheetGrain = "height"
)

// GrainRule says how strictly the fibres must lie as the bag wants them.
type GrainRule string

// The rules: all bags right, most bags right, or no matter.
const (
	GrainRequired  GrainRule = "required"
	GrainPreferred GrainRule = "preferred"
	GrainFree      GrainRule = "free"
)

// Fit is how artwork fills the place it is put on.
type Fit string

// The ways to fit: over the whole place and its bleed, within the place, or in the
// size that the file states, middle on middle.
const (
	FitCover   Fit = "cover"
	FitContain Fit = "contain"
	FitExact   Fit = "exact"
)

// Repeat is how artwork is laid side by side until it fills its place.
type Repeat string

// The ways to repeat.
const (
	RepeatNone     Repeat = "none"
	RepeatGrid     Repeat = "grid"
	RepeatHalfDrop Repeat = "half-drop" // every second column half a step lower
)

// Content says what artwork holds, where that makes a difference to what is checked.
type Content string

// The contents.
const (
	HoldsPicture Content = "picture"
	HoldsEAN13   Content = "ean-13" // a bar code, filling the artwork with its quiet zones
)

// The places that take artwork on more than one panel.
const (
	OnBlank      = "blank" // every piece as a whole
	OnFrontPiece = "front-piece"
	OnBackPiece  = "back-piece"
	OnFaces      = "faces"   // the front and the back alike
	OnGussets    = "gussets" // both gussets alike
)

// artworkPlaces lists the names that Artwork.On may take.
var artworkPlaces = []string{
	OnBlank, OnFrontPiece, OnBackPiece, OnFaces, OnGussets,
	"front", "back", "gusset-left", "gusset-right",
	"front-turn-in", "back-turn-in", "gusset-left-turn-in", "gusset-right-turn-in",
	"front-base", "back-base", "gusset-left-base", "gusset-right-base",
}

// ArtworkPlaces returns the names that Artwork.On may take, the large places first.
func ArtworkPlaces() []string { return slices.Clone(artworkPlaces) }
