package bag_test

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
)

// eachField calls try with every field of the kind in a subtest of its own.
func eachField(t *testing.T, kind bag.Kind, try func(t *testing.T, field *bag.Field)) {
	t.Helper()
	table := bag.Fields()
	seen := 0
	for i := range table {
		if table[i].Kind() == kind {
			seen++
			t.Run(table[i].Path, func(t *testing.T) { try(t, &table[i]) })
		}
	}
	if seen == 0 {
		t.Fatalf("no field of kind %d", kind)
	}
}

// step returns the smallest change that a field tells apart.
func step(f *bag.Field, value float64) (below, above float64) {
	if f.Whole {
		return value - 1, value + 1
	}
	return math.Nextafter(value, math.Inf(-1)), math.Nextafter(value, math.Inf(1))
}

func TestNumbersUpToTheirLimits(t *testing.T) {
	eachField(t, bag.Number, func(t *testing.T, f *bag.Field) {
		if f.Least >= f.Most {
			t.Fatalf("limits %g to %g leave no room", f.Least, f.Most)
		}
		_, justInside := step(f, f.Least)
		for _, value := range []float64{f.Least, justInside, f.Most} {
			if complaint := f.CheckNumber(value); complaint != nil {
				t.Errorf("%v is refused: %v", value, complaint)
			}
		}
		below, _ := step(f, f.Least)
		_, above := step(f, f.Most)
		tests := []struct {
			value float64
			says  string
		}{
			{below, "less than the least, "},
			{-1e300, "less than the least, "},
			{above, "more than the most, "},
			{1e300, "more than the most, "},
			{math.NaN(), "not a finite number"},
			{math.Inf(1), "not a finite number"},
			{math.Inf(-1), "not a finite number"},
		}
		for _, test := range tests {
			complaint := f.CheckNumber(test.value)
			if complaint == nil {
				t.Errorf("%v is accepted", test.value)
				continue
			}
			if !strings.HasPrefix(complaint.Limit.String(), test.says) {
				t.Errorf("%v: limit %q, want %q", test.value, complaint.Limit, test.says)
			}
			saysAll(t, complaint, f)
		}
	})
}

// saysAll checks that a complaint names the entry, the value, the limit, the
// reason and the remedy, and does not print a value that reads like its limit.
func saysAll(t *testing.T, complaint *bag.FieldError, f *bag.Field) {
	t.Helper()
	if complaint.Path != f.Path || complaint.Label != f.Name() {
		t.Errorf("complaint about %q (%q), want %q (%q)", complaint.Path, complaint.Label, f.Path, f.Name())
	}
	why := map[string]string{"less": f.WhyLeast, "more": f.WhyMost}
	if first, _, _ := strings.Cut(complaint.Limit.String(), " "); complaint.Reason.String() != why[first] {
		t.Errorf("%q gives the reason %q, want %q", complaint.Limit, complaint.Reason, why[first])
	}
	if complaint.Remedy.String() != "enter a value from "+f.Range().String() {
		t.Errorf("remedy %q does not name the range %q", complaint.Remedy, f.Range())
	}
	line := complaint.Error()
	if !strings.Contains(line, complaint.Reason.String()) {
		t.Errorf("%q does not say %q", line, complaint.Reason)
	}
	for _, part := range []string{complaint.Path, complaint.Label, complaint.Value, complaint.Limit.String(), complaint.Remedy.String()} {
		if part == "" || !strings.Contains(line, part) {
			t.Errorf("%q does not say %q", line, part)
		}
	}
	if strings.HasSuffix(complaint.Limit.String(), ", "+complaint.Value) {
		t.Errorf("%q: the value reads like its limit", line)
	}
	if len(line) > 400 {
		t.Errorf("%d characters are no message: %q", len(line), line)
	}
}

func TestWholeNumbers(t *testing.T) {
	quantity := field(t, "run.quantity")
	if complaint := quantity.CheckNumber(12.5); complaint == nil || complaint.Limit.String() != "not a whole number" {
		t.Errorf("12.5 bags: %v", complaint)
	}
	if complaint := field(t, "bag.width_mm").CheckNumber(240.5); complaint != nil {
		t.Errorf("240.5 mm: %v", complaint)
	}
}

func field(t *testing.T, path string) *bag.Field {
	t.Helper()
	f, found := bag.FieldAt(path)
	if !found {
		t.Fatalf("no field %s", path)
	}
	return f
}

func TestChoices(t *testing.T) {
	eachField(t, bag.Choice, func(t *testing.T, f *bag.Field) {
		if len(f.Options) < 2 {
			t.Fatalf("%q are no choice", f.Options)
		}
		spec := bag.Default()
		for _, option := range f.Options {
			f.SetChoice(&spec, option)
			if f.Choice(&spec) != option || f.Text(&spec) != option {
				t.Errorf("set %q, got %q, shown as %q", option, f.Choice(&spec), f.Text(&spec))
			}
			if complaint := f.CheckChoice(option); complaint != nil {
				t.Error(complaint)
			}
		}
		for _, value := range []string{"", "none of them", strings.ToUpper(f.Options[0]), strings.Repeat("x", 10000)} {
			complaint := f.CheckChoice(value)
			if complaint == nil {
				t.Errorf("%q is accepted", value)
				continue
			}
			line := complaint.Error()
			for _, part := range append([]string{f.Path, f.Name(), "not one of the choices"}, f.Options...) {
				if !strings.Contains(line, part) {
					t.Errorf("%q does not say %q", line, part)
				}
			}
			if len(line) > 400 {
				t.Errorf("%d characters are no message: %q", len(line), line)
			}
		}
	})
}

func TestSwitches(t *testing.T) {
	eachField(t, bag.Switch, func(t *testing.T, f *bag.Field) {
		spec := bag.Default()
		for on, text := range map[bool]string{true: "yes", false: "no"} {
			f.SetSwitch(&spec, on)
			if f.Switch(&spec) != on || f.Text(&spec) != text {
				t.Errorf("set %v, got %v, shown as %q", on, f.Switch(&spec), f.Text(&spec))
			}
		}
	})
}

func TestEveryFieldExplainsItself(t *testing.T) {
	seen := map[string]bool{}
	table := bag.Fields()
	for i := range table {
		f := &table[i]
		if seen[f.Path] {
			t.Errorf("%s stands in the table twice", f.Path)
		}
		seen[f.Path] = true
		if f.Label == "" || f.Help == "" || !strings.HasSuffix(f.Help, ".") {
			t.Errorf("%s: label %q, help %q", f.Path, f.Label, f.Help)
		}
		if f.Kind() == bag.Number && (f.WhyMost == "" || f.WhyLeast == "" && f.Least != 0) {
			t.Errorf("%s gives no reason for its limits", f.Path)
		}
		if found := field(t, f.Path); found.Label != f.Label {
			t.Errorf("%s is found as %q", f.Path, found.Label)
		}
	}
	if _, found := bag.FieldAt("bag.wdith_mm"); found {
		t.Error("a field is found by a mistyped path")
	}
}

// The path of a field must be where encoding/json writes the entry, and no number,
// choice or switch of the file may lack a field.
func TestPathsAreThoseOfTheFile(t *testing.T) {
	spec := bag.Default()
	want := map[string]any{}
	table := bag.Fields()
	for i := range table {
		f := &table[i]
		switch f.Kind() {
		case bag.Number:
			value := float64(1000 + i)
			f.SetNumber(&spec, value)
			want[f.Path] = value
		case bag.Switch:
			want[f.Path] = f.Switch(&spec)
		case bag.Choice:
			value := strings.Repeat("c", i+1)
			f.SetChoice(&spec, value)
			want[f.Path] = value
		}
	}
	got := leaves(t, spec)
	for path, value := range want {
		if got[path] != value {
			t.Errorf("%s is %v in the file, want %v", path, got[path], value)
		}
	}
	for path := range got {
		if _, known := want[path]; !known {
			t.Errorf("%s has no field", path)
		}
	}
}

// leaves returns the entries of the file by their path, such as "bag.width_mm".
func leaves(t *testing.T, spec bag.Spec) map[string]any {
	t.Helper()
	file, err := json.Marshal(spec)
	if err != nil {
		t.Fatal(err)
	}
	var parts map[string]map[string]any
	if err := json.Unmarshal(file, &parts); err != nil {
		t.Fatal(err)
	}
	found := map[string]any{}
	for part, entries := range parts {
		for key, value := range entries {
			found[part+"."+key] = value
		}
	}
	return found
}

func TestRangeAndText(t *testing.T) {
	spec := bag.Default()
	tests := []struct{ path, span, text string }{
		{"bag.width_mm", "30 to 1000 mm", "240 mm"},
		{"bag.chamfer_deg", "5 to 85°", "15°"},
		{"bag.seam_relief_mm", "0 to 2 mm", "0.5 mm"},
		{"paper.grammage_gsm", "30 to 600 g/m²", "170 g/m²"},
		{"run.quantity", "1 to 10000000", "1000"},
		{"run.spoilage_percent", "0 to 100%", "5%"},
	}
	for _, test := range tests {
		f := field(t, test.path)
		if f.Range().String() != test.span || f.Text(&spec) != test.text {
			t.Errorf("%s: %q and %q, want %q and %q", test.path, f.Range(), f.Text(&spec), test.span, test.text)
		}
	}
}

func TestFieldErrorCanBeTakenOutOfTheJoinedOne(t *testing.T) {
	spec := bag.Default()
	spec.Body.Width = 12
	var complaint *bag.FieldError
	if err := spec.Validate(); !errors.As(err, &complaint) || complaint.Path != "bag.width_mm" {
		t.Errorf("got %+v", complaint)
	}
	const want = "bag.width_mm (Face width W) is 12 mm: less than the least, 30 mm " +
		"(narrower faces leave no room for a hand in the bag); enter a value from 30 to 1000 mm"
	if complaint.Error() != want {
		t.Errorf("got  %s\nwant %s", complaint, want)
	}
}

// In another language a complaint names the entry by its label, and says label,
// choice, limit, reason and remedy in that language.
func TestFieldErrorInAnotherLanguage(t *testing.T) {
	shout := func(text string) string {
		if strings.Contains(text, "%") {
			return text // verbs have no capitals
		}
		return strings.ToUpper(text)
	}
	whole := func(text string) string { return text }
	spec := func(change func(*bag.Spec)) bag.Spec {
		s := bag.Default()
		change(&s)
		return s
	}
	tests := []struct {
		spec          bag.Spec
		english, loud string
	}{
		{
			spec(func(s *bag.Spec) { s.Body.Width = 12 }),
			"Face width W is 12 mm: less than the least, 30 mm (narrower faces leave no room for a hand in the bag); enter a value from 30 to 1000 mm",
			"FACE WIDTH W is 12 mm: less than the least, 30 mm (NARROWER FACES LEAVE NO ROOM FOR A HAND IN THE BAG); enter",
		},
		{
			spec(func(s *bag.Spec) { s.Body.Gusset = 0 }),
			`Base is block: a bag without gussets has no block to stand on; choose "pinch", or give the gusset a depth`,
			`BASE is BLOCK: A BAG WITHOUT GUSSETS HAS NO BLOCK TO STAND ON; choose "PINCH", or`,
		},
		{spec(func(s *bag.Spec) { s.Name = strings.Repeat("n", 121) }), "Project name is ", `PROJECT NAME is "nnn`},
		{
			spec(func(s *bag.Spec) { s.Artwork = []bag.Artwork{bag.NewArtwork("a.pdf", "lid")} }),
			`Artwork (artwork[0].on) is "lid": not a place on the blank; choose blank, `, `ARTWORK (artwork[0].on) is "lid": NOT A PLACE ON THE BLANK; choose blank, `,
		},
	}
	for _, test := range tests {
		var complaint *bag.FieldError
		if !errors.As(test.spec.Validate(), &complaint) {
			t.Fatalf("no complaint %s", test.english)
		}
		if got := complaint.In(whole); !strings.HasPrefix(got, test.english) {
			t.Errorf("in English %s, want %s", got, test.english)
		}
		if strings.HasPrefix(complaint.In(whole), complaint.Path) {
			t.Errorf("%s begins with its path", complaint.In(whole))
		}
		if got := complaint.In(shout); !strings.HasPrefix(got, test.loud) {
			t.Errorf("aloud %s, want %s", got, test.loud)
		}
	}
}
