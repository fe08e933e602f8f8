package jobsheet

import (
	"encoding/csv"
	"io"
	"strings"

	"gussetwright/app/voice"
	"gussetwright/geometry/arithmetic"
	"gussetwright/geometry/phrase"
)

// row is a row of the table: one number with its unit, or one text.
type row struct {
	section, item string
	value         string
	unit, note    string
}

// columns are the names of those of the table.
var columns = []phrase.Word{"section", "item", "value", "unit", "note"}

// byteOrderMark begins a text in UTF-8 for programs that know it by this alone.
const byteOrderMark = "\ufeff"

// writeTable writes rows as RFC 4180 has it, lines ending in CR LF. The text is UTF-8
// without a byte order mark: RFC 4180 knows none, and programs that read plain UTF-8
// would take it for a part of the first name.
//
// Where decimals stand behind a comma, cells are parted by semicolons, and a byte order
// mark comes first: a spreadsheet of such a country takes a comma for that of decimals,
// 1.5 for a date, and UTF-8 without the mark for an older code (common practice, no
// published source).
func (m *maker) writeTable(w io.Writer, rows []row) error {
	table := csv.NewWriter(w)
	table.UseCRLF = true
	if m.mark() == arithmetic.Comma {
		table.Comma = ';'
		if _, err := io.WriteString(w, byteOrderMark); err != nil {
			return err
		}
	}
	lines := [][]string{m.header()}
	for i := range rows {
		r := &rows[i]
		lines = append(lines, []string{harmless(r.section), harmless(r.item), harmless(r.value), harmless(r.unit), harmless(r.note)})
	}
	return table.WriteAll(lines)
}

func (m *maker) header() (names []string) {
	for _, name := range columns {
		names = append(names, m.say(name))
	}
	return names
}

func (m *maker) mark() arithmetic.DecimalMark { return voice.WriterIn(m.Say).Mark }

// mostDecimals is finer than anything that is reckoned here can be measured.
const mostDecimals = 6

// plain writes a number for programs: digits with a decimal mark, nothing between them.
func (m *maker) plain(value float64) string { return m.voice().Number(value, mostDecimals) }

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
