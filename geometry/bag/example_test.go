package bag_test

import (
	"fmt"

	"gussetwright/geometry/bag"
)

func ExampleDefault() {
	spec := bag.Default()
	for _, path := range []string{"bag.width_mm", "bag.gusset_mm", "bag.height_mm", "handle.spacing_mm"} {
		field, _ := bag.FieldAt(path)
		fmt.Printf("%s: %s\n", field.Name(), field.Text(&spec))
	}
	// Output:
	// Face width W: 240 mm
	// Gusset depth D: 100 mm
	// Standing height H: 360 mm
	// Handle spacing s: 120 mm
}

func ExampleSpec_Validate() {
	spec := bag.Default()
	spec.Body.Gusset = 4
	fmt.Println(spec.Validate())
	// Output:
	// bag.gusset_mm (Gusset depth D) is 4 mm: too narrow to be creased down its middle; enter 0 for a flat bag or at least 10 mm
}
