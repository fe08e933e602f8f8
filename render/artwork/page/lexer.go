package page

import (
	"bytes"
	"strconv"

	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf/object"
)

// kind is what a token of a PDF file is (ISO 32000-1, 7.2).
type kind byte

const (
	ended kind = iota
	word       // a number, a keyword or an operator
	name
	literal     // a string in parentheses
	hexadecimal // a string in hexadecimal
	openArray
	closeArray
	openDict
	closeDict
	stray // a brace or bracket that belongs nowhere
)

// token is where a token stands in the data.
type token struct {
	kind     kind
	from, to int
}

// lexer cuts data into tokens.
type lexer struct {
	data []byte
	at   int
	// left is how many more values may be read from the file, which it shares with
	// all who read from it.
	left *int
}

func blank(c byte) bool {
	return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\f' || c == 0
}

func delimiter(c byte) bool { return bytes.IndexByte([]byte("()<>[]{}/%"), c) >= 0 }

// text returns the bytes of a token.
func (l *lexer) text(t token) []byte { return l.data[t.from:t.to] }

func (l *lexer) skip() {
	for l.at < len(l.data) {
		switch c := l.data[l.at]; {
		case blank(c):
			l.at++
		case c == '%':
			for l.at < len(l.data) && l.data[l.at] != '\n' && l.data[l.at] != '\r' {
				l.at++
			}
		default:
			return
		}
	}
}

// next returns the next token and steps past it.
func (l *lexer) next() token {
	l.skip()
	t := token{from: l.at}
	if l.at == len(l.data) {
		t.to = l.at
		return t
	}
	c := l.data[l.at]
	l.at++
	switch {
	case c == '/':
		t.kind = name
		l.regular()
	case c == '(':
		t.kind = literal
		l.parentheses()
	case c == '[':
		t.kind = openArray
	case c == ']':
		t.kind = closeArray
	case c == '<' && l.peek() == '<':
		t.kind = openDict
		l.at++
	case c == '>' && l.peek() == '>':
		t.kind = closeDict
		l.at++
	case c == '<':
		t.kind = hexadecimal
		l.until('>')
	case delimiter(c):
		t.kind = stray
	default:
		t.kind = word
		l.regular()
	}
	t.to = l.at
	return t
}

func (l *lexer) peek() byte {
	if l.at < len(l.data) {
		return l.data[l.at]
	}
	return 0
}

func (l *lexer) regular() {
	for l.at < len(l.data) && !blank(l.data[l.at]) && !delimiter(l.data[l.at]) {
		l.at++
	}
}

func (l *lexer) until(c byte) {
	for l.at < len(l.data) {
		l.at++
		if l.data[l.at-1] == c {
			return
		}
	}
}

func (l *lexer) parentheses() {
	for open := 1; l.at < len(l.data) && open > 0; l.at++ {
		switch l.data[l.at] {
		case '\\':
			l.at++
		case '(':
			open++
		case ')':
			open--
		}
	}
	l.at = min(l.at, len(l.data))
}

// numeral is a number just as it was written, so that no digit is lost.
type numeral string

// AppendTo writes the number.
func (n numeral) AppendTo(file []byte) []byte { return append(file, n...) }

var (
	errDeep = phrase.Errorf("values stand more than %d deep in each other", deepest)
	errMany = phrase.Errorf("the page needs more than %d values", mostValues)
)

// value reads an object, which may be a reference.
func (l *lexer) value(depth int) (object.Object, error) {
	return l.valueOf(l.next(), depth)
}

func (l *lexer) valueOf(t token, depth int) (object.Object, error) {
	if depth > deepest {
		return nil, errDeep
	}
	if *l.left--; *l.left < 0 {
		return nil, errMany
	}
	switch t.kind {
	case name:
		return l.name(t), nil
	case literal:
		return unescape(l.text(t)), nil
	case hexadecimal:
		return unhex(l.text(t)), nil
	case openArray:
		return l.array(depth)
	case openDict:
		return l.dict(depth)
	case word:
		return l.word(t)
	}
	return nil, phrase.Errorf("%q at byte %d is no value", l.text(t), t.from)
}

func (l *lexer) array(depth int) (object.Object, error) {
	list := object.Array{}
	for {
		t := l.next()
		if t.kind == closeArray {
			return list, nil
		}
		v, err := l.valueOf(t, depth+1)
		if err != nil {
			return nil, err
		}
		list = append(list, v)
	}
}

func (l *lexer) dict(depth int) (object.Object, error) {
	d := object.Dict{}
	for {
		t := l.next()
		if t.kind == closeDict {
			return d, nil
		}
		if t.kind != name {
			return nil, phrase.Errorf("%q at byte %d is no key", l.text(t), t.from)
		}
		v, err := l.value(depth + 1)
		if err != nil {
			return nil, err
		}
		d = append(d, object.Entry{Key: l.name(t), Value: v})
	}
}

// word reads a number, a reference or one of the three words that are values.
func (l *lexer) word(t token) (object.Object, error) {
	text := string(l.text(t))
	switch text {
	case "true", "false":
		return object.Boolean(text == "true"), nil
	case "null":
		return object.Null{}, nil
	}
	if _, err := strconv.ParseFloat(text, 64); err != nil || bytes.ContainsAny([]byte(text), "eExXnNpP_") {
		return nil, phrase.Errorf("%q at byte %d is no value", text, t.from)
	}
	number, err := strconv.Atoi(text)
	if err != nil || number < 0 {
		return numeral(text), nil
	}
	back := l.at
	generation, r := l.next(), l.next()
	if generation.kind == word && r.kind == word && string(l.text(r)) == "R" {
		if _, err := strconv.Atoi(string(l.text(generation))); err == nil {
			return object.Reference(number), nil
		}
	}
	l.at = back
	return numeral(text), nil
}
