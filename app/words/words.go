// Package words gives the window its language. Every text is written in English in
// the code, and the English is the key by which a translation is found.
package words

import (
	"encoding/json"
	"fmt"
	"path"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"gussetwright/assets"
)

// folder is where the translations lie among the assets.
const folder = "translations"

// english is the language of the code, and of whoever speaks none that we have.
const english = "en"

// Language is a language of the window.
type Language struct {
	Code string // such as "de"; empty for that of the system
	Name string // in itself, such as "Deutsch"
}

// Languages returns what can be chosen, the language of the system first.
func Languages() []Language {
	return []Language{{"", lang.L("As the system")}, {english, "English"}, {"de", "Deutsch"}}
}

// Load makes the window speak a language, "" being that of the system. A language
// that we do not have becomes English. It is to be called once, before any text is
// shown.
func Load(language string) error {
	system := lang.SystemLocale()
	if language == "" {
		language, _, _ = strings.Cut(system.String(), "-")
	}
	if !slices.ContainsFunc(Languages(), func(l Language) bool { return l.Code == language }) {
		language = english
	}
	texts, err := read(language)
	if err != nil {
		return err
	}
	list, err := json.Marshal(messages(texts))
	if err != nil {
		return fmt.Errorf("load language %q: %w", language, err)
	}
	// The toolkit always takes the language of the system: a chosen one has to stand
	// in its place.
	if err := lang.AddTranslationsForLocale(list, system); err != nil {
		return fmt.Errorf("load language %q: %w", language, err)
	}
	return nil
}

// read returns the texts of a language by their English.
func read(language string) (map[string]string, error) {
	data, err := assets.Translations.ReadFile(path.Join(folder, language+".json"))
	if err != nil {
		return nil, fmt.Errorf("load language %q: %w", language, err)
	}
	texts, err := textsIn(data)
	if err != nil {
		return nil, fmt.Errorf("load language %q: %w", language, err)
	}
	return texts, nil
}

// textsIn reads a file of translations: texts by their English.
func textsIn(data []byte) (texts map[string]string, err error) {
	err = json.Unmarshal(data, &texts)
	return texts, err
}

// message is a text as the toolkit reads it. A plain map will not do for it: there,
// keys such as "one" and "two" are plural forms, and here they are seams.
type message struct {
	ID    string `json:"id"`
	Other string `json:"other"`
}

func messages(texts map[string]string) []message {
	list := make([]message, 0, len(texts))
	for english, text := range texts {
		list = append(list, message{english, text})
	}
	return list
}
