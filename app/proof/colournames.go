package proof

import (
	"cmp"
	"fmt"
	"image/color"
	"math"
	"slices"

	"gussetwright/geometry/phrase"
)

// oklab is a colour by lightness and two axes of colour, in which equal distances look
// about equal (B. Ottosson, "A perceptual color space for image processing", 2020).
type oklab struct{ l, a, b float64 }

func oklabOf(c color.RGBA) oklab {
	r, g, b := linear(c.R), linear(c.G), linear(c.B)
	long := math.Cbrt(0.4122214708*r + 0.5363325363*g + 0.0514459929*b)
	middle := math.Cbrt(0.2119034982*r + 0.6806995451*g + 0.1073969566*b)
	short := math.Cbrt(0.0883024619*r + 0.2817188376*g + 0.6299787005*b)
	return oklab{
		0.2104542553*long + 0.7936177850*middle - 0.0040720468*short,
		1.9779984951*long - 2.4285922050*middle + 0.4505937099*short,
		0.0259040371*long + 0.7827717662*middle - 0.8086757660*short,
	}
}

// linear returns the light of a channel of sRGB, 0 to 1 (IEC 61966-2-1).
func linear(v uint8) float64 {
	share := float64(v) / 255
	if share <= 0.04045 {
		return share / 12.92
	}
	return math.Pow((share+0.055)/1.055, 2.4)
}

func (o oklab) distance(other oklab) float64 {
	return math.Hypot(o.l-other.l, math.Hypot(o.a-other.a, o.b-other.b))
}

// hues are the names of colours by their angle in Oklab, each up to an angle in
// degrees; dark, plain and light by lightness. The bounds are our own.
type hue struct {
	to                 float64
	dark, plain, light phrase.Word
	darkTo, lightFrom  float64
}

func hues() []hue {
	return []hue{
		{10, "Dark pink", "Pink", "Light pink", 0.50, 0.78},
		{38, "Dark red", "Red", "Light red", 0.42, 0.75},
		{72, "Brown", "Orange", "Light orange", 0.62, 0.82},
		{118, "Olive", "Yellow", "Cream", 0.70, 0.93},
		{183, "Dark green", "Green", "Light green", 0.48, 0.80},
		{222, "Dark turquoise", "Turquoise", "Light turquoise", 0.45, 0.85},
		{286, "Dark blue", "Blue", "Light blue", 0.40, 0.75},
		{332, "Dark violet", "Violet", "Light violet", 0.40, 0.72},
		{360, "Dark pink", "Pink", "Light pink", 0.50, 0.78},
	}
}

// colourName returns a plain name for a colour.
func colourName(c color.RGBA) phrase.Word {
	o := oklabOf(c)
	chroma := math.Hypot(o.a, o.b)
	if chroma < 0.02 || chroma < 0.03 && o.l < 0.35 {
		return greyName(o.l)
	}
	angle := math.Mod(math.Atan2(o.b, o.a)*180/math.Pi+360, 360)
	for _, h := range hues() {
		if angle > h.to {
			continue
		}
		switch {
		case h.plain == "Yellow" && chroma < 0.09:
			return paleName(o.l)
		case o.l < h.darkTo:
			return h.dark
		case o.l > h.lightFrom:
			return h.light
		}
		return h.plain
	}
	return greyName(o.l)
}

// paleName names what lies between yellow and grey.
func paleName(lightness float64) phrase.Word {
	switch {
	case lightness > 0.9:
		return "Cream"
	case lightness > 0.68:
		return "Beige"
	}
	return "Olive"
}

func greyName(lightness float64) phrase.Word {
	switch {
	case lightness > 0.95:
		return "Off-white"
	case lightness > 0.75:
		return "Light grey"
	case lightness > 0.45:
		return "Grey"
	case lightness > 0.27:
		return "Dark grey"
	}
	return "Black"
}

// namesOf returns a name for each colour. Those of one name are told apart by their
// lightness.
func (p *Proof) namesOf(colours []mainColour) []string {
	names, alike := make([]string, len(colours)), map[string][]int{}
	for i, c := range colours {
		names[i] = p.say(colourName(c.colour))
		alike[names[i]] = append(alike[names[i]], i)
	}
	for name, list := range alike {
		slices.SortStableFunc(list, func(a, b int) int {
			return cmp.Compare(oklabOf(colours[b].colour).l, oklabOf(colours[a].colour).l)
		})
		for place, i := range list {
			names[i] = p.among(name, place, len(list))
		}
	}
	return names
}

// among returns the name of a colour that stands at a place, from light to dark, among
// so many of the same name.
func (p *Proof) among(name string, place, count int) string {
	switch {
	case count == 1:
		return name
	case count > 3:
		return fmt.Sprintf("%s %d", name, place+1)
	case place == 0:
		return p.tell(phrase.New("%s, lighter", name))
	case place == count-1:
		return p.tell(phrase.New("%s, darker", name))
	}
	return p.tell(phrase.New("%s, in between", name))
}
