package entry

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/arithmetic"
	"gussetwright/geometry/bag"
)

// PriceDecimals are the digits after the point of a price at most: one sheet often costs
// less than a hundredth can tell apart.
const PriceDecimals = 6

// Quantity is what a number entry shows and changes. Lengths are millimetres,
// whatever unit they are shown in.
type Quantity struct {
	Label  string // translated
	Symbol string // the letter on drawings, or empty
	Unit   string // "mm" for lengths, which are shown in the unit of the settings
	// Decimals are how many digits after the point are shown at most; 0 for two.
	// Lengths have those of their unit.
	Decimals int
	Money    bool // shown as words.PlainMoney writes it
	// Step is how far an arrow key goes; 0 for one. Whole numbers and inches have steps
	// of their own.
	Step float64
	// Least and Most bound the value; both ends are allowed.
	Least, Most float64
	Whole       bool
	// Low and High are what the slider covers of that: the usual values. Where both are 0
	// it covers all.
	Low, High         float64
	Help              string // translated, as are the next two
	WhyLeast, WhyMost string
	// Set changes the value as one step. Drag shows a value that is still moving,
	// Drop makes one step of all that was dragged.
	Set, Drag func(float64)
	Drop      func()
}

// OfField returns the quantity of a number field of the document.
func OfField(doc *document.Document, field *bag.Field) Quantity {
	changed := func(value float64) bag.Spec {
		spec := doc.State().Spec
		field.SetNumber(&spec, value)
		return spec
	}
	usual := usualSpans()[field.Path]
	return Quantity{
		Label: lang.L(field.Label), Symbol: field.Symbol, Unit: field.Unit,
		Least: field.Least, Most: field.Most, Whole: field.Whole, Money: isPrice(field),
		Low: usual.low, High: usual.high,
		Help: lang.L(field.Help), WhyLeast: translated(field.WhyLeast), WhyMost: translated(field.WhyMost),
		Set:  func(value float64) { doc.Set(changed(value)) },
		Drag: func(value float64) { doc.Drag(changed(value)) },
		Drop: doc.Drop,
	}
}

func isPrice(field *bag.Field) bool {
	return strings.HasPrefix(field.Path, "prices.") && field.Unit != "%"
}

// translated translates words that may be missing.
func translated(text string) string {
	if text == "" {
		return ""
	}
	return lang.L(text)
}

func (q *Quantity) isLength() bool { return q.Unit == string(geometry.Millimetre) }

// unitIn returns the unit in which the quantity is shown.
func (q *Quantity) unitIn(unit geometry.Unit) string {
	if q.isLength() {
		return string(unit)
	}
	return words.Unit(q.Unit)
}

// scale is what the value is divided by to be shown.
func (q *Quantity) scale(unit geometry.Unit) float64 {
	if q.isLength() {
		return unit.Length()
	}
	return 1
}

// decimals of a length are as many as show a hundredth of a millimetre.
func (q *Quantity) decimals(unit geometry.Unit) int {
	switch {
	case q.isLength() && unit != geometry.Millimetre:
		return 3
	case !q.isLength() && q.Decimals > 0:
		return q.Decimals
	}
	return 2
}

// format writes a value as it stands in the entry.
func (q *Quantity) format(value float64, unit geometry.Unit) string {
	if q.Money {
		return words.PlainMoney(value, PriceDecimals)
	}
	return words.Plain(value/q.scale(unit), q.decimals(unit))
}

// inText writes a value as it stands in a text, without its unit.
func (q *Quantity) inText(value float64, unit geometry.Unit) string {
	if q.Money {
		return words.Money(value, PriceDecimals)
	}
	return words.Number(value/q.scale(unit), q.decimals(unit))
}

// withUnit writes a value with its unit.
func (q *Quantity) withUnit(value float64, unit geometry.Unit) string {
	return geometry.WithUnit(q.inText(value, unit), q.unitIn(unit))
}

// limits returns the least and the most as they are shown: rounded inwards, so that
// both can be typed.
func (q *Quantity) limits(unit geometry.Unit) (least, most string) {
	scale, places := q.scale(unit), math.Pow10(q.decimals(unit))
	const noise = 1e-6
	inward := func(value float64, round func(float64) float64, slack float64) string {
		return words.Number(round(value/scale*places+slack)/places, q.decimals(unit))
	}
	return inward(q.Least, math.Ceil, -noise), inward(q.Most, math.Floor, noise)
}

// rangeText returns the limits in words, without the unit.
func (q *Quantity) rangeText(unit geometry.Unit) string {
	least, most := q.limits(unit)
	return fmt.Sprintf(lang.L("%s to %s"), least, most)
}

// read returns the value that a text comes to, or a complaint in the language of
// the user.
func (q *Quantity) read(text string, unit geometry.Unit) (value float64, complaint string) {
	var err error
	switch {
	case q.isLength():
		value, err = words.DecimalMark().Evaluate(text, unit)
	case q.Whole:
		value, err = arithmetic.EvaluateCount(text, pointParts())
	default:
		value, err = words.DecimalMark().EvaluateNumber(text, q.unitIn(unit))
	}
	if err != nil {
		return 0, sentence(err)
	}
	// A sum such as 0.1 + 0.2 leaves noise behind the last digit that means anything.
	const finest = 1e-6
	value = math.Round(value/finest) * finest
	if clean, err := strconv.ParseFloat(strconv.FormatFloat(value, 'f', 6, 64), 64); err == nil {
		value = clean
	}
	value = q.limitShown(value, unit)
	return value, q.complain(value, unit)
}

// limitShown returns the limit that a value breaks only because it is shown rounded: 30 mm
// stand in the entry as 1.181 in, which are a little less.
func (q *Quantity) limitShown(value float64, unit geometry.Unit) float64 {
	limit := min(max(value, q.Least), q.Most)
	if q.isLength() && unit != geometry.Millimetre && q.format(limit, unit) == q.format(value, unit) {
		return limit
	}
	return value
}

// capital begins a sentence.
func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

// complain says which limit a value breaks, why there is that limit and what to
// enter instead; nothing for a value within the limits.
func (q *Quantity) complain(value float64, unit geometry.Unit) string {
	var broken, why string
	switch {
	case value < q.Least:
		broken, why = fmt.Sprintf(lang.L("%s is less than the least, %s"), q.exact(value, q.Least, unit), q.withUnit(q.Least, unit)), q.WhyLeast
	case value > q.Most:
		broken, why = fmt.Sprintf(lang.L("%s is more than the most, %s"), q.exact(value, q.Most, unit), q.withUnit(q.Most, unit)), q.WhyMost
	case q.Whole && value != math.Trunc(value):
		broken = fmt.Sprintf(lang.L("%s is not a whole number"), q.exact(value, math.Trunc(value), unit))
	default:
		return ""
	}
	if why != "" {
		broken += ": " + why
	}
	least, most := q.limits(unit)
	return broken + ". " + fmt.Sprintf(lang.L("Enter %s to %s."), least, geometry.WithUnit(most, q.unitIn(unit)))
}

// exact writes a refused value so that it differs from the limit it breaks.
func (q *Quantity) exact(value, limit float64, unit geometry.Unit) string {
	short := q.inText(value, unit)
	if short == q.inText(limit, unit) || math.Abs(value) > 1e9 {
		short = words.Exact(value/q.scale(unit), 8)
	}
	return geometry.WithUnit(short, q.unitIn(unit))
}

// stride is how far an arrow key goes.
type stride int

const (
	fine stride = iota
	normal
	coarse
)

// step returns the stride in the unit of the value. A rule in inches is divided by
// halves, one in centimetres by millimetres.
func (q *Quantity) step(s stride, unit geometry.Unit) float64 {
	switch {
	case q.isLength() && unit == geometry.Inch:
		return []float64{1.0 / 64, 1.0 / 16, 1.0 / 2}[s] * geometry.Inch.Length()
	case q.Whole:
		return []float64{1, 1, 10}[s]
	}
	usual := q.Step
	if usual == 0 {
		usual = 1
	}
	return []float64{usual / 10, usual, usual * 10}[s]
}
