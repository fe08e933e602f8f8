package page_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/render/artwork/page"
)

func TestColours(t *testing.T) {
	tests := []struct {
		name, resources, operators string
		want                       page.Colours
	}{
		{"by operators", "", "0 g 0 0 1 1 re f", page.Colours{Grey: true}},
		{"red, green, blue", "", "0 0 1 RG 0 0 1 1 re S", page.Colours{RGB: true}},
		{"four inks", "", "0 0 1 0 k 0 0 1 1 re f", page.Colours{CMYK: true}},
		{"chosen by name", "", "/DeviceCMYK cs 1 0 0 0 scn", page.Colours{CMYK: true}},
		{"within a text", "", "BT (0 0 1 rg) Tj ET", page.Colours{}},
		{"a spot colour", "/ColorSpace<</S[/Separation/Cream /DeviceCMYK 5 0 R]>>", "/S cs 1 scn", page.Colours{Spots: []string{"Cream"}}},
		{"several inks", "/ColorSpace<</S[/DeviceN[/Black/Moss/Cream]/DeviceCMYK 5 0 R]>>", "", page.Colours{CMYK: true, Spots: []string{"Cream", "Moss"}}},
		{"a palette", "/ColorSpace<</S[/Indexed[/CalRGB<</WhitePoint[1 1 1]>>]1<000000ffffff>]>>", "", page.Colours{RGB: true}},
		{"a profile", "/ColorSpace<</S[/ICCBased 6 0 R]>>", "", page.Colours{CMYK: true}},
		{"Lab", "/ColorSpace<</S[/Lab<</WhitePoint[1 1 1]>>]>>", "", page.Colours{Lab: true}},
		{"in a form", "/XObject<</X 7 0 R>>", "/X Do", page.Colours{CMYK: true}},
		{"in a picture", "/XObject<</X 8 0 R>>", "/X Do", page.Colours{RGB: true}},
	}
	more := []string{
		"<</FunctionType 2/N 1/Domain[0 1]/C0[0 0 0 0]/C1[0 0 0.2 0]>>",
		streamed("/N 4", "no profile"),
		streamed("/Type/XObject/Subtype/Form/BBox[0 0 1 1]", "0 0 0 1 k"),
		streamed("/Type/XObject/Subtype/Image/Width 1/Height 1/BitsPerComponent 8/ColorSpace/DeviceRGB/SMask 9 0 R", "abc"),
		streamed("/Type/XObject/Subtype/Image/Width 1/Height 1/BitsPerComponent 8/ColorSpace/DeviceGray", "a"),
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got := read(t, onePage("/MediaBox[0 0 100 100]/Resources<<"+test.resources+">>", test.operators, more...), 1).Colours
			if got.Grey != test.want.Grey || got.RGB != test.want.RGB || got.CMYK != test.want.CMYK ||
				got.Lab != test.want.Lab || !slices.Equal(got.Spots, test.want.Spots) {
				t.Errorf("%+v, want %+v", got, test.want)
			}
		})
	}
}

func TestMeasures(t *testing.T) {
	const points = 25.4 / 72
	data := onePage("/MediaBox[0 0 300 200]/UserUnit 2/Resources<</Font<</F 6 0 R>>/XObject<</X 5 0 R>>>>",
		`4 w 10 10 m 100 10 l S q 0.25 0 0 0.5 0 0 cm 2 w 40 40 m 400 40 l S Q
0.01 w 0 -50 m 300 -50 l S BT /F 10 Tf 20 100 Td (large) Tj 3 Tr /F 1 Tf (unseen) Tj 0 Tr ET q 0.5 0 0 0.5 0 0 cm /X Do Q`,
		streamed("/Type/XObject/Subtype/Form/BBox[0 0 600 400]/Matrix[0.5 0 0 0.5 0 0]/Resources<</Font<</F 6 0 R>>>>", "BT /F 16 Tf 1 0 0 1.25 80 80 Tm (small) Tj ET"),
		"<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>")
	p := read(t, data, 1)
	// The second line is 0.5 units thin where it is squeezed most, and a unit is two
	// points; the line off the page does not count.
	if got := p.LeastLine; !got.Found || math.Abs(got.Value-1*points) > 1e-4 {
		t.Errorf("thinnest line %v, want %.4f mm", got, 1*points)
	} else if y := got.At.Center().Y; math.Abs(y-40*points) > 0.5 {
		t.Errorf("thinnest line at %v, want y = %.2f", got.At, 40*points)
	}
	// 16 × 1.25 × 0.5 × 0.5 × 2 points.
	if got := p.LeastText; !got.Found || math.Abs(got.Value-10) > 1e-3 {
		t.Errorf("smallest text %v, want 10 points", got)
	} else if !geometry.RectAt(30*points, 30*points, 60*points, 40*points).Contains(got.At.Center()) {
		t.Errorf("smallest text at %v, want it about (40, 40) points", got.At)
	}
	if p.LeastPPI.Found || len(p.Images) > 0 {
		t.Errorf("pictures %v", p.Images)
	}
}

func TestNotes(t *testing.T) {
	tests := []struct {
		name, entries, resources, want string
	}{
		{"nothing", "", "", ""},
		{"a font that is missing", "", "/Font<</F<</Type/Font/Subtype/Type1/BaseFont/Garamond>>>>", "Fonts are missing"},
		{"half transparent", "", "/ExtGState<</G<</ca .5>>>>", "Transparency is used"},
		{"multiplied", "", "/ExtGState<</G<</BM/Multiply>>>>", "Transparency is used"},
		{"opaque", "", "/ExtGState<</G<</ca 1.0/CA 1/BM/Normal/SMask/None>>>>", ""},
		{"overprint", "", "/ExtGState<</G<</OP true>>>>", "overprint"},
		{"comments", "/Annots[<</Type/Annot/Subtype/Text/Rect[0 0 9 9]>>]", "", "left out: 1"},
		{"trim without bleed", "/TrimBox[20 20 80 80]", "", "no bleed box"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := read(t, onePage("/MediaBox[0 0 100 100]/Resources<<"+test.resources+">>"+test.entries, "0 0 9 9 re f"), 1)
			switch {
			case test.want == "" && len(p.Notes) > 0:
				t.Errorf("notes %v", p.Notes)
			case test.want != "" && (len(p.Notes) != 1 || !strings.Contains(p.Notes[0].String(), test.want)):
				t.Errorf("notes %v, want one about %q", p.Notes, test.want)
			}
		})
	}
}
