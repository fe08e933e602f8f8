package vector

import (
	"slices"
	"strings"

	"gussetwright/render/limits"
)

// declaration is a property with its value, as a style or an attribute gives it.
type declaration struct {
	property, value string
	important       bool
}

// parseDeclarations reads what stands between the braces of a rule or in a style
// attribute. A declaration without a colon is left out.
func parseDeclarations(text string) []declaration {
	var list []declaration
	for text != "" {
		one, rest := text, ""
		if end := outsideQuotes(text, ";"); end >= 0 {
			one, rest = text[:end], text[end+1:]
		}
		text = rest
		property, value, found := strings.Cut(one, ":")
		if !found {
			continue
		}
		d := declaration{property: strings.ToLower(strings.TrimSpace(property)), value: strings.TrimSpace(value)}
		if at := strings.LastIndexByte(d.value, '!'); at >= 0 && strings.EqualFold(strings.TrimSpace(d.value[at+1:]), "important") {
			d.value, d.important = strings.TrimSpace(d.value[:at]), true
		}
		list = append(list, d)
	}
	return list
}

// outsideQuotes returns where the first of some characters stands outside of quotes
// and round brackets, or −1.
func outsideQuotes(text, wanted string) int {
	var quote byte
	open := 0
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case quote != 0:
			if c == '\\' {
				i++
			} else if c == quote {
				quote = 0
			}
		case open == 0 && strings.IndexByte(wanted, c) >= 0:
			return i
		case c == '"' || c == '\'':
			quote = c
		case c == '(':
			open++
		case c == ')':
			open = max(open-1, 0)
		}
	}
	return -1
}

// selector says which elements a rule is for: those of a type, with an id and with
// classes, all of which may be missing.
type selector struct {
	kind, id string
	classes  []string
}

// rule gives declarations to the elements of a selector.
type rule struct {
	selector
	declarations []declaration
	weight       int // of the selector
	order        int // in the file
}

// styleSheet holds the rules of all style elements, found by the rarest thing that
// their selectors ask for.
type styleSheet struct {
	byID, byClass, byKind map[string][]*rule
	count                 int
}

// mostRules bounds how many selectors a drawing may have.
const mostRules = limits.DrawingRules

func newStyleSheet() *styleSheet {
	return &styleSheet{map[string][]*rule{}, map[string][]*rule{}, map[string][]*rule{}, 0}
}

// read adds the rules of one style element, and tells how many it did not know.
func (s *styleSheet) read(text string) (unknown int, err error) {
	text = withoutComments(text)
	for {
		text = strings.TrimLeft(text, blanks)
		for _, open := range []string{"<!--", "-->"} { // once hid styles from old browsers
			text = strings.TrimLeft(strings.TrimPrefix(text, open), blanks)
		}
		brace := outsideQuotes(text, "{;")
		if brace < 0 {
			if text != "" {
				unknown++
			}
			return unknown, nil
		}
		head := strings.TrimSpace(text[:brace])
		if text[brace] == ';' { // such as @import
			unknown, text = unknown+1, text[brace+1:]
			continue
		}
		body, rest := block(text[brace+1:])
		text = rest
		if strings.HasPrefix(head, "@") {
			unknown++
			continue
		}
		declarations := parseDeclarations(body)
		for part := range strings.SplitSeq(head, ",") {
			if s.count++; s.count > mostRules {
				return unknown, tooMany("style rules", mostRules, "simplify the drawing")
			}
			if sel, ok := parseSelector(strings.TrimSpace(part)); ok {
				s.add(&rule{sel, declarations, sel.weight(), s.count})
			} else {
				unknown++
			}
		}
	}
}

// block returns what stands before the brace that closes a block, and what after.
func block(text string) (inside, rest string) {
	depth, at := 1, 0
	for {
		next := outsideQuotes(text[at:], "{}")
		if next < 0 {
			return text, ""
		}
		at += next + 1
		if text[at-1] == '{' {
			depth++
		} else if depth--; depth == 0 {
			return text[:at-1], text[at:]
		}
	}
}

func withoutComments(text string) string {
	if !strings.Contains(text, "/*") {
		return text
	}
	var kept strings.Builder
	for {
		before, after, found := strings.Cut(text, "/*")
		kept.WriteString(before)
		if !found {
			return kept.String()
		}
		_, text, _ = strings.Cut(after, "*/")
	}
}

// parseSelector reads a selector such as path.logo#front. Others, such as of
// elements within elements, are not known.
func parseSelector(text string) (s selector, ok bool) {
	for first := true; text != ""; first = false {
		mark := text[0]
		if mark == '.' || mark == '#' {
			text = text[1:]
		}
		end := strings.IndexFunc(text, func(r rune) bool {
			return !(r == '-' || r == '_' || r >= '0' && r <= '9' || r|0x20 >= 'a' && r|0x20 <= 'z' || r >= 0x80)
		})
		if end < 0 {
			end = len(text)
		}
		name := text[:end]
		switch {
		case mark == '*' && first:
			text = text[1:]
			ok = true
			continue
		case name == "":
			return s, false
		case mark == '.':
			s.classes = append(s.classes, name)
		case mark == '#':
			s.id = name
		case first:
			s.kind = name
		default:
			return s, false
		}
		text, ok = text[end:], true
	}
	return s, ok
}

// weight orders selectors: an id counts more than all classes, a class more than a
// type (Selectors Level 4, 17).
func (s selector) weight() int {
	weight := min(len(s.classes), 99) * 10
	if s.id != "" {
		weight += 1000
	}
	if s.kind != "" {
		weight++
	}
	return weight
}

func (s *styleSheet) add(r *rule) {
	switch {
	case r.id != "":
		s.byID[r.id] = append(s.byID[r.id], r)
	case len(r.classes) > 0:
		s.byClass[r.classes[0]] = append(s.byClass[r.classes[0]], r)
	default:
		s.byKind[r.kind] = append(s.byKind[r.kind], r) // "" for all types
	}
}

// matching returns the rules for an element, weakest first, and how many it looked
// at.
func (s *styleSheet) matching(n *node) (found []*rule, looked int) {
	classes := strings.Fields(n.attribute("class"))
	look := func(rules []*rule) {
		looked += len(rules)
		for _, r := range rules {
			if r.matches(n, classes) {
				found = append(found, r)
			}
		}
	}
	look(s.byKind[""])
	look(s.byKind[n.name])
	for i, class := range classes {
		if !slices.Contains(classes[:i], class) {
			look(s.byClass[class])
		}
	}
	look(s.byID[n.attribute("id")])
	slices.SortStableFunc(found, func(a, b *rule) int {
		if a.weight != b.weight {
			return a.weight - b.weight
		}
		return a.order - b.order
	})
	return found, looked + len(classes)
}

func (s selector) matches(n *node, classes []string) bool {
	if s.kind != "" && s.kind != n.name || s.id != "" && s.id != n.attribute("id") {
		return false
	}
	for _, class := range s.classes {
		if !slices.Contains(classes, class) {
			return false
		}
	}
	return true
}

// cascade lists what an element declares, weakest first: its attributes, the rules
// that match it, its style attribute, and then what is marked as important. It tells
// how many rules and bytes it went through.
func (s *styleSheet) cascade(n *node) (effort int) {
	var list []declaration
	for _, a := range n.attributes {
		if properties[a.Name.Local] && a.Name.Space == "" {
			list = append(list, declaration{property: a.Name.Local, value: strings.TrimSpace(a.Value)})
		}
	}
	rules, looked := s.matching(n)
	for _, r := range rules {
		list = append(list, r.declarations...)
	}
	list = append(list, parseDeclarations(withoutComments(n.attribute("style")))...)
	for _, d := range list[:len(list):len(list)] {
		if d.important {
			list = append(list, d)
		}
	}
	n.declared = list
	return n.weight + 16*looked + 32*len(list)
}
