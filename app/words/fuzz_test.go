package words

import (
	"encoding/json"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// Whatever a file of translations holds, it is read or refused, and what was read can be
// handed to the toolkit. A phrase is said in it without a panic, however wrong the verbs.
func FuzzTranslations(f *testing.F) {
	for _, language := range []string{"en", "de"} {
		texts, err := read(language)
		if err != nil {
			f.Fatal(err)
		}
		some := map[string]string{}
		for english, text := range texts {
			if some[english] = text; len(some) == 5 {
				break
			}
		}
		data, err := json.Marshal(some)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add([]byte(`{"%s is %d": "%!s %[9]d %*d %", "a": null}`))
	f.Add([]byte(`{"a": {"other": "b"}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		texts, err := textsIn(data)
		if err != nil {
			return
		}
		if list := messages(texts); len(list) != len(texts) {
			t.Fatalf("%d messages of %d texts", len(list), len(texts))
		}
		for english, text := range texts {
			said := phrase.New(english, 3, geometry.Length(15), phrase.Word("gap"), phrase.New(english))
			_ = said.In(func(string) string { return text })
			_ = said.String()
		}
	})
}
