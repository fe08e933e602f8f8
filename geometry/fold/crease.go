package fold

import (
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
)

// field is a part of a piece in which creases are looked for.
type field struct {
	role    blank.Role
	columns []string // nil for all
	row     []blank.Row
}

var (
	everyRow = []blank.Row{blank.RowBase, blank.RowBody, blank.RowTurnIn}
	bodyRow  = []blank.Row{blank.RowBody}
	baseRow  = []blank.Row{blank.RowBase}
	gussets  = []string{"gusset-right", "gusset-left"}
)

// creaseFields returns which creases a stage folds.
func creaseFields(stage string) []field {
	switch stage {
	case "turn-in":
		return []field{{blank.RoleTopFold, nil, bodyRow}}
	case "tube":
		return []field{{blank.RolePanelEdge, nil, everyRow}}
	case "seam":
		return []field{{blank.RolePanelEdge, []string{"seam-flap"}, everyRow}}
	case "flatten":
		return []field{{blank.RoleGusset, gussets, everyRow}, {blank.RolePanelEdge, nil, everyRow}}
	case "base-gussets":
		return []field{
			{blank.RoleBase, gussets, bodyRow},
			{blank.RoleBaseCorner, nil, baseRow},
			{blank.RolePanelEdge, nil, baseRow},
		}
	case "base-front":
		return []field{{blank.RoleBase, []string{"front"}, bodyRow}}
	case "base-back":
		return []field{{blank.RoleBase, []string{"back"}, bodyRow}}
	case "base-pinch":
		return []field{{blank.RoleBase, nil, bodyRow}}
	case "packed":
		return []field{
			{blank.RoleFlatFold, nil, bodyRow},
			{blank.RolePack, nil, bodyRow},
			{blank.RoleGusset, gussets, []blank.Row{blank.RowBody, blank.RowTurnIn}},
		}
	}
	return nil
}

// creasesOf returns the creases that a stage folds. A crease that runs across
// several columns is cut where one ends.
func creasesOf(laid *blank.Blank, stage string) []Crease {
	var creases []Crease
	for i := range laid.Pieces {
		piece := &laid.Pieces[i]
		for _, of := range creaseFields(stage) {
			for _, line := range piece.Lines {
				if line.Kind != blank.Crease || line.Role != of.role {
					continue
				}
				for _, edge := range of.parts(piece, line.Edge) {
					creases = append(creases, Crease{i, edge, line.Role, line.Fold})
				}
			}
		}
	}
	return creases
}

// parts returns what of a crease lies in the field. A crease up the blank belongs to
// the column on its right, one along the border of two rows to the body.
func (f field) parts(piece *blank.Piece, edge geometry.Edge) []geometry.Edge {
	var parts []geometry.Edge
	for _, panel := range piece.Panels {
		if !slices.Contains(f.row, panel.Row) || f.columns != nil && !slices.Contains(f.columns, panel.Column) {
			continue
		}
		if part, inside := within(panel.Box, edge); inside {
			parts = append(parts, part)
		}
	}
	return parts
}

// within returns the part of a crease inside of a box, which an upright crease on
// the right border is not.
func within(box geometry.Rect, edge geometry.Edge) (geometry.Edge, bool) {
	from, along := 0.0, 1.0
	direction := edge.To.Sub(edge.From)
	for _, axis := range [2]struct{ start, step, least, most float64 }{
		{edge.From.X, direction.X, box.Min.X, box.Max.X}, {edge.From.Y, direction.Y, box.Min.Y, box.Max.Y},
	} {
		if axis.step == 0 {
			if axis.start < axis.least-geometry.Tolerance || axis.start > axis.most+geometry.Tolerance {
				return geometry.Edge{}, false
			}
			continue
		}
		a, b := (axis.least-axis.start)/axis.step, (axis.most-axis.start)/axis.step
		from, along = max(from, min(a, b)), min(along, max(a, b))
	}
	part := geometry.Edge{From: edge.From.Add(direction.Scale(from)), To: edge.From.Add(direction.Scale(along))}
	onRight := direction.X == 0 && edge.From.X >= box.Max.X-geometry.Tolerance
	return part, !onRight && part.To.Sub(part.From).Dot(direction) > geometry.Tolerance*direction.Length()
}
