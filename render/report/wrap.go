package report

import (
	"strings"
	"unicode"

	"gussetwright/render/typeface"
)

// Wrap breaks a text into lines no longer than width, in the unit of size. Lines end
// at spaces, after hyphens, dashes and slashes, and where the text has an end of line;
// a word that is too long for a line is broken anywhere. Nothing is left out but the
// spaces at the breaks. A width too small for a letter gives a letter to each line.
func Wrap(text string, width, size float64, bold bool) []string {
	var lines []string
	for paragraph := range strings.SplitSeq(strings.ReplaceAll(text, "\r\n", "\n"), "\n") {
		lines = append(lines, wrapParagraph(paragraph, width, size, bold)...)
	}
	return lines
}

func wrapParagraph(text string, width, size float64, bold bool) []string {
	measure := measure{typeface.Of(bold), width / size}
	var lines []string
	line := ""
	for _, piece := range pieces(text) {
		if joined := line + piece; measure.holds(joined) {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, strings.TrimRight(line, " "))
		}
		line = piece
		for !measure.holds(line) {
			start, rest := measure.cut(line)
			if rest == "" {
				break
			}
			lines = append(lines, start)
			line = rest
		}
	}
	return append(lines, strings.TrimRight(line, " "))
}

// pieces cuts a text after each place where a line may end. Runs of white space count
// as one space; a no-break space is a letter like others.
func pieces(text string) []string {
	var list []string
	for _, word := range strings.FieldsFunc(text, breaks) {
		start := 0
		letters := []rune(word)
		for i, r := range letters {
			inside := i > 0 && i < len(letters)-1
			if inside && strings.ContainsRune("-–—/", r) && !unicode.IsDigit(letters[i+1]) {
				list = append(list, string(letters[start:i+1]))
				start = i + 1
			}
		}
		list = append(list, string(letters[start:])+" ")
	}
	return list
}

// breaks tells whether a line may end at a character that is then left out.
func breaks(r rune) bool {
	return unicode.IsSpace(r) && r != '\u00A0' && r != '\u202F' && r != '\u2007'
}

// measure is the length of a line in ems.
type measure struct {
	face *typeface.Face
	ems  float64
}

// holds tells whether a line fits, spaces at its end left out. It looks no further
// than the line is full.
func (m measure) holds(line string) bool {
	// A width that was measured from the same text must hold it.
	left := m.ems*(1+1e-9) + 1e-9
	for _, r := range strings.TrimRight(line, " ") {
		glyph, _ := m.face.Glyph(r)
		if left -= m.face.Width(glyph); left < 0 {
			return false
		}
	}
	return true
}

// cut breaks a word that is too long where the line is full, at least after one
// letter, and never before a mark that belongs to the letter before it. There is no
// rest where it cannot be broken.
func (m measure) cut(word string) (start, rest string) {
	end := 0
	for i, r := range word {
		if i == 0 || unicode.Is(unicode.Mn, r) {
			continue
		}
		if end > 0 && !m.holds(word[:i]) {
			break
		}
		end = i
	}
	if end == 0 || strings.TrimRight(word[end:], " ") == "" {
		return word, ""
	}
	return word[:end], word[end:]
}

// Style is how running text is set.
type Style struct {
	Size    float64 // height of the em square in mm
	Bold    bool
	Colour  Colour
	Leading float64 // from baseline to baseline, as a share of Size; 0 for 1.35
}

// usualLeading leaves room to find the next line (common practice, no published
// source).
const usualLeading = 1.35

// Height returns the height in mm of a number of lines.
func (s Style) Height(lines int) float64 { return float64(lines) * s.lineHeight() }

func (s Style) lineHeight() float64 {
	if s.Leading > 0 {
		return s.Size * s.Leading
	}
	return s.Size * usualLeading
}

// Lines breaks a text into lines of this style.
func (s Style) Lines(text string, width float64) []string {
	return Wrap(text, width, s.Size, s.Bold)
}

// Advance returns the length of a text in mm.
func (s Style) Advance(text string) float64 { return typeface.Advance(text, s.Size, s.Bold) }

// baseline returns how far the baseline lies below the top of its line.
func (s Style) baseline() float64 {
	face := typeface.Of(s.Bold).Metrics()
	above, below := face.Ascent*s.Size, -face.Descent*s.Size
	return above + (s.lineHeight()-above-below)/2
}
