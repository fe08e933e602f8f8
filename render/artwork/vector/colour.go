package vector

import (
	"math"
	"strconv"
	"strings"

	"gussetwright/render/ink"
)

// parseColour reads a colour of CSS and its opacity. SVG lets a colour of the
// printing press follow one of the screen; then the former is taken.
func parseColour(text string) (c Colour, opacity float64, ok bool) {
	text = strings.ToLower(strings.TrimSpace(text))
	if strings.HasPrefix(text, "#") {
		hex, more, _ := strings.Cut(text, " ")
		if c, opacity, ok = hexColour(hex[1:]); ok && more != "" {
			return pressColour(more, c, opacity)
		}
		return c, opacity, ok
	}
	name, rest, isFunction := strings.Cut(text, "(")
	if !isFunction {
		if text == "transparent" {
			return Colour{}, 0, true
		}
		value, known := colourNames[text]
		return Colour{R: uint8(value >> 16), G: uint8(value >> 8), B: uint8(value)}, 1, known
	}
	if before, function, follows := strings.Cut(strings.TrimSpace(name), " "); follows {
		c, opacity, ok = parseColour(before)
		if !ok {
			return c, opacity, false
		}
		return pressColour(function+"("+rest, c, opacity)
	}
	inside, more, closed := strings.Cut(rest, ")")
	if !closed {
		return Colour{}, 0, false
	}
	if c, opacity, ok = functionColour(strings.TrimSpace(name), inside); !ok {
		return c, opacity, false
	}
	if more = strings.TrimSpace(more); more != "" {
		return pressColour(more, c, opacity)
	}
	return c, opacity, true
}

// pressColour reads the colour of the press that follows one of the screen. One that
// is not understood leaves the colour of the screen.
func pressColour(text string, screen Colour, opacity float64) (Colour, float64, bool) {
	name, rest, isFunction := strings.Cut(strings.TrimSpace(text), "(")
	inside, _, closed := strings.Cut(rest, ")")
	if !isFunction || !closed {
		return screen, opacity, false
	}
	if c, o, ok := functionColour(strings.TrimSpace(name), inside); ok && c.Inks {
		return c, o, true
	}
	return screen, opacity, true
}

// hexColour reads three, four, six or eight digits.
func hexColour(digits string) (Colour, float64, bool) {
	value, err := strconv.ParseUint(digits, 16, 32)
	if err != nil || digits[0] == '+' {
		return Colour{}, 0, false
	}
	v := uint32(value)
	switch len(digits) {
	case 3, 4:
		twice := func(at int) uint8 { return uint8(v>>at&15) * 17 }
		if len(digits) == 3 {
			return Colour{R: twice(8), G: twice(4), B: twice(0)}, 1, true
		}
		return Colour{R: twice(12), G: twice(8), B: twice(4)}, float64(twice(0)) / 255, true
	case 6:
		return Colour{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v)}, 1, true
	case 8:
		return Colour{R: uint8(v >> 24), G: uint8(v >> 16), B: uint8(v >> 8)}, float64(uint8(v)) / 255, true
	}
	return Colour{}, 0, false
}

// functionColour reads a colour that is written as a function.
func functionColour(name, inside string) (Colour, float64, bool) {
	if name == "icc-color" { // the first argument is the name of a profile
		_, numbers, found := strings.Cut(inside, ",")
		if !found {
			_, numbers, found = strings.Cut(strings.TrimSpace(inside), " ")
		}
		if !found {
			return Colour{}, 0, false
		}
		name, inside = "device-cmyk", numbers
	}
	parts := strings.FieldsFunc(strings.ReplaceAll(inside, "/", " / "), func(r rune) bool { return r == ',' || strings.ContainsRune(blanks, r) })
	opacity := 1.0
	count := 3
	if name == "device-cmyk" {
		count = 4
	}
	for i, part := range parts {
		if part == "/" {
			parts = append(parts[:i:i], parts[i+1:]...)
			break
		}
	}
	if len(parts) == count+1 {
		share, ok := shareOf(parts[count])
		if !ok {
			return Colour{}, 0, false
		}
		opacity, parts = share, parts[:count]
	}
	if len(parts) != count {
		return Colour{}, 0, false
	}
	c, ok := componentsColour(name, parts)
	return c, opacity, ok
}

func componentsColour(name string, parts []string) (Colour, bool) {
	switch name {
	case "rgb", "rgba":
		var v [3]uint8
		for i, part := range parts {
			value, percent, ok := numberOf(part)
			if !ok {
				return Colour{}, false
			}
			if percent {
				value = value * 255 / 100
			}
			v[i] = uint8(math.Round(min(max(value, 0), 255)))
		}
		return Colour{R: v[0], G: v[1], B: v[2]}, true
	case "hsl", "hsla":
		hue, ok := degreesOf(parts[0])
		saturation, _, ok2 := numberOf(parts[1])
		lightness, _, ok3 := numberOf(parts[2])
		return hslColour(hue, min(max(saturation/100, 0), 1), min(max(lightness/100, 0), 1)), ok && ok2 && ok3
	case "device-cmyk":
		var v [4]float64
		for i, part := range parts {
			share, ok := shareOf(part)
			if !ok {
				return Colour{}, false
			}
			v[i] = share
		}
		return pressInks(v[0], v[1], v[2], v[3]), true
	}
	return Colour{}, false
}

// pressInks returns a colour of the press and what it looks like.
func pressInks(c, m, y, k float64) Colour {
	looks := ink.RGB(c, m, y, k)
	return Colour{R: looks.R, G: looks.G, B: looks.B, Inks: true, C: c, M: m, Y: y, K: k}
}

// hslColour works out a colour of hue (degrees), saturation and lightness (0 to 1)
// (CSS Color 4, 7.1).
func hslColour(hue, saturation, lightness float64) Colour {
	swing := saturation * min(lightness, 1-lightness)
	channel := func(n float64) uint8 {
		k := math.Mod(n+hue/30, 12)
		if k < 0 {
			k += 12
		}
		return uint8(math.Round(255 * (lightness - swing*max(-1, min(k-3, 9-k, 1)))))
	}
	return Colour{R: channel(0), G: channel(8), B: channel(4)}
}

// numberOf reads a number that may be a percentage.
func numberOf(text string) (value float64, percent, ok bool) {
	n := numbers{text: text}
	value, ok = n.next()
	unit := n.word()
	return value, unit == "%", ok && (unit == "" || unit == "%") && n.done()
}

// shareOf reads a share from 0 to 1, which may be given in percent.
func shareOf(text string) (float64, bool) {
	value, percent, ok := numberOf(strings.TrimSpace(text))
	if percent {
		value /= 100
	}
	return min(max(value, 0), 1), ok
}

// degreesOf reads an angle.
func degreesOf(text string) (float64, bool) {
	n := numbers{text: text}
	value, ok := n.next()
	switch n.word() {
	case "", "deg":
	case "rad":
		value *= 180 / math.Pi
	case "grad":
		value *= 0.9
	case "turn":
		value *= 360
	default:
		return 0, false
	}
	return value, ok && n.done()
}
