package geometry_test

import (
	"fmt"

	"gussetwright/geometry"
)

func ExampleParseLength() {
	for _, text := range []string{"240", "24 cm", "9 1/2 in", "24 ells"} {
		length, err := geometry.ParseLength(text, geometry.Millimetre)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(geometry.FormatNumber(length, 2), "mm")
	}
	// Output:
	// 240 mm
	// 240 mm
	// 241.3 mm
	// length "24 ells": unit "ells" is not one of mm, cm, m, in; write for example 240 mm, 24 cm or 9 1/2 in
}

func ExamplePath_Offset() {
	trim := geometry.RectAt(0, 0, 700, 480).Path()
	bleed := trim.Offset(3).Bounds()
	fmt.Printf("%g × %g mm\n", bleed.Width(), bleed.Height())
	// Output: 706 × 486 mm
}

func ExampleCircle() {
	hole := geometry.Circle(geometry.Vec2{X: 60, Y: 405}, 2.5)
	fmt.Printf("%.3f mm²\n", hole.Area())
	// Output: 19.635 mm²
}
