package steppage

import "fmt"

// FreeName returns a name that is not taken: the one given, or that with a number.
func FreeName(name string, taken func(string) bool) string {
	free := name
	for i := 2; taken(free); i++ {
		free = fmt.Sprintf("%s (%d)", name, i)
	}
	return free
}

// ShortName cuts a name that is too long for one line of a table.
func ShortName(name string) string {
	const most = 26
	if runes := []rune(name); len(runes) > most {
		return string(runes[:most-1]) + "…"
	}
	return name
}
