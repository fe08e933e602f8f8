package dxf

import (
	"math"
	"slices"
	"strings"

	"gussetwright/render/scene"
)

// layer is the layer of one role. What its items share stands in the layer, and
// only an item that differs says so.
type layer struct {
	name     string
	colour   int // colour index
	lineType string
	weight   int // hundredths of a millimetre
}

// colours holds the colour index of each role: near the hue it has on the screen,
// light enough to be seen on a black ground and dark enough on a white one.
// Index 7 is drawn black or white, whichever can be seen.
var colours = map[scene.Role]int{
	scene.Artwork:         9,
	scene.Gluing:          52,
	scene.ContentArea:     112,
	scene.Bleed:           233,
	scene.Dimensions:      8,
	scene.Legend:          7,
	scene.Creasing:        132,
	scene.ReverseCreasing: 30,
	scene.Punching:        160,
	scene.Cutting:         220,
	scene.SheetEdge:       8,
	scene.Gripper:         32,
	scene.ColourBar:       150,
	scene.PieceNumbers:    7,
	scene.PressMarks:      7,
}

// weights holds the line weights that AC1015 knows, in hundredths of a
// millimetre (value from memory; ezdxf lists the same as VALID_DXF_LINEWEIGHTS).
var weights = []int{0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211}

// rolesOf returns the roles that have a layer: all of a piece, those without items as
// well, so that a machine can be set up once for all bags; and of a press sheet those
// with items.
func rolesOf(pieces []scene.Drawing) []scene.Role {
	roles := scene.Roles()
	for _, role := range scene.SheetRoles() {
		uses := func(item scene.Item) bool { return item.Layer() == role }
		if slices.ContainsFunc(pieces, func(d scene.Drawing) bool { return slices.ContainsFunc(d.Items, uses) }) {
			roles = append(roles, role)
		}
	}
	return roles
}

// layersOf returns a layer for each of the roles.
func layersOf(pieces []scene.Drawing, roles []scene.Role, types lineTypes) map[scene.Role]layer {
	layers := make(map[scene.Role]layer)
	for _, role := range roles {
		layers[role] = layer{
			name:     strings.ToUpper(role.Spelled("_")),
			colour:   colours[role],
			lineType: usualLineType(pieces, role, types),
			weight:   weight(role.Style().Width),
		}
	}
	return layers
}

// usualLineType returns the line type that most strokes of the role have. Of two
// that are used as often, dashes go before none and the first before the second.
// Without strokes it is continuous.
func usualLineType(pieces []scene.Drawing, role scene.Role, types lineTypes) string {
	uses := make(map[string]int)
	for _, piece := range pieces {
		for _, item := range piece.Items {
			if stroke, ok := item.(scene.Stroke); ok && stroke.Role == role {
				uses[types.name(stroke.Dash)]++
			}
		}
	}
	usual := continuous
	for _, lineType := range slices.Backward(types) {
		if uses[lineType.name] > 0 && uses[lineType.name] >= uses[usual] {
			usual = lineType.name
		}
	}
	return usual
}

// weight returns the line weight closest to a width in mm.
func weight(width float64) int {
	closest := weights[0]
	for _, w := range weights {
		if math.Abs(float64(w)-width*100) < math.Abs(float64(closest)-width*100) {
			closest = w
		}
	}
	return closest
}

// write adds the record of the layer. Group code 390 names the plot style.
func (l layer) write(out *tags, own handle) {
	out.record("LAYER", own, layerTable, "AcDbLayerTableRecord")
	out.text(2, l.name)
	out.whole(70, 0)
	out.whole(62, l.colour)
	out.text(6, l.lineType)
	out.whole(370, l.weight)
	out.handle(390, plotStyle)
}
