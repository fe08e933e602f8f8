package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"slices"
	"strconv"
	"unicode/utf16"
)

// object is a value as it stands in a PDF file (ISO 32000-1, 7.3).
type object interface {
	// appendTo writes the object at the end of the file.
	appendTo(file []byte) []byte
}

type (
	name      string  // /Name
	integer   int     // 12
	number    float64 // 12.5
	boolean   bool    // true
	reference int     // 12 0 R: the object of that number
	text      string  // a text for people to read
	binary    []byte  // a string of bytes
	array     []object

	// dict keeps its entries in the order in which they were listed, so that a
	// file comes out the same every time.
	dict  []entry
	entry struct {
		key   name
		value object
	}

	// stream is a dictionary with data that is compressed on writing.
	stream struct {
		dict dict
		data []byte
	}
)

// decimals is how exactly numbers are written. Coordinates are millimetres, so
// the last digit is a tenth of a micrometre.
const decimals = 4

func (n name) appendTo(file []byte) []byte {
	file = append(file, '/')
	for _, c := range []byte(n) {
		if c <= ' ' || c > '~' || bytes.IndexByte([]byte("#()<>[]{}/%"), c) >= 0 {
			file = fmt.Appendf(file, "#%02X", c)
		} else {
			file = append(file, c)
		}
	}
	return file
}

func (i integer) appendTo(file []byte) []byte { return strconv.AppendInt(file, int64(i), 10) }

func (n number) appendTo(file []byte) []byte { return appendNumber(file, float64(n), decimals) }

func (b boolean) appendTo(file []byte) []byte { return strconv.AppendBool(file, bool(b)) }

func (r reference) appendTo(file []byte) []byte { return fmt.Appendf(file, "%d 0 R", int(r)) }

func (b binary) appendTo(file []byte) []byte { return fmt.Appendf(file, "<%X>", []byte(b)) }

// appendTo writes plain ASCII as it is, which is the same in PDFDocEncoding, and
// everything else as UTF-16 (ISO 32000-1, 7.9.2.2).
func (t text) appendTo(file []byte) []byte {
	for _, r := range t {
		if r < ' ' || r > '~' {
			return append16(append(file, "<FEFF"...), string(t), '>')
		}
	}
	file = append(file, '(')
	for _, c := range []byte(t) {
		if c == '(' || c == ')' || c == '\\' {
			file = append(file, '\\')
		}
		file = append(file, c)
	}
	return append(file, ')')
}

// append16 writes the text in hexadecimal UTF-16, high byte first, and the end.
func append16(file []byte, text string, end byte) []byte {
	for _, unit := range utf16.Encode([]rune(text)) {
		file = fmt.Appendf(file, "%04X", unit)
	}
	return append(file, end)
}

func (a array) appendTo(file []byte) []byte {
	file = append(file, '[')
	for i, value := range a {
		if i > 0 {
			file = append(file, ' ')
		}
		file = value.appendTo(file)
	}
	return append(file, ']')
}

func (d dict) appendTo(file []byte) []byte {
	file = append(file, "<<"...)
	for _, e := range d {
		file = append(e.key.appendTo(append(file, ' ')), ' ')
		file = e.value.appendTo(file)
	}
	return append(file, " >>"...)
}

func (s stream) appendTo(file []byte) []byte {
	var packed bytes.Buffer
	compressor := zlib.NewWriter(&packed)
	compressor.Write(s.data) // a buffer takes everything
	compressor.Close()
	head := slices.Concat(s.dict, dict{{"Filter", name("FlateDecode")}})
	return appendStream(file, head, packed.Bytes())
}

// plain is a stream that is left uncompressed, so that programs find it which do
// not read PDF.
type plain stream

func (p plain) appendTo(file []byte) []byte {
	return appendStream(file, p.dict, p.data)
}

func appendStream(file []byte, head dict, data []byte) []byte {
	head = slices.Concat(head, dict{{"Length", integer(len(data))}})
	file = append(head.appendTo(file), "\nstream\n"...)
	return append(append(file, data...), "\nendstream"...)
}

// numbers returns the values as an array.
func numbers(values ...float64) array {
	list := make(array, len(values))
	for i, v := range values {
		list[i] = number(v)
	}
	return list
}

// appendNumber writes a number without exponent and without trailing zeros.
func appendNumber(file []byte, value float64, decimals int) []byte {
	start := len(file)
	file = strconv.AppendFloat(file, value, 'f', decimals, 64)
	if bytes.IndexByte(file[start:], '.') >= 0 {
		file = bytes.TrimRight(file, "0")
		file = bytes.TrimSuffix(file, []byte("."))
	}
	if string(file[start:]) == "-0" {
		file = append(file[:start], '0')
	}
	return file
}
