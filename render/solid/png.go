package solid

import (
	"image/png"
	"io"

	"gussetwright/geometry/phrase"
)

// WritePNG draws a view and writes it as PNG.
func WritePNG(w io.Writer, v View) error {
	if v.Width < 1 || v.Height < 1 || v.Width > MostPixels/v.Height {
		return phrase.Errorf("draw picture of the bag: %d × %d pixels; choose a size of 1 to %d pixels", v.Width, v.Height, MostPixels)
	}
	if samples := min(max(v.Samples, 1), mostSamples); v.Width*samples > MostPixels/(v.Height*samples) {
		v.Samples = 1 // so large that nobody sees single pixels
	}
	var r Renderer
	if err := png.Encode(w, r.Draw(v)); err != nil {
		return phrase.Errorf("write PNG of the bag: %s", err)
	}
	return nil
}
