package jobsheet

import (
	"slices"

	"gussetwright/render/report"
	"gussetwright/render/scene"
)

// table is rows of cells under titles. Its first column is text and takes what the others
// leave; the others stand at the right, one number below the other.
type table struct {
	titles []string // empty for none
	rows   [][]string
	rest   string // says what was left out
	after  [][]string
	total  []string // set off; empty for none
}

func (t table) widest(setter) float64 { return 0 }

func (t table) block(s setter) block {
	widths := t.widths(s)
	var blocks []block
	if len(t.titles) > 0 {
		blocks = append(blocks, setRow(s, s.quiet(), t.titles, widths))
	}
	for _, row := range t.rows {
		blocks = append(blocks, setRow(s, s.body(), row, widths))
	}
	if t.rest != "" {
		blocks = append(blocks, s.text(s.quiet(), t.rest))
	}
	for _, row := range t.after {
		blocks = append(blocks, setRow(s, s.body(), row, widths))
	}
	if len(t.total) > 0 {
		blocks = append(blocks, setRow(s, s.strong(), t.total, widths))
	}
	return stack(blocks...)
}

// leastFirst is the share of the width that the first column keeps.
const leastFirst = 0.22

// widths returns the widths of the columns: what their texts take, as far as the first
// column keeps its share.
func (t table) widths(s setter) []float64 {
	rows := slices.Concat(t.rows, t.after)
	columns := max(len(t.titles), len(t.total))
	for _, row := range rows {
		columns = max(columns, len(row))
	}
	widths := make([]float64, columns)
	measure := func(row []string, style report.Style) {
		for i, text := range row {
			widths[i] = max(widths[i], style.Advance(text))
		}
	}
	measure(t.titles, s.quiet())
	measure(t.total, s.strong())
	for _, row := range rows {
		measure(row, s.body())
	}
	others := 0.0
	for i := 1; i < columns; i++ {
		others += widths[i]
	}
	room := s.width - s.gutter()*float64(columns-1)
	if most := (1 - leastFirst) * room; others > most {
		for i := 1; i < columns; i++ {
			widths[i] *= most / others
		}
		others = most
	}
	if columns > 0 {
		widths[0] = room - others
	}
	return widths
}

// setRow sets the cells of a row.
func setRow(s setter, style report.Style, cells []string, widths []float64) block {
	x := 0.0
	var blocks []block
	for i, text := range cells {
		broken := style.Lines(text, widths[i])
		if i == 0 {
			blocks = append(blocks, lines(style, broken, x, scene.Start))
		} else {
			blocks = append(blocks, lines(style, broken, x+widths[i], scene.End))
		}
		x += widths[i] + s.gutter()
	}
	return beside(blocks...)
}

// twin is two tables side by side.
type twin [2]table

func (t twin) widest(setter) float64 { return 0 }

func (t twin) block(s setter) block {
	between := 2 * s.gutter()
	s.width = (s.width - between) / 2
	return beside(t[0].block(s), shifted(t[1].block(s), s.width+between))
}
