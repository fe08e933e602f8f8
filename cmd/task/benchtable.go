package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"
)

// What is said of an aim.
const (
	saidMet     = "met"
	saidNotMet  = "NOT MET"
	saidMissing = "not measured"
)

// table is what is printed: rows of cells, in groups.
type table struct{ groups []tableGroup }

type tableGroup struct {
	name string
	rows [][]string
}

// columns returns the headings of the cells.
func columns() []string {
	return []string{"what", "figure", "aim", "", "beside it", "benchmark"}
}

// tableOf fills the table with what was measured.
func tableOf(rows []row, found results) table {
	var t table
	for _, r := range rows {
		if n := len(t.groups); n == 0 || t.groups[n-1].name != r.group {
			t.groups = append(t.groups, tableGroup{name: r.group})
		}
		last := &t.groups[len(t.groups)-1]
		last.rows = append(last.rows, r.cells(found))
	}
	return t
}

// cells returns what is printed of a row.
func (r row) cells(found results) []string {
	value, measured := found.worst(r.from)
	figure := "–"
	if measured {
		figure = figureText(value, r.from.metric)
	}
	return []string{r.what, figure, r.aim.words, r.verdict(value, measured), r.besideText(found), r.from.String()}
}

// verdict says what became of the aim.
func (r row) verdict(value float64, measured bool) string {
	switch {
	case r.from.folder == "":
		return "measured by that command"
	case !measured:
		return saidMissing
	case !r.aim.judged:
		return ""
	case r.aim.met(value):
		return saidMet
	}
	return saidNotMet
}

// besideText names the peers, their figures, and how many times ours those are.
func (r row) besideText(found results) string {
	ours, has := found.worst(r.from)
	var texts []string
	for _, p := range r.beside {
		theirs, measured := found.worst(p.from)
		if !measured {
			texts = append(texts, p.name+": "+saidMissing)
			continue
		}
		text := p.name + ": " + figureText(theirs, p.from.metric)
		if has && ours > 0 {
			ratio := theirs * scaleOf(p.from.metric) / (ours * scaleOf(r.from.metric))
			text += " (" + significant(ratio) + " × ours)"
		}
		texts = append(texts, text)
	}
	return strings.Join(texts, "; ")
}

// scaleOf returns how many nanoseconds the unit of a time is, and 1 for others.
func scaleOf(metric string) float64 {
	if strings.HasSuffix(metric, "-ms") {
		return float64(time.Millisecond)
	}
	return 1
}

// figureText writes a value with the unit that its metric ends in.
func figureText(value float64, metric string) string {
	switch {
	case metric == times || strings.HasSuffix(metric, "-ms"):
		return timeText(value * scaleOf(metric))
	case strings.HasSuffix(metric, "-MB") && value < 1:
		return significant(1000*value) + " kB"
	}
	for _, unit := range []string{"MB", "mm", "%"} {
		if strings.HasSuffix(metric, "-"+unit) {
			return significant(value) + " " + unit
		}
	}
	return significant(value)
}

// timeText writes nanoseconds in the unit that suits them.
func timeText(nanoseconds float64) string {
	for _, unit := range []struct {
		name   string
		length float64
	}{{"s", 1e9}, {"ms", 1e6}, {"µs", 1e3}} {
		if nanoseconds >= unit.length {
			return significant(nanoseconds/unit.length) + " " + unit.name
		}
	}
	return significant(nanoseconds) + " ns"
}

// significant writes a number with three digits that count, and whole ones in full.
func significant(value float64) string {
	digits := 0
	if size := math.Abs(value); size > 0 && size < 100 && value != math.Trunc(value) {
		digits = 2 - int(math.Floor(math.Log10(size)))
	}
	return strconv.FormatFloat(value, 'f', digits, 64)
}

// plain writes the table for a terminal.
func (t table) plain() string {
	widths := t.widths()
	var out strings.Builder
	write := func(cells []string) {
		line := ""
		for i, cell := range cells {
			line += cell + strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell)) + "  "
		}
		fmt.Fprintln(&out, strings.TrimRight("  "+line, " "))
	}
	write(columns())
	for _, group := range t.groups {
		fmt.Fprintln(&out, group.name)
		for _, cells := range group.rows {
			write(cells)
		}
	}
	return out.String() + t.sum()
}

func (t table) widths() []int {
	widths := make([]int, len(columns()))
	for _, group := range append(t.groups, tableGroup{rows: [][]string{columns()}}) {
		for _, cells := range group.rows {
			for i, cell := range cells {
				widths[i] = max(widths[i], utf8.RuneCountInString(cell))
			}
		}
	}
	return widths
}

// markdown writes the table for the README.
func (t table) markdown() string {
	var out strings.Builder
	write := func(cells []string) {
		fmt.Fprintln(&out, "| "+strings.Join(cells, " | ")+" |")
	}
	write(columns())
	fmt.Fprintln(&out, "|"+strings.Repeat("---|", len(columns())))
	for _, group := range t.groups {
		for _, cells := range group.rows {
			shown := append([]string{}, cells...)
			for i := range shown {
				shown[i] = strings.ReplaceAll(shown[i], "|", `\|`)
			}
			shown[0] = group.name + ": " + shown[0]
			if shown[3] == saidNotMet || shown[3] == saidMissing {
				shown[3] = "**" + strings.ToLower(shown[3]) + "**"
			}
			shown[len(shown)-1] = "`" + shown[len(shown)-1] + "`"
			write(shown)
		}
	}
	return out.String() + "\n" + t.sum()
}

// sum counts what became of the aims.
func (t table) sum() string {
	counts := map[string]int{}
	for _, group := range t.groups {
		for _, cells := range group.rows {
			counts[cells[3]]++
		}
	}
	return fmt.Sprintf("Aims met: %d, not met: %d; figures not measured: %d.\n", counts[saidMet], counts[saidNotMet], counts[saidMissing])
}
