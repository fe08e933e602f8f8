package phrase_test

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gussetwright/geometry/phrase"
)

// german is a little dictionary.
func german(text string) string {
	known := map[string]string{
		"save %s: %s":   "%s speichern: %s",
		"%d of %s":      "%[2]s: %[1]d",
		"bag":           "Tüte",
		"it is full":    "sie ist voll",
		"it is torn":    "sie ist zerrissen",
		"as it is":      "100 % wie sie ist",
		"%s (%.1f %%)":  "%s (zu %.1f %%)",
		"the least, %s": "das Mindeste, %s",
	}
	if said, found := known[text]; found {
		return said
	}
	return text
}

func TestPhrase(t *testing.T) {
	tests := []struct {
		phrase          phrase.Phrase
		english, german string
	}{
		{phrase.Phrase{}, "", ""},
		{phrase.New("as it is"), "as it is", "100 % wie sie ist"},
		{phrase.New("it costs 5 %"), "it costs 5 %", "it costs 5 %"},
		{phrase.New("%d of %s", 3, phrase.Word("bag")), "3 of bag", "Tüte: 3"},
		{phrase.New("%d of %s", 3, "bag"), "3 of bag", "bag: 3"},
		{phrase.New("%s (%.1f %%)", phrase.New("the least, %s", "5 mm"), 1.25), "the least, 5 mm (1.2 %)", "das Mindeste, 5 mm (zu 1.2 %)"},
		{phrase.New("%q", phrase.Word("bag")), `"bag"`, `"Tüte"`},
	}
	for _, test := range tests {
		if got := test.phrase.String(); got != test.english {
			t.Errorf("in English %q, want %q", got, test.english)
		}
		if got := test.phrase.In(german); got != test.german {
			t.Errorf("in German %q, want %q", got, test.german)
		}
		if test.phrase.Empty() != (test.english == "") {
			t.Errorf("%q is empty: %v", test.english, test.phrase.Empty())
		}
	}
}

// Values are put anew in the phrase and in those within it, and the phrase stays as it
// was.
func TestWith(t *testing.T) {
	whole := phrase.New("%s (%.1f %%)", phrase.New("the least, %s", phrase.Word("bag")), 1.25)
	swapped := whole.With(func(value any) any {
		switch value.(type) {
		case phrase.Word:
			return "a sack"
		case float64:
			return 7.5
		}
		return value
	})
	if got := swapped.In(german); got != "das Mindeste, a sack (zu 7.5 %)" {
		t.Errorf("with other values it says %q", got)
	}
	if got := whole.String(); got != "the least, bag (1.2 %)" {
		t.Errorf("the phrase itself says %q now", got)
	}
	same := func(value any) any { return value }
	if got := phrase.New("as it is").With(same).String(); got != "as it is" {
		t.Errorf("a phrase without values says %q", got)
	}
}

// pathed is an error that names things in another way where it is translated.
type pathed struct{}

func (pathed) Error() string                     { return "bag.width is wrong" }
func (pathed) In(say func(string) string) string { return say("bag") + " is wrong" }

func TestErrorIn(t *testing.T) {
	full, torn := phrase.Errorf("it is full"), phrase.Errorf("it is torn")
	plain := errors.New("disk is full")
	tests := []struct {
		name            string
		err             error
		english, german string
	}{
		{"a phrase", full, "it is full", "sie ist voll"},
		{"a plain error", plain, "disk is full", "disk is full"},
		{"a phrase around an error of the system", phrase.Errorf("save %s: %s", "a.gusset", plain), "save a.gusset: disk is full", "a.gusset speichern: disk is full"},
		{"a phrase around a phrase", phrase.Errorf("save %s: %s", "a", full), "save a: it is full", "a speichern: sie ist voll"},
		{"a phrase inside a plain error", fmt.Errorf("look: %w; mend it", full), "look: it is full; mend it", "look: sie ist voll; mend it"},
		{"several inside one", fmt.Errorf("%w, %w and %w", full, plain, torn), "it is full, disk is full and it is torn", "sie ist voll, disk is full and sie ist zerrissen"},
		{"joined", errors.Join(full, full, torn), "it is full\nit is full\nit is torn", "sie ist voll\nsie ist voll\nsie ist zerrissen"},
		{
			"deep", phrase.Errorf("save %s: %s", "a", fmt.Errorf("b: %w", errors.Join(torn, pathed{}))),
			"save a: b: it is torn\nbag.width is wrong", "a speichern: b: sie ist zerrissen\nTüte is wrong",
		},
		{"a phrase that is not the message", hiding{full}, "hidden", "hidden"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := test.err.Error(); got != test.english {
				t.Errorf("in English %q, want %q", got, test.english)
			}
			if got := phrase.ErrorIn(test.err, german); got != test.german {
				t.Errorf("in German %q, want %q", got, test.german)
			}
		})
	}
}

// hiding wraps an error that its message does not name.
type hiding struct{ cause error }

func (hiding) Error() string   { return "hidden" }
func (h hiding) Unwrap() error { return h.cause }

// An error can be asked for what it wraps, as errors of package fmt can.
func TestErrorWraps(t *testing.T) {
	_, missing := os.Open(filepath.Join(t.TempDir(), "missing"))
	err := fmt.Errorf("open: %w", phrase.Errorf("save %s: %s", "a", missing))
	var place *fs.PathError
	if !errors.Is(err, fs.ErrNotExist) || !errors.As(err, &place) {
		t.Errorf("%v does not wrap %v", err, missing)
	}
	var phrased *phrase.Error
	if !errors.As(err, &phrased) || !strings.HasPrefix(phrased.Error(), "save a: open ") {
		t.Errorf("the phrase in %v is %v", err, phrased)
	}
	first, second := phrase.Errorf("it is full"), phrase.Errorf("it is full")
	if errors.Is(first, second) || !errors.Is(fmt.Errorf("x: %w", first), first) {
		t.Error("errors are not told apart by which they are")
	}
}

func ExampleErrorIn() {
	err := phrase.Errorf("save %s: %s", "tea.gusset", phrase.Errorf("it is full"))
	fmt.Println(err)
	fmt.Println(phrase.ErrorIn(err, german))
	// Output:
	// save tea.gusset: it is full
	// tea.gusset speichern: sie ist voll
}

// What says nothing needs no translation: it would be missed in every language.
func TestNothingIsNotTranslated(t *testing.T) {
	translate := func(text string) string {
		if text == "" {
			t.Error("a translation of nothing is asked for")
		}
		return "<" + text + ">"
	}
	if got := (phrase.Phrase{}).In(translate); got != "" {
		t.Errorf("nothing is said as %q", got)
	}
	if got := phrase.New("%s and %s", phrase.Phrase{}, phrase.Word("")).In(translate); got != "< and >" {
		t.Errorf("two times nothing is said as %q", got)
	}
}
