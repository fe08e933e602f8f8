package project

import (
	"encoding/json"
	"fmt"
	"slices"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
)

// sizeKeys and stockKeys return the entries of one size of the family and of one of the
// user's own sheets.
func sizeKeys() []string  { return []string{"name", "width_mm", "gusset_mm", "height_mm", "quantity"} }
func stockKeys() []string { return []string{"name", "width_mm", "height_mm", "grain", "price"} }

// family takes the further sizes over. A size that is not given is that of the bag.
func (d *document) family(tree map[string]any) {
	example := `{"name": "small", "width_mm": 180, "gusset_mm": 80, "height_mm": 240, "quantity": 500}`
	d.list(tree, "family", example, func(path string, entries map[string]any) {
		body := d.spec.Body
		size := bag.Size{Width: body.Width, Gusset: body.Gusset, Height: body.Height, Quantity: d.spec.Run.Quantity}
		d.text(entries, path, "name", &size.Name)
		d.number(entries, path, "width_mm", &size.Width)
		d.number(entries, path, "gusset_mm", &size.Gusset)
		d.number(entries, path, "height_mm", &size.Height)
		d.number(entries, path, "quantity", &size.Quantity)
		d.unknownIn(path, entries, func(key string) bool { return slices.Contains(sizeKeys(), key) })
		d.spec.Family = append(d.spec.Family, size)
	})
}

// stock takes the user's own sheets over.
func (d *document) stock(tree map[string]any) {
	example := `{"name": "64 × 88 cm", "width_mm": 880, "height_mm": 640}`
	d.list(tree, "stock", example, func(path string, entries map[string]any) {
		sheet := bag.StockSheet{Grain: bag.GrainEither}
		d.text(entries, path, "name", &sheet.Name)
		d.number(entries, path, "width_mm", &sheet.Width)
		d.number(entries, path, "height_mm", &sheet.Height)
		d.text(entries, path, "grain", (*string)(&sheet.Grain))
		d.number(entries, path, "price", &sheet.Price)
		d.unknownIn(path, entries, func(key string) bool { return slices.Contains(stockKeys(), key) })
		d.spec.Stock = append(d.spec.Stock, sheet)
	})
}

// breaks takes the quantities to quote for over.
func (d *document) breaks(tree map[string]any) {
	for i, value := range d.items(tree, "price_breaks", "500") {
		var quantity float64
		d.numberAt(fmt.Sprintf("price_breaks[%d]", i), value, &quantity)
		d.spec.Breaks = append(d.spec.Breaks, quantity)
	}
}

// list calls take for every group of entries in a list.
func (d *document) list(tree map[string]any, name, example string, take func(path string, entries map[string]any)) {
	for i, value := range d.items(tree, name, example) {
		path := fmt.Sprintf("%s[%d]", name, i)
		entries, isGroup := value.(map[string]any)
		if !isGroup {
			d.refuse(&bag.FieldError{
				Path: path, Value: shown(value), Limit: phrase.New("not a group of entries"),
				Remedy: phrase.New("write %s, or take it out", example),
			})
		}
		take(path, entries)
	}
}

// items returns what stands in a list.
func (d *document) items(tree map[string]any, name, example string) []any {
	value, given := tree[name]
	if !given {
		return nil
	}
	list, isList := value.([]any)
	if !isList {
		d.refuse(&bag.FieldError{
			Path: name, Value: shown(value), Limit: phrase.New("not a list"),
			Remedy: phrase.New("write %q: [%s], or take it out", name, example),
		})
	}
	return list
}

// flag sets a switch of a list.
func (d *document) flag(entries map[string]any, prefix, key string, target *bool) {
	value, given := entries[key]
	if !given {
		return
	}
	on, isSwitch := value.(bool)
	if !isSwitch {
		d.refuse(&bag.FieldError{
			Path: join(prefix, key), Value: shown(value), Limit: phrase.New("neither true nor false"),
			Remedy: phrase.New("write true or false, or take it out"),
		})
		return
	}
	*target = on
}

// number sets a number of a list.
func (d *document) number(entries map[string]any, prefix, key string, target *float64) {
	if value, given := entries[key]; given {
		d.numberAt(join(prefix, key), value, target)
	}
}

func (d *document) numberAt(path string, value any, target *float64) {
	number, isNumber := value.(json.Number)
	if !isNumber {
		d.refuse(&bag.FieldError{
			Path: path, Value: shown(value), Limit: phrase.New("not a number"),
			Remedy: phrase.New("enter a plain number, or take it out"),
		})
		return
	}
	d.written[path] = value
	*target = float(number)
}
