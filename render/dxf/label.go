package dxf

import (
	"fmt"
	"strings"
	"unicode/utf16"

	"gussetwright/render/scene"
)

// capitals is the height of capital letters as a share of the em square, in Go
// Regular. DXF measures text by its capitals.
const capitals = 0.722

// alignments holds the horizontal alignment of each anchor (group code 72).
var alignments = map[scene.Anchor]int{scene.Start: 0, scene.Middle: 1, scene.End: 2}

// label draws a line of text on its baseline. The second point is the one that
// counts unless the text is aligned left, when it must be absent. A label of blanks
// would be a fault in the file and is left out.
func (p pen) label(label scene.Label) {
	if strings.TrimSpace(label.Text) == "" {
		return
	}
	p.entity("TEXT")
	p.text(100, "AcDbText")
	p.point(10, label.At)
	p.length(40, label.Size*capitals)
	p.text(1, encode(label.Text))
	p.angle(50, label.Turn)
	if label.Bold {
		p.text(7, "BOLD")
	}
	if alignment := alignments[label.Anchor]; alignment != 0 {
		p.whole(72, alignment)
		p.point(11, label.At)
	}
	p.text(100, "AcDbText")
}

// encode returns the text on one line in ASCII. Other characters become \U+ and
// four hexadecimal digits, and so does the backslash, lest it start such a code.
// A caret would make a control character of the letter after it, unless a space
// follows.
func encode(text string) string {
	var out strings.Builder
	for _, r := range text {
		switch {
		case r < ' ' || r == 0x7f:
			out.WriteByte(' ')
		case r == '^':
			out.WriteString("^ ")
		case r < 0x7f && r != '\\':
			out.WriteByte(byte(r))
		default:
			for _, unit := range utf16.AppendRune(nil, r) {
				fmt.Fprintf(&out, `\U+%04X`, unit)
			}
		}
	}
	return out.String()
}
