package pdf

import (
	"encoding/base64"
	"encoding/json"
	"sort"
	"strings"
	"testing"

	"gussetwright/geometry/geomtest"
	"gussetwright/render/scene"
)

// document is a PDF file as qpdf reads it: in its JSON, names start with a
// slash, texts with "u:", and references are objects by number.
type document struct {
	t       testing.TB
	objects map[string]struct {
		Value  any
		Stream struct {
			Dict map[string]any
			Data string
		}
	}
}

func readByQpdf(t testing.TB, pages []scene.Drawing) document {
	t.Helper()
	return readFileByQpdf(t, produceFile(t, pages, true))
}

func readFileByQpdf(t testing.TB, file string) document {
	t.Helper()
	out := geomtest.Run(t, "qpdf", "--json=2", "--decode-level=generalized", "--json-stream-data=inline", file)
	var parts struct{ Qpdf []json.RawMessage }
	if err := json.Unmarshal(out, &parts); err != nil {
		t.Fatal(err)
	}
	d := document{t: t}
	if err := json.Unmarshal(parts.Qpdf[1], &d.objects); err != nil {
		t.Fatal(err)
	}
	return d
}

// resolve follows a reference.
func (d document) resolve(value any) any {
	reference, isText := value.(string)
	if !isText || !strings.HasSuffix(reference, " 0 R") {
		return value
	}
	object, found := d.objects["obj:"+reference]
	if !found {
		d.t.Fatalf("object %s is missing", reference)
	}
	if object.Stream.Dict != nil {
		return object.Stream.Dict
	}
	return object.Value
}

// get follows a path of keys into dictionaries; it returns nil where there is no
// such key.
func (d document) get(value any, keys ...string) any {
	value = d.resolve(value)
	for _, key := range keys {
		table, isDict := value.(map[string]any)
		if !isDict {
			return nil
		}
		value = d.resolve(table["/"+key])
	}
	return value
}

// stream returns the unpacked data of the stream that a reference stands for.
func (d document) stream(reference any) []byte {
	d.t.Helper()
	data, err := base64.StdEncoding.DecodeString(d.objects["obj:"+reference.(string)].Stream.Data)
	if err != nil {
		d.t.Fatal(err)
	}
	return data
}

func (d document) root() any { return d.get(d.objects["trailer"].Value, "Root") }

func (d document) pages() []any { return d.get(d.root(), "Pages", "Kids").([]any) }

// content returns the operators of a page, each with its operands before it.
func (d document) content(page any) string {
	return string(d.stream(d.resolve(page).(map[string]any)["/Contents"]))
}

func keys(value any) []string {
	var list []string
	for key := range value.(map[string]any) {
		list = append(list, strings.TrimPrefix(key, "/"))
	}
	sort.Strings(list)
	return list
}
