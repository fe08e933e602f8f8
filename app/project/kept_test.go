package project

import (
	"bytes"
	"fmt"
	"math"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
)

// encodeProject returns bag.json of a project.
func encodeProject(t testing.TB, p Project) string {
	t.Helper()
	var text bytes.Buffer
	if err := p.Encode(&text); err != nil {
		t.Fatal(err)
	}
	return text.String()
}

func twoKept() []KeptSize {
	return []KeptSize{{"A", 190, 95, 250}, {"AB", 8.25 * 25.4, 0, 320}}
}

// A file without kept sizes is the same as ever, byte by byte; with them it has one more
// entry at its end.
func TestKeptSizesAreOneMoreEntry(t *testing.T) {
	without := encodeText(t, bag.Default())
	if got := encodeProject(t, Project{Spec: bag.Default(), Kept: []KeptSize{}}); got != without || strings.Contains(got, "kept") {
		t.Errorf("an empty list gives another file:\n%s", got)
	}
	want := strings.TrimSuffix(without, "\n}\n") + `,
  "kept_sizes": [
    {
      "letter": "A",
      "width_mm": 190,
      "gusset_mm": 95,
      "height_mm": 250
    }
  ]
}
`
	if got := encodeProject(t, Project{Spec: bag.Default(), Kept: twoKept()[:1]}); got != want {
		t.Errorf("got\n%s, want\n%s", got, want)
	}
}

func TestKeptSizesAreReadAgain(t *testing.T) {
	want := sample()
	want.Kept = twoKept()
	path := filepath.Join(t.TempDir(), "kept.gusset")
	if err := Save(path, want); err != nil {
		t.Fatal(err)
	}
	got, err := Open(path)
	if err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("%v; got\n%+v, want\n%+v", err, got, want)
	}
	bare, err := readBytes([]byte(encodeProject(t, Project{Spec: bag.Default(), Kept: twoKept()})))
	if err != nil || !slices.Equal(bare.Kept, want.Kept) {
		t.Errorf("bag.json alone: %v, %v", bare.Kept, err)
	}
}

// A measure that is not given is that of the bag, as in a family. Whether the bag goes
// together in a kept size is for the meeting to say, which can also mend it.
func TestKeptSizesStandOnTheBag(t *testing.T) {
	p, err := readBytes([]byte(`{"bag": {"width_mm": 200, "height_mm": 300}, "kept_sizes": [{"letter": "B", "gusset_mm": 0}, {"letter": "A", "height_mm": 410}]}`))
	if want := []KeptSize{{"B", 200, 0, 300}, {"A", 200, 100, 410}}; err != nil || !slices.Equal(p.Kept, want) {
		t.Errorf("%v, %v; want %v", p.Kept, err, want)
	}
}

var badKept = []struct{ text, path string }{
	{`"kept_sizes": {}`, "kept_sizes"},
	{`"kept_sizes": null`, "kept_sizes"},
	{`"kept_sizes": [240]`, "kept_sizes[0]"},
	{`"kept_sizes": [{}]`, "kept_sizes[0].letter"},
	{`"kept_sizes": [{"letter": 1}]`, "kept_sizes[0].letter"},
	{`"kept_sizes": [{"letter": "a"}]`, "kept_sizes[0].letter"},
	{`"kept_sizes": [{"letter": "Ä"}]`, "kept_sizes[0].letter"},
	{`"kept_sizes": [{"letter": "AAA"}]`, "kept_sizes[0].letter"},
	{`"kept_sizes": [{"letter": "A "}]`, "kept_sizes[0].letter"},
	{`"kept_sizes": [{"letter": "` + strings.Repeat("Z", 900) + `"}]`, "kept_sizes[0].letter"},
	{`"kept_sizes": [{"letter": "A"}, {"letter": "B"}, {"letter": "A"}]`, "kept_sizes[2].letter"},
	{`"kept_sizes": [{"letter": "A", "width_mm": 29}]`, "kept_sizes[0].width_mm"},
	{`"kept_sizes": [{"letter": "A", "width_mm": "240"}]`, "kept_sizes[0].width_mm"},
	{`"kept_sizes": [{"letter": "A", "gusset_mm": -1}]`, "kept_sizes[0].gusset_mm"},
	{`"kept_sizes": [{"letter": "A", "height_mm": 1e999}]`, "kept_sizes[0].height_mm"},
	{`"kept_sizes": [{"letter": "A", "depth_mm": 100}]`, "kept_sizes[0].depth_mm"},
	{`"kept_sizes": [{"letter": "A"}, {"letter": "B"}, {"letter": "C"}, {"letter": "D"}, {"letter": "E"}]`, "kept_sizes"},
	{`"kept_size": []`, "kept_size"},
}

func TestBadKeptSizes(t *testing.T) {
	for _, test := range badKept {
		_, err := decodeText("{" + test.text + "}")
		all := fieldErrors(err)
		if len(all) != 1 || all[0].Path != test.path || all[0].Value == "" || all[0].Limit.Empty() || all[0].Remedy.Empty() || len(err.Error()) > 400 {
			t.Errorf("%s: %v; want one complaint about %s with value, limit and remedy", test.text, err, test.path)
		}
	}
	for text, remedy := range map[string]string{
		`"kept_size": []`: "did you mean kept_sizes?",
		`"kept_sizes": [{"letter": "A", "widht_mm": 100}]`:                   "did you mean kept_sizes[0].width_mm?",
		`"kept_sizes": [{"letter": "A", "liked_by_clients": 1}]`:             "kept_sizes[0] takes letter, width_mm, gusset_mm, height_mm",
		`"kept_sizes": [{"letter": "B"}, {"letter": "B", "width_mm": 1001}]`: "the same as kept_sizes[0].letter",
		`"kept_sizes": [{"letter": "B", "width_mm": 1001}]`:                  "30 to 1000 mm",
		`"family": [{"colour": 1}]`:                                          "family[0] takes name, width_mm, gusset_mm, height_mm, quantity",
		`"stock": [{"width": 880, "height_mm": 640}]`:                        "did you mean stock[0].width_mm?",
	} {
		_, err := decodeText("{" + text + "}")
		wantMessage(t, err, remedy)
	}
}

// The lists that a writer is handed have the same limits, so that what is saved can be
// opened again.
func TestKeptSizesThatCannotBeSaved(t *testing.T) {
	for name, kept := range map[string][]KeptSize{
		"letter is":     {{"", 190, 95, 250}},
		"width_mm":      {{"A", math.NaN(), 95, 250}},
		"height_mm":     {{"A", 190, 95, math.Inf(1)}},
		"more than 4":   {{"A", 190, 95, 250}, {"B", 191, 95, 250}, {"C", 192, 95, 250}, {"D", 193, 95, 250}, {"E", 194, 95, 250}},
		"the same as k": {{"A", 190, 95, 250}, {"A", 191, 95, 250}},
	} {
		path := filepath.Join(t.TempDir(), "kept.gusset")
		wantMessage(t, Save(path, Project{Spec: bag.Default(), Kept: kept}), "write bag.json", "kept_sizes", name)
		if found := names(t, filepath.Dir(path)); len(found) != 0 {
			t.Errorf("%s: %q is left behind", name, found)
		}
	}
}

func TestKeptKeysCoverKeptSizes(t *testing.T) {
	if got, want := keptKeys(), leafPaths(reflect.TypeFor[KeptSize](), ""); !slices.Equal(got, want) {
		t.Errorf("keptKeys() = %q, KeptSize has %q", got, want)
	}
}

// Letters go on after Z as columns of a spreadsheet do.
func TestLetters(t *testing.T) {
	for number, want := range map[int]string{0: "A", 1: "B", 25: "Z", 26: "AA", 27: "AB", 53: "BB", 675: "YZ", 676: "ZA", MostLetters - 1: "ZZ"} {
		if got := Letter(number); got != want {
			t.Errorf("letter %d is %s, want %s", number, got, want)
		}
	}
	seen := map[string]bool{}
	for number := range MostLetters {
		letter := Letter(number)
		if got := (KeptSize{Letter: letter}).Number(); got != number || seen[letter] {
			t.Errorf("%s is number %d, want %d", letter, got, number)
		}
		seen[letter] = true
	}
	for _, letter := range []string{"", "a", "1", "AAA", "A1", "É", "A\x00", Letter(MostLetters)} {
		if got := (KeptSize{Letter: letter}).Number(); got != -1 {
			t.Errorf("%q is number %d", letter, got)
		}
	}
}

// A file of a newer version may keep more about a size; what is known is read.
func TestKeptSizesOfANewerVersion(t *testing.T) {
	p, err := readBytes([]byte(`{"format": "gussetwright/7", "kept_sizes": [{"letter": "A", "remark": "too low"}]}`))
	if err != nil || !p.ReadOnly || len(p.Kept) != 1 || !strings.Contains(notesOf(p), "kept_sizes[0].remark") {
		t.Errorf("%v; read-only %v, kept %v, notes %q", err, p.ReadOnly, p.Kept, notesOf(p))
	}
}

func ExampleLetter() {
	fmt.Println(Letter(0), Letter(25), Letter(26))
	// Output: A Z AA
}
