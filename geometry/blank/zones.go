package blank

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// ArtZone says where artwork for one panel may and may not go.
type ArtZone struct {
	Panel string
	// Bleed is the panel and the bleed around it: past cut edges because a cut
	// wanders, past creases because a fold does.
	Bleed geometry.Path
	// Safe is where text and marks may stand. It is empty on a panel too small
	// for the safe margin.
	Safe geometry.Path
	// KeepFree lists what must stay free of ink: print-side glue areas, and what of a
	// turn-in is glued on.
	KeepFree []geometry.Path
	// KeepClear lists what text and marks must keep off though ink may run over
	// it: holes, hand holes and slits with the safe margin around them.
	KeepClear []geometry.Path
}

// ArtZones returns the zones of every panel of the piece.
func (p *Piece) ArtZones(spec bag.Spec) []ArtZone {
	zones := make([]ArtZone, 0, len(p.Panels))
	glued := p.GluedTurnIns(spec)
	for _, panel := range p.Panels {
		zone := ArtZone{
			Panel: panel.ID,
			Bleed: panel.Box.Inset(-spec.Print.Bleed).Path(),
			Safe:  p.safeShape(panel, spec).Offset(-spec.Print.Safe),
		}
		for _, area := range p.Glue {
			if area.Side == PrintSide && area.Panel == panel.ID {
				zone.KeepFree = append(zone.KeepFree, area.Shape)
			}
		}
		for _, area := range glued {
			if area.Panel == panel.ID {
				zone.KeepFree = append(zone.KeepFree, area.Box.Path())
			}
		}
		if panel.Column == "seam-flap" {
			zone.Safe = geometry.Path{}
			zone.KeepFree = []geometry.Path{panel.Shape}
		}
		for _, hole := range p.Holes {
			if hole.Panel == panel.ID {
				zone.KeepClear = append(zone.KeepClear, geometry.Circle(hole.Center, hole.Diameter/2+spec.Print.Safe))
			}
		}
		for _, cut := range p.CutOuts() {
			if box := cut.Shape.Bounds(); panel.Box.Contains(box.Center()) {
				margin := 2 * spec.Print.Safe
				zone.KeepClear = append(zone.KeepClear, roundEnded(box.Center(), box.Width()+margin, box.Height()+margin))
			}
		}
		zones = append(zones, zone)
	}
	return zones
}

// safeShape returns what of a panel shows as one plane field on the finished bag:
// of a face's base flap the part between the base corner creases, of a body the
// part below the teeth of a zigzag.
func (p *Piece) safeShape(panel Panel, spec bag.Spec) geometry.Path {
	box := panel.Box
	isFace := panel.Column == "front" || panel.Column == "back"
	switch {
	case panel.Row == RowBase && isFace && spec.Body.Base == bag.BaseBlock:
		reach := box.Height()
		if 2*reach >= box.Width() {
			return geometry.Path{}
		}
		return geometry.Polygon(
			geometry.Vec2{X: box.Min.X + reach, Y: box.Min.Y}, geometry.Vec2{X: box.Max.X - reach, Y: box.Min.Y},
			box.Max, geometry.Vec2{X: box.Min.X, Y: box.Max.Y},
		)
	case panel.Row == RowBody && spec.Body.Top == bag.TopZigzag:
		box.Max.Y -= min(spec.Body.ZigzagDepth, spec.Body.Height/2)
	}
	return box.Path()
}

// BleedOutline returns the outline of the piece moved out by the bleed. Slots and
// the teeth of a zigzag are bridged: artwork runs over them.
func (p *Piece) BleedOutline(bleed float64) geometry.Path {
	flap, found := p.Panel("seam-flap")
	if !found {
		return p.Box().Path().Offset(bleed)
	}
	var right []geometry.Vertex
	for _, v := range p.Outline.Vertices {
		if v.X >= flap.Box.Min.X-geometry.Tolerance && v.Bulge == 0 {
			right = append(right, v)
		}
	}
	bridged := geometry.Path{Closed: true, Vertices: []geometry.Vertex{{}}}
	first, last := right[0], right[len(right)-1]
	bridged.Vertices = append(bridged.Vertices, geometry.Vertex{Vec2: geometry.Vec2{X: first.X}})
	bridged.Vertices = append(bridged.Vertices, right...)
	bridged.Vertices = append(bridged.Vertices,
		geometry.Vertex{Vec2: geometry.Vec2{X: last.X, Y: p.Height}}, geometry.Vertex{Vec2: geometry.Vec2{Y: p.Height}})
	if outline := bridged.Offset(bleed); outline.Len() > 0 {
		return outline
	}
	// Some edge beside the flap is short beside the bleed. Ink past the slants of the
	// flap falls on waste, so the box does as well.
	return p.Box().Path().Offset(bleed)
}
