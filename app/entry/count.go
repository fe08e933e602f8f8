package entry

import (
	"strings"
	"sync"

	"fyne.io/fyne/v2/lang"
	"golang.org/x/text/language"
	"golang.org/x/text/message"
	"golang.org/x/text/number"

	"gussetwright/app/words"
	"gussetwright/geometry/arithmetic"
)

// ReadCounts reads a list of numbers of things, such as "500, 2000, 5000", or says in the
// language of the user what is wrong with it. What may be one number or several, such as
// "5,500", is refused.
func ReadCounts(text string) (list []float64, complaint string) {
	list, err := arithmetic.EvaluateCounts(text, pointParts())
	if err != nil {
		return nil, sentence(err) + " " + lang.L("Part the numbers by semicolons, such as 500; 2000; 5000.")
	}
	return list, ""
}

// sentence says in the language of the user what went wrong.
func sentence(err error) string { return capital(words.Error(err)) + "." }

// pointParts tells whether a point in a count parts thousands: where the window writes
// decimals behind a comma, or the system parts thousands by a point.
func pointParts() bool { return words.DecimalMark() == arithmetic.Comma || systemPointParts() }

// systemPointParts asks the system once: it may take its time, and complains of a bad answer
// each time.
var systemPointParts = sync.OnceValue(func() bool { return pointPartsThousands(lang.SystemLocale().String()) })

// pointPartsThousands tells whether 3.000 is three thousand where a locale such as "de-DE"
// is used.
func pointPartsThousands(locale string) bool {
	printer := message.NewPrinter(language.Make(locale))
	return strings.Contains(printer.Sprint(number.Decimal(1_000_000)), ".")
}
