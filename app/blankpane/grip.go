package blankpane

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
)

// grip is a thing on a piece that can be dragged to change entries of the bag.
type grip struct {
	edge  geometry.Edge // where it lies; a hole has both ends in its centre
	reach float64       // mm round the edge that belong to it, for a hole its radius
	pulls []pull        // what it changes
}

// pull is one entry that a grip changes. The thing moves by move when the entry
// grows by one millimetre, so an edge follows the pointer also where it stands
// after two faces that both grow.
type pull struct {
	path string
	move geometry.Vec2
}

// direction is the way in which a grip can be dragged.
type direction int

const (
	nowhere direction = iota
	sideways
	upright
	anyway
)

func (g *grip) direction() direction {
	var way direction
	for _, p := range g.pulls {
		if p.move.X != 0 {
			way |= sideways
		}
		if p.move.Y != 0 {
			way |= upright
		}
	}
	return way
}

// The entries that can be dragged.
const (
	widthPath   = "bag.width_mm"
	gussetPath  = "bag.gusset_mm"
	heightPath  = "bag.height_mm"
	turnInPath  = "bag.turn_in_mm"
	overlapPath = "bag.base_overlap_mm"
	flapPath    = "bag.seam_flap_mm"
	spacingPath = "handle.spacing_mm"
	dropPath    = "handle.drop_mm"
)

// grips returns what can be dragged on a piece, holes first, for they lie above
// the lines. y is measured from the base crease, which stays where it is when
// anything is dragged.
func grips(laid *blank.Blank, index int) []grip {
	piece := &laid.Pieces[index]
	all := holeGrips(piece)
	all = append(all, levelGrips(piece, laid.Spec.Body)...)
	return append(all, columnGrips(piece, index)...)
}

// columnGrips returns the right edges of faces, gussets and seam flap. Those of
// the second piece also move with the width of the first, which lies before it.
func columnGrips(piece *blank.Piece, index int) []grip {
	var found []grip
	faces, gussets := 0, 0
	for _, panel := range piece.Panels {
		if panel.Row != blank.RowBody {
			continue
		}
		x := panel.Box.Max.X
		low, high := piece.Levels.Base, piece.Levels.TopFold
		switch panel.Column {
		case "front", "back":
			faces++
			found = append(found, columnGrip(x, 0, piece.Levels.Top, widthPath, faces+index))
		case "seam-flap":
			found = append(found, columnGrip(x, low, high, flapPath, 1+index))
		default:
			gussets++
			found = append(found, columnGrip(x, 0, piece.Levels.Top, gussetPath, gussets+index))
		}
	}
	return found
}

func columnGrip(x, low, high float64, path string, times int) grip {
	edge := geometry.Edge{From: geometry.Vec2{X: x, Y: low}, To: geometry.Vec2{X: x, Y: high}}
	return grip{edge: edge, pulls: []pull{{path, geometry.Vec2{X: float64(times)}}}}
}

// levelGrips returns the top edge, the top fold and the free edge of the base flaps.
func levelGrips(piece *blank.Piece, b bag.Body) []grip {
	level := func(y, depth float64, path string, up float64) grip {
		edge := geometry.Edge{From: geometry.Vec2{Y: y}, To: geometry.Vec2{X: piece.Width, Y: y}}
		return grip{edge: edge, reach: depth, pulls: []pull{{path, geometry.Vec2{Y: up}}}}
	}
	found := []grip{level(0, 0, overlapPath, -1)}
	if piece.Levels.Top > piece.Levels.TopFold {
		return append(found, level(piece.Levels.TopFold, 0, heightPath, 1), level(piece.Levels.Top, 0, turnInPath, 1))
	}
	if b.Top == bag.TopZigzag {
		teeth := min(b.ZigzagDepth, b.Height/2)
		return append(found, level(piece.Levels.Top-teeth/2, teeth/2, heightPath, 1))
	}
	return append(found, level(piece.Levels.Top, 0, heightPath, 1))
}

// holeGrips returns the round holes and the slits, which change spacing and drop, and
// the hand holes, which change the drop.
func holeGrips(piece *blank.Piece) []grip {
	var found []grip
	for _, hole := range piece.Holes {
		panel, _ := piece.Panel(hole.Panel)
		found = append(found, grip{
			edge:  geometry.Edge{From: hole.Center, To: hole.Center},
			reach: hole.Diameter / 2,
			pulls: pairPulls(hole.Center.X < panel.Box.Center().X, panel.Row == blank.RowTurnIn),
		})
	}
	for i, opening := range piece.CutOuts() {
		if opening.Role != blank.RoleSlit {
			continue
		}
		box := opening.Shape.Bounds()
		middle := box.Center()
		found = append(found, grip{
			edge:  geometry.Edge{From: geometry.Vec2{X: middle.X, Y: box.Min.Y}, To: geometry.Vec2{X: middle.X, Y: box.Max.Y}},
			reach: box.Width() / 2,
			pulls: pairPulls(i%2 == 0, middle.Y > piece.Levels.TopFold), // they come in pairs, the left one first
		})
	}
	for _, line := range piece.Lines {
		if line.Role != blank.RoleHandHole || line.Bulge != 0 {
			continue
		}
		up := -1.0
		if line.From.Y > piece.Levels.TopFold {
			up = 1
		}
		found = append(found, grip{edge: line.Edge, pulls: []pull{{dropPath, geometry.Vec2{Y: up}}}})
	}
	return found
}

// pairPulls returns what one opening of a pair changes: the left one widens the spacing
// as it goes left, and one in the turn-in gets more drop as it goes up.
func pairPulls(left, inTurnIn bool) []pull {
	side, up := 0.5, -1.0
	if left {
		side = -0.5
	}
	if inTurnIn {
		up = 1
	}
	return []pull{{spacingPath, geometry.Vec2{X: side}}, {dropPath, geometry.Vec2{Y: up}}}
}

// find returns the grip at a point of the piece, or nil: the nearest of those within
// reach, and a hole before a line.
func find(all []grip, at geometry.Vec2, reach float64) *grip {
	var found *grip
	nearest := math.Inf(1)
	for i := range all {
		g := &all[i]
		distance := max(toEdge(g.edge, at)-g.reach, 0)
		if len(g.pulls) > 1 {
			distance -= reach // a small hole beside a line could not be caught
			if distance > 0 {
				continue
			}
		}
		if distance <= reach && distance < nearest {
			found, nearest = g, distance
		}
	}
	return found
}

// toEdge returns the distance of a point from a straight edge.
func toEdge(edge geometry.Edge, p geometry.Vec2) float64 { return onEdge(edge, p).Sub(p).Length() }

// onEdge returns the point of a straight edge that is nearest to p.
func onEdge(edge geometry.Edge, p geometry.Vec2) geometry.Vec2 {
	along := edge.To.Sub(edge.From)
	square := along.Dot(along)
	if square == 0 {
		return edge.From
	}
	share := min(max(p.Sub(edge.From).Dot(along)/square, 0), 1)
	return edge.From.Add(along.Scale(share))
}

// dragged returns the bag after the grip was dragged by some mm from where it was
// in start. Values snap to whole steps of the given size and stay within their
// limits. Of a grip that changes two entries, one that was moved by less than slack
// keeps its value, so that a hole can be moved down without going sideways. When
// the bag could not be drawn, ok is false.
func (g *grip) dragged(start bag.Spec, by geometry.Vec2, step, slack float64) (spec bag.Spec, ok bool) {
	spec = start
	for _, p := range g.pulls {
		field, known := bag.FieldAt(p.path)
		along := by.Dot(p.move) / p.move.Length()
		if !known || len(g.pulls) > 1 && math.Abs(along) < slack {
			continue
		}
		value := field.Number(&start) + along/p.move.Length()
		value = math.Round(value/step) * step
		value = math.Round(value*1000) / 1000 // 0.1 has no exact multiples
		field.SetNumber(&spec, min(max(value, field.Least), field.Most))
	}
	return spec, spec.Validate() == nil
}

// changes returns the fields that a grip drives, for its label: those that differ
// from start, or the first while none does.
func (g *grip) changes(start, now *bag.Spec) []*bag.Field {
	var fields []*bag.Field
	for _, p := range g.pulls {
		field, known := bag.FieldAt(p.path)
		if known && field.Number(start) != field.Number(now) {
			fields = append(fields, field)
		}
	}
	if len(fields) == 0 {
		for _, p := range g.pulls {
			if field, known := bag.FieldAt(p.path); known {
				fields = append(fields, field)
			}
		}
	}
	return fields
}
