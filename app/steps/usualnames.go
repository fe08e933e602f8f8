package steps

import "fyne.io/fyne/v2/lang"

// usualNames returns the names of the usual sizes in the language of the user.
func usualNames() map[string]string {
	return map[string]string{
		"jewel box": lang.L("Jewel box"), "small gift": lang.L("Small gift"), "perfume": lang.L("Perfume"), "mug": lang.L("Mug"),
		"one bottle": lang.L("One bottle"), "two bottles": lang.L("Two bottles"), "A6 upright": lang.L("A6 upright"),
		"A5 upright": lang.L("A5 upright"), "A5 across": lang.L("A5 across"), "book": lang.L("Book"),
		"tea and cake": lang.L("Tea and cake"), "everyday": lang.L("Everyday"), "A4 upright": lang.L("A4 upright"),
		"A4 upright, deep": lang.L("A4 upright, deep"), "A4 across": lang.L("A4 across"), "shirt": lang.L("Shirt"),
		"shoe box upright": lang.L("Shoe box, upright"), "knitwear": lang.L("Knitwear"), "hamper": lang.L("Hamper"),
		"A3 upright": lang.L("A3 upright"), "lunch": lang.L("Lunch"),
	}
}
