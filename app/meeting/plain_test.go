package meeting

import (
	"bytes"
	"context"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/plain"
	"gussetwright/app/project"
	"gussetwright/app/words"
	"gussetwright/assets"
	"gussetwright/geometry/check"
)

// A size in which the name on the bag loses letters says so, on a card as well, which is
// derived without a look at all pixels. What keeps the bag from being made comes first.
func TestAPictureThatIsCutOffIsTold(t *testing.T) {
	opened, err := project.Read(bytes.NewReader(assets.Demo), int64(len(assets.Demo)))
	if err != nil {
		t.Fatal(err)
	}
	whole, err := document.DeriveWithArt(context.Background(), opened.Spec, opened.Files)
	if err != nil {
		t.Fatal(err)
	}
	if got := complaint(whole); got != "" {
		t.Errorf("of the demo it says %q", got)
	}
	for _, test := range []struct {
		size size
		said string
	}{
		{size{160, 95, 285}, words.OfWord(plain.Risks()[plain.CutOff])},
		{size{180, 95, 285}, words.OfWord(plain.Risks()[plain.CutOff])},
		{size{190, 95, 365}, words.OfWord(plain.Risks()[plain.CutOff])},
		{size{200, 95, 285}, ""},
		{size{300, 95, 265}, ""},
		{size{420, 190, 900}, words.OfWord(plain.Stops()["no-sheet-fits"])},
	} {
		card, err := whole.Member(test.size.of(opened.Spec))
		if err != nil {
			t.Fatal(err)
		}
		if got := complaint(card); got != test.said {
			t.Errorf("%v: it says %q, want %q", test.size, got, test.said)
		}
		if troubled := troubleOf(card); test.said == words.OfWord(plain.Risks()[plain.CutOff]) && troubled.severity != check.Warning {
			t.Errorf("%v: a picture that is cut off is a %s", test.size, troubled.severity)
		}
	}
}
