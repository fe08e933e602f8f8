package page

import (
	"strings"
	"testing"
)

// The property /Shown is a layer that is shown, /Hidden one that is not.
func layerOf(property []byte) (is, hidden bool) {
	return string(property) != "/Other", string(property) == "/Hidden"
}

func TestFilterContent(t *testing.T) {
	tests := []struct{ name, content, want string }{
		{"nothing to leave out", "q 1 0 0 rg 0 0 1 1 re f Q", ""},
		{"other marked content", "/Span <</MCID 1>> BDC (x) Tj EMC /OC /Other BDC f EMC", ""},
		{"a layer that is shown", "/OC /Shown BDC f EMC", "/Layer BMC f EMC"},
		{"a layer that is hidden", "/OC /Hidden BDC 1 g 0 0 1 1 re W n 0 0 1 1 re f* EMC S", "/Layer BMC 1 g 0 0 1 1 re W n 0 0 1 1 re n EMC S"},
		{"within a hidden one", "/OC /Hidden BDC /OC /Shown BDC B EMC b EMC s", "/Layer BMC /Layer BMC n EMC n EMC s"},
		{"forms and shadings", "/OC /Hidden BDC q /X Do /Y sh Q EMC /X Do", "/Layer BMC q     Q EMC /X Do"},
		{
			"text", "/OC /Hidden BDC BT (a\\)b) Tj [(c) 5 (d)] TJ ET EMC (e) Tj",
			"/Layer BMC BT 3 Tr (a\\)b) Tj 0 Tr 3 Tr [(c) 5 (d)] TJ 0 Tr ET EMC (e) Tj",
		},
		{"text with an outline", "1 Tr q 2 Tr Q /OC /Hidden BDC (a) Tj EMC", "1 Tr q 2 Tr Q /Layer BMC 3 Tr (a) Tj 1 Tr EMC"},
		{"text that clips", "5 Tr /OC /Hidden BDC (a) ' EMC", "5 Tr /Layer BMC 7 Tr (a) ' 5 Tr EMC"},
		{"a Q too many", "Q q Q Q 0 0 1 1 re f", "  q Q   0 0 1 1 re f"},
		{"a picture with words in it", "BI /W 1 /H 1 ID Q Q EI\x80 EI q Q", ""},
		{"a hidden picture", "/OC /Hidden BDC BI /W 1 ID \x00\x01 Q EI EMC f", "/Layer BMC   EMC f"},
		{"cut off", "/OC /Hidden BDC (a", "/Layer BMC (a"},
		{"comments", "% Q\nq % EMC Q\n Q", ""},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			want, wantUnchanged := test.want, test.want == ""
			if wantUnchanged {
				want = test.content
			}
			got, unchanged := filterContent([]byte(test.content), layerOf, &Colours{})
			if string(got) != want || unchanged != wantUnchanged {
				t.Errorf("got  %q (unchanged %v)\nwant %q", got, unchanged, want)
			}
		})
	}
}

func TestValues(t *testing.T) {
	tests := []struct{ text, want string }{
		{"[/A#20B 1.50 -.5 12 0 R true null]", "[/A#20B 1.50 -.5 12 0 R true null]"},
		{"<</A(x\\(\\101\\n)/B<4a4>>>", "<< /A <7828410A> /B <4A40> >>"},
		{"(a\\\r\nb\rc\\7)", "<61620A6307>"},
		{"[1 2 3]% comment", "[1 2 3]"},
		{"12 34", "12"},
		{"nan", "error"},
		{"0x10", "error"},
		{"[1", "error"},
		{"<</A>>", "error"},
		{">>", "error"},
		{"", "error"},
		{strings.Repeat("[", 200) + strings.Repeat("]", 200), "error"},
	}
	for _, test := range tests {
		left := mostValues
		l := lexer{[]byte(test.text), 0, &left}
		o, err := l.value(0)
		got := "error"
		if err == nil {
			got = string(o.AppendTo(nil))
		}
		if got != test.want {
			t.Errorf("%.40q reads as %s, want %s (%v)", test.text, got, test.want, err)
		}
	}
}
