package entry

import (
	"strings"
	"unicode/utf8"
)

// ruler is a text whose words were measured in letters of a size, so that it is broken
// into lines for one width after the other without measuring anything again.
type ruler struct {
	text    string
	letters float32
	whole   float32 // width of the text on one line
	space   float32
	words   []measuredWord
	measure func(string) float32
}

type measuredWord struct {
	text  string
	width float32
}

// measured measures a text and the space between words. The words themselves are measured
// when the text is first broken.
func measured(text string, letters float32, measure func(string) float32) ruler {
	return ruler{text: text, letters: letters, whole: measure(text), measure: measure}
}

// lines breaks at spaces, and inside of a word only where it is wider than the line. No
// width stands for enough.
func (r *ruler) lines(width float32) []string {
	if r.text == "" {
		return nil
	}
	if width <= 0 || r.whole <= width {
		return []string{r.text}
	}
	r.measureWords()
	var lines []string
	line, reach := "", float32(0)
	for _, word := range r.words {
		if line != "" {
			if reach+r.space+word.width <= width {
				line, reach = line+" "+word.text, reach+r.space+word.width
				continue
			}
			lines = append(lines, line)
		}
		for word.width > width && utf8.RuneCountInString(word.text) > 1 {
			head := fitting(word.text, width, r.measure)
			lines = append(lines, word.text[:head])
			rest := word.text[head:]
			word = measuredWord{rest, r.measure(rest)}
		}
		line, reach = word.text, word.width
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

func (r *ruler) measureWords() {
	if r.words != nil {
		return
	}
	r.space = r.measure(" ")
	for _, word := range strings.FieldsFunc(r.text, func(c rune) bool { return c == ' ' || c == '\n' }) {
		r.words = append(r.words, measuredWord{word, r.measure(word)})
	}
}

// fitting returns how many bytes of a word of several letters fit the width: at
// least one letter, and not all of them.
func fitting(word string, width float32, measure func(string) float32) int {
	_, end := utf8.DecodeRuneInString(word)
	for next := range word {
		if next > end && measure(word[:next]) > width {
			break
		}
		end = max(end, next)
	}
	return end
}
