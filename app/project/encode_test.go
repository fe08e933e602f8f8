package project

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/geomtest"
)

var errBroken = errors.New("the cable is out")

type failingReader struct{}

func (failingReader) Read([]byte) (int, error) { return 0, errBroken }

type failingWriter struct{}

func (failingWriter) Write([]byte) (int, error) { return 0, errBroken }

func encodeText(t testing.TB, spec bag.Spec) string {
	t.Helper()
	var text bytes.Buffer
	if err := Encode(&text, spec); err != nil {
		t.Fatal(err)
	}
	return text.String()
}

func TestEncodeDefault(t *testing.T) {
	text := encodeText(t, bag.Default())
	if !strings.HasPrefix(text, "{\n  \"format\": \"gussetwright/1\",\n") || !strings.HasSuffix(text, "}\n") {
		t.Errorf("format does not come first or the last line has no end:\n%s", text)
	}
	geomtest.Golden(t, "project/bag.json", []byte(text))
}

// People compare bag.json line by line, so texts stand in it as they were typed.
func TestEncodeKeepsTextsReadable(t *testing.T) {
	spec := bag.Default()
	spec.Name = "Mühle & Söhne <rye>"
	if text := encodeText(t, spec); !strings.Contains(text, `"name": "Mühle & Söhne <rye>"`) {
		t.Errorf("the name does not stand in\n%s", text)
	}
}

func TestRoundTrip(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		want := randomSpec(random)
		text := encodeText(t, want)
		got, err := decodeText(text)
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if !reflect.DeepEqual(got, want) {
			t.Fatalf("got\n%+v, want\n%+v", got, want)
		}
		if again := encodeText(t, got); again != text {
			t.Fatalf("the second text differs:\n%s\n%s", text, again)
		}
	}
}

func TestEncodeRefusesWhatDecodeWould(t *testing.T) {
	for _, test := range []struct {
		change func(*bag.Spec)
		part   string
	}{
		{func(s *bag.Spec) { s.Body.Width = math.NaN() }, "bag.width_mm"},
		{func(s *bag.Spec) { s.Body.Height = math.Inf(1) }, "bag.height_mm"},
		{func(s *bag.Spec) { s.Body.Base = "round" }, "bag.base"},
		{func(s *bag.Spec) { s.Date = "today" }, "date"},
		{func(s *bag.Spec) { s.Name = "M\xfchle" }, "name"},
		{func(s *bag.Spec) { s.Artwork = []bag.Artwork{bag.NewArtwork("../a", "front")} }, "artwork[0].file"},
		{func(s *bag.Spec) { s.Artwork = []bag.Artwork{bag.NewArtwork("\xff", "front")} }, "UTF-8"},
	} {
		spec := bag.Default()
		test.change(&spec)
		var text bytes.Buffer
		wantMessage(t, Encode(&text, spec), "write bag.json", test.part)
		if text.Len() > 0 {
			t.Errorf("%s: wrote %q all the same", test.part, text.String())
		}
	}
	wantMessage(t, Encode(failingWriter{}, bag.Default()), "write bag.json", errBroken.Error())
}

// Python's json module, which reads by RFC 8259, agrees on every entry.
func TestEncodeReadByPython(t *testing.T) {
	path := filepath.Join(t.TempDir(), documentName)
	spec := sample().Spec
	writeFile(t, path, []byte(encodeText(t, spec)))
	script := "import json,sys\nd=json.load(open(sys.argv[1],encoding='utf-8'))\n" +
		"print(d['format'],d['bag']['width_mm'],d['handle']['spacing_mm'],d['name'],len(d['artwork']))"
	got := strings.TrimSpace(string(geomtest.Run(t, "python3", "-c", script, path)))
	if want := "gussetwright/1 240 120 Lindenhof bakery 3"; got != want {
		t.Errorf("Python reads %q, want %q", got, want)
	}
}

func ExampleDecode() {
	spec, err := Decode(strings.NewReader(`{"bag": {"width_mm": 300, "gusset_mm": 120}}`))
	fmt.Println(spec.Body.Width, spec.Body.Height, spec.Handle.Spacing, err)

	_, err = Decode(strings.NewReader(`{"bag": {"widht_mm": 300, "gusset_mm": "12 cm"}}`))
	fmt.Println(err)
	// Output:
	// 300 360 150 <nil>
	// read bag.json: bag.gusset_mm (Gusset depth D) is "12 cm": not a number; enter a plain number of millimetres, 120
	// bag.widht_mm is 300: there is no such entry; did you mean bag.width_mm?
}

func ExampleEncode() {
	spec := bag.Default()
	spec.Name = "Lindenhof bakery"
	var text strings.Builder
	if err := Encode(&text, spec); err != nil {
		fmt.Println(err)
	}
	for _, line := range strings.Split(text.String(), "\n")[:5] {
		fmt.Println(line)
	}
	// Output:
	// {
	//   "format": "gussetwright/1",
	//   "name": "Lindenhof bakery",
	//   "product": {
	//     "kind": "box",
}

func BenchmarkDecode(b *testing.B) {
	text := encodeText(b, sample().Spec)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if _, err := decodeText(text); err != nil {
			b.Fatal(err)
		}
	}
}
