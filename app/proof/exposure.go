package proof

import (
	"image"
	"math"
)

// Of a longer exposure: what is dark becomes so many times as light, and what would
// become too light goes over into white softly, from a share of it on.
const (
	exposure = 1.36
	shoulder = 0.85
)

// exposed returns the light that a longer exposure makes of some, both from 0 to 1.
func exposed(light float64) float64 {
	light *= exposure
	if light <= shoulder {
		return light
	}
	return 1 - (1-shoulder)*math.Exp(-(light-shoulder)/(1-shoulder))
}

// expose makes what a picture shows lighter and keeps its hues. alone is the same picture
// on black ground: what it lacks is ground, which stays as it is.
func expose(picture, alone *image.RGBA) {
	var times [256]float64 // by the greatest part of a colour
	for v := 1; v < len(times); v++ {
		times[v] = exposed(float64(v)/255) / (float64(v) / 255)
	}
	for i := 0; i+3 < len(picture.Pix); i += 4 {
		both, shown := picture.Pix[i:i+3:i+3], alone.Pix[i:i+3:i+3]
		lighter := times[max(shown[0], shown[1], shown[2])]
		for c, v := range shown {
			ground := float64(both[c]) - float64(v)
			both[c] = uint8(min(max(ground, 0)+float64(v)*lighter+0.5, 255))
		}
	}
}
