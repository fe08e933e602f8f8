package words

import (
	"errors"
	"io/fs"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/app/session"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// complaints are errors that a user of the window can meet.
func complaints(t *testing.T) []error {
	t.Helper()
	var all []error
	for _, change := range []func(*bag.Spec){
		func(s *bag.Spec) { s.Body.Width = 12 },
		func(s *bag.Spec) { s.Body.Height = math.Inf(1) },
		func(s *bag.Spec) { s.Body.Gusset = 5 },
		func(s *bag.Spec) { s.Body.Gusset = 0 },
		func(s *bag.Spec) { s.Name = strings.Repeat("n", 200) },
		func(s *bag.Spec) { s.Run.Quantity = 1.5 },
		func(s *bag.Spec) { s.Artwork = []bag.Artwork{{}} },
	} {
		spec := bag.Default()
		change(&spec)
		all = append(all, spec.Validate())
	}
	for _, text := range []string{
		"", "{", `{"bag": {"widht_mm": 240, "base": "round", "width_mm": "24 cm"}}`, `{"date": "2026-02-30"}`, `{"cards": {"top": NaN}}`,
		`{"format": "gussetwright/2", "bag": {"width_mm": 1}}`, `{"artwork": [{"file": "a/b", "on": "front", "mirror": 1}]}`, "PK\x03\x04", `{"bag": 1, }`,
	} {
		_, err := project.ReadFrom(strings.NewReader(text))
		all = append(all, err)
	}
	open := session.New(document.New(), session.Options{Recovery: t.TempDir()})
	defer open.Close()
	_, folder := open.Open(t.TempDir())
	all = append(all, open.Save(), open.SaveAs(t.TempDir()), folder, &session.ChangedError{Path: "a.gusset"})
	for _, refused := range refusals(t) {
		all = append(all, refused.err)
	}
	return all
}

// Every phrase in an error is found in every language, whatever stands around it.
func TestEveryErrorIsTranslated(t *testing.T) {
	for _, language := range codes() {
		has, err := fromDisk(t, language)
		if err != nil {
			t.Fatal(err)
		}
		for _, complaint := range complaints(t) {
			if complaint == nil {
				t.Fatal("what must be refused is accepted")
			}
			asked := 0
			phrase.ErrorIn(complaint, func(text string) string {
				asked++
				if has[text] == "" {
					t.Errorf("%s lacks %q, of %v", language, text, complaint)
					return text
				}
				return has[text]
			})
			if asked == 0 {
				t.Errorf("nothing is translated of %v", complaint)
			}
		}
	}
}

func TestErrorOfTheSystemStaysAsItIs(t *testing.T) {
	has, err := fromDisk(t, "de")
	if err != nil {
		t.Fatal(err)
	}
	_, err = project.Open(filepath.Join(t.TempDir(), "gone.gusset"))
	var system *fs.PathError
	if !errors.As(err, &system) {
		t.Fatalf("%v holds no error of the system", err)
	}
	said := phrase.ErrorIn(err, func(text string) string { return has[text] })
	if said == err.Error() || !strings.HasSuffix(said, system.Error()) {
		t.Errorf("%q becomes %q", err, said)
	}
}
