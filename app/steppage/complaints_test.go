package steppage

import (
	"errors"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

func TestComplaintsIn(t *testing.T) {
	spec := bag.Default()
	spec.Body.Gusset, spec.Body.BaseOverlap, spec.Body.Base = 5, 2, bag.BasePinch
	got := ComplaintsIn(spec.Validate())
	if len(got) != 2 || got[0].Path != "bag.gusset_mm" || got[1].Path != "bag.base_overlap_mm" {
		t.Errorf("complaints %v", got)
	}
	if ComplaintsIn(nil) != nil || ComplaintsIn(errors.New("other")) != nil {
		t.Error("complaints out of nothing")
	}
}

// A complaint speaks of lengths in the unit of the user. An inch is 25.4 mm exactly
// (international yard and pound agreement of 1959).
func TestComplaintsInTheUnitOfTheUser(t *testing.T) {
	b := &Bench{Settings: settings.New(test.NewTempApp(t).Preferences())}
	spec := bag.Default()
	spec.Body.Gusset = 5
	for unit, want := range map[geometry.Unit]string{
		geometry.Millimetre: "at least 10 mm.", geometry.Centimetre: "at least 1 cm.", geometry.Inch: "at least 0.394 in.",
	} {
		b.Settings.SetUnit(unit)
		if got := ComplaintAbout("bag.gusset_mm", b.Complaints(spec.Validate())); !strings.HasSuffix(got, want) {
			t.Errorf("in %s: %q, want %q", unit, got, want)
		}
	}
}

func TestSentence(t *testing.T) {
	for phrase, want := range map[string]string{
		"": "", "set at least 10 mm": "Set at least 10 mm.", "Ends already.": "Ends already.", "über 3 mm": "Über 3 mm.",
	} {
		if got := Sentence(phrase); got != want {
			t.Errorf("%q: %q, want %q", phrase, got, want)
		}
	}
}
