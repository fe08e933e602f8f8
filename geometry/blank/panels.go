package blank

import "gussetwright/geometry"

// panels returns the fields of the piece, column by column, each from the bottom
// up. Together they tile the outline.
func (f *frame) panels() []Panel {
	panels := make([]Panel, 0, 3*len(f.columns))
	add := func(c column, row Row, shape geometry.Path) {
		if len(shape.Vertices) < 3 {
			return
		}
		panels = append(panels, Panel{
			ID: panelID(c.name, row), Column: c.name, Row: row, Shape: shape, Box: shape.Bounds(),
		})
	}
	for _, c := range f.columns {
		if c.kind == seamFlap {
			if f.flapBottom() < f.levels.Base {
				add(c, RowBase, band(f.flap, 0, f.levels.Base))
			}
			add(c, RowBody, band(f.flap, f.levels.Base, f.levels.TopFold))
			if f.hasTurnIn() {
				add(c, RowTurnIn, band(f.flap, f.levels.TopFold, f.levels.Top))
			}
			continue
		}
		add(c, RowBase, f.baseShape(c))
		add(c, RowBody, f.bodyShape(c))
		if f.hasTurnIn() {
			add(c, RowTurnIn, geometry.RectAt(c.left, f.levels.TopFold, c.width, f.levels.Top-f.levels.TopFold).Path())
		}
	}
	return panels
}

// panelID returns the name of a panel. The names are spelled out rather than
// joined because they are asked for on every change of a drag.
func panelID(column string, row Row) string {
	if row == RowBody {
		return column
	}
	if id, known := rowIDs[column]; known {
		return id[row]
	}
	return column + string(row)
}

var rowIDs = func() map[string]map[Row]string {
	ids := map[string]map[Row]string{}
	for _, column := range []string{"front", "gusset-right", "back", "gusset-left", "seam-flap"} {
		ids[column] = map[Row]string{RowBase: column + string(RowBase), RowTurnIn: column + string(RowTurnIn)}
	}
	return ids
}()

// baseShape returns a base flap, narrowed by half a slot on both sides where the
// corners are slotted.
func (f *frame) baseShape(c column) geometry.Path {
	base := f.levels.Base
	if f.slot == 0 {
		return geometry.RectAt(c.left, 0, c.width, base).Path()
	}
	half := f.slot / 2
	left, right := c.left, c.right()
	return geometry.Path{Closed: true, Vertices: []geometry.Vertex{
		{Vec2: geometry.Vec2{X: left + half, Y: 0}},
		{Vec2: geometry.Vec2{X: right - half, Y: 0}},
		{Vec2: geometry.Vec2{X: right - half, Y: base - half}, Bulge: quarterRight},
		{Vec2: geometry.Vec2{X: right, Y: base}},
		{Vec2: geometry.Vec2{X: left, Y: base}, Bulge: quarterRight},
		{Vec2: geometry.Vec2{X: left + half, Y: base - half}},
	}}
}

// bodyShape returns the part of a column between base crease and top fold.
func (f *frame) bodyShape(c column) geometry.Path {
	low, high := f.levels.Base, f.levels.TopFold
	if f.teeth == 0 {
		return geometry.RectAt(c.left, low, c.width, high-low).Path()
	}
	shape := geometry.Polygon(
		geometry.Vec2{X: c.left, Y: low}, geometry.Vec2{X: c.right(), Y: low},
		geometry.Vec2{X: c.right(), Y: f.lowEdge()},
	)
	f.traceTeeth(c, func(x, y, _ float64) {
		shape.Vertices = append(shape.Vertices, geometry.Vertex{Vec2: geometry.Vec2{X: x, Y: y}})
	})
	return shape
}
