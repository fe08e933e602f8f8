package pdf_test

import (
	"bytes"
	"fmt"
	"time"

	"gussetwright/geometry"
	"gussetwright/render/pdf"
	"gussetwright/render/scene"
)

func ExampleWrite() {
	trim := geometry.RectAt(0, 0, 240, 360)
	drawing := scene.Drawing{
		Title: "Front",
		Trim:  trim,
		Bleed: trim.Inset(-3),
		Media: trim.Inset(-20),
		Items: []scene.Item{
			scene.Stroke{Role: scene.Cutting, Path: trim.Path(), Width: 0.35},
			scene.Label{Role: scene.Legend, Text: "240 × 360 mm", At: geometry.Vec2{X: 120, Y: 365}, Size: 4, Anchor: scene.Middle},
		},
	}
	info := pdf.Info{Title: "Carrier bag", Date: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)}
	var file bytes.Buffer
	if err := pdf.Write(&file, []scene.Drawing{drawing}, info); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s\n", file.Bytes()[:8])

	drawing.Media = trim
	fmt.Println(pdf.Write(&file, []scene.Drawing{drawing}, info))
	// Output:
	// %PDF-1.6
	// make the PDF file: page 1 (Front): the bleed box, (-3, -3) to (243, 363) mm, sticks out of the media box, (0, 0) to (240, 360) mm; enlarge that box
}
