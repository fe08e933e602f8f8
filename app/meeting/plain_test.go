package meeting

import (
	"bytes"
	"context"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/project"
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
	if said := complaint(whole); said != "" {
		t.Errorf("of the demo it says %q", said)
	}
	for _, test := range []struct {
		size size
		said string
	}{
		{size{160, 95, 285}, plain()[cutOff]},
		{size{180, 95, 285}, plain()[cutOff]},
		{size{190, 95, 365}, plain()[cutOff]},
		{size{200, 95, 285}, ""},
		{size{300, 95, 265}, ""},
		{size{420, 190, 900}, plain()["no-sheet-fits"]},
	} {
		card, err := whole.Member(test.size.of(opened.Spec))
		if err != nil {
			t.Fatal(err)
		}
		if said := complaint(card); said != test.said {
			t.Errorf("%v: it says %q, want %q", test.size, said, test.said)
		}
		if troubled := troubleOf(card); test.said == plain()[cutOff] && troubled.severity != check.Warning {
			t.Errorf("%v: a picture that is cut off is a %s", test.size, troubled.severity)
		}
	}
}
