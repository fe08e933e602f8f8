package project

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// syntaxError says where the text stops being JSON, and what to do about it.
func (p *parser) syntaxError(data []byte, cause error) error {
	if errors.Is(cause, errTrailing) {
		rest := bytes.TrimLeft(data[p.decoder.InputOffset():], " \t\r\n")
		line, column := position(data, len(data)-len(rest))
		return phrase.Errorf("%s: %s", place(line, column, ""), cause)
	}
	if errors.Is(cause, io.EOF) || errors.Is(cause, io.ErrUnexpectedEOF) {
		line, column := position(data, len(data))
		return phrase.Errorf("%s: the file ends too early; it was cut short, take a backup copy or write the rest",
			place(line, column, p.path))
	}
	at := offender(data)
	line, column := position(data, at)
	if word := wordAt(data, at); isNotFinite(word) {
		return phrase.Errorf("%s: %s", place(line, column, ""), notFinite(p.path, word))
	}
	return phrase.Errorf("%s: %s; %s", place(line, column, p.path), cause, syntaxRemedy(data, at))
}

// offender returns the index of the byte that is no JSON.
func offender(data []byte) int {
	var whole json.RawMessage
	var syntax *json.SyntaxError
	if errors.As(json.Unmarshal(data, &whole), &syntax) && syntax.Offset > 0 {
		return int(syntax.Offset) - 1 // the offset counts the bytes read, the offender too
	}
	return len(data)
}

// place says where in the text, and in which entry where there is one.
func place(line, column int, path string) phrase.Phrase {
	if path == "" {
		return phrase.New("line %d, column %d", line, column)
	}
	return phrase.New("line %d, column %d (in %s)", line, column, path)
}

// position returns the line and the column, both from 1 and in characters.
func position(data []byte, at int) (line, column int) {
	before := data[:min(at, len(data))]
	line = bytes.Count(before, []byte("\n")) + 1
	return line, utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
}

// wordAt returns the letters around a place, with the sign before them.
func wordAt(data []byte, at int) string {
	if at >= len(data) {
		return ""
	}
	isPart := func(b byte) bool { return unicode.IsLetter(rune(b)) || b == '-' || b == '+' }
	from, to := at, at
	for from > 0 && isPart(data[from-1]) {
		from--
	}
	for to < len(data) && isPart(data[to]) {
		to++
	}
	return string(data[from:to])
}

func isNotFinite(word string) bool {
	switch strings.ToLower(strings.TrimLeft(word, "+-")) {
	case "nan", "infinity", "inf":
		return true
	}
	return false
}

func notFinite(path, word string) *bag.FieldError {
	complaint := &bag.FieldError{Path: path, Limit: phrase.New("not a finite number"), Remedy: phrase.New("enter a plain number")}
	if field, found := bag.FieldAt(path); found {
		complaint.Label = field.Name()
		if field.Kind() == bag.Number {
			complaint.Remedy = phrase.New("enter a value from %s", field.Range())
		}
	}
	complaint.Value = word
	return complaint
}

// syntaxRemedy names the remedy for the slips that people make by hand.
func syntaxRemedy(data []byte, at int) phrase.Word {
	if at >= len(data) {
		return "write the rest of the file"
	}
	before := bytes.TrimRight(data[:at], " \t\r\n")
	switch c := data[at]; {
	case len(before) == 0:
		return "this is neither a project file nor a bag.json, choose another file"
	case (c == '}' || c == ']') && bytes.HasSuffix(before, []byte(",")):
		return "take out the comma before it"
	case c == '\'':
		return "use double quotation marks"
	case c == '/' || c == '#':
		return "take the comment out, JSON has none"
	case '0' <= c && c <= '9' && bytes.HasSuffix(before, []byte(",")):
		return "write decimals with a point, 0.5"
	case c == '+' || c == '.':
		return "write numbers as 5 or 0.5"
	case c == '"':
		return "put a comma between entries and a colon after each key"
	case c < ' ':
		return `write line breaks and tabs in texts as \n and \t, and close each text with a quotation mark`
	}
	return "mend the file there"
}
