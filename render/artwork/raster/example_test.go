package raster_test

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"image/png"

	"gussetwright/render/artwork/raster"
)

func ExampleRead() {
	var file bytes.Buffer
	if err := png.Encode(&file, image.NewGray(image.Rect(0, 0, 200, 100))); err != nil {
		fmt.Println(err)
		return
	}
	picture, err := raster.Read(context.Background(), file.Bytes())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(picture.Format, picture.Colours, picture.Size, len(picture.Levels), "levels")
	for _, note := range picture.Notes {
		fmt.Println(note)
	}
	// Output:
	// PNG grey (200,100) 3 levels
	// The file states no resolution.
}
