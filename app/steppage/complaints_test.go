package steppage

import (
	"errors"
	"testing"

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

func TestSentence(t *testing.T) {
	for phrase, want := range map[string]string{
		"": "", "set at least 10 mm": "Set at least 10 mm.", "Ends already.": "Ends already.", "über 3 mm": "Über 3 mm.",
	} {
		if got := Sentence(phrase); got != want {
			t.Errorf("%q: %q, want %q", phrase, got, want)
		}
	}
}
