package dieline

import (
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/render/scene"
)

// Dash patterns in mm. A valley is dashed and a mountain dash-dotted, as origami
// diagrams have drawn them since the notation of Yoshizawa and Randlett.
var (
	mountainDash = []float64{7, 1.5, 1, 1.5}
	valleyDash   = []float64{3.5, 2}
	bleedDash    = []float64{12, 3}
	safeDash     = []float64{1, 2}
)

// behind are the dash patterns of what is glued to the reverse: of a patch that of hidden
// outlines, of a card that of neighbouring parts, as ISO 128 gives them (values from
// memory).
var behind = map[blank.GlueRole][]float64{
	blank.GluePatch: {2, 1}, blank.GlueTopCard: {8, 1.5, 1, 1.5, 1, 1.5},
}

// dashes are the patterns of the roles that have one.
var dashes = map[scene.Role][]float64{
	scene.Creasing: mountainDash, scene.ReverseCreasing: valleyDash, scene.Bleed: bleedDash, scene.ContentArea: safeDash,
}

// lines draws cuts and creases. The edges of a closed cut are joined to one path,
// so that a cutting table runs round it without lifting the knife.
func (d *drafter) lines() {
	d.cut(d.piece.Outline)
	for _, opening := range d.piece.CutOuts() {
		d.cut(opening.Shape)
	}
	for _, line := range d.piece.Lines {
		if line.Kind == blank.Crease {
			d.crease(line)
		}
	}
}

func (d *drafter) cut(path geometry.Path) {
	d.add(scene.Stroke{Role: scene.Cutting, Path: path, Width: scene.Cutting.Style().Width})
}

// crease draws a fold. A mountain folds away from the print side, over the bead
// that a rule leaves when it strikes that side; a valley needs the rule on the
// reverse.
func (d *drafter) crease(line blank.Line) {
	role, dash := scene.Creasing, mountainDash
	if line.Fold == blank.Valley {
		role, dash = scene.ReverseCreasing, valleyDash
	}
	path := geometry.Path{Vertices: []geometry.Vertex{{Vec2: line.From}, {Vec2: line.To}}}
	d.add(scene.Stroke{Role: role, Path: path, Width: role.Style().Width, Dash: d.dashed(dash)})
}

// holes draws round holes with their centre marks.
func (d *drafter) holes() {
	if d.screen != nil {
		for _, opening := range d.piece.CutOuts() {
			d.lettering = append(d.lettering, opening.Shape.Bounds())
		}
		d.keepOffParts()
	}
	for _, hole := range d.piece.Holes {
		radius := hole.Diameter / 2
		d.add(scene.Stroke{
			Role: scene.Punching, Path: geometry.Circle(hole.Center, radius), Width: scene.Punching.Style().Width,
		})
		reach := radius + d.u/2
		if d.screen != nil {
			reach = radius + d.u/3
		}
		for _, arm := range []geometry.Vec2{{X: reach}, {Y: reach}} {
			d.line(scene.Dimensions, hole.Center.Sub(arm), hole.Center.Add(arm))
		}
		if d.screen != nil {
			d.lettering = append(d.lettering, geometry.Rect{Min: hole.Center, Max: hole.Center}.Inset(-reach))
		}
	}
}

// keepOffParts keeps lettering off the lines of parts on the reverse.
func (d *drafter) keepOffParts() {
	for _, area := range d.piece.Glue {
		if behind[area.Role] == nil || area.Side == blank.PrintSide {
			continue
		}
		for i := range area.Shape.Vertices {
			edge := area.Shape.Edge(i)
			line := geometry.Rect{
				Min: geometry.Vec2{X: min(edge.From.X, edge.To.X), Y: min(edge.From.Y, edge.To.Y)},
				Max: geometry.Vec2{X: max(edge.From.X, edge.To.X), Y: max(edge.From.Y, edge.To.Y)},
			}
			d.lettering = append(d.lettering, line.Inset(-d.u/8))
		}
	}
}

// zones draws the bleed outline and the safe areas of what shows on the finished
// bag: faces, gussets and the outer base flaps.
func (d *drafter) zones() {
	if d.spec.Print.Bleed > d.leastMargin() {
		d.add(scene.Stroke{
			Role: scene.Bleed, Path: d.piece.BleedOutline(d.spec.Print.Bleed),
			Width: scene.Bleed.Style().Width, Dash: d.dashed(bleedDash),
		})
	}
	if d.spec.Print.Safe <= d.leastMargin() && d.screen != nil {
		return
	}
	for _, zone := range d.piece.ArtZones(d.spec) {
		panel, _ := d.piece.Panel(zone.Panel)
		shows := panel.Row == blank.RowBody || panel.ID == "back-base"
		if !shows || len(zone.Safe.Vertices) == 0 {
			continue
		}
		d.add(scene.Stroke{
			Role: scene.ContentArea, Path: zone.Safe, Width: scene.ContentArea.Style().Width, Dash: d.dashed(safeDash),
		})
	}
}
