package vector

import (
	"math"
	"strconv"
	"strings"
)

// numbers reads numbers out of an attribute, as the grammar of path data has them:
// they need nothing between them where the next cannot belong to the one before.
type numbers struct {
	text string
	at   int
}

const blanks = " \t\r\n\f"

func (n *numbers) skipBlanks() {
	for n.at < len(n.text) && strings.IndexByte(blanks, n.text[n.at]) >= 0 {
		n.at++
	}
}

// skipComma skips blanks with at most one comma among them.
func (n *numbers) skipComma() {
	n.skipBlanks()
	if n.at < len(n.text) && n.text[n.at] == ',' {
		n.at++
		n.skipBlanks()
	}
}

func (n *numbers) done() bool {
	n.skipBlanks()
	return n.at == len(n.text)
}

// next returns the number that stands here, and false where none does or it is
// beyond what can be reckoned with.
func (n *numbers) next() (float64, bool) {
	end := n.at
	digits := func() int {
		from := end
		for end < len(n.text) && n.text[end] >= '0' && n.text[end] <= '9' {
			end++
		}
		return end - from
	}
	if end < len(n.text) && (n.text[end] == '+' || n.text[end] == '-') {
		end++
	}
	count := digits()
	if end < len(n.text) && n.text[end] == '.' {
		end++
		count += digits()
	}
	if count == 0 {
		return 0, false
	}
	if mantissa := end; end < len(n.text) && n.text[end]|0x20 == 'e' {
		end++
		if end < len(n.text) && (n.text[end] == '+' || n.text[end] == '-') {
			end++
		}
		if digits() == 0 {
			end = mantissa // the e is of a unit, such as em
		}
	}
	value, err := strconv.ParseFloat(n.text[n.at:end], 64)
	if err != nil || math.Abs(value) > 1e30 {
		return 0, false
	}
	n.at = end
	return value, true
}

// flag returns the 0 or 1 that stands here. It may touch the next number.
func (n *numbers) flag() (set, ok bool) {
	if n.at >= len(n.text) || n.text[n.at] != '0' && n.text[n.at] != '1' {
		return false, false
	}
	n.at++
	return n.text[n.at-1] == '1', true
}

// word returns the letters and percent signs that stand here.
func (n *numbers) word() string {
	from := n.at
	for n.at < len(n.text) && (n.text[n.at] == '%' || n.text[n.at]|0x20 >= 'a' && n.text[n.at]|0x20 <= 'z') {
		n.at++
	}
	return n.text[from:n.at]
}

// listOf returns all numbers of a text, up to the first that is none, and whether
// that was the end.
func listOf(text string) (list []float64, whole bool) {
	n := numbers{text: text}
	for !n.done() {
		value, ok := n.next()
		if !ok {
			return list, false
		}
		list = append(list, value)
		n.skipComma()
	}
	return list, true
}

// length is a length with its unit, "" for that of the drawing.
type length struct {
	value float64
	unit  string
}

// parseLength reads a single length.
func parseLength(text string) (length, bool) {
	n := numbers{text: text}
	n.skipBlanks()
	value, ok := n.next()
	if !ok {
		return length{}, false
	}
	unit := strings.ToLower(n.word())
	_, known := pixels[unit]
	return length{value, unit}, known && n.done()
}

// pixels is how many px the units have, 0 where it depends.
var pixels = map[string]float64{
	"": 1, "px": 1, "in": 96, "mm": 96 / 25.4, "cm": 96 / 2.54, "q": 96 / 101.6, "pt": 96.0 / 72, "pc": 16,
	"em": 0, "ex": 0, "rem": 0, "%": 0,
}

// onPaper tells whether a unit is one that paper is measured in.
func (l length) onPaper() bool {
	switch l.unit {
	case "mm", "cm", "in", "pt", "pc", "q":
		return true
	}
	return false
}

// mmPerPixel is the size of a px, the 96th part of an inch.
const mmPerPixel = 25.4 / 96

// in returns the length in px. Percentages are of whole.
func (l length) in(whole, font float64) float64 {
	switch l.unit {
	case "%":
		return l.value / 100 * whole
	case "em":
		return l.value * font
	case "ex":
		return l.value * font / 2
	case "rem":
		return l.value * usualFont
	}
	return l.value * pixels[l.unit]
}

// usualFont is the size of letters where nothing is said, in px.
const usualFont = 16
