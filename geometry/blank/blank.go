package blank

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/sheet"
)

// Blank is all the flat parts of one bag.
type Blank struct {
	Spec   bag.Spec
	Seams  int // 1 or 2
	Pieces []Piece
	Cards  []Card
}

// Piece is one cut piece of paper. A bag with one seam has one, a bag with two
// seams has a front and a back piece with the same outline.
type Piece struct {
	Name    string
	Count   int // of this piece in one bag
	Width   float64
	Height  float64
	Levels  Levels
	Outline geometry.Path // closed, anticlockwise
	Panels  []Panel
	Lines   []Line
	Holes   []Hole
	Glue    []GlueArea
}

// Levels are the heights at which the rows of a piece meet.
type Levels struct {
	Base     float64 // base crease
	FlatFold float64 // flat-fold crease; equal to Base when there is none
	TopFold  float64 // top fold, or the raw top edge
	Top      float64 // upper edge of the piece
}

// Row is one of the three bands of a piece.
type Row string

// The rows, from the bottom up. They are also the endings of panel names.
const (
	RowBase   Row = "-base"
	RowBody   Row = ""
	RowTurnIn Row = "-turn-in"
)

// Panel is one field between creases and edges.
type Panel struct {
	ID     string // such as "front", "gusset-right-base" or "seam-flap-turn-in"
	Column string // such as "front" or "seam-flap"
	Row    Row
	Shape  geometry.Path // closed, anticlockwise
	Box    geometry.Rect // the bounds of Shape
}

// Kind tells a cut from a crease.
type Kind string

// The kinds of line.
const (
	Cut    Kind = "cut"
	Crease Kind = "crease"
)

// Role says what a line is for.
type Role string

// The roles of lines.
const (
	RoleOutline    Role = "outline"
	RoleHandHole   Role = "hand-hole"
	RoleSlit       Role = "slit"
	RolePanelEdge  Role = "panel-edge"
	RoleGusset     Role = "gusset"
	RoleTopFold    Role = "top-fold"
	RoleBase       Role = "base"
	RoleFlatFold   Role = "flat-fold"
	RoleBaseCorner Role = "base-corner"
	RolePack       Role = "pack"
)

// Fold is the direction of a crease seen from the print side.
type Fold string

// The fold directions. A cut has none.
const (
	NoFold   Fold = "none"
	Mountain Fold = "mountain"
	Valley   Fold = "valley"
)

// Opposite returns the fold direction seen from the other side.
func (f Fold) Opposite() Fold {
	switch f {
	case Mountain:
		return Valley
	case Valley:
		return Mountain
	}
	return f
}

// Line is one cut or crease. Only cuts are ever curved.
type Line struct {
	geometry.Edge
	Kind Kind
	Role Role
	Fold Fold
}

// Hole is a round hole.
type Hole struct {
	Center   geometry.Vec2
	Diameter float64
	Panel    string // the panel it is punched in
}

// Side is a side of the paper.
type Side string

// The sides of the paper.
const (
	PrintSide   Side = "print"
	ReverseSide Side = "reverse"
)

// GlueRole says what a glue area holds.
type GlueRole string

// The roles of glue areas.
const (
	GlueSeam        GlueRole = "seam"
	GlueBase        GlueRole = "base"              // the back base flap on the front one
	GlueGussetFront GlueRole = "base-gusset-front" // what the front base flap covers of the gusset base flaps
	GlueGussetBack  GlueRole = "base-gusset-back"  // what the back one covers of the rest
	GlueCornerFront GlueRole = "base-corner-front" // envelope corners of the front base flap
	GlueCornerBack  GlueRole = "base-corner-back"  // those of the back one
	GluePinch       GlueRole = "pinch"
	GlueTurnIn      GlueRole = "turn-in"
	GlueTopCard     GlueRole = "top-card"
	GluePatch       GlueRole = "patch"
)

// GlueArea is a part of a panel that is glued. Ink, varnish and film must keep
// off the areas on the print side.
type GlueArea struct {
	Role  GlueRole
	Side  Side
	Panel string
	Shape geometry.Path
	// Openings are what of Shape stays free of glue: holes, slits and hand holes with
	// some paper around them.
	Openings []geometry.Path
}

// Area returns how much paper is glued, in mm²: the shape less the openings, which may
// reach beyond it.
func (a *GlueArea) Area() float64 { return a.Shape.Area() - areaWithin(a.Openings, a.Shape.Bounds()) }

// Card is a loose rectangle of board or paper that goes into the bag.
type Card struct {
	Role     string // "top", "base" or "patch"
	Count    int    // in one bag
	Width    float64
	Height   float64
	Grammage float64 // g/m²
}

// Panel returns the panel with the given name.
func (p *Piece) Panel(id string) (Panel, bool) {
	for i := range p.Panels {
		if p.Panels[i].ID == id {
			return p.Panels[i], true
		}
	}
	return Panel{}, false
}

// Box returns the bounding box of the piece, its lower left corner at the origin.
func (p *Piece) Box() geometry.Rect { return geometry.RectAt(0, 0, p.Width, p.Height) }

// PiecesPerBag returns the number of pieces in one bag.
func (b *Blank) PiecesPerBag() int {
	count := 0
	for i := range b.Pieces {
		count += b.Pieces[i].Count
	}
	return count
}

// SheetPiece returns what is laid on press sheets: a piece with its grain and, where the
// sheet wants them, its bleed and its outline. Both pieces of a bag with two seams have the same.
func (b *Blank) SheetPiece() sheet.Piece {
	piece, spec := &b.Pieces[0], &b.Spec
	laid := sheet.Piece{
		Width: piece.Width, Height: piece.Height, PerBag: b.PiecesPerBag(), Area: piece.Outline.Area(),
		Grain: grainRules[spec.Sheet.GrainRule], Fibres: spec.Paper.Grain,
		SheetFibres: sheet.Fibres(spec.Sheet.Grain),
	}
	if spec.RunsOff() {
		laid.Ink = spec.Print.Bleed
	}
	if spec.Sheet.RoomForBleed {
		laid.Bleed = spec.Print.Bleed
	}
	if spec.Sheet.Interlock {
		laid.Outline = &piece.Outline
	}
	return laid
}

var grainRules = map[bag.GrainRule]sheet.GrainRule{
	bag.GrainRequired: sheet.GrainRequired, bag.GrainPreferred: sheet.GrainPreferred, bag.GrainFree: sheet.GrainFree,
}
