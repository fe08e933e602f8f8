package words

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
)

// TestNoTextIsMissing gathers every text of the window and looks for it in every
// language. With -update it writes what English lacks, drops what no one says any
// more, and lists what the others lack.
func TestNoTextIsMissing(t *testing.T) {
	said := textsInCode(t)
	for _, more := range []texts{textsOfTables(), textsOfPhrases(t), textsOfBlanks(), textsOfToolkit(t)} {
		for text, where := range more {
			said.add(text, where)
		}
	}
	if update := flag.Lookup("update"); update != nil && update.Value.String() == "true" {
		bringUpToDate(t, said)
	}
	for _, language := range codes() {
		has, err := fromDisk(t, language)
		if err != nil {
			t.Errorf("%s: %v", language, err)
			continue
		}
		for _, text := range slices.Sorted(maps.Keys(said)) {
			if _, known := has[text]; !known {
				t.Errorf("%s lacks %q (%s); go test ./app/words -update", language, text, said[text])
			}
		}
		for _, text := range slices.Sorted(maps.Keys(has)) {
			if _, is := said[text]; !is {
				t.Errorf("%s has %q, which is said nowhere", language, text)
			}
		}
	}
}

func TestTranslationsKeepWhatTheyTranslate(t *testing.T) {
	for _, language := range codes() {
		has, err := fromDisk(t, language)
		if err != nil {
			t.Errorf("%s: %v", language, err)
			continue
		}
		for english, text := range has {
			for _, complaint := range compare(english, text) {
				t.Errorf("%s: %q as %q: %s", language, english, text, complaint)
			}
		}
	}
}

// compare returns what is wrong with a translation.
func compare(english, text string) []string {
	var complaints []string
	if strings.TrimSpace(text) == "" {
		complaints = append(complaints, "it is empty")
	}
	if strings.TrimSpace(text) != text && strings.TrimSpace(english) == english {
		complaints = append(complaints, "it begins or ends with a space")
	}
	if strings.Contains(text, "{{") {
		complaints = append(complaints, "it would be read as a template")
	}
	if want, got := places(english), places(text); !maps.Equal(want, got) {
		complaints = append(complaints, fmt.Sprintf("places of values %v, want %v", got, want))
	}
	if said := fmt.Sprintf(text, samples(english)...); strings.Contains(said, "%!") {
		complaints = append(complaints, "with values in it becomes "+said)
	}
	return complaints
}

// place is where a value is put into a text, as package fmt reads it.
var place = regexp.MustCompile(`%(?:\[(\d+)\])?[-+#0]*\d*(?:\.\d+)?([a-zA-Z%])`)

// places returns the verb of each value by its number, from 1. A value that is said
// twice with different verbs has both.
func places(text string) map[int]string {
	verbs := map[int]string{}
	next := 1
	for _, match := range place.FindAllStringSubmatch(text, -1) {
		if match[2] == "%" {
			continue
		}
		if match[1] != "" {
			next, _ = strconv.Atoi(match[1])
		}
		if !strings.Contains(verbs[next], match[2]) {
			verbs[next] += match[2]
		}
		next++
	}
	return verbs
}

// samples returns values that fit the verbs of a text.
func samples(text string) []any {
	verbs := places(text)
	values := make([]any, len(verbs))
	for i := range values {
		switch verb := verbs[i+1]; {
		case strings.ContainsAny(verb, "d"):
			values[i] = 1
		case strings.ContainsAny(verb, "gfe"):
			values[i] = 1.5
		default:
			values[i] = "x"
		}
	}
	return values
}

func TestCompare(t *testing.T) {
	tests := []struct {
		english, text string
		wrong         bool
	}{
		{"Undo %s", "%s rückgängig", false},
		{"%s of %d", "%[2]d mal %[1]s", false},
		{"%s of %d", "%d mal %s", true},
		{"%s of %d", "%s", true},
		{"waste %.0f %%", "Abfall %.0f %%", false},
		{"waste %.0f %%", "Abfall %.1f %%", false},
		{"waste %.0f %%", "Abfall %d %%", true},
		{"Save", " ", true},
		{"Save", "Sichern ", true},
		{"Save", "{{.Sichern}}", true},
		{"Save", "%s sichern", true},
	}
	for _, test := range tests {
		if got := compare(test.english, test.text); (len(got) > 0) != test.wrong {
			t.Errorf("%q as %q: %v", test.english, test.text, got)
		}
	}
}

// codes returns the languages that have a file.
func codes() []string {
	var list []string
	for _, language := range Languages() {
		if language.Code != "" {
			list = append(list, language.Code)
		}
	}
	return list
}

func file(t *testing.T, language string) string {
	return filepath.Join(geomtest.Root(t), "assets", folder, language+".json")
}

func fromDisk(t *testing.T, language string) (map[string]string, error) {
	data, err := os.ReadFile(file(t, language))
	if err != nil {
		return nil, err
	}
	var has map[string]string
	return has, json.Unmarshal(data, &has)
}

// ids are the keys of the toolkit that are no English text, with their English.
var ids = map[string]string{"file.name": "Name", "file.parent": "Parent"}

// bringUpToDate writes the English file anew and takes out of the others what is no
// longer said.
func bringUpToDate(t *testing.T, said texts) {
	t.Helper()
	for _, language := range codes() {
		has, err := fromDisk(t, language)
		if err != nil {
			t.Fatal(err)
		}
		maps.DeleteFunc(has, func(text, _ string) bool { _, is := said[text]; return !is })
		for _, text := range slices.Sorted(maps.Keys(said)) {
			if has[text] != "" {
				continue
			}
			if language != english {
				t.Logf("%s lacks %q (%s)", language, text, said[text])
				continue
			}
			has[text] = text
			if name, is := ids[text]; is {
				has[text] = name
			}
		}
		var out bytes.Buffer
		encoder := json.NewEncoder(&out)
		encoder.SetEscapeHTML(false)
		encoder.SetIndent("", "  ")
		if err := encoder.Encode(has); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file(t, language), out.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
