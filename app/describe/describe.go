// Package describe states a bag in numbers: as JSON for other programs and as
// text for people. Keys of the JSON are added to but never renamed.
package describe

import (
	"gussetwright/app/document"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/geometry/sheet"
)

// Description is everything there is to say about a bag. Lengths are mm, x to the
// right and y up from the lower left corner of the piece or the sheet.
type Description struct {
	Name     string    `json:"name"`
	Bag      Bag       `json:"bag"`
	Pieces   []Piece   `json:"pieces"`
	Sheet    Sheet     `json:"sheet"`
	Job      Job       `json:"job"`
	Fold     *Fold     `json:"fold,omitempty"` // only where it is asked for, see FoldOf
	Findings []Finding `json:"findings"`
}

// Bag is the standing bag.
type Bag struct {
	Width    float64 `json:"width_mm"`
	Gusset   float64 `json:"gusset_mm"`
	Height   float64 `json:"height_mm"`
	Volume   float64 `json:"volume_l"`
	TurnIn   float64 `json:"turn_in_mm"`
	BaseFlap float64 `json:"base_flap_mm"`
	Seams    int     `json:"seams"`
}

// Piece is one cut piece.
type Piece struct {
	Name        string  `json:"name"`
	Count       int     `json:"count"`
	Width       float64 `json:"width_mm"`
	Height      float64 `json:"height_mm"`
	OutlineArea float64 `json:"outline_area_mm2"`
	Panels      []Panel `json:"panels"`
	Lines       []Line  `json:"lines"`
	Holes       []Hole  `json:"holes"`
	Glue        []Glue  `json:"glue"`
}

// Panel is the bounding box of a panel.
type Panel struct {
	ID     string  `json:"id"`
	X      float64 `json:"x_mm"`
	Y      float64 `json:"y_mm"`
	Width  float64 `json:"width_mm"`
	Height float64 `json:"height_mm"`
	Area   float64 `json:"area_mm2"`
}

// Line is a cut or a crease. Bulge is the tangent of a quarter of the angle that
// a curved cut turns through.
type Line struct {
	Kind  string  `json:"kind"`
	Role  string  `json:"role"`
	Fold  string  `json:"fold"`
	X1    float64 `json:"x1_mm"`
	Y1    float64 `json:"y1_mm"`
	X2    float64 `json:"x2_mm"`
	Y2    float64 `json:"y2_mm"`
	Bulge float64 `json:"bulge,omitempty"`
}

// Hole is a round hole.
type Hole struct {
	X        float64 `json:"x_mm"`
	Y        float64 `json:"y_mm"`
	Diameter float64 `json:"diameter_mm"`
	Panel    string  `json:"panel"`
}

// Glue is one glue area.
type Glue struct {
	Role  string  `json:"role"`
	Area  float64 `json:"area_mm2"`
	Side  string  `json:"side"`
	Panel string  `json:"panel"`
}

// Sheet is the press sheet with its layout.
type Sheet struct {
	Width        float64     `json:"width_mm"`
	Height       float64     `json:"height_mm"`
	GripperEdge  string      `json:"gripper_edge"`
	UsableWidth  float64     `json:"usable_width_mm"`
	UsableHeight float64     `json:"usable_height_mm"`
	Up           int         `json:"up"`
	BagsPerSheet float64     `json:"bags_per_sheet"`
	WastePercent float64     `json:"waste_percent"`
	GrainAlong   string      `json:"grain_along"`
	TooLongX     float64     `json:"too_long_x_mm"`
	TooLongY     float64     `json:"too_long_y_mm"`
	Placements   []Placement `json:"placements"`
}

// Placement is where one piece lies on the sheet.
type Placement struct {
	X    float64 `json:"x_mm"`
	Y    float64 `json:"y_mm"`
	Turn int     `json:"turn_deg"`
}

// Finding is one thing to know, with its place on a piece.
type Finding struct {
	Severity string  `json:"severity"`
	Code     string  `json:"code"`
	Message  string  `json:"message"`
	Remedy   string  `json:"remedy"`
	Piece    int     `json:"piece"`
	X        float64 `json:"x_mm"`
	Y        float64 `json:"y_mm"`
}

// Describe states a snapshot.
func Describe(s *document.Snapshot) Description {
	b := s.Spec.Body
	return Description{
		Name: s.Spec.Name,
		Bag: Bag{
			Width: b.Width, Gusset: b.Gusset, Height: b.Height, Volume: b.Volume(),
			TurnIn: b.TurnInDepth(), BaseFlap: b.BaseFlap(), Seams: s.Blank.Seams,
		},
		Pieces:   pieces(s),
		Sheet:    SheetOf(&s.Plan, s.Spec.Paper.Grain),
		Job:      jobOf(s),
		Findings: FindingsOf(s.Findings),
	}
}

func pieces(s *document.Snapshot) []Piece {
	list := make([]Piece, 0, len(s.Blank.Pieces))
	for i := range s.Blank.Pieces {
		p := &s.Blank.Pieces[i]
		piece := Piece{
			Name: p.Name, Count: p.Count, Width: p.Width, Height: p.Height, OutlineArea: p.Outline.Area(),
			Panels: []Panel{}, Lines: []Line{}, Holes: []Hole{}, Glue: []Glue{},
		}
		for _, panel := range p.Panels {
			piece.Panels = append(piece.Panels, Panel{
				panel.ID, panel.Box.Min.X, panel.Box.Min.Y, panel.Box.Width(), panel.Box.Height(), panel.Shape.Area(),
			})
		}
		for _, line := range p.Lines {
			piece.Lines = append(piece.Lines, Line{
				string(line.Kind), string(line.Role), string(line.Fold),
				line.From.X, line.From.Y, line.To.X, line.To.Y, line.Bulge,
			})
		}
		for _, hole := range p.Holes {
			piece.Holes = append(piece.Holes, Hole{hole.Center.X, hole.Center.Y, hole.Diameter, hole.Panel})
		}
		for _, glue := range p.Glue {
			piece.Glue = append(piece.Glue, Glue{string(glue.Role), glue.Area(), string(glue.Side), glue.Panel})
		}
		list = append(list, piece)
	}
	return list
}

// SheetOf states a plan.
func SheetOf(plan *sheet.Plan, grain bag.Grain) Sheet {
	described := Sheet{
		Width: plan.Sheet.Width, Height: plan.Sheet.Height, GripperEdge: string(plan.Sheet.GripperEdge),
		UsableWidth: max(plan.Usable.Width(), 0), UsableHeight: max(plan.Usable.Height(), 0),
		Up: plan.Up(), BagsPerSheet: plan.BagsPerSheet(), WastePercent: plan.WastePercent(),
		GrainAlong: string(plan.GrainAlong(grain)),
		TooLongX:   plan.TooLong.X, TooLongY: plan.TooLong.Y, Placements: []Placement{},
	}
	for _, p := range plan.Placements {
		described.Placements = append(described.Placements, Placement(p))
	}
	return described
}

// FindingsOf states findings.
func FindingsOf(findings []check.Finding) []Finding {
	list := make([]Finding, 0, len(findings))
	for _, f := range findings {
		list = append(list, Finding{string(f.Severity), f.Code, f.Message.String(), f.Remedy.String(), f.Piece, f.At.X, f.At.Y})
	}
	return list
}
