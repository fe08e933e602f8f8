package project

import (
	"errors"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
)

func TestNewerVersionOpensReadOnly(t *testing.T) {
	text := `{"format": "gussetwright/7", "bag": {"width_mm": 300, "lining": "foil"}, "window": {"kind": "round"}, "artwork": [{"file": "a.pdf", "on": "front", "foil": true}]}`
	bare, err := readBytes([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	packed, err := readBytes(pack(t, entry{name: documentName, data: text}, entry{name: "window.svg", data: "x"}, entry{name: "artwork/a.pdf", data: "%PDF"}))
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []Project{bare, packed} {
		if !p.ReadOnly || p.Spec.Body.Width != 300 || p.Spec.Handle.Spacing != 150 {
			t.Errorf("got %+v, want it read-only with the width 300", p)
		}
		notes := notesOf(p)
		for _, part := range []string{"newer version (gussetwright/7)", "read-only", "bag.lining", "window", "artwork[0].foil"} {
			if !strings.Contains(notes, part) {
				t.Errorf("notes %q do not name %q", notes, part)
			}
		}
	}
	if notes := notesOf(packed); !strings.Contains(notes, `"window.svg"`) {
		t.Errorf("notes %q do not name the entry left out", notes)
	}
	wantMessage(t, Save(t.TempDir()+"/x.gusset", bare), "newer version", "another name")
}

func TestNewerVersionOfAnotherShape(t *testing.T) {
	_, err := readBytes([]byte(`{"format": "gussetwright/7", "bag": {"base": "hexagon"}}`))
	wantMessage(t, err, "newer version (gussetwright/7)", "open it with that version", "bag.base", `"hexagon"`)
	var complaint *bag.FieldError
	if !errors.As(err, &complaint) {
		t.Errorf("%v is no complaint about an entry", err)
	}
}

func TestMigration(t *testing.T) {
	rename := func(from, to string) migration {
		return func(tree map[string]any) error {
			group, isGroup := tree["bag"].(map[string]any)
			if !isGroup {
				return errors.New("bag is missing")
			}
			group[to] = group[from]
			delete(group, from)
			return nil
		}
	}
	h := history{current: 3, migrations: map[int]migration{1: rename("breadth", "width"), 2: rename("width", "width_mm")}}
	read := opening{limits: standard(), history: h}
	text := `{"format": "gussetwright/1", "bag": {"breadth": 300}}`
	p, err := read.project(strings.NewReader(text), int64(len(text)))
	if err != nil {
		t.Fatal(err)
	}
	if p.Spec.Body.Width != 300 || p.ReadOnly {
		t.Errorf("got %+v, want the width 300 and that it can be saved", p)
	}
	if notes := notesOf(p); !strings.Contains(notes, "older version (gussetwright/1)") || !strings.Contains(notes, "gussetwright/3") {
		t.Errorf("notes %q do not name the versions", notes)
	}

	_, err = h.decode([]byte(`{"format": "gussetwright/2"}`))
	wantMessage(t, err, "from version 2 to 3", "bag is missing")
	_, err = h.decode([]byte(`{"format": "gussetwright/0"}`))
	wantMessage(t, err, `format is "gussetwright/0"`, `write "gussetwright/3"`)
}
