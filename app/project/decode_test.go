package project

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
)

// badTexts are files that are no bag.json, with what the message must name.
var badTexts = []struct {
	name, text string
	parts      []string
}{
	{"empty", "", []string{"the file is empty", "choose another"}},
	{"blank", " \n\t ", []string{"the file is empty"}},
	{"byte order mark", "\ufeff{}", []string{"byte order mark", "EF BB BF", "without"}},
	{"UTF-16", "\xff\xfe{\x00}\x00", []string{"UTF-16", "save it as UTF-8"}},
	{"UTF-16 big end first", "\xfe\xff\x00{\x00}", []string{"UTF-16"}},
	{"Latin-1", "{\n \"name\": \"M\xfchle\"}", []string{"line 2, column 12", "byte FC", "UTF-8"}},
	{"another kind of file", "%PDF-1.7\n", []string{"line 1, column 1", "neither a project file nor a bag.json"}},
	{"cut short after a key", `{"bag": {"width_mm"`, []string{"line 1, column 20", "(in bag", "cut short"}},
	{"cut short in a text", `{"name": "Lin`, []string{"column 14", "(in name)", "cut short"}},
	{"cut short after a value", "{\"bag\": {\n\"width_mm\": 240", []string{"line 2, column 16", "cut short"}},
	{"cut short in a word", `{"cards": {"top": tru`, []string{"(in cards.top)", "cut short"}},
	{"trailing text", "{}\n{}", []string{"line 2, column 1", "more text follows", "take it out"}},
	{"trailing brace", "{}}", []string{"line 1, column 3", "more text follows"}},
	{"last comma", "{\"bag\": {\"width_mm\": 240,\n}}", []string{"line 2, column 1", "(in bag", "take out the comma"}},
	{"last comma of a list", `{"artwork": [1,]}`, []string{"(in artwork", "take out the comma"}},
	{"decimal comma", `{"bag": {"width_mm": 24,5}}`, []string{"column 25", "write decimals with a point"}},
	{"single quotes", `{'bag': 1}`, []string{"column 2", "double quotation marks"}},
	{"comment", "{\n// width\n}", []string{"line 2, column 1", "take the comment out"}},
	{"no colon", `{"bag" "x"}`, []string{"column 8", "a colon after each key"}},
	{"no comma", `{"bag": {} "run": {}}`, []string{"column 12", "a comma between entries"}},
	{"plus sign", `{"bag": {"width_mm": +5}}`, []string{"(in bag.width_mm)", "write numbers as 5"}},
	{"no digit before the point", `{"bag": {"width_mm": .5}}`, []string{"(in bag.width_mm)", "0.5"}},
	{"leading zero", `{"bag": {"width_mm": 0240}}`, []string{"column 23", "mend"}},
	{"line break in a text", "{\"name\": \"Linden\nhof\"}", []string{"line 1, column 17", `\n`}},
	{"NaN", `{"bag": {"width_mm": NaN}}`, []string{"line 1, column 22", "bag.width_mm", "is NaN", "30 to 1000 mm"}},
	{"Infinity", `{"bag": {"gusset_mm": Infinity}}`, []string{"bag.gusset_mm", "is Infinity", "0 to 500 mm"}},
	{"-Infinity", `{"sheet": {"gap_mm": -Infinity}}`, []string{"sheet.gap_mm", "is -Infinity", "0 to 50 mm"}},
	{"inf", `{"artwork": [{"scale": inf}]}`, []string{"artwork[0].scale", "is inf", "enter a plain number"}},
	{"NaN for a switch", `{"cards": {"top": NaN}}`, []string{"cards.top", "is NaN", "enter a plain"}},
	{"list", `[]`, []string{"a list of 0", "not a group of entries"}},
	{"null", `null`, []string{"null", "not a group of entries"}},
	{"number", `240`, []string{"240", "not a group of entries"}},
	{"text", `"bag"`, []string{`"bag"`, "not a group of entries"}},
	{"deep lists", strings.Repeat("[", 100_000), []string{"more than 16 levels"}},
	{"deep groups", strings.Repeat(`{"bag":`, 100_000), []string{"bag.bag.bag", "more than 16 levels"}},
	{"deep inside an entry", `{"bag": {"width_mm": ` + strings.Repeat("[", 50) + strings.Repeat("]", 50) + `}}`, []string{"bag.width_mm", "levels"}},
	{"too long", `{"name": "` + strings.Repeat("x", mebibyte) + `"}`, []string{"more than the most, 1 MiB"}},

	{"group that is a number", `{"bag": 240}`, []string{"bag is 240", "not a group of entries", "in braces"}},
	{"group that is null", `{"sheet": null}`, []string{"sheet is null", "not a group"}},
	{"group that is a list", `{"run": []}`, []string{"run is a list of 0", "not a group"}},
	{"name that is a number", `{"name": 5}`, []string{"name is 5", "not a text", "quotation marks"}},
	{"long name", `{"name": "` + strings.Repeat("n", 121) + `"}`, []string{"name", "longer than 120", "shorten"}},
	{"date of no calendar", `{"date": "2026-02-30"}`, []string{`date`, `"2026-02-30"`, "YYYY-MM-DD", "2026-03-31"}},
	{"date the other way round", `{"date": "31.03.2026"}`, []string{`"31.03.2026"`, "YYYY-MM-DD"}},
	{"date that is a number", `{"date": 2026}`, []string{"date is 2026", "not a text"}},
	{"artwork that is a group", `{"artwork": {}}`, []string{"artwork is a group of 0 entries", "not a list"}},
	{"artwork that is null", `{"artwork": null}`, []string{"artwork is null", "not a list"}},
	{"piece that is a text", `{"artwork": ["front.pdf"]}`, []string{`artwork[0] is "front.pdf"`, "not a group"}},
	{"piece without a file", `{"artwork": [{"on": "front"}]}`, []string{"artwork[0].file", "no file is named"}},
	{
		"names alike but for capitals", `{"artwork": [{"file": "A.pdf", "on": "front"}, {"file": "a.PDF", "on": "back"}]}`,
		[]string{"artwork[1].file", `"A.pdf"`, "capital letters", "rename"},
	},
	{
		"profile with the name of artwork but for capitals", `{"artwork": [{"file": "a.icc", "on": "front"}], "profile": "A.icc"}`,
		[]string{`profile is "A.icc"`, `"a.icc"`, "capital letters", "rename"},
	},
	{"profile that is a number", `{"profile": 39}`, []string{"profile is 39", "not a text", "quotation marks"}},
	{"profile with its folder", `{"profile": "profiles/coated.icc"}`, []string{`profile is "profiles/coated.icc"`, "a path, not a file name"}},
	{
		"mirror that is no switch", `{"artwork": [{"file": "a", "on": "front", "mirror": "yes"}]}`,
		[]string{`artwork[0].mirror is "yes"`, "neither true nor false", "write true or false"},
	},
	{"page that is not whole", `{"artwork": [{"file": "a", "on": "front", "page": 1.5}]}`, []string{"artwork[0].page", "is 1.5", "not a whole number", "from 1"}},
	{"page before the first", `{"artwork": [{"file": "a", "on": "front", "page": 0}]}`, []string{"artwork[0].page", "1 to 10000"}},
	{"repeat of no kind", `{"artwork": [{"file": "a", "on": "front", "repeat": "brick"}]}`, []string{"artwork[0].repeat", `"brick"`, "none, grid or half-drop"}},
	{"opacity of more than all", `{"artwork": [{"file": "a", "on": "front", "opacity_percent": 101}]}`, []string{"artwork[0].opacity_percent", "0 to 100"}},
	{
		"65 pieces", `{"artwork": [` + strings.Repeat(`{"file": "a", "on": "front"},`, 64) + `{"file": "a", "on": "front"}]}`,
		[]string{"artwork is a list of 65", "more than 64", "join"},
	},

	{"misspelled entry", `{"bag": {"widht_mm": 240}}`, []string{"bag.widht_mm is 240", "no such entry", "did you mean bag.width_mm?"}},
	{"entry in capitals", `{"bag": {"Width_mm": 240}}`, []string{"bag.Width_mm", "did you mean bag.width_mm?"}},
	{"entry without its group", `{"grammage_gsm": 170}`, []string{"grammage_gsm is 170", "did you mean paper.grammage_gsm?"}},
	{"entry in another group", `{"bag": {"hole_diameter_mm": 5}}`, []string{"did you mean handle.hole_diameter_mm?"}},
	{"entry with another unit", `{"handle": {"spacing_cm": 12}}`, []string{"did you mean handle.spacing_mm?"}},
	{"entry like no other", `{"print": {"varnish": "matt"}}`, []string{`print.varnish is "matt"`, "take it out", "print takes bleed_mm, safe_mm"}},
	{"group like no other", `{"shipping": {"kind": "pallet"}}`, []string{"shipping is a group of 1 entries", "the file takes format, name"}},
	{"misspelled piece entry", `{"artwork": [{"file": "a", "on": "front", "sclae": 2}]}`, []string{"artwork[0].sclae", "did you mean artwork[0].scale?"}},
	{"key that breaks lines", `{"bag": {"a\nb\u001b": 1}}`, []string{`bag."a\nb\x1b" is 1`}},
	{"empty key", `{"": 1}`, []string{`"" is 1`, "no such entry"}},
	{"group twice", `{"bag": {}, "bag": {"width_mm": 1}}`, []string{"bag is a group of 0 entries, then a group of 1 entries", "given twice"}},
	{"entry twice", `{"bag": {"width_mm": 240, "width_mm": 300}}`, []string{"bag.width_mm is 240, then 300", "given twice", "keep one"}},
	{"entry twice in other letters", `{"bag": {"width_mm": 240, "width\u005fmm": 300}}`, []string{"bag.width_mm is 240, then 300", "given twice"}},
	{"format twice", `{"format": "gussetwright/1", "format": "gussetwright/1"}`, []string{"format", "given twice"}},

	{"both heights", `{"bag": {"height_mm": 360, "height_to_flat_fold_mm": 310}}`, []string{flatFoldPath, "310", "bag.height_mm, which is 360", "keep one"}},
	{"height to flat fold too large", `{"bag": {"height_to_flat_fold_mm": 1475}}`, []string{flatFoldPath, "1475 mm", "standing height", "40 to 1500 mm"}},
	{"height to flat fold below 0", `{"bag": {"height_to_flat_fold_mm": -20}}`, []string{flatFoldPath, "-20 mm", "40 to 1500 mm"}},
	{"height to flat fold of the wrong kind", `{"bag": {"height_to_flat_fold_mm": true}}`, []string{flatFoldPath, "is true", "not a number"}},

	{"entries that do not go together", `{"bag": {"gusset_mm": 0}}`, []string{"bag.base", "no block", "pinch"}},
	{"narrow gusset", `{"bag": {"gusset_mm": 9.5}}`, []string{"bag.gusset_mm", "9.5 mm", "at least 10 mm"}},

	{"format of another program", `{"format": "boxes/1"}`, []string{`format is "boxes/1"`, "not a project file", "gussetwright/1"}},
	{"format without version", `{"format": "gussetwright"}`, []string{`format is "gussetwright"`}},
	{"format with an odd version", `{"format": "gussetwright/01"}`, []string{`format is "gussetwright/01"`}},
	{"format below 0", `{"format": "gussetwright/-1"}`, []string{`format is "gussetwright/-1"`}},
	{"format beyond all numbers", `{"format": "gussetwright/99999999999999999999"}`, []string{"format is"}},
	{"format before the first", `{"format": "gussetwright/0"}`, []string{`format is "gussetwright/0"`}},
	{"format that is a number", `{"format": 1}`, []string{"format is 1", "not a project file"}},
	{"format that is null", `{"format": null}`, []string{"format is null"}},
	{"newer format", `{"format": "gussetwright/2"}`, []string{"gussetwright/2", "newer than gussetwright/1"}},
}

func TestDecodeBadText(t *testing.T) {
	for _, test := range badTexts {
		t.Run(test.name, func(t *testing.T) {
			_, err := decodeText(test.text)
			wantMessage(t, err, append(test.parts, "read bag.json: ")...)
			if len(err.Error()) > 800 {
				t.Errorf("the message has %d bytes: %s", len(err.Error()), err)
			}
		})
	}
}

func TestDecodeNamesAllComplaintsAtOnce(t *testing.T) {
	_, err := decodeText(`{
		"bag": {"width_mm": "24 cm", "gusset_mm": -5, "base": "round", "widht_mm": 1, "top": "zigzag", "top": "straight"},
		"cards": {"top": "yes"}, "run": {"quantity": 0.5}, "date": "tomorrow",
		"artwork": [5, {"file": "a.pdf", "on": "lid"}]}`)
	var paths []string
	for _, complaint := range fieldErrors(err) {
		paths = append(paths, complaint.Path)
	}
	want := []string{
		"bag.top", "bag.width_mm", "bag.gusset_mm", "bag.base", "cards.top", "run.quantity",
		"artwork[0]", "bag.widht_mm", "artwork[1].on", "date",
	}
	if !reflect.DeepEqual(paths, want) {
		t.Errorf("complaints about\n%q, want\n%q\n%v", paths, want, err)
	}
}

// A flat bag needs a pinch base. While the base is misspelled, nobody can know
// whether it has one.
func TestDecodeJudgesTogetherOnlyWhatIsRightAlone(t *testing.T) {
	_, err := decodeText(`{"bag": {"gusset_mm": 0, "base": "pinhc"}}`)
	if all := fieldErrors(err); len(all) != 1 || all[0].Value != `"pinhc"` {
		t.Errorf("got %v, want one complaint about the misspelled base", err)
	}
}

func TestDecodeBoundsComplaints(t *testing.T) {
	var text strings.Builder
	for i := range 20_000 {
		fmt.Fprintf(&text, `, "unknown_%d": %d`, i, i)
	}
	_, err := decodeText("{" + text.String()[2:] + "}")
	wantMessage(t, err, "unknown_0", "and 19950 more")
	if got := len(fieldErrors(err)); got != mostComplaints {
		t.Errorf("%d complaints, want %d", got, mostComplaints)
	}
}

func TestDecodeBoundsComplaintsOfOneKind(t *testing.T) {
	_, err := decodeText(`{"artwork": [` + strings.Repeat("5, ", 59) + `5]}`)
	wantMessage(t, err, "artwork[49] is 5", "and 10 more")
	if got := len(fieldErrors(err)); got != mostComplaints {
		t.Errorf("%d complaints, want %d", got, mostComplaints)
	}
}

func TestDecodeBoundsNesting(t *testing.T) {
	nested := func(levels int) string { // the outermost braces are one of them
		return `{"x": ` + strings.Repeat("[", levels-1) + strings.Repeat("]", levels-1) + "}"
	}
	_, err := decodeText(nested(16))
	wantMessage(t, err, "x is a list of 1: there is no such entry")
	_, err = decodeText(nested(17))
	wantMessage(t, err, "more than 16 levels")
}

func TestDecodeDefaults(t *testing.T) {
	set := func(change func(*bag.Spec)) bag.Spec {
		spec := bag.Default()
		change(&spec)
		return spec
	}
	for _, test := range []struct {
		name, text string
		want       bag.Spec
	}{
		{"nothing", `{}`, bag.Default()},
		{"empty groups", `{"format": "gussetwright/1", "bag": {}, "run": {}, "artwork": []}`, bag.Default()},
		// Holes stand half a face apart unless a distance is given.
		{"width", `{"bag": {"width_mm": 300}}`, set(func(s *bag.Spec) { s.Body.Width, s.Handle.Spacing = 300, 150 })},
		{"width and spacing", `{"handle": {"spacing_mm": 120}, "bag": {"width_mm": 300}}`, set(func(s *bag.Spec) { s.Body.Width = 300 })},
		{"hand hole", `{"handle": {"kind": "hand-hole"}}`, set(func(s *bag.Spec) {
			s.Handle.Kind, s.Handle.Drop, s.Body.TurnIn, s.Cards.Top, s.Cards.Base = bag.HandleHandHole, 45, 80, false, false
		})},
		{"card against the usual", `{"handle": {"kind": "none"}, "cards": {"top": true}}`, set(func(s *bag.Spec) {
			s.Handle.Kind, s.Cards.Base = bag.HandleNone, false
		})},
		// H = height to the flat-fold crease + D/2.
		{"height to flat fold", `{"bag": {"height_to_flat_fold_mm": 310, "gusset_mm": 120}}`, set(func(s *bag.Spec) {
			s.Body.Gusset, s.Body.Height = 120, 370
		})},
		{"height to flat fold below the least standing height", `{"bag": {"height_to_flat_fold_mm": 10}}`, set(func(s *bag.Spec) { s.Body.Height = 60 })},
		{"numbers in other forms", `{"bag": {"width_mm": 2.4e2, "gusset_mm": 100.0, "seam_relief_mm": -0}}`, set(func(s *bag.Spec) { s.Body.SeamRelief = 0 })},
		{
			"artwork", `{"artwork": [{"file": "front.pdf", "on": "front"}, {"file": "b.pdf", "page": 3, "on": "blank", "fit": "exact", "x_mm": -1, "y_mm": 2, "scale": 0.5,
			"turn_deg": 90, "mirror": true, "opacity_percent": 40, "repeat": "half-drop", "holds": "ean-13"}]}`,
			set(func(s *bag.Spec) {
				s.Artwork = []bag.Artwork{
					{File: "front.pdf", Page: 1, On: "front", Fit: bag.FitCover, Scale: 1, Opacity: 100, Repeat: bag.RepeatNone, Holds: bag.HoldsPicture},
					{
						File: "b.pdf", Page: 3, On: "blank", Fit: bag.FitExact, X: -1, Y: 2, Scale: 0.5, Turn: 90,
						Mirror: true, Opacity: 40, Repeat: bag.RepeatHalfDrop, Holds: bag.HoldsEAN13,
					},
				}
			}),
		},
		{"profile", `{"profile": "coated.icc"}`, set(func(s *bag.Spec) { s.Profile = "coated.icc" })},
		{"kraft", `{"paper": {"kind": "kraft"}}`, set(func(s *bag.Spec) { s.Paper.Kind, s.Paper.Colour = bag.PaperKraft, bag.ColourNatural })},
		{"bleached kraft", `{"paper": {"kind": "kraft", "colour": "white"}}`, set(func(s *bag.Spec) { s.Paper.Kind = bag.PaperKraft })},
		{"lamination", `{"paper": {"lamination": "matt"}}`, set(func(s *bag.Spec) { s.Paper.Lamination = bag.LaminationMatt })},
		{
			"background", `{"print": {"background_cyan_percent": 100, "background_black_percent": 12.5}}`,
			set(func(s *bag.Spec) { s.Print.Cyan, s.Print.Black = 100, 12.5 }),
		},
		{"name and date", `{"name": "Mühle & Söhne", "date": "2024-02-29"}`, set(func(s *bag.Spec) { s.Name, s.Date = "Mühle & Söhne", "2024-02-29" })},
	} {
		t.Run(test.name, func(t *testing.T) {
			got, err := decodeText(test.text)
			if err != nil {
				t.Fatal(err)
			}
			if !reflect.DeepEqual(got, test.want) {
				t.Errorf("got\n%+v, want\n%+v", got, test.want)
			}
			if math.Signbit(got.Body.SeamRelief) {
				t.Error("-0 was kept")
			}
		})
	}
}

func TestDecodeFailingReader(t *testing.T) {
	_, err := Decode(failingReader{})
	wantMessage(t, err, "read bag.json", errBroken.Error())
	_, err = ReadFrom(failingReader{})
	wantMessage(t, err, "read project", errBroken.Error())
}

func TestEditDistance(t *testing.T) {
	// kitten to sitting is 3, the usual example for the Levenshtein distance.
	for _, test := range []struct {
		a, b string
		want int
	}{{"kitten", "sitting", 3}, {"", "abc", 3}, {"abc", "", 3}, {"same", "SAME", 0}, {"äb", "ab", 1}} {
		if got := editDistance(test.a, test.b); got != test.want {
			t.Errorf("editDistance(%q, %q) = %d, want %d", test.a, test.b, got, test.want)
		}
	}
}
