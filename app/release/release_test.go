package release

import (
	"reflect"
	"strings"
	"testing"
	"time"
)

func TestParse(t *testing.T) {
	got, err := Parse(`# Changes

Some words - not an item of any version.

## 0.2.0 - 2026-12-24

### Added
- One thing,
  in two lines.
- Another thing.

### Mended

- A third.

## 0.1.0 - 2026-11-25
### Added
- All of it.
`)
	if err != nil {
		t.Fatal(err)
	}
	want := []Change{
		{"0.2.0", time.Date(2026, 12, 24, 0, 0, 0, 0, time.UTC), []Part{
			{"Added", []string{"One thing, in two lines.", "Another thing."}}, {"Mended", []string{"A third."}},
		}},
		{"0.1.0", time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC), []Part{{"Added", []string{"All of it."}}}},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
}

func TestParseComplains(t *testing.T) {
	const whole = "## 0.2.0 - 2026-12-24\n### Added\n- A.\n"
	for text, says := range map[string]string{
		"":                               "there is no version",
		"# Changes\n":                    "there is no version",
		"### Added\n":                    "above the first version",
		"- A.\n":                         "above the first part",
		"## 0.2.0 - 2026-12-24\n- A.\n":  "above the first part",
		"## 0.2.0 - 2026-12-24\n":        "0.2.0 has no changes",
		"## 0.2 - 2026-12-24\n":          "no head of a version",
		"## 0.x.0 - 2026-12-24\n":        "no head of a version",
		"## 0.2.0\n":                     "no head of a version",
		"## 0.2.0 - 24.12.2026\n":        "no day",
		whole + "odd words\n":            "line 4",
		whole + "### Mended\n":           "Mended of 0.2.0 is empty",
		whole + "### Mended\n  going on": "not there",
		whole + "## 0.3.0 - 2027-01-01\n### Added\n- B.\n":                           "newest first",
		"## 0.2.0 - 2026-12-24\n### Added\n## 0.1.0 - 2026-11-25\n### Added\n- B.\n": "Added of 0.2.0 is empty",
	} {
		if _, err := Parse(text); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: got %v, want %q", text, err, says)
		}
	}
}

func FuzzParse(f *testing.F) {
	f.Add("## 0.2.0 - 2026-12-24\n### Added\n- A,\n  and on.\n")
	f.Fuzz(func(t *testing.T, text string) {
		changes, err := Parse(text)
		if err != nil {
			return
		}
		for _, change := range changes {
			if !isVersion(change.Version) || len(change.Parts) == 0 {
				t.Errorf("%+v", change)
			}
		}
	})
}

func TestOwnChangesAreRead(t *testing.T) {
	changes, err := Changes()
	if err != nil {
		t.Fatal(err)
	}
	if got := Version(); got != changes[0].Version+"+local" {
		t.Errorf("a program that was not stamped says %s", got)
	}
}

func TestStampedVersion(t *testing.T) {
	defer func(before string) { version = before }(version)
	version = "9.8.7"
	if got := Version(); got != "9.8.7" {
		t.Errorf("got %s", got)
	}
}
