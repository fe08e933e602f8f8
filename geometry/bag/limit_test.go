package bag_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// complaintOf returns the first complaint about a bag.
func complaintOf(t *testing.T, change func(*bag.Spec)) *bag.FieldError {
	t.Helper()
	spec := bag.Default()
	change(&spec)
	var complaint *bag.FieldError
	if !errors.As(spec.Validate(), &complaint) {
		t.Fatal("what must be refused is accepted")
	}
	return complaint
}

// An inch is 25.4 mm exactly (international yard and pound agreement of 1959). The limits
// are rounded inwards, so that they can be entered as they are told.
func TestComplaintsInEveryUnit(t *testing.T) {
	tests := []struct {
		change             func(*bag.Spec)
		mm, cm, in         string // limit and remedy
		givenMM, givenInch string
	}{
		{
			func(s *bag.Spec) { s.Body.Width = 12.7 },
			"less than the least, 30 mm; enter a value from 30 to 1000 mm",
			"less than the least, 3 cm; enter a value from 3 to 100 cm",
			"less than the least, 1.182 in; enter a value from 1.182 to 39.37 in",
			"12.7 mm", "0.5 in",
		},
		{
			func(s *bag.Spec) { s.Body.Height = 1500.0001 },
			"more than the most, 1500 mm; enter a value from 40 to 1500 mm",
			"more than the most, 150 cm; enter a value from 4 to 150 cm",
			"more than the most, 59.055 in; enter a value from 1.575 to 59.055 in",
			"1500.0001 mm", "59.055122 in",
		},
		{
			func(s *bag.Spec) { s.Body.Gusset = 5.08 },
			"too narrow to be creased down its middle; enter 0 for a flat bag or at least 10 mm",
			"too narrow to be creased down its middle; enter 0 for a flat bag or at least 1 cm",
			"too narrow to be creased down its middle; enter 0 for a flat bag or at least 0.394 in",
			"5.08 mm", "0.2 in",
		},
		{
			func(s *bag.Spec) { s.Body.Top, s.Body.Width, s.Body.ZigzagPitch = bag.TopZigzag, 50.8, 38.1 },
			"fewer than two teeth on the face; enter at most 25.4 mm",
			"fewer than two teeth on the face; enter at most 2.54 cm",
			"fewer than two teeth on the face; enter at most 1 in",
			"38.1 mm", "1.5 in",
		},
		{
			func(s *bag.Spec) { s.Paper.Grammage = 20 },
			"less than the least, 30 g/m²; enter a value from 30 to 600 g/m²",
			"less than the least, 30 g/m²; enter a value from 30 to 600 g/m²",
			"less than the least, 30 g/m²; enter a value from 30 to 600 g/m²",
			"20 g/m²", "20 g/m²",
		},
	}
	for _, test := range tests {
		complaint := complaintOf(t, test.change)
		english := complaint.Error()
		for unit, want := range map[geometry.Unit]string{geometry.Millimetre: test.mm, geometry.Centimetre: test.cm, geometry.Inch: test.in} {
			told := complaint.With(unit.Spell)
			if got := told.Limit.String() + "; " + told.Remedy.String(); got != want {
				t.Errorf("%s in %s: %q, want %q", told.Path, unit, got, want)
			}
		}
		if got := complaint.Value; got != test.givenMM {
			t.Errorf("%s: given %q, want %q", complaint.Path, got, test.givenMM)
		}
		if got := complaint.With(geometry.Inch.Spell).Value; got != test.givenInch {
			t.Errorf("%s: given %q in inches, want %q", complaint.Path, got, test.givenInch)
		}
		if complaint.Error() != english {
			t.Errorf("%s: telling it in other units changes it to %q", complaint.Path, complaint)
		}
	}
}

// The place of artwork is told in the unit as well, its other numbers in their own.
func TestComplaintsAboutArtworkInInches(t *testing.T) {
	for want, change := range map[string]func(*bag.Artwork){
		"outside -196.85 to 196.85 in": func(a *bag.Artwork) { a.X = 6000 },
		"outside -360 to 360":          func(a *bag.Artwork) { a.Turn = 400 },
		"outside 0 to 100":             func(a *bag.Artwork) { a.Opacity = -1 },
		"outside 0.001 to 1000":        func(a *bag.Artwork) { a.Scale = 0 },
	} {
		complaint := complaintOf(t, func(s *bag.Spec) {
			piece := bag.NewArtwork("a.png", "front")
			change(&piece)
			s.Artwork = []bag.Artwork{piece}
		})
		if got := complaint.With(geometry.Inch.Spell).Limit.String(); got != want {
			t.Errorf("%s: %q, want %q", complaint.Path, got, want)
		}
	}
}

// Every limit of a length can be entered as it is told, in every unit.
func TestToldLimitsCanBeEntered(t *testing.T) {
	lengths := 0
	for _, field := range bag.Fields() {
		if field.Unit != "mm" {
			continue
		}
		lengths++
		for _, unit := range geometry.Units() {
			told := field.Range().With(unit.Spell).String()
			least, most, parted := strings.Cut(told, " to ")
			if !parted {
				t.Fatalf("%s: the range is %q", field.Path, told)
			}
			for _, text := range []string{least, most} {
				value, err := geometry.ParseLength(text, unit)
				value = math.Round(value*1e6) / 1e6 // as entries do
				if err != nil || field.CheckNumber(value) != nil {
					t.Errorf("%s: %q of %q is refused (%v)", field.Path, text, told, err)
				}
			}
		}
	}
	if lengths < 30 {
		t.Errorf("only %d lengths", lengths)
	}
}
