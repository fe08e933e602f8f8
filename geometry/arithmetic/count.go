package arithmetic

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// EvaluateCount returns what the text comes to where the entry counts things, such as
// bags. Digits may stand in groups of three, parted by a comma, a space or an apostrophe,
// and by a point where pointParts is set, as numbers are written in German. Elsewhere
// "3.000" is refused, as it may be 3 or 3000. The error is an *Error.
func EvaluateCount(text string, pointParts bool) (float64, error) {
	reader := reader{source: []rune(text), measure: bare(""), counts: true, pointParts: pointParts}
	return reader.result()
}

// EvaluateCounts returns the counts of a list, as EvaluateCount reads them, in the order
// in which they are written. They are parted by commas, semicolons or new lines. What may
// be one count or several, such as "5,500", is refused unless a semicolon shows what parts
// the list. The error is an *Error.
func EvaluateCounts(text string, pointParts bool) ([]float64, error) {
	if utf8.RuneCountInString(text) > longest {
		return nil, &Error{Text: text, At: longest + 1, Problem: problemLong, Remedy: remedyShorter}
	}
	listed, err := joinGroups(text)
	if err != nil {
		return nil, err
	}
	var list []float64
	at := 0
	for _, part := range strings.FieldsFunc(listed, partsList) {
		// Parts do not overlap: each is found behind the one before.
		at += strings.Index(listed[at:], part)
		if strings.TrimSpace(part) != "" {
			count, err := EvaluateCount(part, pointParts)
			if err != nil {
				return nil, moved(err, text, utf8.RuneCountInString(listed[:at]))
			}
			list = append(list, count)
		}
		at += len(part)
	}
	return list, nil
}

func partsList(c rune) bool { return c == ',' || c == ';' || c == '\n' }

// moved puts a complaint about a part of a text into the whole of it.
func moved(err error, text string, by int) error {
	if complaint, is := err.(*Error); is {
		complaint.Text, complaint.At = text, complaint.At+by
	}
	return err
}

// groups are digits in groups of three, parted by what may part a list too.
var groups = regexp.MustCompile(`\b[1-9][0-9]{0,2}(?:[, \x{a0}\x{2009}\x{202f}][0-9]{3})+\b`)

// joinGroups returns the text of a list with apostrophes for the commas inside of its
// counts, so that the commas that are left part the list.
func joinGroups(text string) (string, error) {
	if !strings.Contains(text, ";") {
		if err := doubtful(text); err != nil {
			return "", err
		}
	}
	return groups.ReplaceAllStringFunc(text, func(count string) string { return strings.ReplaceAll(count, ",", "'") }), nil
}

// doubtful returns a complaint about the first digits in groups that may be several
// counts. No count begins with 0, so "5,000" is not in doubt.
func doubtful(text string) error {
	for _, found := range groups.FindAllStringIndex(text, -1) {
		counts := strings.FieldsFunc(text[found[0]:found[1]], func(c rune) bool { return !unicode.IsDigit(c) })
		for _, count := range counts[1:] {
			if count[0] != '0' {
				list, one := strings.Join(counts, "; "), strings.Join(counts, "")
				return &Error{
					Text: text, At: utf8.RuneCountInString(text[:found[0]]) + 1,
					Problem: phrase.New("%q may be the list %s or the number %s", text[found[0]:found[1]], list, one),
					Remedy:  phrase.New("write %s or %s", list, one),
				}
			}
		}
	}
	return nil
}

// count reads digits that may stand in groups of three, and decimals behind them.
func (r *reader) count() (string, error) {
	start := r.at
	digits, mark, parted := r.groups()
	if parted == 0 {
		r.at = start
		return r.digits(), nil
	}
	if mark == '.' && parted == 1 && !r.pointParts {
		text := string(r.source[start:r.at])
		return "", r.fail(start, twoReadings(text, text, digits), remedyPoint)
	}
	if r.decimalsFollow(mark) {
		r.at++
		return digits + "." + r.run(), nil
	}
	if mark != ' ' && groupMark(r.character(r.at)) == mark {
		r.digits()
		return "", r.fail(start, phrase.New("%q is not a number", string(r.source[start:r.at])), remedyNumber)
	}
	return digits, nil
}

// grouped reads digits in groups of three, and decimals behind them, where nothing else can
// be meant: "1,250.5", "1.250,5" and what is parted by an apostrophe or by a space that no
// line ends at. A usual space may stand between two numbers by mistake. Otherwise it reads
// nothing.
func (r *reader) grouped() string {
	start := r.at
	digits, mark, parted := r.groups()
	usual := slices.Contains(r.source[start:r.at], ' ')
	sure := mark == ' ' || mark == '\''
	if r.decimalsFollow(mark) && r.isDigit(r.at+1) {
		sure = true
		r.at++
		digits += "." + r.run()
	}
	if parted > 0 && sure && !usual && !strings.ContainsRune(".,'’/", r.character(r.at)) {
		return digits
	}
	r.at = start
	return ""
}

// groups reads digits, and groups of three behind them with one mark between all. It
// returns how many groups those are.
func (r *reader) groups() (digits string, mark rune, parted int) {
	digits = r.run()
	mark = groupMark(r.character(r.at))
	if mark != 0 && len(digits) >= 1 && len(digits) <= 3 && digits[0] != '0' {
		for ; groupMark(r.character(r.at)) == mark && r.group(r.at+1); parted++ {
			r.at++
			digits += r.run()
		}
	}
	return digits, mark, parted
}

// decimalsFollow tells whether a decimal mark comes next that is not what parts groups.
func (r *reader) decimalsFollow(mark rune) bool {
	c := r.character(r.at)
	return (c == '.' || c == ',') && c != mark
}

// run reads digits alone.
func (r *reader) run() string {
	start := r.at
	for r.isDigit(r.at) {
		r.at++
	}
	return string(r.source[start:r.at])
}

// group tells whether three digits stand at a place, and no more.
func (r *reader) group(at int) bool {
	return r.isDigit(at) && r.isDigit(at+1) && r.isDigit(at+2) && !r.isDigit(at+3)
}

// groupMark returns what parts groups of digits, one for all kinds of space and one for
// all apostrophes; 0 for what does not.
func groupMark(c rune) rune {
	switch c {
	case ',', '.':
		return c
	case '\'', '’':
		return '\''
	case ' ', '\u00a0', '\u2009', '\u202f':
		return ' '
	}
	return 0
}

// twoReadings says that a number with one comma or point may have decimals, or thousands.
func twoReadings(number, decimal, thousands string) phrase.Phrase {
	value, err := geometry.ParseLength(decimal, geometry.Millimetre)
	if err == nil {
		decimal = geometry.FormatNumber(value, 3)
	}
	return phrase.New("%q may be %s or %s", number, decimal, thousands)
}
