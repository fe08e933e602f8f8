package page

import (
	"bytes"
	"strconv"

	"gussetwright/render/pdf/object"
)

// name returns a name without its slash, with its codes read.
func (l *lexer) name(t token) object.Name {
	text := l.text(t)[1:]
	if bytes.IndexByte(text, '#') < 0 {
		return object.Name(text)
	}
	plain := make([]byte, 0, len(text))
	for i := 0; i < len(text); i++ {
		if text[i] == '#' && i+2 < len(text) {
			if c, err := strconv.ParseUint(string(text[i+1:i+3]), 16, 8); err == nil {
				plain = append(plain, byte(c))
				i += 2
				continue
			}
		}
		plain = append(plain, text[i])
	}
	return object.Name(plain)
}

// unhex returns the bytes of a string in hexadecimal; an odd digit at the end is
// followed by zero.
func unhex(text []byte) object.Binary {
	bytes, digits := object.Binary{}, []byte{}
	for _, c := range text {
		if c >= '0' && c <= '9' || c >= 'a' && c <= 'f' || c >= 'A' && c <= 'F' {
			digits = append(digits, c)
		}
	}
	if len(digits)%2 == 1 {
		digits = append(digits, '0')
	}
	for i := 0; i < len(digits); i += 2 {
		c, _ := strconv.ParseUint(string(digits[i:i+2]), 16, 8)
		bytes = append(bytes, byte(c))
	}
	return bytes
}

// unescape returns the bytes of a string in parentheses.
func unescape(text []byte) object.Binary {
	text = bytes.TrimSuffix(text[1:], []byte(")"))
	plain := object.Binary{}
	for i := 0; i < len(text); i++ {
		c := text[i]
		if c == '\r' { // an end of line is one byte, however it was written
			if i+1 < len(text) && text[i+1] == '\n' {
				i++
			}
			c = '\n'
		} else if c == '\\' && i+1 < len(text) {
			i++
			if octal := digits(text[i:]); octal > 0 {
				v, _ := strconv.ParseUint(string(text[i:i+octal]), 8, 16)
				plain = append(plain, byte(v))
				i += octal - 1
				continue
			}
			if text[i] == '\n' || text[i] == '\r' { // the line goes on
				if text[i] == '\r' && i+1 < len(text) && text[i+1] == '\n' {
					i++
				}
				continue
			}
			c = text[i]
			if at := bytes.IndexByte([]byte("nrtbf"), c); at >= 0 {
				c = "\n\r\t\b\f"[at]
			}
		}
		plain = append(plain, c)
	}
	return plain
}

// digits counts the octal digits at the start of the text, up to three.
func digits(text []byte) int {
	count := 0
	for count < min(3, len(text)) && text[count] >= '0' && text[count] <= '7' {
		count++
	}
	return count
}
