package project

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"unicode/utf8"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// parse reads JSON text into a tree of map[string]any, []any, json.Number,
// string, bool and nil. Keys given twice are complaints; text that is no JSON
// object is an error that names line and column.
func parse(data []byte, found *complaints) (map[string]any, error) {
	if err := checkText(data); err != nil {
		return nil, err
	}
	p := parser{decoder: json.NewDecoder(bytes.NewReader(data)), complaints: found}
	p.decoder.UseNumber()
	value, err := p.value("", 0)
	if err == nil {
		err = p.end(data)
	}
	var deep *tooDeepError
	switch {
	case errors.As(err, &deep):
		return nil, err
	case err != nil:
		return nil, p.syntaxError(data, err)
	}
	tree, isObject := value.(map[string]any)
	if !isObject {
		return nil, phrase.Errorf("the file holds %s, not a group of entries; "+
			`write {"bag": {"width_mm": 240}} or choose another file`, shown(value))
	}
	return tree, nil
}

// checkText tells whether the bytes are text that JSON may be written in.
func checkText(data []byte) error {
	switch {
	case len(bytes.TrimSpace(data)) == 0:
		return phrase.Errorf("the file is empty; choose another file, or write at least {}")
	case bytes.HasPrefix(data, []byte("\xef\xbb\xbf")):
		return phrase.Errorf("the file starts with a byte order mark (bytes EF BB BF), which JSON must not have (RFC 8259, 8.1); " +
			"save it as UTF-8 without byte order mark")
	case bytes.HasPrefix(data, []byte("\xff\xfe")), bytes.HasPrefix(data, []byte("\xfe\xff")):
		return phrase.Errorf("the file is UTF-16 text, and JSON must be UTF-8 (RFC 8259, 8.1); save it as UTF-8")
	}
	for at := 0; at < len(data); {
		r, size := utf8.DecodeRune(data[at:])
		if r == utf8.RuneError && size == 1 {
			line, column := position(data, at)
			return phrase.Errorf("line %d, column %d: byte %02X is not UTF-8 text (RFC 8259, 8.1); "+
				"save the file as UTF-8, or choose another file", line, column, data[at])
		}
		at += size
	}
	return nil
}

type parser struct {
	decoder    *json.Decoder
	complaints *complaints
	path       string // of the value that is read now, for syntax errors
}

// tooDeepError says that a text would take the reader too deep.
type tooDeepError struct{ phrase.Phrase }

func (e *tooDeepError) Error() string { return e.String() }

func tooDeep(path string) error {
	return &tooDeepError{phrase.New("%s: more than %d levels of braces and brackets; take the inner ones out", path, deepestNesting)}
}

func (p *parser) value(path string, depth int) (any, error) {
	p.path = path
	token, err := p.decoder.Token()
	if err != nil {
		return nil, err
	}
	delim, opens := token.(json.Delim)
	if !opens {
		return token, nil
	}
	if depth == deepestNesting {
		return nil, tooDeep(path)
	}
	if delim == '[' {
		return p.list(path, depth+1)
	}
	return p.object(path, depth+1)
}

func (p *parser) object(path string, depth int) (any, error) {
	object := map[string]any{}
	for p.decoder.More() {
		token, err := p.decoder.Token()
		if err != nil {
			return nil, err
		}
		key, isText := token.(string)
		if !isText {
			return nil, errNoJSON
		}
		at := join(path, key)
		value, err := p.value(at, depth)
		if err != nil {
			return nil, err
		}
		if first, twice := object[key]; twice {
			p.complaints.add(&bag.FieldError{
				Path: at, Value: shown(first) + ", then " + shown(value), Limit: phrase.New("given twice"), Remedy: phrase.New("keep one of them"),
			})
			continue
		}
		object[key] = value
		p.path = path
	}
	_, err := p.decoder.Token()
	return object, err
}

func (p *parser) list(path string, depth int) (any, error) {
	list := []any{}
	for p.decoder.More() {
		value, err := p.value(fmt.Sprintf("%s[%d]", path, len(list)), depth)
		if err != nil {
			return nil, err
		}
		list = append(list, value)
	}
	p.path = path
	_, err := p.decoder.Token()
	return list, err
}

var (
	errTrailing = phrase.Errorf("more text follows after the end; take it out")
	errNoJSON   = phrase.Errorf("this is not JSON (RFC 8259)")
)

// end checks that nothing follows.
func (p *parser) end(data []byte) error {
	if len(bytes.TrimSpace(data[p.decoder.InputOffset():])) > 0 {
		return errTrailing
	}
	if !json.Valid(data) {
		return errNoJSON
	}
	return nil
}
