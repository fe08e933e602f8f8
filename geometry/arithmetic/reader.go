package arithmetic

import (
	"math"
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
	source  []rune
	at      int // the next character
	depth   int // brackets that are open
	lengths bool
	assumed float64 // mm in a bare number, where lengths are read
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
	case next == 0:
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

// operand reads one value as ParseLength knows it: a decimal number, a fraction or
// both, and a unit.
func (r *reader) operand() (value, error) {
	r.peek()
	start := r.at
	number := r.number()
	if number == "" {
		return value{}, r.noNumber(start)
	}
	if whole, decimals, found := strings.Cut(number, ","); found && len(decimals) == 3 && !strings.ContainsAny(decimals, ",/ ") {
		return value{}, r.fail(start, phrase.New("%q may be %s or %s", number, whole, whole+decimals), remedyComma)
	}
	r.peek()
	unitAt := r.at
	unit := r.unit()
	if err := r.checkUnit(unitAt, unit); err != nil {
		return value{}, err
	}
	// A bare number is read as millimetres, which leaves it as it is.
	amount, err := geometry.ParseLength(number+unit, geometry.Millimetre)
	if err != nil {
		return value{}, r.fail(start, phrase.New("%q is not a number", number), remedyNumber)
	}
	return value{amount, unit != ""}, nil
}

func (r *reader) noNumber(at int) error {
	next := r.character(at)
	if next == 0 || strings.ContainsRune("+-−*×·/÷()", next) {
		return r.fail(at, problemEmpty, remedyNumber)
	}
	return r.fail(at, phrase.New("%q is not a number", string(next)), remedyNumber)
}

// number reads "240", "24,5", "1/2" or "9 1/2". A stroke with spaces beside it
// divides, and is left for the product.
func (r *reader) number() string {
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

// digits reads digits with decimals, and with an exponent such as 1e2.
func (r *reader) digits() string {
	start := r.at
	isDigit := func(at int) bool { c := r.character(at); return c >= '0' && c <= '9' }
	for {
		c := r.character(r.at)
		exponent := (c == 'e' || c == 'E') && r.at > start && isDigit(r.at+1)
		if !isDigit(r.at) && c != '.' && c != ',' && !exponent {
			return string(r.source[start:r.at])
		}
		r.at++
	}
}

// unit reads letters and inch marks behind a number.
func (r *reader) unit() string {
	start := r.at
	for c := r.character(r.at); unicode.IsLetter(c) || c == '"' || c == '″' || c == '%' || c == '°'; c = r.character(r.at) {
		r.at++
	}
	return string(r.source[start:r.at])
}

func (r *reader) checkUnit(at int, unit string) error {
	if unit == "" {
		return nil
	}
	if !r.lengths {
		return r.fail(at, phrase.New("%q does not belong to this number", unit), remedyNoUnit)
	}
	if length, err := geometry.ParseLength("1"+unit, geometry.Millimetre); err != nil || math.IsNaN(length) {
		return r.fail(at, phrase.New("%q is not a unit of length", unit), remedyUnit)
	}
	return nil
}
