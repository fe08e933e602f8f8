package pdf

import (
	"bytes"
	"compress/zlib"
	"io"
	"math"
	"strings"
	"testing"
)

// Source of the wanted spellings: the examples and rules of ISO 32000-1, 7.3
// and 7.9.2 (values from memory); qpdf reads them back in other tests.
func TestObjectSpelling(t *testing.T) {
	cases := []struct {
		object object
		want   string
	}{
		{name("Cutting"), "/Cutting"},
		{name("A B#/é"), "/A#20B#23#2F#C3#A9"},
		{integer(-12), "-12"},
		{number(0.1 + 0.2), "0.3"},
		{number(100), "100"},
		{number(-0.00001), "0"},
		{number(math.Copysign(0, -1)), "0"},
		{number(1e9), "1000000000"},
		{boolean(true), "true"},
		{reference(7), "7 0 R"},
		{text("plain"), "(plain)"},
		{text(`a (b) \c`), `(a \(b\) \\c)`},
		{text(""), "()"},
		{text("×"), "<FEFF00D7>"},
		{text("tab\t"), "<FEFF0074006100620009>"},
		{text("😀"), "<FEFFD83DDE00>"},
		{text("\xff"), "<FEFFFFFD>"},
		{binary{0, 0xAB}, "<00AB>"},
		{array{}, "[]"},
		{numbers(1, 2.5), "[1 2.5]"},
		{dict{{"B", integer(1)}, {"A", integer(2)}}, "<< /B 1 /A 2 >>"},
		{dict{}, "<< >>"},
	}
	for _, c := range cases {
		if got := string(c.object.appendTo(nil)); got != c.want {
			t.Errorf("%#v is written as %s, want %s", c.object, got, c.want)
		}
	}
}

func TestStreamHoldsItsData(t *testing.T) {
	data := bytes.Repeat([]byte("0 0 m "), 500)
	written := stream{dict{{"Length1", integer(len(data))}}, data}.appendTo(nil)
	head, rest, found := bytes.Cut(written, []byte("\nstream\n"))
	packed, ended := bytes.CutSuffix(rest, []byte("\nendstream"))
	if !found || !ended {
		t.Fatalf("no stream in %q", written)
	}
	for _, part := range []string{"/Length1 3000", "/Filter /FlateDecode", "/Length " + string(integer(len(packed)).appendTo(nil)) + " "} {
		if !strings.Contains(string(head), part) {
			t.Errorf("%q lacks %q", head, part)
		}
	}
	reader, err := zlib.NewReader(bytes.NewReader(packed))
	if err != nil {
		t.Fatal(err)
	}
	if got, err := io.ReadAll(reader); err != nil || !bytes.Equal(got, data) {
		t.Errorf("unpacked %d bytes (%v), want %d", len(got), err, len(data))
	}
}
