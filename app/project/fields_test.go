package project

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// Every entry of bag.json has one row in the field table and the other way round,
// so neither can grow without the other.
func TestFieldTableCoversBagJSON(t *testing.T) {
	leaves := slices.DeleteFunc(leafPaths(reflect.TypeFor[bag.Spec](), ""), func(path string) bool {
		return slices.Contains([]string{"name", "date", "artwork", "profile", "currency", "price_breaks", "family", "stock"}, path)
	})
	var rows []string
	for _, field := range bag.Fields() {
		rows = append(rows, field.Path)
	}
	slices.Sort(leaves)
	slices.Sort(rows)
	if !slices.Equal(leaves, rows) {
		t.Errorf("entries of bag.json:\n%s\nrows of the field table:\n%s", strings.Join(leaves, "\n"), strings.Join(rows, "\n"))
	}
}

func TestArtworkKeysCoverArtwork(t *testing.T) {
	if got, want := artworkKeys(), leafPaths(reflect.TypeFor[bag.Artwork](), ""); !slices.Equal(got, want) {
		t.Errorf("artworkKeys() = %q, bag.Artwork has %q", got, want)
	}
}

func TestListKeysCoverLists(t *testing.T) {
	if got, want := sizeKeys(), leafPaths(reflect.TypeFor[bag.Size](), ""); !slices.Equal(got, want) {
		t.Errorf("sizeKeys() = %q, bag.Size has %q", got, want)
	}
	if got, want := stockKeys(), leafPaths(reflect.TypeFor[bag.StockSheet](), ""); !slices.Equal(got, want) {
		t.Errorf("stockKeys() = %q, bag.StockSheet has %q", got, want)
	}
}

// What stands in a list is as well looked at as an entry of its own.
func TestBadLists(t *testing.T) {
	for _, test := range []struct{ text, path string }{
		{`"family": 1`, "family"},
		{`"family": [1]`, "family[0]"},
		{`"family": [{"width_mm": 10}]`, "family[0].width_mm"},
		{`"family": [{"gusset_mm": 5}]`, "family[0].gusset_mm"},
		{`"family": [{}, {"gusset_mm": 0}]`, "family[1].base"},
		{`"family": [{"quantity": 0.5}]`, "family[0].quantity"},
		{`"family": [{"colour": "red"}]`, "family[0].colour"},
		{`"family": [{"name": 1}]`, "family[0].name"},
		{`"family": [` + strings.Repeat(`{},`, 12) + `{}]`, "family"},
		{`"stock": [{"width_mm": 500, "height_mm": 20}]`, "stock[0].height_mm"},
		{`"stock": [{"width_mm": 500, "height_mm": 200, "grain": "long"}]`, "stock[0].grain"},
		{`"stock": [{"width_mm": 500, "height_mm": 200, "price": -1}]`, "stock[0].price"},
		{`"price_breaks": 500`, "price_breaks"},
		{`"price_breaks": ["500"]`, "price_breaks[0]"},
		{`"price_breaks": [500, 0]`, "price_breaks[1]"},
		{`"currency": "a long name"`, "currency"},
		{`"currency": 1`, "currency"},
	} {
		_, err := decodeText("{" + test.text + "}")
		all := fieldErrors(err)
		if len(all) != 1 || all[0].Path != test.path || all[0].Remedy.Empty() {
			t.Errorf("%s: %v; want one complaint about %s with a remedy", test.text, err, test.path)
		}
	}
}

func TestFamilyIsRead(t *testing.T) {
	spec, err := decodeText(`{"currency": "EUR", "price_breaks": [500, 2000], "bag": {"width_mm": 200}, "run": {"quantity": 700},
		"family": [{"name": "small", "width_mm": 160}], "stock": [{"name": "own", "width_mm": 880, "height_mm": 640, "grain": "width", "price": 0.2}]}`)
	if err != nil {
		t.Fatal(err)
	}
	if want := []bag.Size{{Name: "small", Width: 160, Gusset: 100, Height: 360, Quantity: 700}}; !slices.Equal(spec.Family, want) {
		t.Errorf("family %v, want %v", spec.Family, want)
	}
	if want := []bag.StockSheet{{Name: "own", Width: 880, Height: 640, Grain: bag.GrainAlongWidth, Price: 0.2}}; !slices.Equal(spec.Stock, want) {
		t.Errorf("stock %v, want %v", spec.Stock, want)
	}
	if spec.Currency != "EUR" || !slices.Equal(spec.Breaks, []float64{500, 2000}) {
		t.Errorf("currency %q, quantities %v", spec.Currency, spec.Breaks)
	}
}

func leafPaths(of reflect.Type, prefix string) []string {
	var paths []string
	for i := range of.NumField() {
		field := of.Field(i)
		name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
		if field.Anonymous {
			paths = append(paths, leafPaths(field.Type, prefix)...)
			continue
		}
		if field.Type.Kind() == reflect.Struct {
			paths = append(paths, leafPaths(field.Type, prefix+name+".")...)
			continue
		}
		paths = append(paths, prefix+name)
	}
	return paths
}

// badValue is a value that an entry must refuse, as JSON, and how messages show it.
type badValue struct{ json, shown string }

func badValues(field bag.Field) []badValue {
	bad := []badValue{
		{"null", "null"},
		{"[]", "a list of 0"},
		{"[1, 2]", "a list of 2"},
		{"{}", "a group of 0 entries"},
		{`{"a": 1}`, "a group of 1 entries"},
		{`"24 furlongs"`, `"24 furlongs"`},
		{`""`, `""`},
	}
	number := func(value float64) {
		text := geometry.FormatNumber(value, 6)
		bad = append(bad, badValue{text, text})
	}
	switch field.Kind() {
	case bag.Number:
		bad = append(bad, badValue{"true", "true"}, badValue{"1e300", "1e300"}, badValue{"-1e300", "-1e300"},
			badValue{"1e999", "1e999"}, badValue{"-1e-9", "-1e-9"}, badValue{`"24 cm"`, `"24 cm"`}, badValue{`"170"`, `"170"`})
		number(-1)
		number(field.Least - 0.001)
		number(field.Most + 0.001)
		if field.Least > 0 {
			number(0)
		}
		if field.Whole {
			number(field.Least + 0.5)
		}
	case bag.Choice:
		bad = append(bad, badValue{"true", "true"}, badValue{"1", "1"},
			badValue{fmt.Sprintf("%q", strings.ToUpper(field.Options[0])), strings.ToUpper(field.Options[0])})
	case bag.Switch:
		bad = append(bad, badValue{"1", "1"}, badValue{"0", "0"}, badValue{`"yes"`, `"yes"`}, badValue{`"true"`, `"true"`})
	}
	return bad
}

func TestBadValueOfEveryField(t *testing.T) {
	for _, field := range bag.Fields() {
		for _, bad := range badValues(field) {
			t.Run(field.Path+" "+bad.json, func(t *testing.T) {
				_, err := decodeText(withEntry(field.Path, bad.json))
				wantMessage(t, err, field.Path, field.Label, bad.shown)
				var complaint *bag.FieldError
				if !errors.As(err, &complaint) || complaint.Path != field.Path || complaint.Remedy.Empty() || complaint.Limit.Empty() {
					t.Fatalf("error %#v is no complaint about %s with limit and remedy", err, field.Path)
				}
				wantMessage(t, err, complaint.Limit.String(), complaint.Remedy.String())
				if all := fieldErrors(err); len(all) != 1 {
					t.Errorf("%d complaints about one wrong entry:\n%v", len(all), err)
				}
			})
		}
	}
}

func TestBadValueOfArtwork(t *testing.T) {
	for _, key := range artworkKeys() {
		values := []string{"null", "true", "[]", "{}"}
		switch key {
		case "file":
			values = append(values, "1", `""`, `"../front.pdf"`, `"/etc/passwd"`, `"C:front.pdf"`, `"a\\b.pdf"`, `".."`, `"a\u0000b"`,
				`"`+strings.Repeat("n", longestEntryName+1)+`"`)
		case "mirror":
			values = append(slices.DeleteFunc(values, func(value string) bool { return value == "true" }), "1", "0", `"yes"`, `"true"`)
		case "page":
			values = append(values, `"5"`, "0", "-1", "1.5", "10001", "1e999")
		case "on", "fit", "repeat", "holds":
			values = append(values, "1", `""`, `"FRONT"`)
		default:
			values = append(values, `"5 mm"`, "1e300", "-1e300", "1e999")
		}
		for _, value := range values {
			t.Run(key+" "+value, func(t *testing.T) {
				entries := map[string]string{"file": `"front.pdf"`, "on": `"front"`}
				entries[key] = value
				text := ""
				for _, key := range artworkKeys() {
					if value, given := entries[key]; given {
						text += fmt.Sprintf(", %q: %s", key, value)
					}
				}
				_, err := decodeText(`{"artwork": [{` + text[2:] + `}]}`)
				all := fieldErrors(err)
				if len(all) != 1 || all[0].Path != "artwork[0]."+key || all[0].Remedy.Empty() || len(all[0].Value) > 200 {
					t.Fatalf("%d complaints, want one about artwork[0].%s with a remedy: %v", len(all), key, err)
				}
			})
		}
	}
}

// A text with a unit is answered with the number that it means.
func TestRemedyProposesNumber(t *testing.T) {
	for _, test := range []struct{ path, text, remedy string }{
		{"bag.width_mm", "24 cm", "enter a plain number of millimetres, 240"},
		{"bag.width_mm", "240", "enter a plain number of millimetres, 240"},
		{"bag.width_mm", "9 1/2 in", "enter a plain number of millimetres, 241.3"},
		{"bag.width_mm", "24.5cm", "enter a plain number of millimetres, 245"},
		{"bag.width_mm", "9 m", "enter a plain number of millimetres, from 30 to 1000 mm"},
		{"bag.width_mm", "24 furlongs", "enter a plain number of millimetres, from 30 to 1000 mm"},
		{"bag.chamfer_deg", "15°", "enter a plain number of degrees, 15"},
		{"paper.grammage_gsm", "170 g/m²", "enter a plain number of grams per square metre, 170"},
		{"paper.grammage_gsm", "170gsm", "enter a plain number of grams per square metre, 170"},
		{"paper.caliper_um", "0.13 mm", "enter a plain number of micrometres, 130"},
		{"paper.caliper_um", "130 µm", "enter a plain number of micrometres, 130"},
		{"paper.caliper_um", "130 in", "enter a plain number of micrometres, from 0 to 2000 µm"},
		{"run.spoilage_percent", "5 %", "enter a plain number of percent, 5"},
		{"run.quantity", "2500", "enter a plain number, 2500"},
		{"run.quantity", "2500.5", "enter a plain number, from 1 to 10000000"},
		{flatFoldPath, "31 cm", "enter a plain number of millimetres, 310"},
	} {
		_, err := decodeText(withEntry(test.path, `"`+test.text+`"`))
		all := fieldErrors(err)
		if len(all) != 1 || all[0].Remedy.String() != test.remedy || all[0].Path != test.path {
			t.Errorf("%s %q: %v, want the remedy %q", test.path, test.text, err, test.remedy)
		}
	}
}
