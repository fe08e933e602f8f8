// Package object is the model of what stands in a PDF file (ISO 32000-1, 7.3):
// names, numbers, arrays, dictionaries and streams, and how each is written.
package object

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"slices"
	"strconv"
	"unicode/utf16"
)

// Object is a value as it stands in a PDF file.
type Object interface {
	// AppendTo writes the object at the end of the file.
	AppendTo(file []byte) []byte
}

type (
	// Name is a name without its slash.
	Name string
	// Integer is a whole number.
	Integer int
	// Number is a number with a fraction.
	Number float64
	// Boolean is true or false.
	Boolean bool
	// Reference stands for the object of that number in the same file.
	Reference int
	// Text is a text for people to read.
	Text string
	// Binary is a string of bytes.
	Binary []byte
	// Null is no value.
	Null struct{}
	// Array is a list of objects.
	Array []Object
	// Dict keeps its entries in the order in which they were listed, so that a
	// file comes out the same every time.
	Dict []Entry
	// Entry is a key of a dictionary with its value.
	Entry struct {
		Key   Name
		Value Object
	}
	// Stream is a dictionary with data that is compressed on writing.
	Stream struct {
		Dict Dict
		Data []byte
	}
	// Plain is a stream whose data is written as it is: uncompressed, or packed
	// already in the way that its dictionary says.
	Plain Stream
)

// Decimals is how exactly numbers are written. Coordinates are millimetres or
// points, so the last digit is a tenth of a micrometre.
const Decimals = 4

// AppendTo writes the name with its slash.
func (n Name) AppendTo(file []byte) []byte {
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

// AppendTo writes the digits.
func (i Integer) AppendTo(file []byte) []byte { return strconv.AppendInt(file, int64(i), 10) }

// AppendTo writes the number with up to Decimals decimals.
func (n Number) AppendTo(file []byte) []byte { return AppendNumber(file, float64(n), Decimals) }

// AppendTo writes true or false.
func (b Boolean) AppendTo(file []byte) []byte { return strconv.AppendBool(file, bool(b)) }

// AppendTo writes the reference.
func (r Reference) AppendTo(file []byte) []byte { return fmt.Appendf(file, "%d 0 R", int(r)) }

// AppendTo writes the bytes in hexadecimal.
func (b Binary) AppendTo(file []byte) []byte { return fmt.Appendf(file, "<%X>", []byte(b)) }

// AppendTo writes null.
func (Null) AppendTo(file []byte) []byte { return append(file, "null"...) }

// AppendTo writes plain ASCII as it is, which is the same in PDFDocEncoding, and
// everything else as UTF-16 (ISO 32000-1, 7.9.2.2).
func (t Text) AppendTo(file []byte) []byte {
	for _, r := range t {
		if r < ' ' || r > '~' {
			return Append16(append(file, "<FEFF"...), string(t), '>')
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

// Append16 writes the text in hexadecimal UTF-16, high byte first, and the end.
func Append16(file []byte, text string, end byte) []byte {
	for _, unit := range utf16.Encode([]rune(text)) {
		file = fmt.Appendf(file, "%04X", unit)
	}
	return append(file, end)
}

// AppendTo writes the list in brackets.
func (a Array) AppendTo(file []byte) []byte {
	file = append(file, '[')
	for i, value := range a {
		if i > 0 {
			file = append(file, ' ')
		}
		file = value.AppendTo(file)
	}
	return append(file, ']')
}

// AppendTo writes the entries in their order.
func (d Dict) AppendTo(file []byte) []byte {
	file = append(file, "<<"...)
	for _, e := range d {
		file = append(e.Key.AppendTo(append(file, ' ')), ' ')
		file = e.Value.AppendTo(file)
	}
	return append(file, " >>"...)
}

// Get returns the value of a key, or nil.
func (d Dict) Get(key Name) Object {
	for _, e := range d {
		if e.Key == key {
			return e.Value
		}
	}
	return nil
}

// AppendTo writes the stream, packed by zlib.
func (s Stream) AppendTo(file []byte) []byte {
	var packed bytes.Buffer
	compressor := zlib.NewWriter(&packed)
	compressor.Write(s.Data) // a buffer takes everything
	compressor.Close()
	head := slices.Concat(s.Dict, Dict{{"Filter", Name("FlateDecode")}})
	return appendStream(file, head, packed.Bytes())
}

// AppendTo writes the stream as it is.
func (p Plain) AppendTo(file []byte) []byte { return appendStream(file, p.Dict, p.Data) }

func appendStream(file []byte, head Dict, data []byte) []byte {
	head = slices.Concat(head, Dict{{"Length", Integer(len(data))}})
	file = append(head.AppendTo(file), "\nstream\n"...)
	return append(append(file, data...), "\nendstream"...)
}

// Numbers returns the values as an array.
func Numbers(values ...float64) Array {
	list := make(Array, len(values))
	for i, v := range values {
		list[i] = Number(v)
	}
	return list
}

// AppendNumber writes a number without exponent and without trailing zeros.
func AppendNumber(file []byte, value float64, decimals int) []byte {
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
