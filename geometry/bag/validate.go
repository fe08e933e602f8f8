package bag

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
)

// Limits on what is not a number.
const (
	longestName     = 120
	longestCurrency = 8
	mostArtwork     = 64
	leastGusset     = 10
	largestOffset   = 5000
	mostPages       = 10_000
)

// Validate returns nil when the blank of the bag can be drawn. Otherwise it
// returns the joined FieldErrors of every entry that stands in the way.
func (s *Spec) Validate() error {
	var complaints []error
	for i := range fields {
		if complaint := fields[i].check(s); complaint != nil {
			complaints = append(complaints, complaint)
		}
	}
	complaints = append(complaints, s.checkName()...)
	for i := range s.Artwork {
		complaints = append(complaints, s.Artwork[i].check(i)...)
	}
	if len(s.Artwork) > mostArtwork {
		complaints = append(complaints, &FieldError{
			Path: "artwork", Value: fmt.Sprintf("a list of %d", len(s.Artwork)),
			Limit: phrase.New("more than %d pieces", mostArtwork), Remedy: phrase.New("join some of them into one file"),
		})
	}
	complaints = append(complaints, s.checkLists()...)
	if len(complaints) == 0 {
		complaints = s.checkTogether()
	}
	return errors.Join(complaints...)
}

func (s *Spec) checkName() []error { return tooLong("name", "Project name", s.Name, longestName) }

// checkTogether looks at entries that are fine alone but cannot be drawn together.
func (s *Spec) checkTogether() []error {
	b := s.Body
	var complaints []error
	complain := func(path string, limit, remedy phrase.Phrase) {
		field, _ := FieldAt(path)
		complaint := &FieldError{Path: path, Label: field.Name(), Value: field.Text(s), Limit: limit, Remedy: remedy}
		if field.Kind() == Number {
			complaint.given = givenIn(field.Number(s), field.Unit)
		}
		complaints = append(complaints, complaint)
	}
	if b.Gusset > 0 && b.Gusset < leastGusset {
		complain("bag.gusset_mm", phrase.New("too narrow to be creased down its middle"),
			phrase.New("enter 0 for a flat bag or at least %s", lengthLimit{mm: leastGusset}))
	}
	if b.Gusset == 0 && b.Base != BasePinch {
		complain("bag.base", phrase.New("a bag without gussets has no block to stand on"),
			phrase.New("choose %q, or give the gusset a depth", phrase.Word(BasePinch)))
	}
	if b.Base == BasePinch && b.BaseOverlap < leastPinch {
		complain("bag.base_overlap_mm", phrase.New("nothing is left to fold over for the pinch base"),
			phrase.New("enter at least %s", lengthLimit{mm: leastPinch}))
	}
	if b.Top == TopZigzag && b.ZigzagPitch > b.Width/2 {
		complain("bag.zigzag_pitch_mm", phrase.New("fewer than two teeth on the face"),
			phrase.New("enter at most %s", lengthLimit{mm: b.Width / 2, most: true}))
	}
	return complaints
}

const leastPinch = 5

func (a *Artwork) check(index int) []error {
	var complaints []error
	complain := func(key string, value any, limit, remedy phrase.Phrase) {
		complaints = append(complaints, &FieldError{
			Path: fmt.Sprintf("artwork[%d].%s", index, key), Label: "Artwork", Value: fmt.Sprint(value), Limit: limit, Remedy: remedy,
			given: value,
		})
	}
	if a.File == "" {
		complain("file", `""`, phrase.New("no file is named"), phrase.New("name the file, or take the piece out of the list"))
	}
	if !slices.Contains(artworkPlaces, a.On) {
		complain("on", quote(a.On), phrase.New("not a place on the blank"), chooseFrom(artworkPlaces))
	}
	for _, choice := range []struct {
		key, value string
		options    []string
	}{
		{"fit", string(a.Fit), []string{string(FitCover), string(FitContain), string(FitExact)}},
		{"repeat", string(a.Repeat), []string{string(RepeatNone), string(RepeatGrid), string(RepeatHalfDrop)}},
		{"holds", string(a.Holds), []string{string(HoldsPicture), string(HoldsEAN13)}},
	} {
		if !slices.Contains(choice.options, choice.value) {
			complain(choice.key, quote(choice.value), phrase.New("not one of the choices"), chooseFrom(choice.options))
		}
	}
	if a.Page != math.Trunc(a.Page) {
		complain("page", geometry.FormatNumber(a.Page, 6), phrase.New("not a whole number"), phrase.New("count the pages from 1"))
	}
	for _, bound := range []struct {
		key         string
		value       float64
		least, most float64
		unit        string
	}{
		{"x_mm", a.X, -largestOffset, largestOffset, string(geometry.Millimetre)},
		{"y_mm", a.Y, -largestOffset, largestOffset, string(geometry.Millimetre)},
		{"scale", a.Scale, 0.001, 1000, ""},
		{"turn_deg", a.Turn, -360, 360, ""},
		{"page", a.Page, 1, mostPages, ""},
		{"opacity_percent", a.Opacity, 0, 100, ""},
	} {
		if !(bound.value >= bound.least && bound.value <= bound.most) {
			span := rangeOf(bound.least, bound.most, bound.unit)
			complain(bound.key, givenIn(bound.value, bound.unit), phrase.New("outside %s", span), phrase.New("enter a value from %s", span))
		}
	}
	return complaints
}
