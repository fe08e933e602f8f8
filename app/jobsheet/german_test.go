package jobsheet

import (
	"regexp"
	"strings"
	"testing"

	"fyne.io/fyne/v2/lang"

	"gussetwright/app/words"
	"gussetwright/geometry/geomtest"
)

// In German decimals stand behind a comma all over the page, as poppler reads it; the
// version of the bag and its date keep their points. The table keeps the point, which
// programs read.
func TestGermanNumbers(t *testing.T) {
	if err := words.Load("de"); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := words.Load("en"); err != nil {
			t.Fatal(err)
		}
	})
	for name, spec := range kinds(t) {
		order := orderOf(t, spec)
		order.Say = func(english string) string { return lang.L(english) }
		text := string(geomtest.Run(t, "pdftotext", "-enc", "UTF-8", "-layout", written(t, order), "-"))
		if order.Version != "" {
			text = strings.ReplaceAll(text, order.Version, "")
		}
		for _, line := range strings.Split(text, "\n") {
			if regexp.MustCompile(`\d\.\d`).MatchString(line) {
				t.Errorf("%s: %q", name, line)
			}
		}
		if !regexp.MustCompile(`\d,\d`).MatchString(text) {
			t.Errorf("%s: no number has decimals", name)
		}
	}
}
