package entry

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
)

// German, Italian, Spanish, Dutch, Danish, Turkish and Indonesian part thousands by a point,
// English and Mexican Spanish by a comma, French, Swedish and Polish by a space, and Swiss
// German by an apostrophe (common practice, value from memory).
func TestPointPartsThousands(t *testing.T) {
	for locale, want := range map[string]bool{
		"de-DE": true, "de": true, "it-IT": true, "es-ES": true, "nl-NL": true, "da-DK": true, "tr-TR": true, "id-ID": true,
		"en-US": false, "en-GB": false, "fr-FR": false, "sv-SE": false, "pl-PL": false, "de-CH": false, "es-MX": false, "": false, "nonsense!": false,
	} {
		if got := pointPartsThousands(locale); got != want {
			t.Errorf("%q: %v, want %v", locale, got, want)
		}
	}
}

// The texts are those of an English locale.
func TestReadCounts(t *testing.T) {
	test.NewTempApp(t)
	list, complaint := ReadCounts("5,000; 500, 2 000")
	if complaint != "" || !slices.Equal(list, []float64{5000, 500, 2000}) {
		t.Errorf("read %v, %q", list, complaint)
	}
	for text, says := range map[string]string{
		"5,500":     `Character 1: "5,500" may be the list 5; 500 or the number 5500; write 5; 500 or 5500. Part the numbers by semicolons, such as 500; 2000; 5000.`,
		"500, some": `Character 6: "s" is not a number`,
	} {
		if list, complaint := ReadCounts(text); list != nil || !strings.Contains(complaint, says) {
			t.Errorf("%q: %v, %q; want %q", text, list, complaint, says)
		}
	}
}
