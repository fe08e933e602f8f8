package typeface

import (
	"math"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// outside reads the face with another parser, golang.org/x/image/font/sfnt.
func outside(t *testing.T, isBold bool) *sfnt.Font {
	t.Helper()
	data := goregular.TTF
	if isBold {
		data = gobold.TTF
	}
	face, err := sfnt.Parse(data)
	if err != nil {
		t.Fatal(err)
	}
	return face
}

func outsideAdvance(t *testing.T, face *sfnt.Font, text string) float64 {
	t.Helper()
	em := fixed.I(int(face.UnitsPerEm()))
	sum := fixed.Int26_6(0)
	for _, r := range text {
		glyph, err := face.GlyphIndex(nil, r)
		if err != nil {
			t.Fatal(err)
		}
		advance, err := face.GlyphAdvance(nil, glyph, em, font.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		sum += advance
	}
	return float64(sum) / float64(em)
}

// Source of the widths: golang.org/x/image/font/sfnt, which shares no code with
// the parser used here.
func TestAdvanceAgreesWithAnotherParser(t *testing.T) {
	for _, isBold := range []bool{false, true} {
		face := outside(t, isBold)
		for _, text := range []string{"", "Cutting", "240 × 360 mm", "20–25 g/m² · 0.2 µm, 45°", "Öl, ő, Ω, Ж"} {
			got, want := Advance(text, 3.5, isBold), 3.5*outsideAdvance(t, face, text)
			if math.Abs(got-want) > 1e-9 {
				t.Errorf("Advance(%q, bold %v) = %v, another parser says %v", text, isBold, got, want)
			}
		}
	}
}

func TestNameIsThePostScriptName(t *testing.T) {
	for _, isBold := range []bool{false, true} {
		want, err := outside(t, isBold).Name(nil, sfnt.NameIDPostScript)
		if err != nil {
			t.Fatal(err)
		}
		if got := Of(isBold).Name(); got != want {
			t.Errorf("name is %q, the font file says %q", got, want)
		}
	}
}

func TestWhatIsMissingShowsAsAQuestionMark(t *testing.T) {
	face := Regular()
	mark, _ := face.Glyph(Missing)
	for _, r := range []rune{'漢', '✂', '\n', '\t', 0, -1, 0x10FFFF} {
		if glyph, shown := face.Glyph(r); glyph != mark || shown != Missing {
			t.Errorf("Glyph(%q) = %d, shown as %q; want the question mark, %d", r, glyph, shown, mark)
		}
	}
	for _, r := range "aZ09×·–²°µ " {
		if glyph, shown := face.Glyph(r); glyph == mark || shown != r {
			t.Errorf("Glyph(%q) = %d, shown as %q; the face has that character", r, glyph, shown)
		}
	}
	if got, want := Advance("漢字", 1, false), Advance("??", 1, false); got != want {
		t.Errorf("two missing characters are %v wide, want %v", got, want)
	}
}

func TestMetrics(t *testing.T) {
	for _, isBold := range []bool{false, true} {
		theirs, err := outside(t, isBold).Metrics(nil, fixed.I(2048), font.HintingNone)
		if err != nil {
			t.Fatal(err)
		}
		ours := Of(isBold).Metrics()
		for _, c := range []struct {
			name      string
			got, want float64
		}{
			{"ascent", ours.Ascent, float64(theirs.Ascent) / 64 / 2048},
			{"descent", -ours.Descent, float64(theirs.Descent) / 64 / 2048},
			{"cap height", ours.CapHeight, float64(theirs.CapHeight) / 64 / 2048},
		} {
			if math.Abs(c.got-c.want) > 1e-9 {
				t.Errorf("bold %v: %s is %v, another parser says %v", isBold, c.name, c.got, c.want)
			}
		}
		if ours.Stem < 0.05 || ours.Stem > 0.2 {
			t.Errorf("bold %v: stem of %v em is no stem", isBold, ours.Stem)
		}
	}
	if Regular().Metrics().Stem >= Bold().Metrics().Stem {
		t.Error("bold stems should be wider than regular ones")
	}
}
