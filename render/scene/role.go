package scene

// Role is what an item of a drawing is for. Each role has a layer of its own in
// every file.
type Role int

// The roles, in the order in which they are drawn, lowest first.
const (
	Artwork Role = iota
	Gluing
	ContentArea
	Bleed
	Dimensions
	Legend
	Creasing
	ReverseCreasing
	Punching
	Cutting
	SheetEdge
	Gripper
	ColourBar
	PieceNumbers
	PressMarks
)

// RGB is a screen colour.
type RGB struct{ R, G, B uint8 }

// CMYK is a printed colour, each ink from 0 to 1.
type CMYK struct{ C, M, Y, K float64 }

// Style is how a role looks and how files declare it.
type Style struct {
	Name   string // of the layer and of the spot colour
	Group  string // processing steps group of ISO 19593-1; empty for artwork
	Step   string // processing step type of ISO 19593-1; empty where the group has none
	Screen RGB
	Proof  CMYK    // what a device without the spot colour shows
	Width  float64 // mm, of its main lines
	Help   string  // what the lines of this role mean, for the legend
}

// Roles lists all roles of the drawing of a piece in drawing order.
func Roles() []Role {
	return []Role{Artwork, Gluing, ContentArea, Bleed, Dimensions, Legend, Creasing, ReverseCreasing, Punching, Cutting}
}

// SheetRoles lists the roles that only the drawing of a press sheet has, which are
// drawn after the others.
func SheetRoles() []Role {
	return []Role{SheetEdge, Gripper, ColourBar, PieceNumbers, PressMarks}
}

// AllRoles lists Roles and SheetRoles.
func AllRoles() []Role { return append(Roles(), SheetRoles()...) }

// OnEveryPlate tells whether the role prints with every ink, as marks do by which
// plates and dies are set to each other.
func (r Role) OnEveryPlate() bool { return r == PressMarks }

// Style returns the look of the role. The colours are a palette of our own;
// dashes and labels tell the roles apart without them. 0.25 mm and 0.18 mm are
// line widths of ISO 128 (values from memory).
func (r Role) Style() Style { return styles[r] }

// String returns the name of the layer.
func (r Role) String() string { return styles[r].Name }

var styles = map[Role]Style{
	Artwork:         {Name: "Artwork"},
	Gluing:          {"Gluing", "Structural", "Gluing", RGB{118, 129, 38}, CMYK{0.30, 0.15, 1, 0.30}, 0.13, "glue area on the print side: no ink, varnish or film"},
	ContentArea:     {"ContentArea", "Positions", "ContentArea", RGB{74, 117, 96}, CMYK{0.70, 0.25, 0.60, 0.15}, 0.13, "safe area for text and marks"},
	Bleed:           {"Bleed", "Structural", "Bleed", RGB{196, 70, 120}, CMYK{0.10, 0.85, 0.20, 0.05}, 0.13, "artwork runs to here"},
	Dimensions:      {"Dimensions", "Dimensions", "", RGB{78, 88, 99}, CMYK{0.30, 0.15, 0.10, 0.60}, 0.13, "in millimetres"},
	Legend:          {"Legend", "Legend", "", RGB{31, 41, 51}, CMYK{0.30, 0.20, 0.10, 0.80}, 0.13, "names and notes"},
	Creasing:        {"Creasing", "Structural", "Creasing", RGB{10, 120, 125}, CMYK{0.85, 0.15, 0.35, 0.20}, 0.25, "mountain fold, away from the print side"},
	ReverseCreasing: {"ReverseCreasing", "Structural", "ReverseCreasing", RGB{190, 85, 20}, CMYK{0.10, 0.70, 1, 0.10}, 0.25, "valley fold, toward the print side"},
	Punching:        {"Punching", "Structural", "Punching", RGB{44, 66, 150}, CMYK{0.95, 0.80, 0, 0.05}, 0.25, "round hole"},
	Cutting:         {"Cutting", "Structural", "Cutting", RGB{92, 22, 78}, CMYK{0.55, 1, 0.20, 0.35}, 0.35, "cut edge"},
	SheetEdge:       {"SheetEdge", "Legend", "", RGB{84, 84, 84}, CMYK{0, 0, 0, 0.70}, 0.25, "edge of the press sheet"},
	Gripper:         {"Gripper", "Legend", "", RGB{150, 88, 12}, CMYK{0.20, 0.60, 1, 0.25}, 0.13, "held by the press: nothing is printed here"},
	ColourBar:       {"ColourBar", "Legend", "", RGB{60, 92, 150}, CMYK{0.80, 0.55, 0.05, 0.10}, 0.13, "room for the colour bar of the press"},
	PieceNumbers:    {"PieceNumbers", "Legend", "", RGB{31, 41, 51}, CMYK{0.30, 0.20, 0.10, 0.80}, 0.13, "number of the blank on the sheet"},
	PressMarks:      {"PressMarks", "", "", RGB{20, 20, 20}, CMYK{1, 1, 1, 1}, 0.13, "register and trim marks, on every plate"},
}
