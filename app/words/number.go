package words

import (
	"strconv"
	"strings"

	"gussetwright/app/voice"
	"gussetwright/geometry"
	"gussetwright/geometry/arithmetic"
)

// DecimalMark returns what stands before decimals in the language of the window.
func DecimalMark() arithmetic.DecimalMark { return writer().Mark }

func writer() voice.Writer { return voice.WriterIn(translated) }

// Number writes a number in a text, as geometry.FormatNumber does but in the language of
// the window and with large numbers in groups.
func Number(value float64, decimals int) string { return grouped(Plain(value, decimals)) }

// Plain writes a number as Number does, but without groups. So it stands in an entry, where
// single digits are put in and taken out.
func Plain(value float64, decimals int) string { return marked(geometry.FormatNumber(value, decimals)) }

// Exact writes a number with so many significant digits, and with an exponent where it is
// very large or small.
func Exact(value float64, digits int) string {
	return marked(strconv.FormatFloat(value, 'g', digits, 64))
}

// Size writes lengths in mm in a unit, with a cross between them.
func Size(unit geometry.Unit, sides ...float64) string {
	texts := make([]string, len(sides))
	for i, side := range sides {
		texts[i] = Number(side/unit.Length(), unit.Decimals())
	}
	return strings.Join(texts, " × ") + " " + string(unit)
}

// Money writes an amount in a text: with two decimals, and as many more, up to most, as it
// has.
func Money(amount float64, most int) string { return grouped(PlainMoney(amount, most)) }

// PlainMoney writes an amount as Money does, but without groups, as it stands in an entry.
func PlainMoney(amount float64, most int) string {
	whole, decimals, _ := strings.Cut(strconv.FormatFloat(amount, 'f', most, 64), ".")
	for len(decimals) > 2 && strings.HasSuffix(decimals, "0") {
		decimals = strings.TrimSuffix(decimals, "0")
	}
	return marked(whole + "." + decimals)
}

// marked puts the decimal mark of the window in the place of the point in a number.
func marked(number string) string {
	if !strings.Contains(number, string(arithmetic.Point)) {
		return number
	}
	return writer().Number(number)
}

// groupSpace parts groups of digits. Neither a point nor a comma may do so, and of four
// digits one is not parted (SI brochure, 9th edition, 5.4.4); no line ends at this space.
const groupSpace = "\u00a0"

// grouped parts the digits before the decimals in groups of three, where there are more
// than four.
func grouped(number string) string {
	digits := strings.TrimPrefix(number, "-")
	end := strings.IndexFunc(digits, func(c rune) bool { return c < '0' || c > '9' })
	if end < 0 {
		end = len(digits)
	}
	if end <= 4 {
		return number
	}
	sign, whole, rest := number[:len(number)-len(digits)], digits[:end], digits[end:]
	for at := end - 3; at > 0; at -= 3 {
		whole = whole[:at] + groupSpace + whole[at:]
	}
	return sign + whole + rest
}
