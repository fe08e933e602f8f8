package entry_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/entry"
	"gussetwright/app/settings"
)

// A price is shown as money is written, with more decimals where it has them.
func TestPriceIsShownAsMoney(t *testing.T) {
	d := at(t, "prices.rope_per_m")
	for typed, want := range map[string]struct {
		value float64
		shown string
	}{
		"1.10": {1.1, "1.10"}, "1.1": {1.1, "1.10"}, "12": {12, "12.00"}, "0,5": {0.5, "0.50"}, "0.012": {0.012, "0.012"},
		"0.0185": {0.0185, "0.0185"}, "0.000125": {0.000125, "0.000125"}, "1250.00": {1250, "1250.00"},
	} {
		d.typeIn(typed)
		d.tap(fyne.KeyReturn)
		if d.value() != want.value || d.number.Text() != want.shown {
			t.Errorf("%s becomes %v, shown as %q; want %v as %q", typed, d.value(), d.number.Text(), want.value, want.shown)
		}
	}
	d = at(t, "prices.markup_percent")
	d.typeIn("7.125")
	d.tap(fyne.KeyReturn)
	if d.value() != 7.125 || d.number.Text() != "7.13" && d.number.Text() != "7.12" {
		t.Errorf("a markup becomes %v, shown as %q", d.value(), d.number.Text())
	}
}

// Arrow keys go by the step of the quantity.
func TestArrowsGoByTheStep(t *testing.T) {
	set := settings.New(test.NewTempApp(t).Preferences())
	value := 0.05
	quantity := entry.Quantity{Label: "Price", Most: 100, Decimals: 4, Step: 0.01, High: 0.5}
	quantity.Set = func(to float64) { value = to }
	quantity.Drag, quantity.Drop = quantity.Set, func() {}
	number := entry.NewNumber(quantity, set)
	number.Put(value)
	test.NewTempWindow(t, number)
	number.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	if value != 0.06 || number.Text() != "0.06" {
		t.Errorf("after the arrow up it is %v, shown as %q", value, number.Text())
	}
}
