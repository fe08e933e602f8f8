package jobsheet

import (
	"encoding/csv"
	"io"
	"strings"

	"gussetwright/geometry"
)

// row is a row of the table: one number with its unit, or one text.
type row struct {
	section, item string
	value         string
	unit, note    string
}

// header names the columns. It stays English, as programs look columns up by it.
var header = []string{"section", "item", "value", "unit", "note"}

// writeTable writes rows as RFC 4180 has it, lines ending in CR LF. The text is UTF-8
// without a byte order mark: RFC 4180 knows none, and programs that read plain UTF-8
// would take it for a part of the first name.
func writeTable(w io.Writer, rows []row) error {
	table := csv.NewWriter(w)
	table.UseCRLF = true
	lines := [][]string{header}
	for _, r := range rows {
		lines = append(lines, []string{harmless(r.section), harmless(r.item), harmless(r.value), harmless(r.unit), harmless(r.note)})
	}
	return table.WriteAll(lines)
}

// mostDecimals is finer than anything that is reckoned here can be measured.
const mostDecimals = 6

// plain writes a number for programs: digits with a decimal point, nothing between them.
func plain(value float64) string { return geometry.FormatNumber(value, mostDecimals) }

// starters are the characters by which spreadsheets take a text for a formula, also in
// their full-width forms (OWASP, "CSV Injection"; value from memory).
const starters = "=+-@＝＋－＠"

// separators are what some spreadsheets part cells at, whatever the file says; after
// each a cell may begin.
const separators = ",;|\t"

// harmless returns a text that no spreadsheet takes for a formula: where one could begin,
// at the start of the text or after a separator, it gets an apostrophe, which
// spreadsheets know as the mark of a text. Names of projects are such texts: they come from
// whoever sent the project. Control characters become spaces. Numbers stay as they
// are: none here is less than 0.
func harmless(text string) string {
	var out strings.Builder
	atStart := true
	for _, r := range text {
		if r < ' ' && r != '\t' || r == 0x7f {
			r = ' '
		}
		if atStart && strings.ContainsRune(starters, r) {
			out.WriteByte('\'')
		}
		if r == '\t' {
			out.WriteByte(' ')
			atStart = true
			continue
		}
		out.WriteRune(r)
		// Spaces and quotation marks before a formula do not keep it from being one.
		atStart = strings.ContainsRune(separators, r) || atStart && strings.ContainsRune(` "`+space, r)
	}
	return out.String()
}
