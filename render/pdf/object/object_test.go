package object

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
		value Object
		want  string
	}{
		{Name("Cutting"), "/Cutting"},
		{Name("A B#/é"), "/A#20B#23#2F#C3#A9"},
		{Integer(-12), "-12"},
		{Number(0.1 + 0.2), "0.3"},
		{Number(100), "100"},
		{Number(-0.00001), "0"},
		{Number(math.Copysign(0, -1)), "0"},
		{Number(1e9), "1000000000"},
		{Boolean(true), "true"},
		{Reference(7), "7 0 R"},
		{Text("plain"), "(plain)"},
		{Text(`a (b) \c`), `(a \(b\) \\c)`},
		{Text(""), "()"},
		{Text("×"), "<FEFF00D7>"},
		{Text("tab\t"), "<FEFF0074006100620009>"},
		{Text("😀"), "<FEFFD83DDE00>"},
		{Text("\xff"), "<FEFFFFFD>"},
		{Binary{0, 0xAB}, "<00AB>"},
		{Array{}, "[]"},
		{Numbers(1, 2.5), "[1 2.5]"},
		{Dict{{"B", Integer(1)}, {"A", Integer(2)}}, "<< /B 1 /A 2 >>"},
		{Dict{}, "<< >>"},
	}
	for _, c := range cases {
		if got := string(c.value.AppendTo(nil)); got != c.want {
			t.Errorf("%#v is written as %s, want %s", c.value, got, c.want)
		}
	}
}

func TestStreamHoldsItsData(t *testing.T) {
	data := bytes.Repeat([]byte("0 0 m "), 500)
	written := Stream{Dict{{"Length1", Integer(len(data))}}, data}.AppendTo(nil)
	head, rest, found := bytes.Cut(written, []byte("\nstream\n"))
	packed, ended := bytes.CutSuffix(rest, []byte("\nendstream"))
	if !found || !ended {
		t.Fatalf("no stream in %q", written)
	}
	for _, part := range []string{"/Length1 3000", "/Filter /FlateDecode", "/Length " + string(Integer(len(packed)).AppendTo(nil)) + " "} {
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
