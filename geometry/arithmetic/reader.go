package arithmetic

import (
	"strings"
	"unicode"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// What is typed by hand is short; these bounds keep a pasted text from taking long
// or filling the stack.
const (
	longest = 200 // characters
	deepest = 20  // brackets inside each other
)

// reader goes through the text once, from left to right.
type reader struct {
	source     []rune
	at         int // the next character
	depth      int // brackets that are open
	measure    measure
	mark       DecimalMark
	counts     bool // digits may stand in groups of three
	pointParts bool // also by a point
}

func (r *reader) fail(at int, problem, remedy phrase.Phrase) error {
	return &Error{Text: string(r.source), At: at + 1, Problem: problem, Remedy: remedy}
}

func (r *reader) whole() (value, error) {
	if len(r.source) > longest {
		return value{}, r.fail(longest, problemLong, remedyShorter)
	}
	result, err := r.sum()
	if err != nil {
		return value{}, err
	}
	switch next := r.peek(); {
	case r.at >= len(r.source): // the text may hold a 0 itself
		return result, nil
	case next == ')':
		return value{}, r.fail(r.at, problemClose, remedyOpen)
	default:
		return value{}, r.fail(r.at, phrase.New("%q does not belong here", string(next)), remedySign)
	}
}

// peek returns the next character that is no space, or 0 at the end.
func (r *reader) peek() rune {
	for r.at < len(r.source) && unicode.IsSpace(r.source[r.at]) {
		r.at++
	}
	return r.character(r.at)
}

func (r *reader) character(at int) rune {
	if at >= len(r.source) {
		return 0
	}
	return r.source[at]
}

// sum reads products with + and - between them.
func (r *reader) sum() (value, error) {
	total, err := r.product()
	for err == nil {
		sign := 1.0
		switch r.peek() {
		case '+':
		case '-', '−':
			sign = -1
		default:
			return total, nil
		}
		r.at++
		var next value
		if next, err = r.product(); err == nil {
			total = r.add(total, next, sign)
		}
	}
	return value{}, err
}

// product reads factors with * and / between them.
func (r *reader) product() (value, error) {
	total, err := r.factor()
	for err == nil {
		join := r.multiply
		switch r.peek() {
		case '*', '×', '·':
		case '/', '÷':
			join = r.divide
		default:
			return total, nil
		}
		place := r.at
		r.at++
		var next value
		if next, err = r.factor(); err == nil {
			total, err = join(total, next, place)
		}
	}
	return value{}, err
}

// factor reads an operand or a sum in brackets, with a sign or without.
func (r *reader) factor() (value, error) {
	sign := 1.0
	switch r.peek() {
	case '-', '−':
		sign = -1
		r.at++
	case '+':
		r.at++
	}
	read := r.operand
	if r.peek() == '(' {
		read = r.bracket
	}
	result, err := read()
	result.amount *= sign
	return result, err
}

func (r *reader) bracket() (value, error) {
	open := r.at
	if r.depth++; r.depth > deepest {
		return value{}, r.fail(open, problemNested, remedyShorter)
	}
	r.at++
	result, err := r.sum()
	if err != nil {
		return value{}, err
	}
	if r.peek() != ')' {
		return value{}, r.fail(open, problemOpen, remedyClose)
	}
	r.at++
	r.depth--
	return result, nil
}

// operand reads one value: a decimal number, a fraction or both, and a unit.
func (r *reader) operand() (value, error) {
	r.peek()
	start := r.at
	number, err := r.number()
	if err != nil {
		return value{}, err
	}
	if number == "" {
		return value{}, r.noNumber(start)
	}
	r.peek()
	unitAt := r.at
	unit := r.unit()
	size, err := r.sizeOf(unit, unitAt)
	if err != nil {
		return value{}, err
	}
	// A bare number is read as millimetres, which leaves it as it is.
	amount, err := geometry.ParseLength(strings.ReplaceAll(number, ",", "."), geometry.Millimetre)
	if err != nil {
		return value{}, r.fail(start, phrase.New("%q is not a number", number), remedyNumber)
	}
	return value{amount * size, unit != ""}, nil
}

func (r *reader) noNumber(at int) error {
	next := r.character(at)
	if next == 0 || strings.ContainsRune("+-−*×·/÷()", next) {
		return r.fail(at, problemEmpty, remedyNumber)
	}
	return r.fail(at, phrase.New("%q is not a number", string(next)), remedyNumber)
}

// number reads "240", "24,5", "1/2", "9 1/2" or "1.250,5", and of counts one alone, such as
// "3 000". A stroke with spaces beside it divides, and is left for the product.
func (r *reader) number() (string, error) {
	if r.counts {
		return r.count()
	}
	if grouped := r.grouped(); grouped != "" {
		return grouped, nil
	}
	start := r.at
	text := r.mixed()
	other, remedy := ",", remedyComma
	if r.mark == Comma {
		other, remedy = ".", remedyPoint
	}
	for _, part := range strings.FieldsFunc(text, func(c rune) bool { return c == ' ' || c == '/' }) {
		if whole, decimals, found := strings.Cut(part, other); found && isGroup(whole, decimals) {
			return "", r.fail(start, twoReadings(part, whole+"."+decimals, whole+decimals), remedy)
		}
	}
	return text, nil
}

// isGroup tells whether three digits behind others may be a group of thousands.
func isGroup(before, digits string) bool {
	isDigits := func(text string) bool { return strings.Trim(text, "0123456789") == "" }
	return before != "" && before[0] != '0' && len(before) <= 3 && isDigits(before) && len(digits) == 3 && isDigits(digits)
}

// mixed reads a number, a fraction or both.
func (r *reader) mixed() string {
	text := r.digits()
	if text == "" {
		return ""
	}
	if below := r.belowStroke(); below != "" {
		return text + below
	}
	before := r.at
	for unicode.IsSpace(r.character(r.at)) {
		r.at++
	}
	above := r.digits()
	below := r.belowStroke()
	if r.at == before || above == "" || below == "" {
		r.at = before
		return text
	}
	return text + " " + above + below
}

// belowStroke reads "/2", or nothing.
func (r *reader) belowStroke() string {
	before := r.at
	if r.character(r.at) == '/' {
		r.at++
		if digits := r.digits(); digits != "" {
			return "/" + digits
		}
	}
	r.at = before
	return ""
}

func (r *reader) isDigit(at int) bool { c := r.character(at); return c >= '0' && c <= '9' }

// digits reads digits with decimals, and with an exponent such as 1e2.
func (r *reader) digits() string {
	start := r.at
	for {
		c := r.character(r.at)
		exponent := (c == 'e' || c == 'E') && r.at > start && r.isDigit(r.at+1)
		if !r.isDigit(r.at) && c != '.' && c != ',' && !exponent {
			return string(r.source[start:r.at])
		}
		r.at++
	}
}

// unit reads letters and signs behind a number, and with them a unit below a stroke, as
// in "g/m²".
func (r *reader) unit() string {
	start := r.at
	r.letters()
	if r.at > start && r.character(r.at) == '/' && unicode.IsLetter(r.character(r.at+1)) {
		r.at++
		r.letters()
		if r.character(r.at) == '^' {
			r.at++
		}
		if c := r.character(r.at); c == '²' || c == '2' {
			r.at++
		}
	}
	return string(r.source[start:r.at])
}

// letters goes past letters and the signs that stand for units, of money too.
func (r *reader) letters() {
	signs := "\"″%°" + r.measure.signs
	for c := r.character(r.at); unicode.IsLetter(c) || unicode.Is(unicode.Sc, c) || strings.ContainsRune(signs, c); c = r.character(r.at) {
		r.at++
	}
}

// sizeOf returns how large the unit at a place is, 1 where there is none.
func (r *reader) sizeOf(unit string, at int) (float64, error) {
	if unit == "" {
		return 1, nil
	}
	if r.measure.size != nil {
		if size, known := r.measure.size(strings.ToLower(unit)); known {
			return size, nil
		}
	}
	problem, remedy := r.measure.refuse(unit)
	return 0, r.fail(at, problem, remedy)
}
