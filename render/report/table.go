package report

import (
	"slices"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// Table is rows of texts under titles. A text that is too long for its column is
// broken into lines, and a row of more than a third of a page may go over to the next;
// the titles are then set again.
type Table struct {
	Columns []TableColumn
	Rows    [][]string // a row may be shorter than Columns
}

// TableColumn is the head of a column.
type TableColumn struct {
	Title   string
	Numbers bool // stand at the right, one below the other
}

// Row is a value with what it is.
type Row struct{ Label, Value string }

// cellGap is the distance in mm between columns.
const cellGap = 4.0

// Table sets a table over the width of the column.
func (c *Column) Table(table Table) {
	titles, hasTitle := make([]string, len(table.Columns)), false
	for i, column := range table.Columns {
		titles[i] = column.Title
		hasTitle = hasTitle || column.Title != ""
	}
	g := grid{c: c, columns: table.Columns, ruled: true}
	for _, row := range append([][]string{titles}, table.Rows...) {
		for len(g.columns) < len(row) {
			g.columns = append(slices.Clone(g.columns), TableColumn{})
		}
	}
	body := c.layout.body()
	head := Style{Size: 0.85 * body.Size, Bold: true, Colour: c.layout.Accent}
	g.styles = func(int) Style { return body }
	natural := make([]float64, len(g.columns))
	for i := range natural {
		natural[i] = widest(table.Rows, i, body)
		if i < len(titles) {
			natural[i] = max(natural[i], head.Advance(titles[i]))
		}
	}
	g.widths = share(natural, c.Width()-cellGap*float64(max(len(natural)-1, 0)))
	if hasTitle {
		g.head = &gridRow{cells: g.broken(titles, func(int) Style { return head }), styles: func(int) Style { return head }}
	}
	g.set(table.Rows)
}

// Rows sets values behind their labels.
func (c *Column) Rows(rows ...Row) {
	body, label := c.layout.body(), c.layout.body()
	label.Colour = faint
	var texts [][]string
	for _, row := range rows {
		texts = append(texts, []string{row.Label, row.Value})
	}
	first := min(widest(texts, 0, label), 0.4*c.Width())
	g := grid{c: c, columns: make([]TableColumn, 2), widths: []float64{first, c.Width() - cellGap - first}}
	g.styles = func(column int) Style { return []Style{label, body}[column] }
	g.set(texts)
}

// widest returns the width of the longest text in a column of a table.
func widest(rows [][]string, column int, style Style) float64 {
	width := 0.0
	for _, row := range rows {
		if column < len(row) {
			for _, line := range style.Lines(row[column], 1e9) {
				width = max(width, style.Advance(line))
			}
		}
	}
	return width
}

// share gives each column the width that it would like, as long as that is no more
// than an equal share of what the others leave; what is left over is spread evenly.
func share(natural []float64, width float64) []float64 {
	widths := make([]float64, len(natural))
	left, open := width, len(natural)
	for open > 0 {
		fair, given := left/float64(open), false
		for i, wish := range natural {
			if widths[i] == 0 && wish <= fair {
				widths[i] = max(wish, 1e-6)
				left, open, given = left-wish, open-1, true
				break
			}
		}
		if given {
			continue
		}
		for i := range widths {
			if widths[i] == 0 {
				widths[i] = fair
			}
		}
		return widths
	}
	for i := range widths {
		widths[i] += left / float64(len(widths))
	}
	return widths
}

// grid sets rows of cells.
type grid struct {
	c       *Column
	columns []TableColumn
	widths  []float64
	styles  func(column int) Style
	head    *gridRow
	ruled   bool // lines between rows
}

// gridRow is a row whose texts are broken into lines.
type gridRow struct {
	cells  [][]string
	styles func(column int) Style
}

func (g *grid) broken(texts []string, styles func(int) Style) [][]string {
	cells := make([][]string, len(texts))
	for i, text := range texts {
		if text != "" {
			cells[i] = styles(i).Lines(text, g.widths[i])
		}
	}
	return cells
}

// set places all rows, with the head above the first of each page.
func (g *grid) set(rows [][]string) {
	if len(rows) == 0 && g.head != nil {
		g.place(*g.head, true)
	}
	for i, texts := range rows {
		row := gridRow{g.broken(texts, g.styles), g.styles}
		parts := g.parts(row)
		for j, part := range parts {
			height := g.height(part)
			if g.head != nil && i == 0 && j == 0 {
				g.c.Keep(g.height(*g.head) + height)
				g.place(*g.head, true)
			} else if g.c.Left() < height-geometry.Tolerance && !g.c.first() && g.head != nil {
				g.c.turn()
				g.place(*g.head, true)
			}
			g.place(part, j == len(parts)-1)
		}
	}
	g.c.gap = g.c.layout.Size
}

// parts returns a row whole, or line by line where it takes more than a third of a
// page.
func (g *grid) parts(row gridRow) []gridRow {
	lines := 0
	for _, cell := range row.cells {
		lines = max(lines, len(cell))
	}
	if g.height(row) <= g.c.area.Height()/3 {
		return []gridRow{row}
	}
	parts := make([]gridRow, lines)
	for line := range parts {
		parts[line] = gridRow{make([][]string, len(row.cells)), row.styles}
		for i, cell := range row.cells {
			if line < len(cell) {
				parts[line].cells[i] = cell[line : line+1]
			}
		}
	}
	return parts
}

// padding is the height in mm above and below the text of a ruled row.
func (g *grid) padding() float64 {
	if g.ruled {
		return 0.3 * g.c.layout.Size
	}
	return 0.12 * g.c.layout.Size
}

func (g *grid) height(row gridRow) float64 {
	height := 0.0
	for i, cell := range row.cells {
		height = max(height, row.styles(i).Height(max(len(cell), 1)))
	}
	return height + 2*g.padding()
}

// place sets a row; it is ruled off where it ends.
func (g *grid) place(row gridRow, ends bool) {
	height := g.height(row)
	g.c.place(strip{height, func(top float64) []Item {
		var items []Item
		x := g.c.area.Min.X
		for i, cell := range row.cells {
			at, align := x, scene.Start
			if g.columns[i].Numbers {
				at, align = x+g.widths[i], scene.End
			}
			items = append(items, row.styles(i).items(cell, at, top-g.padding(), align)...)
			x += g.widths[i] + cellGap
		}
		if g.ruled && ends {
			items = append(items, level(g.c.area, top-height, hairline))
		}
		return items
	}})
}
