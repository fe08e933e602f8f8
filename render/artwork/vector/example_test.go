package vector_test

import (
	"context"
	"fmt"

	"gussetwright/render/artwork/vector"
)

func Example() {
	drawing, err := vector.Read(context.Background(), []byte(`
		<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="40mm" viewBox="0 0 80 40">
			<rect x="10" y="10" width="60" height="20" fill="teal" stroke="black" stroke-width="0.25"/>
			<text x="20" y="22">Morning bread</text>
		</svg>`))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%g × %g mm\n", drawing.Size.X, drawing.Size.Y)
	for _, note := range drawing.Notes {
		fmt.Println(note)
	}
	if width, at, found := drawing.LeastLine(); found {
		fmt.Printf("a line of %g mm at (%.1f, %.1f)\n", width, at.X, at.Y)
	}
	// Output:
	// 80 × 40 mm
	// Text is not shown: turn it into outlines (1 ×)
	// a line of 0.25 mm at (40.0, 30.0)
}

func ExampleDrawing_Render() {
	drawing, err := vector.Read(context.Background(), []byte(`
		<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="10mm" viewBox="0 0 2 1">
			<rect width="1" height="1" fill="#f80"/>
		</svg>`))
	if err != nil {
		fmt.Println(err)
		return
	}
	picture, err := drawing.Render(context.Background(), 200, 100)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(picture.RGBAAt(50, 50), picture.RGBAAt(150, 50))
	// Output: {255 136 0 255} {0 0 0 0}
}
