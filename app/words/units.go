package words

import "fyne.io/fyne/v2/lang"

// Unit returns a unit as it stands behind a number. Symbols such as "mm" are the same in
// every language; those with a word in them are translated.
func Unit(unit string) string {
	spoken := map[string]string{
		"each": lang.L("each"), "/form": lang.L("/form"),
		"/1000 sheets": lang.L("/1000 sheets"), "/1000 bags": lang.L("/1000 bags"),
	}
	if said, known := spoken[unit]; known {
		return said
	}
	return unit
}
