package vector

import (
	"math"
	"strings"

	"gussetwright/geometry"
)

// parseTransform reads a list of transformations (CSS Transforms 1, 8); the last is
// done first. Angles are in degrees unless they have a unit.
func parseTransform(text string) (geometry.Affine, bool) {
	whole := geometry.Identity()
	if strings.TrimSpace(text) == "none" {
		return whole, true
	}
	n := numbers{text: text}
	for !n.done() {
		name := n.word()
		n.skipBlanks()
		if n.at == len(n.text) || n.text[n.at] != '(' {
			return whole, false
		}
		n.at++
		values, ok := n.arguments()
		if !ok {
			return whole, false
		}
		one, ok := transformOf(name, values)
		if !ok {
			return whole, false
		}
		whole = whole.After(one)
		n.skipComma()
	}
	return whole, finite(whole)
}

// arguments reads up to six numbers, with or without units, and the closing bracket.
func (n *numbers) arguments() ([]float64, bool) {
	var values []float64
	for len(values) <= 6 {
		n.skipComma()
		if n.at < len(n.text) && n.text[n.at] == ')' {
			n.at++
			return values, true
		}
		value, ok := n.next()
		if !ok {
			return nil, false
		}
		switch unit := strings.ToLower(n.word()); unit {
		case "", "px", "deg":
		case "rad":
			value *= 180 / math.Pi
		case "turn":
			value *= 360
		case "grad":
			value *= 0.9
		default:
			if pixels[unit] == 0 {
				return nil, false
			}
			value *= pixels[unit]
		}
		values = append(values, value)
	}
	return nil, false
}

func transformOf(name string, v []float64) (geometry.Affine, bool) {
	tangent := func() float64 { return math.Tan(v[0] * math.Pi / 180) }
	motion := geometry.Identity()
	switch n := len(v); {
	case name == "matrix" && n == 6:
		motion = geometry.Affine{U: geometry.Vec2{X: v[0], Y: v[1]}, V: geometry.Vec2{X: v[2], Y: v[3]}, Origin: geometry.Vec2{X: v[4], Y: v[5]}}
	case name == "translate" && n == 1, name == "translateX" && n == 1:
		motion.Origin.X = v[0]
	case name == "translateY" && n == 1:
		motion.Origin.Y = v[0]
	case name == "translate" && n == 2:
		motion.Origin = geometry.Vec2{X: v[0], Y: v[1]}
	case name == "scale" && n == 1:
		motion = geometry.Stretch(v[0], v[0])
	case name == "scale" && n == 2:
		motion = geometry.Stretch(v[0], v[1])
	case name == "scaleX" && n == 1:
		motion = geometry.Stretch(v[0], 1)
	case name == "scaleY" && n == 1:
		motion = geometry.Stretch(1, v[0])
	case name == "rotate" && n == 1:
		motion = rotation(v[0])
	case name == "rotate" && n == 3:
		center := geometry.Vec2{X: v[1], Y: v[2]}
		motion = geometry.Shift(center).After(rotation(v[0])).After(geometry.Shift(center.Scale(-1)))
	case name == "skewX" && n == 1:
		motion.V.X = tangent()
	case name == "skewY" && n == 1:
		motion.U.Y = tangent()
	default:
		return motion, false
	}
	return motion, true
}

func rotation(degrees float64) geometry.Affine {
	return geometry.Rotation(math.Mod(degrees, 360) * math.Pi / 180)
}

// finite tells whether a motion keeps points where they can be reckoned with.
func finite(a geometry.Affine) bool {
	for _, v := range [6]float64{a.U.X, a.U.Y, a.V.X, a.V.Y, a.Origin.X, a.Origin.Y} {
		if !(math.Abs(v) < 1e30) {
			return false
		}
	}
	return true
}

// fit is how a drawing is fitted into a place: the preserveAspectRatio attribute.
type fit struct {
	stretch bool    // both directions on their own
	slice   bool    // it fills the place and is cut off; otherwise all of it is seen
	alongX  float64 // the share of what is left over that goes before it
	alongY  float64
}

// parseFit reads the attribute. What cannot be read is as if it were not there.
func parseFit(text string) fit {
	words := strings.Fields(text)
	if len(words) > 0 && words[0] == "defer" {
		words = words[1:]
	}
	usual := fit{alongX: 0.5, alongY: 0.5}
	if len(words) == 0 {
		return usual
	}
	if words[0] == "none" {
		return fit{stretch: true}
	}
	shares := map[string]float64{"Min": 0, "Mid": 0.5, "Max": 1}
	if len(words[0]) != len("xMidYMid") || words[0][0] != 'x' || words[0][4] != 'Y' {
		return usual
	}
	x, xKnown := shares[words[0][1:4]]
	y, yKnown := shares[words[0][5:]]
	if !xKnown || !yKnown {
		return usual
	}
	return fit{slice: len(words) > 1 && words[1] == "slice", alongX: x, alongY: y}
}

// into returns the motion that takes one rectangle into another.
func (f fit) into(from, to geometry.Rect) geometry.Affine {
	x, y := to.Width()/from.Width(), to.Height()/from.Height()
	if !f.stretch {
		if f.slice {
			x = max(x, y)
		} else {
			x = min(x, y)
		}
		y = x
	}
	over := geometry.Vec2{X: to.Width() - x*from.Width(), Y: to.Height() - y*from.Height()}
	move := geometry.Vec2{X: to.Min.X + f.alongX*over.X - x*from.Min.X, Y: to.Min.Y + f.alongY*over.Y - y*from.Min.Y}
	return geometry.Shift(move).After(geometry.Stretch(x, y))
}
