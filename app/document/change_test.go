package document_test

import (
	"reflect"
	"testing"

	"gussetwright/app/document"
	"gussetwright/geometry/bag"
)

func TestDifference(t *testing.T) {
	for _, test := range []struct {
		name   string
		change func(*bag.Spec)
		want   document.Change
	}{
		{"nothing", func(*bag.Spec) {}, document.Change{}},
		{"number", func(s *bag.Spec) { s.Body.Gusset = 120 }, document.Change{Path: "bag.gusset_mm", Label: "Gusset depth", From: "100 mm", To: "120 mm"}},
		{"too fine to be shown", func(s *bag.Spec) { s.Body.Gusset += 1e-9 }, document.Change{Path: "bag.gusset_mm", Label: "Gusset depth", From: "100 mm", To: "100 mm"}},
		{"choice", func(s *bag.Spec) { s.Body.Base = bag.BaseSlotted }, document.Change{Path: "bag.base", Label: "Base", From: "block", To: "slotted"}},
		{"switch", func(s *bag.Spec) { s.Handle.Eyelets = true }, document.Change{Path: "handle.eyelets", Label: "Eyelets", From: "no", To: "yes"}},
		{"percent", func(s *bag.Spec) { s.Run.Spoilage = 7.5 }, document.Change{Path: "run.spoilage_percent", Label: "Spoilage", From: "5%", To: "7.5%"}},
		{"name", func(s *bag.Spec) { s.Name = "Tea" }, document.Change{Path: "name", Label: "Name", To: "Tea"}},
		{"date", func(s *bag.Spec) { s.Date = "2026-03-31" }, document.Change{Path: "date", Label: "Date", To: "2026-03-31"}},
		{"artwork", func(s *bag.Spec) { s.Artwork = []bag.Artwork{{File: "front.pdf"}} }, document.Change{Label: "place %s on %s", File: "front.pdf"}},
		{"profile", func(s *bag.Spec) { s.Profile = "coated.icc" }, document.Change{Path: "profile", Label: "Output profile", To: "coated.icc"}},
		{"ink", func(s *bag.Spec) { s.Print.Cyan = 40 }, document.Change{Path: "print.background_cyan_percent", Label: "Background cyan", From: "0%", To: "40%"}},
		{"two numbers", func(s *bag.Spec) { s.Body.Gusset, s.Body.Width = 120, 250 }, document.Change{Label: "several entries"}},
		{"name and number", func(s *bag.Spec) { s.Name, s.Body.Width = "Tea", 250 }, document.Change{Label: "several entries"}},
		{"name and artwork", func(s *bag.Spec) { s.Name, s.Artwork = "Tea", []bag.Artwork{{}} }, document.Change{Label: "several entries"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			from := bag.Default()
			to := from
			test.change(&to)
			if got := document.Difference(&from, &to); got != test.want {
				t.Errorf("got %+v, want %+v", got, test.want)
			}
		})
	}
}

// Every value of a spec has a name, so that no step is without one.
func TestEveryChangeHasALabel(t *testing.T) {
	var spec bag.Spec
	for _, place := range places(reflect.TypeOf(spec), nil) {
		from := bag.Default()
		to := from
		value := reflect.ValueOf(&to).Elem().FieldByIndex(place)
		switch value.Kind() {
		case reflect.Float64:
			value.SetFloat(value.Float() + 1)
		case reflect.Bool:
			value.SetBool(!value.Bool())
		case reflect.String:
			value.SetString(value.String() + "x")
		case reflect.Slice:
			value.Set(reflect.MakeSlice(value.Type(), 1, 1))
		default:
			t.Fatalf("no value for a %s", value.Kind())
		}
		if got := document.Difference(&from, &to); got.Label == "" || got.Label == "several entries" {
			t.Errorf("entry %v: label %q", place, got.Label)
		}
	}
}

// places returns the index paths of all values that are no structs.
func places(kind reflect.Type, above []int) (all [][]int) {
	for i := range kind.NumField() {
		place := append(append([]int(nil), above...), i)
		if inner := kind.Field(i).Type; inner.Kind() == reflect.Struct {
			all = append(all, places(inner, place)...)
			continue
		}
		all = append(all, place)
	}
	return all
}

func TestLabelsNameWhatTheFieldTableDoesNot(t *testing.T) {
	if got := document.Labels(); !reflect.DeepEqual(got[:9], []string{
		"Name", "Date", "Output profile", "Currency", "quantities to quote for", "sizes of the family", "list of own sheets", "several entries", "place %s on %s",
	}) {
		t.Errorf("labels %q", got)
	}
}
