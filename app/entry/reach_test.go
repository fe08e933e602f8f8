package entry

import (
	"math"
	"testing"

	"gussetwright/assets"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/product"
)

const inch = 25.4 // mm (international yard and pound agreement of 1959)

// The slider covers the usual values, and never anything beyond the limits.
func TestReach(t *testing.T) {
	tests := []struct {
		name      string
		quantity  Quantity
		unit      geometry.Unit
		low, high float64
		texts     [2]string
	}{
		{"usual values", Quantity{Unit: "mm", Least: 30, Most: 1000, Low: 80, High: 500}, geometry.Millimetre, 80, 500, [2]string{"80", "500"}},
		{"in centimetres", Quantity{Unit: "mm", Least: 30, Most: 1000, Low: 80, High: 500}, geometry.Centimetre, 80, 500, [2]string{"8", "50"}},
		{"whole inches", Quantity{Unit: "mm", Least: 30, Most: 1000, Low: 80, High: 500}, geometry.Inch, 3 * inch, 20 * inch, [2]string{"3", "20"}},
		{"quarters of an inch", Quantity{Unit: "mm", Most: 200, High: 60}, geometry.Inch, 0, 2.25 * inch, [2]string{"0", "2.25"}},
		{"all of the limits", Quantity{Unit: "mm", Least: 5, Most: 85}, geometry.Millimetre, 5, 85, [2]string{"5", "85"}},
		{"limits in inches, as beside the label", Quantity{Unit: "mm", Least: 30, Most: 85}, geometry.Inch, 30, 85, [2]string{"1.182", "3.346"}},
		{"limits within the usual values", Quantity{Unit: "mm", Least: 100, Most: 300, Low: 80, High: 500}, geometry.Millimetre, 100, 300, [2]string{"100", "300"}},
		{"limits beside the usual values", Quantity{Unit: "mm", Least: 600, Most: 700, Low: 80, High: 500}, geometry.Millimetre, 600, 700, [2]string{"600", "700"}},
		{"both ways", Quantity{Unit: "mm", Least: -5000, Most: 5000, Low: -240, High: 240}, geometry.Millimetre, -240, 240, [2]string{"-240", "240"}},
		{"no length", Quantity{Unit: "%", Least: 0.1, Most: 100_000, Low: 10, High: 400}, geometry.Inch, 10, 400, [2]string{"10", "400"}},
	}
	for _, test := range tests {
		low, high := test.quantity.reach(test.unit)
		lowText, highText := test.quantity.reachTexts(test.unit)
		if math.Abs(low-test.low) > 1e-9 || math.Abs(high-test.high) > 1e-9 || [2]string{lowText, highText} != test.texts {
			t.Errorf("%s: from %v (%s) to %v (%s), want %v to %v as %v", test.name, low, lowText, high, highText, test.low, test.high, test.texts)
		}
	}
}

// Steps of a slider are round, take a pixel at least, and are no coarser than need be.
func TestNotch(t *testing.T) {
	face := Quantity{Unit: "mm", Least: 30, Most: 1000, Low: 80, High: 500}
	tests := []struct {
		name     string
		quantity Quantity
		pixels   float64
		unit     geometry.Unit
		want     float64
	}{
		{"4.2 mm to a pixel", face, 100, geometry.Millimetre, 5},
		{"2.1 mm to a pixel", face, 200, geometry.Millimetre, 5},
		{"1.4 mm to a pixel", face, 300, geometry.Millimetre, 2},
		{"as many pixels as millimetres", face, 420, geometry.Millimetre, 1},
		{"0.17 in to a pixel", face, 100, geometry.Inch, inch / 4},
		{"a small length", Quantity{Unit: "mm", Most: 2}, 100, geometry.Millimetre, 0.1},
		{"whole numbers", Quantity{Most: 10_000_000, Low: 100, High: 20_000, Whole: true}, 100, geometry.Millimetre, 200},
		{"few whole numbers", Quantity{Most: 3, Whole: true}, 100, geometry.Millimetre, 1},
		{"a step of its own", Quantity{Most: 100, High: 0.5, Step: 0.01}, 100, geometry.Millimetre, 0.01},
	}
	for _, test := range tests {
		if got := test.quantity.notch(test.pixels, test.unit); math.Abs(got-test.want) > 1e-9 {
			t.Errorf("%s: %v, want %v", test.name, got, test.want)
		}
	}
}

// Whichever field and unit: the ends of the slider give its ends, what lies between rises
// with the place, stays within a notch of it, and is within the limits.
func TestSlideTo(t *testing.T) {
	for _, field := range bag.Fields() {
		if field.Kind() != bag.Number {
			continue
		}
		q := OfField(nil, &field)
		for _, unit := range geometry.Units() {
			for _, pixels := range []float64{40, 101, 333} {
				low, high := q.reach(unit)
				if q.slideTo(low, pixels, unit) != low || q.slideTo(high, pixels, unit) != high {
					t.Errorf("%s in %s: the ends of the slider give %v and %v, want %v and %v", field.Path, unit,
						q.slideTo(low, pixels, unit), q.slideTo(high, pixels, unit), low, high)
				}
				before := low
				for pixel := range int(pixels) + 1 {
					place := low + float64(pixel)/pixels*(high-low)
					value := q.slideTo(place, pixels, unit)
					if value < before || math.Abs(value-place) > q.notch(pixels, unit)/2+1e-5 || field.CheckNumber(value) != nil {
						t.Errorf("%s in %s: the place of %v gives %v after %v", field.Path, unit, place, value, before)
						break
					}
					before = value
				}
			}
		}
	}
}

// The bag that a project begins with and all usual sizes can be reached with sliders, and
// no slider has more than a few values of its quantity under each pixel.
func TestUsualValues(t *testing.T) {
	sizes, err := product.ReadUsual(assets.UsualSizes)
	if err != nil {
		t.Fatal(err)
	}
	specs := []bag.Spec{bag.Default()}
	for _, size := range sizes {
		specs = append(specs, bag.OfSize(size.Width, size.Gusset, size.Height))
	}
	for _, field := range bag.Fields() {
		if field.Kind() != bag.Number {
			continue
		}
		q := OfField(nil, &field)
		low, high := q.reach(geometry.Millimetre)
		for _, spec := range specs {
			value := field.Number(&spec)
			if value < low || value > high {
				t.Errorf("%s: %v lies outside of the slider, %v to %v", field.Path, value, low, high)
			}
		}
		if span, given := usualSpans()[field.Path]; given && (low != span.low || high != span.high) {
			t.Errorf("%s: the slider covers %v to %v, not its usual values %v", field.Path, low, high, span)
		}
		if most := 160.0; high-low > most && usualSpans()[field.Path] == (span{}) && !isPrice(&field) {
			t.Errorf("%s: no usual values of %v to %v are given", field.Path, low, high)
		}
	}
	for path := range usualSpans() {
		if _, known := bag.FieldAt(path); !known {
			t.Errorf("no field is called %s", path)
		}
	}
}
