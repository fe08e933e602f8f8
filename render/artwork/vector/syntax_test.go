package vector

import (
	"fmt"
	"image/color"
	"math"
	"strings"
	"testing"

	"golang.org/x/image/colornames"

	"gussetwright/geometry"
	"gussetwright/render/artwork/vector/outline"
)

// spelled returns a path as text, to three decimals.
func spelled(path outline.Path) string {
	var b strings.Builder
	short := func(v float64) string {
		return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.3f", math.Round(v*1000)/1000+0), "0"), ".")
	}
	for step, points := range path.All() {
		b.WriteString(string("MLCZ"[step]))
		for i, p := range points {
			if i > 0 {
				b.WriteByte(' ')
			}
			b.WriteString(short(p.X) + "," + short(p.Y))
		}
	}
	return b.String()
}

// The cases follow the grammar of SVG 2, 9.3.9, and its remarks on what may be left
// out between numbers; what follows a mistake is not drawn (9.5.4).
func TestPathData(t *testing.T) {
	cases := []struct {
		data, want string
		whole      bool
	}{
		{"", "", true},
		{"  \n ", "", true},
		{"M10-20.5.5", "M10,-20.5", false}, // a line to .5 and nothing
		{"M10-20.5.5.5", "M10,-20.5L0.5,0.5", true},
		{"M 1 2 L 3 4 Z", "M1,2L3,4Z", true},
		{"m1,2 3,4 5,6", "M1,2L4,6L9,12", true},
		{"M1 2 3 4", "M1,2L3,4", true},
		{"M.5.5-1e1+2E-1", "M0.5,0.5L-10,0.2", true},
		{"M1.e1 0", "M10,0", true},
		{"M0 0h5v5H1V1", "M0,0L5,0L5,5L1,5L1,1", true},
		{"M0 0h1 2 3", "M0,0L1,0L3,0L6,0", true},
		{"M0 0C1 1 2 2 3 3S5 5 6 6", "M0,0C1,1 2,2 3,3C4,4 5,5 6,6", true},
		{"M0 0S1 1 2 2", "M0,0C0,0 1,1 2,2", true},
		{"M0 0Q3 3 6 0T12 0", "M0,0C2,2 4,2 6,0C8,-2 10,-2 12,0", true},
		{"M0 0T6 0", "M0,0C0,0 2,0 6,0", true},
		{"M0 0c1 1 2 2 3 3q3 3 6 0t3 0", "M0,0C1,1 2,2 3,3C5,5 7,5 9,3C11,1 12,1 12,3", true},
		{"M0 0Q3 3 6 0S9 9 12 0", "M0,0C2,2 4,2 6,0C6,0 9,9 12,0", true}, // no mirrored point of another kind
		{"M1 1z l2 2", "M1,1ZM1,1L3,3", true},
		{"M1 1 2 2zm3 3h1", "M1,1L2,2ZM4,4L5,4", true},
		{"M1 1zz", "M1,1Z", true},
		{"M0 0a1 1 0 0 1 0 0", "M0,0", true},
		{"M0 0A0 5 0 0 1 3 4", "M0,0L3,4", true},
		// An arc of 2·asin(√⅛) = 41.41°, so it leaves at 45° − 20.70° with a handle of
		// 4/3·tan(10.35°) = 0.2436.
		{"M0 0a1 1 0 01.5.5", "M0,0C0.222,0.1 0.4,0.278 0.5,0.5", true},
		{"M0 0a5 5 0 1110 0", "M0,0C0,-2.761 2.239,-5 5,-5C7.761,-5 10,-2.761 10,0", true},
		{"M0 0a5 5 0 1 0 10 0", "M0,0C0,2.761 2.239,5 5,5C7.761,5 10,2.761 10,0", true},
		{"M0 0a1 1 0 0 1 4 0", "M0,0C0,-1.105 0.895,-2 2,-2C3.105,-2 4,-1.105 4,0", true}, // grown to reach
		{"M0 0a1 1 0 2 1 4 0", "M0,0", false},
		{"M0,0,1,1", "M0,0L1,1", true},
		{"M0 0,,1 1", "M0,0", false},
		{"L1 1", "", false},
		{"M1", "", false},
		{"M0 0 L1 1 L2 x", "M0,0L1,1", false},
		{"M0 0 L1 1 $", "M0,0L1,1", false},
		{"M0 0 L1e999 0", "M0,0", false},
		{"M0 0 L--1 0", "M0,0", false},
		{"M0 0 B1 1", "M0,0", false},
		{"M0 0 L1 1,", "M0,0L1,1", false},
	}
	for _, c := range cases {
		path, whole, err := parsePath(c.data)
		if got := spelled(path); err != nil || got != c.want || whole != c.whole {
			t.Errorf("%q is read as %q, %t (%v), want %q, %t", c.data, got, whole, err, c.want, c.whole)
		}
	}
}

// An arc ends where it should, and all of it lies on its ellipse.
func TestArcsLieOnTheirEllipse(t *testing.T) {
	for _, flags := range []string{"00", "01", "10", "11"} {
		path, whole, err := parsePath("M10 20A30 15 25 " + flags + "40 30")
		if err != nil || !whole {
			t.Fatal(whole, err)
		}
		if last := path.Points[len(path.Points)-1]; last != (geometry.Vec2{X: 40, Y: 30}) {
			t.Errorf("%s ends at %v", flags, last)
		}
		// Points of one ellipse turned to the axes and pressed to a circle have one
		// centre; three of them give it.
		press := geometry.Stretch(1.0/30, 1.0/15).After(rotation(-25))
		var points []geometry.Vec2
		at := path.Points[0]
		for step, p := range path.All() {
			if step != outline.Curve {
				continue
			}
			for share := 0.0; share < 1; share += 0.125 {
				points = append(points, press.At(outline.Along(at, p[0], p[1], p[2], share)))
			}
			at = p[2]
		}
		center := circumcenter(points[0], points[len(points)/3], points[2*len(points)/3])
		for _, p := range points {
			if radius := p.Sub(center).Length(); math.Abs(radius-1) > 1e-3 {
				t.Errorf("%s: a point is %.5f of the radius away from the centre", flags, radius)
			}
		}
	}
}

func circumcenter(a, b, c geometry.Vec2) geometry.Vec2 {
	p, q := b.Sub(a), c.Sub(a)
	v := q.Left().Scale(-p.Dot(p)).Add(p.Left().Scale(q.Dot(q)))
	return a.Add(v.Scale(1 / (2 * p.Cross(q))))
}

func TestTransforms(t *testing.T) {
	cases := []struct {
		text string
		want geometry.Vec2 // where (2, 3) goes
		ok   bool
	}{
		{"", geometry.Vec2{X: 2, Y: 3}, true},
		{"none", geometry.Vec2{X: 2, Y: 3}, true},
		{"translate(10)", geometry.Vec2{X: 12, Y: 3}, true},
		{"translate(10-5)", geometry.Vec2{X: 12, Y: -2}, true},
		{"scale(2) translate(1 1)", geometry.Vec2{X: 6, Y: 8}, true},
		{"translate(1,1),scale(2 3)", geometry.Vec2{X: 5, Y: 10}, true},
		{"rotate(90)", geometry.Vec2{X: -3, Y: 2}, true},
		{"rotate(90 1 1)", geometry.Vec2{X: -1, Y: 2}, true},
		{"rotate(0.25turn)", geometry.Vec2{X: -3, Y: 2}, true},
		{"skewX(45)", geometry.Vec2{X: 5, Y: 3}, true},
		{"skewY(45)", geometry.Vec2{X: 2, Y: 5}, true},
		{"matrix(1 2 3 4 5 6)", geometry.Vec2{X: 16, Y: 22}, true},
		{"translate(1in, 1px)", geometry.Vec2{X: 98, Y: 4}, true},
		{"rotate(1 2)", geometry.Vec2{}, false},
		{"matrix(1 2 3)", geometry.Vec2{}, false},
		{"turn(3)", geometry.Vec2{}, false},
		{"scale(2", geometry.Vec2{}, false},
		{"scale 2", geometry.Vec2{}, false},
		{"scale(1e30) scale(1e30)", geometry.Vec2{}, false},
	}
	for _, c := range cases {
		motion, ok := parseTransform(c.text)
		if ok != c.ok || ok && motion.At(geometry.Vec2{X: 2, Y: 3}).Sub(c.want).Length() > 1e-9 {
			t.Errorf("%q takes (2, 3) to %v (%t), want %v (%t)", c.text, motion.At(geometry.Vec2{X: 2, Y: 3}), ok, c.want, c.ok)
		}
	}
}

// Values by CSS Color Module Level 4, worked out by hand where it gives a formula.
func TestColours(t *testing.T) {
	cases := []struct {
		text    string
		want    string // "rrggbb", with "cmyk" before inks
		opacity float64
		ok      bool
	}{
		{"#f80", "ff8800", 1, true},
		{"#F808", "ff8800", 8.0 / 15, true},
		{"#123456", "123456", 1, true},
		{"#12345680", "123456", 128.0 / 255, true},
		{"rgb(1,2,3)", "010203", 1, true},
		{"rgb( 300 , -5, 2.6 )", "ff0003", 1, true},
		{"rgb(100%,50%,0%)", "ff8000", 1, true},
		{"rgba(1,2,3,.5)", "010203", 0.5, true},
		{"rgb(1 2 3 / 25%)", "010203", 0.25, true},
		{"rgb(1 2 3/25%)", "010203", 0.25, true},
		{"hsl(120,100%,50%)", "00ff00", 1, true},
		{"hsl(-120deg 100% 25%)", "000080", 1, true},
		{"hsla(0.5turn, 50%, 50%, 0.1)", "40bfbf", 0.1, true},
		{"Tomato", "ff6347", 1, true},
		{"transparent", "000000", 0, true},
		{"device-cmyk(0 1 1 0)", "cmyk 0 1 1 0", 1, true},
		{"device-cmyk(10%, 20%, 30%, 40%)", "cmyk 0.1 0.2 0.3 0.4", 1, true},
		{"device-cmyk(0 0 0 1 / .5)", "cmyk 0 0 0 1", 0.5, true},
		{"#abc device-cmyk(0.1 0.2 0.3 0.4)", "cmyk 0.1 0.2 0.3 0.4", 1, true},
		{"peru icc-color(press, 0.11, 0.48, 0.83, 0)", "cmyk 0.11 0.48 0.83 0", 1, true},
		{"rgb(1,2,3) icc-color(press 1 0 0 0)", "cmyk 1 0 0 0", 1, true},
		{"#abc icc-color(screen, 0.1, 0.2, 0.3)", "aabbcc", 1, true},
		{"#ab", "", 0, false},
		{"#ggg", "", 0, false},
		{"#+12", "", 0, false},
		{"#", "", 0, false},
		{"rgb(1,2)", "", 0, false},
		{"rgb(1,2,3", "", 0, false},
		{"rgb(1,2,3,4,5)", "", 0, false},
		{"rgb(a,b,c)", "", 0, false},
		{"nocolour", "", 0, false},
		{"", "", 0, false},
		{"lab(50% 20 30)", "", 0, false},
		{"#abc nonsense", "", 0, false},
	}
	for _, c := range cases {
		colour, opacity, ok := parseColour(c.text)
		got := fmt.Sprintf("%02x%02x%02x", colour.R, colour.G, colour.B)
		if colour.Inks {
			got = fmt.Sprintf("cmyk %g %g %g %g", colour.C, colour.M, colour.Y, colour.K)
		}
		if ok != c.ok || ok && (got != c.want || math.Abs(opacity-c.opacity) > 1e-9) {
			t.Errorf("%q is %s, %g (%t), want %s, %g (%t)", c.text, got, opacity, ok, c.want, c.opacity, c.ok)
		}
	}
}

// The names and values of golang.org/x/image/colornames come from SVG 1.1; CSS has
// added one since.
func TestColourNames(t *testing.T) {
	for name, want := range colornames.Map {
		got, opacity, ok := parseColour(name)
		if !ok || opacity != 1 || (color.RGBA{got.R, got.G, got.B, 255}) != want {
			t.Errorf("%s is %v, %g (%t), want %v", name, got, opacity, ok, want)
		}
	}
	if len(colourNames) != len(colornames.Map)+1 || colourNames["rebeccapurple"] != 0x663399 {
		t.Errorf("%d names, want %d and rebeccapurple", len(colourNames), len(colornames.Map))
	}
}

func TestLengths(t *testing.T) {
	cases := []struct {
		text string
		want float64 // px, of 200 for percentages
		ok   bool
	}{
		{"12", 12, true},
		{" 12px ", 12, true},
		{"1in", 96, true},
		{"25.4mm", 96, true},
		{"2.54cm", 96, true},
		{"72pt", 96, true},
		{"6pc", 96, true},
		{"101.6Q", 96, true},
		{"2em", 20, true},
		{"2ex", 10, true},
		{"1e1mm", 9600 / 254.0, true},
		{"50%", 100, true},
		{"-3", -3, true},
		{"", 0, false},
		{"mm", 0, false},
		{"3 mm", 0, false},
		{"3furlong", 0, false},
		{"1e999", 0, false},
	}
	for _, c := range cases {
		l, ok := parseLength(c.text)
		if got := l.in(200, 10); ok != c.ok || ok && math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%q is %g px (%t), want %g (%t)", c.text, got, ok, c.want, c.ok)
		}
	}
}

func TestSelectors(t *testing.T) {
	const sheet = `
@charset "utf-8"; <!-- /* a { fill: red } */
path { order: 1 } .a { order: 2 } .b.a { order: 3 } path.a { order: 4 }
#x, g > path, .none { order: 5 } path:hover { order: 6 } [fill] { order: 7 } * { order: 0; text: "}" }
@media print { path { order: 8 } .a { order: 9 } } @import url(x.css);
path#x.a { order: 10 !important } rect { order: 11 } .c-d_é { order: 12 } -->`
	s := newStyleSheet()
	unknown, err := s.read(sheet)
	if err != nil || unknown != 6 { // charset, child, hover, attribute, media, import
		t.Errorf("%d unknown rules (%v), want 6", unknown, err)
	}
	cases := []struct {
		kind, id, class string
		want            string
	}{
		{"path", "", "", "0 1"},
		{"circle", "", "a", "0 2"},
		{"circle", "", "a b", "0 2 3"},
		{"path", "", "b a", "0 1 2 4 3"},
		{"circle", "x", "", "0 5"},
		{"path", "x", "a", "0 1 2 4 5 10 10"},
		{"rect", "", "A", "0 11"},
		{"circle", "", "c-d_é", "0 12"},
	}
	for _, c := range cases {
		n := &node{name: c.kind}
		n.attributes = attributes("id", c.id, "class", c.class)
		s.cascade(n)
		var got []string
		for _, d := range n.declared {
			if d.property == "order" {
				got = append(got, d.value)
			}
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s#%s.%s takes %v, want %s", c.kind, c.id, c.class, got, c.want)
		}
	}
}
