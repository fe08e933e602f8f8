package bag

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"gussetwright/geometry/phrase"
)

// Limits on the lists of a run.
const (
	mostSizes  = 12
	mostStock  = 40
	mostBreaks = 12
)

// Size is a further size of the same design: what it does not name it has from the bag
// of the project.
type Size struct {
	Name     string  `json:"name"`
	Width    float64 `json:"width_mm"`
	Gusset   float64 `json:"gusset_mm"`
	Height   float64 `json:"height_mm"`
	Quantity float64 `json:"quantity"`
}

// Member returns the bag in a further size. The holes keep their place in proportion to
// the face, and the bag has no family of its own.
func (s *Spec) Member(size Size) Spec {
	member := *s
	member.Family, member.Breaks = nil, nil
	if member.Name = s.Name; size.Name != "" {
		member.Name = size.Name
	}
	member.Body.Width, member.Body.Gusset, member.Body.Height = size.Width, size.Gusset, size.Height
	if s.Body.Width > 0 {
		spacing, _ := FieldAt("handle.spacing_mm")
		member.Handle.Spacing = max(spacing.Least, min(spacing.Most, s.Handle.Spacing*size.Width/s.Body.Width))
	}
	member.Run.Quantity = size.Quantity
	return member
}

// Members returns every bag of the family: that of the project first, then the further
// sizes in their order.
func (s *Spec) Members() []Spec {
	first := *s
	first.Family, first.Breaks = nil, nil
	members := []Spec{first}
	for _, size := range s.Family {
		members = append(members, s.Member(size))
	}
	return members
}

// checkLists returns the complaints about the family, the stock, the quantities to quote
// and the currency.
func (s *Spec) checkLists() []error {
	var complaints []error
	complaints = append(complaints, tooMany("family", len(s.Family), mostSizes)...)
	for i, size := range s.Family {
		complaints = append(complaints, s.checkSize(i, size)...)
	}
	complaints = append(complaints, tooMany("stock", len(s.Stock), mostStock)...)
	for i, sheet := range s.Stock {
		complaints = append(complaints, sheet.check(i)...)
	}
	complaints = append(complaints, tooMany("price_breaks", len(s.Breaks), mostBreaks)...)
	for i, quantity := range s.Breaks {
		complaints = append(complaints, checkAs("run.quantity", fmt.Sprintf("price_breaks[%d]", i), quantity)...)
	}
	return append(complaints, tooLong("currency", "Currency", s.Currency, longestCurrency)...)
}

// checkSize looks at a further size as if it were the bag itself.
func (s *Spec) checkSize(i int, size Size) []error {
	at := fmt.Sprintf("family[%d].", i)
	complaints := tooLong(at+"name", "Size", size.Name, longestName)
	complaints = append(complaints, checkAs("bag.width_mm", at+"width_mm", size.Width)...)
	complaints = append(complaints, checkAs("bag.gusset_mm", at+"gusset_mm", size.Gusset)...)
	complaints = append(complaints, checkAs("bag.height_mm", at+"height_mm", size.Height)...)
	complaints = append(complaints, checkAs("run.quantity", at+"quantity", size.Quantity)...)
	if len(complaints) > 0 {
		return complaints
	}
	member := s.Member(size)
	for _, complaint := range member.checkTogether() {
		var field *FieldError
		if errors.As(complaint, &field) {
			_, key, _ := strings.Cut(field.Path, ".")
			field.Path = at + key
		}
		complaints = append(complaints, complaint)
	}
	return complaints
}

func (sheet *StockSheet) check(i int) []error {
	at := fmt.Sprintf("stock[%d].", i)
	complaints := tooLong(at+"name", "Sheet", sheet.Name, longestName)
	complaints = append(complaints, checkAs("sheet.width_mm", at+"width_mm", sheet.Width)...)
	complaints = append(complaints, checkAs("sheet.height_mm", at+"height_mm", sheet.Height)...)
	grain, _ := FieldAt("sheet.grain")
	if complaint := grain.CheckChoice(string(sheet.Grain)); complaint != nil {
		complaint.Path, complaint.Label = at+"grain", grain.Label
		complaints = append(complaints, complaint)
	}
	return append(complaints, checkAs("prices.carton_each", at+"price", sheet.Price)...)
}

// checkAs returns the complaint about a number of a list that has the limits of a field.
func checkAs(fieldPath, path string, value float64) []error {
	field, _ := FieldAt(fieldPath)
	complaint := field.CheckNumber(value)
	if complaint == nil {
		return nil
	}
	complaint.Path = path
	return []error{complaint}
}

func tooMany(path string, count, most int) []error {
	if count <= most {
		return nil
	}
	return []error{&FieldError{
		Path: path, Value: fmt.Sprintf("a list of %d", count),
		Limit: phrase.New("more than %d", most), Remedy: phrase.New("take some out of the list"),
	}}
}

func tooLong(path, label, text string, most int) []error {
	if len([]rune(text)) <= most {
		return nil
	}
	return []error{&FieldError{
		Path: path, Label: label, Value: quote(text),
		Limit: phrase.New("longer than %d characters", most), Remedy: phrase.New("shorten it"),
	}}
}

// Scaled returns a further size with the proportions of the bag, its face of the given
// width in mm; lengths are rounded to whole millimetres.
func (s *Spec) Scaled(name string, width float64) Size {
	by := width / s.Body.Width
	return Size{
		Name: name, Width: math.Round(width), Gusset: math.Round(s.Body.Gusset * by),
		Height: math.Round(s.Body.Height * by), Quantity: s.Run.Quantity,
	}
}
