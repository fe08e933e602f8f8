package dxf

import "gussetwright/render/scene"

// tables writes the tables of views, line types, layers and styles.
func (d *document) tables(out *tags) {
	out.text(0, "SECTION")
	out.text(2, "TABLES")
	d.viewport(out)
	out.table("LTYPE", lineTypeTable, 3+len(d.lineTypes))
	out.lines(usualLineTypes)
	for _, lineType := range d.lineTypes {
		lineType.write(out, d.take())
	}
	out.text(0, "ENDTAB")
	out.table("LAYER", layerTable, 1+len(d.layers))
	out.lines(layerZero)
	for _, role := range d.roles {
		d.layers[role].write(out, d.take())
	}
	out.text(0, "ENDTAB")
	out.lines(laterTables)
}

// table writes the start of a table with this many records.
func (t *tags) table(name string, own handle, records int) {
	t.text(0, "TABLE")
	t.text(2, name)
	t.handle(5, own)
	t.handle(330, 0)
	t.text(100, "AcDbSymbolTable")
	t.whole(70, records)
}

// record writes the start of a record in a table.
func (t *tags) record(kind string, own, owner handle, class string) {
	t.text(0, kind)
	t.handle(5, own)
	t.handle(330, owner)
	t.text(100, "AcDbSymbolTableRecord")
	t.text(100, class)
}

// viewport writes the window that a program opens: the whole row of pieces.
func (d *document) viewport(out *tags) {
	page := scene.RowMedia(d.pieces)
	out.table("VPORT", viewportTable, 1)
	out.record("VPORT", viewport, viewportTable, "AcDbViewportTableRecord")
	out.text(2, "*ACTIVE")
	out.whole(70, 0)
	out.lines(wholeWindow)
	out.corner(12, page.Center())
	out.lines(grid)
	out.length(40, page.Height())
	out.length(41, page.Width()/page.Height())
	out.lines(looking)
	out.text(0, "ENDTAB")
}

// wholeWindow is a viewport from corner to corner of the window.
const wholeWindow = `
10 0.0
20 0.0
11 1.0
21 1.0
`

// grid holds snap base, snap and grid of 10 mm, and the direction of view from above.
const grid = `
13 0.0
23 0.0
14 10.0
24 10.0
15 10.0
25 10.0
16 0.0
26 0.0
36 1.0
17 0.0
27 0.0
37 0.0
`

// looking holds lens, clipping, angles and modes of the view, all as usual.
const looking = `
42 50.0
43 0.0
44 0.0
50 0.0
51 0.0
71 0
72 100
73 1
74 3
75 0
76 0
77 0
78 0
281 0
65 1
110 0.0
120 0.0
130 0.0
111 1.0
121 0.0
131 0.0
112 0.0
122 1.0
132 0.0
79 0
146 0.0
`
