package project

import (
	"bytes"
	"encoding/json"
	"maps"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"gussetwright/geometry/bag"
)

// checkAccepted checks what holds for every spec that was read: it is valid, and
// it is the same after it was written and read again.
func checkAccepted(t *testing.T, spec bag.Spec) {
	t.Helper()
	if err := spec.Validate(); err != nil {
		t.Fatalf("an accepted spec is not valid: %v", err)
	}
	again, err := decodeText(encodeText(t, spec))
	if err != nil {
		t.Fatalf("what was written cannot be read: %v", err)
	}
	if !reflect.DeepEqual(again, spec) {
		t.Fatalf("written and read again:\n%+v, before\n%+v", again, spec)
	}
}

func FuzzDecode(f *testing.F) {
	for _, test := range badTexts {
		if len(test.text) < 10_000 {
			f.Add([]byte(test.text))
		}
	}
	for _, field := range bag.Fields() {
		for _, bad := range badValues(field) {
			f.Add([]byte(withEntry(field.Path, bad.json)))
		}
	}
	for _, test := range badKept {
		f.Add([]byte("{" + test.text + "}"))
	}
	f.Add([]byte(encodeText(f, sample().Spec)))
	f.Add([]byte(encodeProject(f, Project{Spec: sample().Spec, Kept: twoKept()})))
	random := rand.New(rand.NewPCG(3, 4))
	for range 20 {
		f.Add([]byte(encodeText(f, randomSpec(random))))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		spec, err := Decode(bytes.NewReader(data))
		if err != nil {
			if err.Error() == "" {
				t.Fatal("an error without a message")
			}
			return
		}
		if !json.Valid(data) {
			t.Fatal("accepted what is not JSON")
		}
		checkAccepted(t, spec)
	})
}

func FuzzOpen(f *testing.F) {
	hostile := hostileContainers(f)
	for _, name := range slices.Sorted(maps.Keys(hostile)) {
		if data := hostile[name].data; len(data) < 100_000 {
			f.Add(data)
		}
	}
	var container bytes.Buffer
	if err := write(&container, sample(), standard()); err != nil {
		f.Fatal(err)
	}
	f.Add(container.Bytes())
	f.Add(pack(f, entry{name: documentName, data: `{"format": "gussetwright/7", "x": 1}`}, entry{name: "y", data: "z"}))
	f.Add([]byte(`{"bag": {"width_mm": 300}}`))
	f.Add([]byte(`{"kept_sizes": [{"letter": "A"}, {"letter": "ZZ", "width_mm": 1e3}]}`))
	f.Add([]byte(`{"kept_sizes": [{"letter": "A"}, {"letter": "A", "height_mm": -0}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		p, err := readBytes(data)
		if err != nil {
			return
		}
		checkAccepted(t, p.Spec)
		for name := range p.Files {
			if why := refuseFileName(name); !why.Empty() {
				t.Fatalf("accepted the file name %q: %v", name, why)
			}
		}
		var written bytes.Buffer
		if err := write(&written, p, standard()); err != nil {
			t.Fatalf("what was opened cannot be saved: %v", err)
		}
		again, err := readBytes(written.Bytes())
		if err != nil {
			t.Fatalf("what was saved cannot be opened: %v", err)
		}
		for _, name := range p.Placed() {
			if !bytes.Equal(again.Files[name], p.Files[name]) {
				t.Fatalf("artwork %q changed", name)
			}
		}
		if !reflect.DeepEqual(again.Spec, p.Spec) || !slices.Equal(again.Kept, p.Kept) || !bytes.Equal(again.Preview, p.Preview) {
			t.Fatalf("saved and opened again:\n%+v, before\n%+v", again, p)
		}
	})
}
