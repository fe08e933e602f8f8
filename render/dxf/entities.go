package dxf

import (
	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// entities writes all items, role by role, each piece at its place in the row.
func (d *document) entities(out *tags) {
	out.text(0, "SECTION")
	out.text(2, "ENTITIES")
	moves := scene.Row(d.pieces)
	for i, piece := range d.pieces {
		items := piece.ByRole()
		for _, role := range d.roles {
			for _, item := range items[role] {
				d.item(out, item, moves[i])
			}
		}
	}
	out.text(0, "ENDSEC")
}

func (d *document) item(out *tags, item scene.Item, move geometry.Vec2) {
	layer := d.layers[item.Layer()]
	pen := pen{document: d, tags: out, layer: layer, lineType: continuous, weight: layer.weight}
	switch item := item.(type) {
	case scene.Stroke:
		pen.lineType, pen.weight = d.lineTypes.name(item.Dash), weight(item.Width)
		pen.path(item.Path.Translate(move))
	case scene.Fill:
		pen.fill(item.Path.Translate(move))
	case scene.Label:
		item.At = item.At.Add(move)
		pen.label(item)
	}
}

// pen draws the entities of one item.
type pen struct {
	*document
	*tags
	layer    layer
	lineType string
	weight   int
}

// entity writes the start of an entity.
func (p pen) entity(kind string) {
	p.text(0, kind)
	p.handle(5, p.take())
	p.handle(330, modelSpace)
	p.text(100, "AcDbEntity")
	p.text(8, p.layer.name)
	if p.lineType != p.layer.lineType {
		p.text(6, p.lineType)
	}
	if p.weight != p.layer.weight {
		p.whole(370, p.weight)
	}
}

// path draws a circle as such and everything else edge by edge, because cutting
// plotters and rule benders take lines and arcs.
func (p pen) path(path geometry.Path) {
	if center, radius, ok := path.AsCircle(); ok {
		p.circle(center, radius)
		return
	}
	for i := range path.Len() {
		p.edge(path.Edge(i))
	}
}

// edge draws a line or an arc, and nothing for an edge without length, which
// strict readers refuse.
func (p pen) edge(edge geometry.Edge) {
	switch {
	case edge.From.Near(edge.To):
	case scene.Straight(edge):
		p.entity("LINE")
		p.text(100, "AcDbLine")
		p.point(10, edge.From)
		p.point(11, edge.To)
	default:
		p.arc(edge.Arc())
	}
}

// circle draws a circle, and nothing for one without size.
func (p pen) circle(center geometry.Vec2, radius float64) {
	if radius <= geometry.Tolerance {
		return
	}
	p.entity("CIRCLE")
	p.text(100, "AcDbCircle")
	p.point(10, center)
	p.length(40, radius)
}

// arc draws an arc. In a DXF file every arc runs anticlockwise, so one that
// turns clockwise is written from its end to its start.
func (p pen) arc(arc geometry.Arc) {
	start, end := arc.Start, arc.Start+arc.Sweep
	if arc.Sweep < 0 {
		start, end = end, start
	}
	p.entity("ARC")
	p.text(100, "AcDbCircle")
	p.point(10, arc.Center)
	p.length(40, arc.Radius)
	p.text(100, "AcDbArc")
	p.angle(50, start)
	p.angle(51, end)
}

// fill draws triangles and convex four-sided shapes as solids, and the outline
// of everything else.
func (p pen) fill(path geometry.Path) {
	corners, ok := solid(path)
	if !ok {
		p.path(path)
		return
	}
	p.entity("SOLID")
	p.text(100, "AcDbTrace")
	for i, corner := range corners {
		p.point(10+i, corner)
	}
}

// solid returns the corners of a SOLID, whose third and fourth corner are
// exchanged against the way round. A triangle repeats its last corner.
func solid(path geometry.Path) (corners [4]geometry.Vec2, ok bool) {
	n := len(path.Vertices)
	if n != 3 && n != 4 {
		return corners, false
	}
	turns := 0
	for i := range n {
		before, after := path.Edge(i), path.Edge((i+1)%n)
		if !scene.Straight(before) {
			return corners, false
		}
		if before.To.Sub(before.From).Cross(after.To.Sub(after.From)) > 0 {
			turns++
		}
	}
	v := path.Vertices
	corners = [4]geometry.Vec2{v[0].Vec2, v[1].Vec2, v[n-1].Vec2, v[2].Vec2}
	return corners, turns == n || turns == 0
}
