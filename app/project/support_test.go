package project

import (
	"archive/zip"
	"bytes"
	"errors"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"gussetwright/geometry/bag"
)

// decodeText reads bag.json from a text.
func decodeText(text string) (bag.Spec, error) { return Decode(strings.NewReader(text)) }

// withEntry returns bag.json with one entry, its value as JSON.
func withEntry(path, value string) string {
	group, key, _ := strings.Cut(path, ".")
	return `{"` + group + `": {"` + key + `": ` + value + `}}`
}

// fieldErrors returns all complaints about entries in an error.
func fieldErrors(err error) []*bag.FieldError {
	switch err := err.(type) {
	case nil:
		return nil
	case *bag.FieldError:
		return []*bag.FieldError{err}
	case interface{ Unwrap() []error }:
		var all []*bag.FieldError
		for _, one := range err.Unwrap() {
			all = append(all, fieldErrors(one)...)
		}
		return all
	}
	return fieldErrors(errors.Unwrap(err))
}

// wantMessage checks that an error names all of the parts.
func wantMessage(t *testing.T, err error, parts ...string) {
	t.Helper()
	if err == nil {
		t.Fatalf("no error, want one that names %q", parts)
	}
	for _, part := range parts {
		if !strings.Contains(err.Error(), part) {
			t.Errorf("error %q does not name %q", err, part)
		}
	}
}

// notesOf returns the notes of a project in English, one a line.
func notesOf(p Project) string {
	text := ""
	for _, note := range p.Notes {
		text += note.String() + "\n"
	}
	return text
}

// randomSpec returns a valid spec with every entry anywhere within its limits.
func randomSpec(random *rand.Rand) bag.Spec {
	for {
		spec := bag.Spec{Name: randomText(random), Date: []string{"", "2026-03-31", "2024-02-29"}[random.IntN(3)]}
		for _, field := range bag.Fields() {
			switch field.Kind() {
			case bag.Number:
				value := field.Least + random.Float64()*(field.Most-field.Least)
				if field.Whole {
					value = math.Trunc(value)
				}
				field.SetNumber(&spec, value)
			case bag.Choice:
				field.SetChoice(&spec, field.Options[random.IntN(len(field.Options))])
			case bag.Switch:
				field.SetSwitch(&spec, random.IntN(2) == 0)
			}
		}
		for range random.IntN(4) {
			spec.Artwork = append(spec.Artwork, bag.Artwork{
				File: "art " + randomText(random) + ".pdf", On: "front", Fit: bag.FitContain,
				X: random.NormFloat64() * 100, Y: -random.Float64(), Scale: 0.001 + random.Float64(), Turn: random.Float64() * 360,
				Page: float64(1 + random.IntN(20)), Mirror: random.IntN(2) == 0, Opacity: random.Float64() * 100,
				Repeat: bag.RepeatHalfDrop, Holds: bag.HoldsEAN13,
			})
		}
		if random.IntN(2) == 0 {
			spec.Profile = "ink " + randomText(random) + ".icc"
		}
		if len(check(&spec)) == 0 {
			return spec
		}
	}
}

func randomText(random *rand.Rand) string {
	letters := []rune(`aZ9 ä"<>&'é漢🛍` + "\u2028")
	text := make([]rune, random.IntN(12))
	for i := range text {
		text[i] = letters[random.IntN(len(letters))]
	}
	return string(text)
}

// entry is one entry of a container that a test packs.
type entry struct {
	name   string
	data   string
	change func(*zip.FileHeader) // may be nil
}

// pack returns a container with the entries as they are, however hostile.
func pack(t testing.TB, entries ...entry) []byte {
	t.Helper()
	var container bytes.Buffer
	archive := zip.NewWriter(&container)
	for _, entry := range entries {
		header := &zip.FileHeader{Name: entry.name, Method: zip.Deflate}
		if entry.change != nil {
			entry.change(header)
		}
		w, err := archive.CreateHeader(header)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(entry.data)); err != nil {
			t.Fatal(err)
		}
	}
	if err := archive.Close(); err != nil {
		t.Fatal(err)
	}
	return container.Bytes()
}

// readBytes reads a project from memory.
func readBytes(data []byte) (Project, error) {
	return Read(bytes.NewReader(data), int64(len(data)))
}

// sample is a project with two pieces of artwork and a preview.
func sample() Project {
	spec := bag.Default()
	spec.Name, spec.Date = "Lindenhof bakery", "2026-03-31"
	for _, place := range []struct{ file, on string }{{"front.svg", "front"}, {"back.svg", "back"}, {"front.svg", "gusset-left"}} {
		spec.Artwork = append(spec.Artwork, bag.NewArtwork(place.file, place.on))
	}
	return Project{
		Spec:    spec,
		Files:   map[string][]byte{"front.svg": []byte("<svg/>"), "back.svg": []byte("<svg></svg>")},
		Preview: []byte("\x89PNG\r\n\x1a\n"),
	}
}

func writeFile(t testing.TB, path string, data []byte) {
	t.Helper()
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
}
