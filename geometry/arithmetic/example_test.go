package arithmetic_test

import (
	"fmt"

	"gussetwright/geometry"
	"gussetwright/geometry/arithmetic"
)

func ExampleEvaluate() {
	around, _ := arithmetic.Evaluate("2*(24 cm + 10 cm) + 20", geometry.Millimetre)
	fmt.Println(around, "mm")
	_, err := arithmetic.Evaluate("24 cm + ", geometry.Millimetre)
	fmt.Println(err)
	// Output:
	// 700 mm
	// entry "24 cm + ", character 9: there is no number; write a number, such as 240 or 24.5
}
