package scene

import (
	"strings"
	"unicode"
)

// ByRole returns the items of each role, in the order of the drawing. Roles
// without items are missing; go through Roles for the drawing order.
func (d Drawing) ByRole() map[Role][]Item {
	groups := make(map[Role][]Item)
	for _, item := range d.Items {
		groups[item.Layer()] = append(groups[item.Layer()], item)
	}
	return groups
}

// Spelled returns the name of the role in lower case with the separator between
// its words: "reverse-creasing".
func (r Role) Spelled(separator string) string {
	var text strings.Builder
	for i, letter := range r.String() {
		if i > 0 && unicode.IsUpper(letter) {
			text.WriteString(separator)
		}
		text.WriteRune(unicode.ToLower(letter))
	}
	return text.String()
}
