package typeface_test

import (
	"fmt"

	"gussetwright/render/typeface"
)

func ExampleAdvance() {
	width := typeface.Advance("240 × 360 mm", 3.5, false)
	fmt.Printf("a box for the label is %.1f mm wide\n", width+2)
	// Output: a box for the label is 24.5 mm wide
}
