package bag

import (
	"errors"
	"fmt"
	"slices"

	"gussetwright/geometry"
)

// Limits on what is not a number.
const (
	longestName   = 120
	mostArtwork   = 64
	leastGusset   = 10
	largestOffset = 5000
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
			Limit: fmt.Sprintf("more than %d pieces", mostArtwork), Remedy: "join some of them into one file",
		})
	}
	if len(complaints) == 0 {
		complaints = s.checkTogether()
	}
	return errors.Join(complaints...)
}

func (s *Spec) checkName() []error {
	if len([]rune(s.Name)) <= longestName {
		return nil
	}
	return []error{&FieldError{
		Path: "name", Label: "Project name", Value: quote(s.Name),
		Limit: fmt.Sprintf("longer than %d characters", longestName), Remedy: "shorten it",
	}}
}

// checkTogether looks at entries that are fine alone but cannot be drawn together.
func (s *Spec) checkTogether() []error {
	b := s.Body
	var complaints []error
	complain := func(path, limit, remedy string) {
		field, _ := FieldAt(path)
		complaints = append(complaints, &FieldError{
			Path: path, Label: field.Name(), Value: field.Text(s), Limit: limit, Remedy: remedy,
		})
	}
	if b.Gusset > 0 && b.Gusset < leastGusset {
		complain("bag.gusset_mm", "too narrow to be creased down its middle",
			fmt.Sprintf("enter 0 for a flat bag or at least %d mm", leastGusset))
	}
	if b.Gusset == 0 && b.Base != BasePinch {
		complain("bag.base", "a bag without gussets has no block to stand on",
			`choose "pinch", or give the gusset a depth`)
	}
	if b.Base == BasePinch && b.BaseOverlap < leastPinch {
		complain("bag.base_overlap_mm", "nothing is left to fold over for the pinch base",
			fmt.Sprintf("enter at least %d mm", leastPinch))
	}
	if b.Top == TopZigzag && b.ZigzagPitch > b.Width/2 {
		complain("bag.zigzag_pitch_mm", "fewer than two teeth on the face",
			"enter at most "+geometry.FormatNumber(b.Width/2, 1)+" mm")
	}
	return complaints
}

const leastPinch = 5

func (a *Artwork) check(index int) []error {
	var complaints []error
	complain := func(key, value, limit, remedy string) {
		complaints = append(complaints, &FieldError{
			Path: fmt.Sprintf("artwork[%d].%s", index, key), Label: "Artwork", Value: value, Limit: limit, Remedy: remedy,
		})
	}
	if a.File == "" {
		complain("file", `""`, "no file is named", "name the file, or take the piece out of the list")
	}
	if !slices.Contains(artworkPlaces, a.On) {
		complain("on", quote(a.On), "not a place on the blank", "choose "+orList(artworkPlaces))
	}
	fits := []string{string(FitCover), string(FitContain), string(FitExact)}
	if !slices.Contains(fits, string(a.Fit)) {
		complain("fit", quote(string(a.Fit)), "not one of the choices", "choose "+orList(fits))
	}
	for _, bound := range []struct {
		key         string
		value       float64
		least, most float64
	}{
		{"x_mm", a.X, -largestOffset, largestOffset},
		{"y_mm", a.Y, -largestOffset, largestOffset},
		{"scale", a.Scale, 0.001, 1000},
		{"turn_deg", a.Turn, -360, 360},
	} {
		if !(bound.value >= bound.least && bound.value <= bound.most) {
			span := geometry.FormatNumber(bound.least, 3) + " to " + geometry.FormatNumber(bound.most, 3)
			complain(bound.key, geometry.FormatNumber(bound.value, 6), "outside "+span, "enter a value from "+span)
		}
	}
	return complaints
}
