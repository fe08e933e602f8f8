package dieline

import (
	"math"
	"strings"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// columnNames are the names of panels on the drawing. Left and right are those of
// someone who looks at the front of the standing bag.
var columnNames = map[string]phrase.Word{
	"front": "Front", "back": "Back", "gusset-right": "Right gusset", "gusset-left": "Left gusset", "seam-flap": "Seam flap",
}

// leastLetters is how small the letters of a name in longer words may become, as a share
// of their usual size.
const leastLetters = 0.5

// names writes in each panel what it is, or beside a printed blank.
func (d *drafter) names() {
	if d.outside {
		d.namesOutside()
		return
	}
	for _, panel := range d.piece.Panels {
		if panel.Column == "seam-flap" && panel.Row != blank.RowBody || d.screen.covers(panel.ID) {
			continue
		}
		d.name(panel, d.panelName(panel.ID))
	}
}

// PanelName returns what the panel with a name such as "front-base" is called on the
// drawing. The rows of the seam flap have one name.
func PanelName(id string) string {
	column, isBase := strings.CutSuffix(id, string(blank.RowBase))
	column, isTurnIn := strings.CutSuffix(column, string(blank.RowTurnIn))
	name := string(columnNames[column])
	switch {
	case column == "seam-flap":
		return name
	case isBase:
		return name + " base flap"
	case isTurnIn:
		return name + " turn-in"
	}
	return name
}

// panelName says what a panel is called.
func (d *drafter) panelName(id string) string { return d.voice.Word(phrase.Word(PanelName(id))) }

// name writes a name where it keeps clear of creases: in the middle of a face, in
// the left half of a gusset, upright where it is too long to lie. A name in a file that
// has room in English has it in longer words too, in smaller letters.
func (d *drafter) name(panel blank.Panel, name string) {
	box := panel.Box
	gusset := panel.Column == "gusset-left" || panel.Column == "gusset-right"
	if gusset && (panel.Row != blank.RowBase || d.spec.Body.Base == bag.BasePinch) {
		box.Max.X = box.Center().X
	}
	size := d.u
	if panel.Row == blank.RowBody && !gusset && panel.Column != "seam-flap" {
		size *= 2
	}
	at, turn, found := d.spotIn(box, panel, name, size)
	if usual := PanelName(panel.ID); d.screen == nil && name != usual {
		least := size * max(leastLetters, typeface.Advance(usual, size, false)/typeface.Advance(name, size, false))
		for !found && size > least {
			size = max(0.95*size, least)
			at, turn, found = d.spotIn(box, panel, name, size)
		}
	}
	if !found {
		return
	}
	label := scene.Label{Role: scene.Legend, Text: name, At: at, Size: size, Anchor: scene.Middle, Turn: turn}
	if d.screen != nil {
		if !d.onCornerCrease(panel, label) {
			above, below := label, label
			above.At.Y = box.Max.Y - 1.2*size
			below.At.Y = box.Min.Y + size/2
			d.place(label, above, below)
		}
		return
	}
	d.add(label)
	d.lettering = append(d.lettering, labelBox(label).Inset(-size/4))
}

// spotIn returns where a name stands in a box of a panel, upright or lying, and whether
// it has room there.
func (d *drafter) spotIn(box geometry.Rect, panel blank.Panel, name string, size float64) (at geometry.Vec2, turn float64, found bool) {
	width, at := typeface.Advance(name, size, false), box.Center()
	switch {
	case width <= box.Width()-size-2*d.spec.Print.Safe && panel.Column != "seam-flap":
		at.Y -= size / 3
	case width <= box.Height()-size && size <= box.Width():
		at.X += size / 3
		turn = math.Pi / 2
	default:
		return at, 0, false
	}
	return at, turn, true
}

// onCornerCrease tells whether a name in a face's base flap would lie on the base
// corner creases, which run from its upper corners inward at 45°.
func (d *drafter) onCornerCrease(panel blank.Panel, name scene.Label) bool {
	face := panel.Column == "front" || panel.Column == "back"
	if panel.Row != blank.RowBase || !face || d.spec.Body.Base != bag.BaseBlock {
		return false
	}
	text := labelBox(name)
	reach := panel.Box.Max.Y - text.Min.Y
	return text.Min.X < panel.Box.Min.X+reach || text.Max.X > panel.Box.Max.X-reach
}

// grain draws the direction of the fibres on the widest face, or beside a printed blank.
func (d *drafter) grain() {
	if d.outside {
		d.grainOutside()
		return
	}
	face, found := d.piece.Panel("back")
	if !found {
		face, _ = d.piece.Panel("front")
	}
	along := geometry.Vec2{Y: 1}
	if d.spec.Paper.Grain == bag.GrainWidth {
		along = geometry.Vec2{X: 1}
	}
	middle := geometry.Vec2{X: face.Box.Center().X, Y: face.Box.Min.Y + face.Box.Height()*0.3}
	reach := 6 * d.u
	if d.screen != nil {
		// The name of the face stands a fifth of its height above.
		reach = min(3.5*d.u, face.Box.Height()/5-2*d.u)
		if reach < 1.5*d.u || face.Box.Width() < 10*d.u {
			return
		}
	}
	half := along.Scale(min(reach, face.Box.Height()/6, face.Box.Width()/4))
	d.line(scene.Legend, middle.Sub(half), middle.Add(half))
	d.arrowhead(scene.Legend, middle.Add(half), along)
	d.arrowhead(scene.Legend, middle.Sub(half), along.Scale(-1))
	beside := geometry.Vec2{X: d.u, Y: -d.u / 3}
	if along.X != 0 {
		beside = geometry.Vec2{X: 0, Y: d.u / 2}
	}
	d.note(scene.Legend, d.voice.Word("grain"), middle.Add(beside))
}
