package page

import "bytes"

// content goes through drawing operators (ISO 32000-1, annex A) and leaves out what
// must not be drawn. Everything else stays as it was, byte by byte.
type content struct {
	lexer
	layer func(property []byte) (is, hidden bool) // of a name in the resources
	inks  *Colours

	out      []byte
	copied   int     // how far the data stands in out
	operands []token // of the operator that comes next
	marks    []bool  // the marked content that is open: whether it hides
	hidden   int     // how much of it does
	mode     byte    // of text, a digit (9.3.6)
	modes    []byte  // of the states that were saved
}

// filterContent returns the operators without those that a hidden layer draws, and
// without the name of any layer; unchanged says that there was nothing to leave out.
// Colours that the operators choose by themselves are noted in inks.
func filterContent(data []byte, layer func([]byte) (is, hidden bool), inks *Colours) (filtered []byte, unchanged bool) {
	unbounded := 0
	c := &content{lexer: lexer{data, 0, &unbounded}, layer: layer, inks: inks, mode: '0'}
	for {
		t := c.next()
		switch t.kind {
		case ended:
			if c.out == nil {
				return data, true
			}
			return append(c.out, data[c.copied:]...), false
		case word:
			if c.isNumber(t) {
				c.keep(t)
			} else {
				c.operator(t)
				c.operands = c.operands[:0]
			}
		default:
			c.keep(t)
		}
	}
}

// mostOperands is far more than any operator takes; an array counts by its elements.
const mostOperands = 1 << 16

func (c *content) keep(t token) {
	if len(c.operands) < mostOperands {
		c.operands = append(c.operands, t)
	}
}

func (c *content) isNumber(t token) bool {
	first := c.data[t.from]
	return first >= '0' && first <= '9' || first == '-' || first == '+' || first == '.'
}

// start is where the operands of an operator begin, or the operator itself.
func (c *content) start(operator token) int {
	if len(c.operands) > 0 {
		return c.operands[0].from
	}
	return operator.from
}

// operand returns the text of an operand counted from the last, which is 0.
func (c *content) operand(i int) []byte {
	if i >= len(c.operands) {
		return nil
	}
	return c.text(c.operands[len(c.operands)-1-i])
}

// replace puts other text in place of a part of the data.
func (c *content) replace(from, to int, text string) {
	from = max(from, c.copied)
	c.out = append(append(c.out, c.data[c.copied:from]...), text...)
	c.copied = max(to, from)
}

func (c *content) operator(t token) {
	switch operator := string(c.text(t)); operator {
	case "q":
		c.modes = append(c.modes, c.mode)
	case "Q":
		c.restore(t)
	case "Tr":
		if mode := c.operand(0); len(mode) == 1 {
			c.mode = mode[0]
		}
	case "BDC", "BMC":
		c.open(t, operator)
	case "EMC":
		c.close()
	case "BI":
		c.inlineImage(t)
	case "g", "G":
		c.inks.Grey = true
	case "rg", "RG":
		c.inks.RGB = true
	case "k", "K":
		c.inks.CMYK = true
	case "cs", "CS":
		c.inks.device(string(bytes.TrimPrefix(c.operand(0), []byte("/"))))
	default:
		if c.hidden > 0 {
			c.hide(t, operator)
		}
	}
}

// restore drops a Q that has no q: on its own page it does nothing, within another
// page it might undo what stands around the artwork.
func (c *content) restore(t token) {
	if last := len(c.modes) - 1; last >= 0 {
		c.mode, c.modes = c.modes[last], c.modes[:last]
	} else {
		c.replace(c.start(t), t.to, " ")
	}
}

// open begins marked content. Layers lose their name, since the list of layers
// belongs to the file that the artwork is put into.
func (c *content) open(t token, operator string) {
	hidden := false
	if operator == "BDC" && len(c.operands) >= 2 && string(c.text(c.operands[0])) == "/OC" {
		var is bool
		if is, hidden = c.layer(c.operand(0)); is {
			c.replace(c.start(t), t.to, "/Layer BMC")
		}
	}
	if hidden {
		c.hidden++
	}
	c.marks = append(c.marks, hidden)
}

func (c *content) close() {
	last := len(c.marks) - 1
	if last < 0 {
		return
	}
	if c.marks[last] {
		c.hidden--
	}
	c.marks = c.marks[:last]
}

// hide leaves out what an operator draws, but not what it changes: colours, clips and
// the place of the text hold on after a hidden layer ends.
func (c *content) hide(t token, operator string) {
	switch operator {
	case "S", "s", "f", "F", "f*", "B", "B*", "b", "b*":
		c.replace(t.from, t.to, "n")
	case "sh", "Do":
		c.replace(c.start(t), t.to, " ")
	case "Tj", "TJ", "'", "\"":
		invisible := "3 Tr "
		if c.mode >= '4' {
			invisible = "7 Tr "
		}
		c.replace(c.start(t), c.start(t), invisible)
		c.replace(t.to, t.to, string([]byte{' ', c.mode, ' ', 'T', 'r'}))
	}
}

// inlineImage steps over a picture within the operators, whose data might look like
// anything.
func (c *content) inlineImage(begin token) {
	for {
		t := c.next()
		if t.kind == ended {
			return
		}
		if t.kind == word && string(c.text(t)) == "ID" {
			break
		}
	}
	c.at = min(c.at+1, len(c.data))
	for {
		found := bytes.Index(c.data[c.at:], []byte("EI"))
		if found < 0 {
			c.at = len(c.data)
			break
		}
		c.at += found + 2
		if blank(c.data[c.at-3]) && plausible(c.data[c.at:]) {
			break
		}
	}
	if c.hidden > 0 {
		c.replace(c.start(begin), c.at, " ")
	}
}

// plausible tells whether operators can follow: text, or nothing.
func plausible(rest []byte) bool {
	if len(rest) > 0 && !blank(rest[0]) {
		return false
	}
	for _, c := range rest[:min(len(rest), 16)] {
		if !blank(c) && (c < ' ' || c > '~') || c == 0 {
			return false
		}
	}
	return true
}
