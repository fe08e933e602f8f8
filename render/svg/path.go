package svg

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// stroke writes a drawn line with its width and dashes in mm, nothing for a path
// without edges.
func (d *document) stroke(stroke scene.Stroke, move geometry.Vec2) {
	if stroke.Path.Len() == 0 {
		return
	}
	d.openShape(stroke.Path, move)
	d.measure("stroke-width", stroke.Width)
	if len(stroke.Dash) > 0 {
		d.text(` stroke-dasharray="`)
		for i, length := range stroke.Dash {
			if i > 0 {
				d.text(" ")
			}
			d.number(length)
		}
		d.text(`"`)
	}
	d.text("/>\n")
}

// fill writes a shape in the colour of its role, nothing for a path without edges.
func (d *document) fill(fill scene.Fill, move geometry.Vec2) {
	if fill.Path.Len() == 0 {
		return
	}
	d.openShape(fill.Path, move)
	d.text(` fill="` + colour(fill.Role) + `" stroke="none"/>` + "\n")
}

// openShape writes the start of a circle or a path, which stays open for more
// attributes.
func (d *document) openShape(path geometry.Path, move geometry.Vec2) {
	if center, radius, ok := path.AsCircle(); ok {
		at := d.flip(center, move)
		d.text("<circle")
		d.measure("cx", at.X)
		d.measure("cy", at.Y)
		d.measure("r", radius)
		return
	}
	d.text(`<path d="`)
	d.outline(path, move)
	d.text(`"`)
}

// outline writes the path data of all edges.
func (d *document) outline(path geometry.Path, move geometry.Vec2) {
	d.text("M")
	d.point(path.Vertices[0].Vec2, move)
	for i := range path.Len() {
		edge := path.Edge(i)
		switch {
		case !scene.Straight(edge):
			d.arc(edge, move)
		case path.Closed && i == path.Len()-1:
			// The Z that follows draws this edge.
		default:
			d.text(" L")
			d.point(edge.To, move)
		}
	}
	if path.Closed {
		d.text(" Z")
	}
}

// arc writes a circular edge as arcs of a quarter turn at most. The end points
// and the radius of an arc are rounded, and near a half turn a radius that is a
// hair too long would push the arc aside by many times as much.
func (d *document) arc(edge geometry.Edge, move geometry.Vec2) {
	arc := edge.Arc()
	parts := int(math.Ceil(math.Abs(arc.Sweep)/(math.Pi/2) - geometry.Tolerance))
	// Anticlockwise on the page is against the direction of positive angles,
	// because y grows down.
	sweep := " 0 0 1"
	if arc.Sweep > 0 {
		sweep = " 0 0 0"
	}
	for part := 1; part <= parts; part++ {
		end := edge.To
		if part < parts {
			end = arc.At(float64(part) / float64(parts))
		}
		d.text(" A ")
		d.number(arc.Radius)
		d.text(" ")
		d.number(arc.Radius)
		d.text(sweep)
		d.point(end, move)
	}
}

func (d *document) point(p, move geometry.Vec2) {
	at := d.flip(p, move)
	d.text(" ")
	d.number(at.X)
	d.text(" ")
	d.number(at.Y)
}
