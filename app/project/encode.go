package project

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"time"
	"unicode/utf8"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// Encode writes bag.json of a bag for which no sizes are kept; see Project.Encode.
func Encode(w io.Writer, spec bag.Spec) error { return (&Project{Spec: spec}).Encode(w) }

// Encode writes bag.json: every entry, indented, always in the same order, so
// that two versions can be compared line by line. What could not be read again is an
// error and nothing is written.
func (p *Project) Encode(w io.Writer) error {
	if err := errors.Join(append(check(&p.Spec), checkKept(p.Kept)...)...); err != nil {
		return phrase.Errorf("write bag.json: %s", err)
	}
	file := struct {
		Format string `json:"format"`
		bag.Spec
		Kept []KeptSize `json:"kept_sizes,omitempty"`
	}{fmt.Sprint(formatName, version), p.Spec, p.Kept}
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	if err := encoder.Encode(file); err != nil {
		return phrase.Errorf("write bag.json: %s", err)
	}
	return nil
}

// check returns the complaints about a spec that a project file cannot hold.
func check(spec *bag.Spec) []error {
	complaints := split(spec.Validate())
	complaints = append(complaints, checkTexts(spec)...)
	return append(complaints, checkFileNames(spec)...)
}

// split returns the errors that were joined.
func split(err error) []error {
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		return joined.Unwrap()
	}
	if err == nil {
		return nil
	}
	return []error{err}
}

func checkTexts(spec *bag.Spec) []error {
	var complaints []error
	if !utf8.ValidString(spec.Name) {
		complaints = append(complaints, &bag.FieldError{
			Path: "name", Label: "Project name", Value: shown(spec.Name), Limit: phrase.New("not UTF-8 text"), Remedy: phrase.New("enter it anew"),
		})
	}
	if _, err := time.Parse(time.DateOnly, spec.Date); err != nil && spec.Date != "" {
		complaints = append(complaints, &bag.FieldError{
			Path: "date", Label: "Date", Value: shown(spec.Date), Limit: phrase.New("not a day of the calendar as YYYY-MM-DD"),
			Remedy: phrase.New("enter a day such as 2026-03-31, or leave it empty"),
		})
	}
	return complaints
}
