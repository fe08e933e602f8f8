package proof

import (
	"strings"
	"testing"
	"time"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// The client reads of each carrying style by a name of its own: a new one must not pass
// for a bag without a handle.
func TestEveryHandleHasItsWord(t *testing.T) {
	field, _ := bag.FieldAt("handle.kind")
	seen := map[phrase.Word]string{}
	for _, kind := range field.Options {
		word := handleWord(bag.Handle{Kind: bag.HandleKind(kind)})
		if other, known := seen[word]; known {
			t.Errorf("%s and %s are both called %q", other, kind, word)
		}
		seen[word] = kind
	}
}

// inGerman says what of the texts depends on how a language writes numbers and dates.
func inGerman(text string) string {
	known := map[string]string{
		"en": "de", "0.5": "0,5", "%d November %d": "%d. November %d", "%d May %d": "%d. Mai %d",
		"%s wide, %s deep, %s high": "%s breit, %s tief, %s hoch",
	}
	if said, found := known[text]; found {
		return said
	}
	return text
}

// Numbers and dates are written as in the language of the client.
func TestNumbersAndDatesOfALanguage(t *testing.T) {
	p := proofOf(t, func(s *bag.Spec) {
		s.Body.Width, s.Body.Gusset, s.Body.Height = 185, 95, 265
		s.Artwork = nil
	})
	for _, c := range []struct {
		say       func(string) string
		unit      geometry.Unit
		size, day string
	}{
		{func(text string) string { return text }, geometry.Millimetre, "185 mm wide, 95 mm deep, 265 mm high", "25 November 2026"},
		{func(text string) string { return text }, geometry.Centimetre, "18.5 cm wide, 9.5 cm deep, 26.5 cm high", "25 November 2026"},
		{inGerman, geometry.Centimetre, "18,5 cm breit, 9,5 cm tief, 26,5 cm hoch", "25. November 2026"},
		{inGerman, geometry.Millimetre, "185 mm breit, 95 mm tief, 265 mm hoch", "25. November 2026"},
	} {
		p.Say, p.Unit = c.say, c.unit
		pages, err := p.pages()
		if err != nil {
			t.Fatal(err)
		}
		said := ""
		inPage := c.unit == geometry.Centimetre // drawing the views of a page takes seconds
		if inPage {
			page, err := p.page()
			if err != nil {
				t.Fatal(err)
			}
			said = strings.ReplaceAll(strings.Join(page.Approved, " "), space, " ")
		}
		var texts []string
		for _, each := range pages {
			texts = append(texts, textsOn(each)...)
		}
		text := strings.ReplaceAll(strings.Join(texts, " "), space, " ")
		for _, want := range []string{c.size, c.day} {
			if !strings.Contains(text, want) {
				t.Errorf("the PDF lacks %q: %s", want, text)
			}
			if inPage && !strings.Contains(said, want) {
				t.Errorf("the page lacks %q: %s", want, said)
			}
		}
	}
	p.Date = time.Date(2027, time.May, 3, 0, 0, 0, 0, time.UTC)
	if got := strings.ReplaceAll(p.day(), space, " "); got != "3. Mai 2027" {
		t.Errorf("the day is %q", got)
	}
}

// Each month is said by its own name (names of package time).
func TestMonths(t *testing.T) {
	p := proofOf(t, nil)
	for month := time.January; month <= time.December; month++ {
		p.Date = time.Date(2027, month, 1, 0, 0, 0, 0, time.UTC)
		if got := strings.ReplaceAll(p.day(), space, " "); got != p.Date.Format("2 January 2006") {
			t.Errorf("%v is %q", month, got)
		}
	}
}

// A height with handles is told for all that stand up, and reckoned from where the rope
// goes: two legs and half a circle of the spacing, as long as spacing + 2 × rise in all.
func TestHeightWithHandles(t *testing.T) {
	p := proofOf(t, nil)
	h := p.Snapshot.Spec.Handle
	radius := h.Spacing / 2
	leg := (h.Spacing + 2*h.Rise - 3.14159265*radius) / 2
	top := 360 - h.Drop + leg + radius + h.HoleDiameter*0.42 // and the rope's own radius
	want := "about " + p.about(top) + " with them"
	if got := p.handleNote(); !strings.HasSuffix(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	field, _ := bag.FieldAt("handle.kind")
	for _, kind := range field.Options {
		stands := bag.HandleKind(kind) != bag.HandleNone && bag.HandleKind(kind) != bag.HandleHandHole
		note := proofOf(t, func(s *bag.Spec) { s.Handle.Kind = bag.HandleKind(kind) }).handleNote()
		if (note != "") != stands {
			t.Errorf("%s: %q", kind, note)
		}
	}
}

func TestAbout(t *testing.T) {
	p := proofOf(t, nil)
	for _, c := range []struct {
		unit geometry.Unit
		mm   float64
		want string
	}{{geometry.Millimetre, 442, "440 mm"}, {geometry.Millimetre, 443, "445 mm"}, {geometry.Centimetre, 443, "44.5 cm"}, {geometry.Inch, 443, "17.5 in"}} {
		p.Unit = c.unit
		if got := strings.ReplaceAll(p.about(c.mm), space, " "); got != c.want {
			t.Errorf("about %g mm is %q, want %q", c.mm, got, c.want)
		}
	}
}

// The page says to those who do not see it what the bag is.
func TestPageIsDescribed(t *testing.T) {
	p := proofOf(t, nil)
	page, err := p.page()
	if err != nil {
		t.Fatal(err)
	}
	said := strings.ReplaceAll(page.Described, space, " ")
	for _, want := range []string{"Ferrow Lake Bakery", "240 mm wide, 100 mm deep, 360 mm high", "Gloss coated paper, white", "Handle: Rope, knotted inside.", "Red", "Yellow", "Blue"} {
		if !strings.Contains(said, want) {
			t.Errorf("lacks %q: %s", want, said)
		}
	}
	if strings.Contains(said, "sRGB") {
		t.Errorf("says values of colours: %s", said)
	}
}
