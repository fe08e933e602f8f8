package vector

import (
	"context"
	"encoding/xml"
	"fmt"
	"math"
	"strings"
	"testing"

	"gussetwright/geometry"
	"gussetwright/geometry/geomtest"
)

func attributes(pairs ...string) []xml.Attr {
	var list []xml.Attr
	for i := 0; i < len(pairs); i += 2 {
		list = append(list, xml.Attr{Name: xml.Name{Local: pairs[i]}, Value: pairs[i+1]})
	}
	return list
}

// described returns the shapes of a drawing as text.
func described(d *Drawing) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%.3f × %.3f mm, stated %t, colours %+v\n", d.Size.X, d.Size.Y, d.Stated, d.Colours)
	describe(&b, d.Shapes, "")
	for _, note := range d.Notes {
		fmt.Fprintf(&b, "note: %s\n", note)
	}
	return b.String()
}

func describe(b *strings.Builder, shapes []Shape, indent string) {
	for _, shape := range shapes {
		look := shape.look()
		switch shape := shape.(type) {
		case *Group:
			fmt.Fprintf(b, "%sgroup opacity %.3g\n", indent, look.Opacity)
		case *Picture:
			fmt.Fprintf(b, "%spicture %d × %d at %.3f opacity %.3g\n", indent, shape.Image.Width, shape.Image.Height, shape.Place, look.Opacity)
		case *Figure:
			fmt.Fprintf(b, "%sfigure %s opacity %.3g\n", indent, spelled(shape.Path), look.Opacity)
			if shape.Fill.Kind != None {
				fmt.Fprintf(b, "%s  fill %s even-odd %t\n", indent, paintText(shape.Fill), shape.EvenOdd)
			}
			if shape.Stroke.Paint.Kind != None {
				pen := shape.Stroke.Pen
				fmt.Fprintf(b, "%s  stroke %s width %.3f cap %d join %d limit %g dashes %.3f from %.3f first %t\n", indent,
					paintText(shape.Stroke.Paint), pen.Width, pen.Cap, pen.Join, pen.MiterLimit, pen.Dashes, pen.Offset, shape.StrokeFirst)
				if shape.Stroke.Plane != geometry.Identity() {
					fmt.Fprintf(b, "%s  in the plane %.3f\n", indent, shape.Stroke.Plane)
				}
			}
		}
		describeClips(b, look.Clips, indent+"  ")
		if group, is := shape.(*Group); is {
			describe(b, group.Shapes, indent+"  ")
		}
	}
}

func describeClips(b *strings.Builder, clips []*Clip, indent string) {
	for _, clip := range clips {
		fmt.Fprintf(b, "%sclip\n", indent)
		for _, part := range clip.Parts {
			fmt.Fprintf(b, "%s  %s even-odd %t\n", indent, spelled(part.Path), part.EvenOdd)
			describeClips(b, part.Clips, indent+"    ")
		}
	}
}

func paintText(p Paint) string {
	if p.Kind == Solid {
		text := fmt.Sprintf("#%02x%02x%02x", p.Colour.R, p.Colour.G, p.Colour.B)
		if p.Colour.Inks {
			text = fmt.Sprintf("inks %g %g %g %g", p.Colour.C, p.Colour.M, p.Colour.Y, p.Colour.K)
		}
		return fmt.Sprintf("%s × %.3g", text, p.Opacity)
	}
	g := p.Gradient
	text := fmt.Sprintf("gradient × %.3g radial %t %.3f–%.3f radii %.3f–%.3f place %.3f:", p.Opacity, g.Radial, g.From, g.To, g.FromRadius, g.ToRadius, g.Place)
	for _, stop := range g.Stops {
		text += fmt.Sprintf(" %g #%02x%02x%02x × %.3g", stop.At, stop.Colour.R, stop.Colour.G, stop.Colour.B, stop.Opacity)
	}
	return text
}

// TestShapesOfDrawings keeps what is read of the drawings; what it looks like is
// compared with other programs elsewhere.
func TestShapesOfDrawings(t *testing.T) {
	var all strings.Builder
	for _, c := range drawings() {
		if c.name == "fine lines" {
			continue // says nothing that others do not
		}
		fmt.Fprintf(&all, "== %s\n%s", c.name, described(mustRead(t, c.svg)))
	}
	geomtest.Golden(t, "vector/shapes.txt", []byte(all.String()))
}

func TestSizes(t *testing.T) {
	cases := []struct {
		attributes string
		want       geometry.Vec2 // mm
		stated     bool
		failure    string
	}{
		{`width="100mm" height="50mm"`, geometry.Vec2{X: 100, Y: 50}, true, ""},
		{`width="10cm" height="2in"`, geometry.Vec2{X: 100, Y: 50.8}, true, ""},
		{`width="72pt" height="6pc"`, geometry.Vec2{X: 25.4, Y: 25.4}, true, ""},
		{`width="400Q" height="96"`, geometry.Vec2{X: 100, Y: 25.4}, false, ""},
		{`width="96px" height="48px"`, geometry.Vec2{X: 25.4, Y: 12.7}, false, ""},
		{`viewBox="0 0 96 192"`, geometry.Vec2{X: 25.4, Y: 50.8}, false, ""},
		{`width="100%" height="100%" viewBox="0 0 96 192"`, geometry.Vec2{X: 25.4, Y: 50.8}, false, ""},
		{`width="auto" height="auto" viewBox="0 0 96 192"`, geometry.Vec2{X: 25.4, Y: 50.8}, false, ""},
		{`width="50mm" viewBox="0 0 10 20"`, geometry.Vec2{X: 50, Y: 100}, true, ""},
		{`height="50mm" width="100%" viewBox="0 0 10 20"`, geometry.Vec2{X: 25, Y: 50}, true, ""},
		{`width="100mm" height="50mm" viewBox="0 0 0 0"`, geometry.Vec2{X: 100, Y: 50}, true, ""},
		{``, geometry.Vec2{}, false, "no size"},
		{`width="100mm"`, geometry.Vec2{}, false, "no size"},
		{`width="0" height="10"`, geometry.Vec2{}, false, "the width"},
		{`width="10" height="-1"`, geometry.Vec2{}, false, "the height"},
		{`width="10" height="tall"`, geometry.Vec2{}, false, "the height"},
		{`width="1e20mm" height="10mm"`, geometry.Vec2{}, false, "must be between"},
		{`width="1e-9mm" height="10mm"`, geometry.Vec2{}, false, "must be between"},
		{`width="1e-25" viewBox="0 0 1e-20 1e20"`, geometry.Vec2{}, false, "must be between"},
	}
	for _, c := range cases {
		d, err := Read(context.Background(), []byte(head+c.attributes+"/>"))
		if c.failure != "" {
			if err == nil || !strings.Contains(err.Error(), c.failure) {
				t.Errorf("%s: %v, want an error with %q", c.attributes, err, c.failure)
			}
			continue
		}
		if err != nil || d.Size.Sub(c.want).Length() > 1e-9 || d.Stated != c.stated {
			t.Errorf("%s: %v (%v), want %v, %t", c.attributes, d, err, c.want, c.stated)
		}
	}
}

func TestNotes(t *testing.T) {
	cases := []struct {
		name, inside string
		want         []string // beginnings of the notes
		text         bool
		shapes       int
	}{
		{"nothing", `<title>x</title><desc/><metadata><a/></metadata><path d="M0 0h1v1z"/>`, nil, false, 1},
		{"text", `<text x="1">Two <tspan>words</tspan></text><text>more</text><text/>`, []string{"Text is not shown: turn it into outlines (2 ×)"}, true, 0},
		{"text that is not used", `<defs><text>x</text></defs><g display="none"><text>y</text></g>`, nil, false, 0},
		{"outside image", `<image width="5" height="5" href="http://example.invalid/a.png"/><image href="b.jpg" width="1" height="1"/>`, []string{"An image outside of the file is not fetched: embed it (2 ×)"}, false, 0},
		{"broken image", `<image width="5" height="5" href="data:image/png;base64,iVBORw0KGgo="/>`, []string{"An embedded image"}, false, 0},
		{"outside use", `<use href="other.svg#a"/><rect width="2" height="2" fill="url(other.svg#g)"/>`, []string{"A link to something outside of the file is not followed (2 ×)"}, false, 0},
		{"outside paint, with another", `<rect width="2" height="2" fill="url(other.svg#g) red"/>`, []string{"A link"}, false, 1},
		{"missing", `<use href="#a"/><rect width="2" height="2" fill="url(#g)"/><rect width="2" height="2" clip-path="url(#c)"/>`, []string{"Something is referred to that is not in the file (3 ×)"}, false, 1},
		{"missing, with another paint", `<rect width="2" height="2" fill="url(#g) none" stroke="url(#g) #123"/>`, nil, false, 1},
		{"filter and mask", `<g filter="url(#f)"><rect width="2" height="2" mask="url(#m)"/></g>`, []string{"Filters", "Masks"}, false, 1},
		{"pattern", `<pattern id="p"/><rect width="2" height="2" fill="url(#p)"/>`, []string{"Pattern"}, false, 0},
		{"marker", `<path d="M0 0h2" stroke="#000" marker-end="url(#m)"/><rect marker-end="url(#m)" width="2" height="2"/>`, []string{"Markers at the ends of lines are left out: turn them into shapes (1 ×)"}, false, 2},
		{"blend", `<g style="mix-blend-mode:multiply"><rect width="2" height="2"/></g>`, []string{"Blend modes"}, false, 1},
		{"repeats", `<linearGradient id="a" spreadMethod="reflect"><stop/><stop offset="1"/></linearGradient><rect width="2" height="2" fill="url(#a)"/>`, []string{"A gradient that repeats"}, false, 1},
		{"foreign", `<foreignObject><p xmlns="http://www.w3.org/1999/xhtml">x</p></foreignObject>`, []string{"Web content"}, false, 0},
		{"unknown", `<sketch/>`, []string{"Elements that this program"}, false, 0},
		{"script", `<script>alert(1)</script><rect width="2" height="2" onclick="x()"/>`, []string{"Scripts are not run (2 ×)"}, false, 1},
		{"animation", `<rect width="2" height="2"><animate attributeName="x"/><set/></rect>`, []string{"Animations stand still (2 ×)"}, false, 1},
		{"rules", `<style>g path { fill: red } @font-face { src: url(http://example.invalid) }</style>`, []string{"Style rules of a kind that this program does not know are left out (2 ×)"}, false, 0},
		{"broken path", `<path d="M0 0h5v5 oops"/>`, []string{"A path with a mistake"}, false, 1},
		{"broken values", `<rect width="2" height="2" fill="no colour" stroke-width="-3" transform="turn(3)"/>`, []string{"Values that make no sense are left out (3 ×)"}, false, 1},
		{"use of itself", `<g id="g"><use href="#g"/><rect width="1" height="1"/></g>`, []string{"Something that contains itself is cut off (1 ×)"}, false, 1},
		{"use in a ring", `<defs><g id="a"><use href="#b"/></g><g id="b"><use href="#a"/><rect width="1" height="1"/></g></defs><use href="#a"/>`, []string{"Something that contains itself"}, false, 1},
		{"clips in a ring", `<clipPath id="a" clip-path="url(#b)"><rect width="9" height="9"/></clipPath><clipPath id="b" clip-path="url(#a)"><rect width="9" height="9"/></clipPath><rect width="2" height="2" clip-path="url(#a)"/>`, []string{"Something that contains itself"}, false, 1},
		{"gradients in a ring", `<linearGradient id="a" href="#b"/><linearGradient id="b" href="#a"/><rect width="2" height="2" fill="url(#a)"/>`, []string{"Something that contains itself"}, false, 0},
		{"other name spaces", `<x:g xmlns:x="urn:x"><rect width="2" height="2"/></x:g>`, nil, false, 0},
		{"switch", `<switch><foreignObject requiredExtensions="urn:x"/><rect systemLanguage="zz" width="1" height="1"/><g systemLanguage="en-GB, zz"><path d="M0 0h1v1z"/></g><path d="M0 0h1v1z"/></switch>`, nil, false, 1},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			d := mustRead(t, head+`width="100" height="100">`+c.inside+`</svg>`)
			var got []string
			for _, note := range d.Notes {
				got = append(got, note.String())
			}
			if len(got) != len(c.want) {
				t.Fatalf("notes %q, want %q", got, c.want)
			}
			for i := range got {
				if !strings.HasPrefix(got[i], c.want[i]) {
					t.Errorf("note %q, want %q", got[i], c.want[i])
				}
			}
			if d.Text != c.text {
				t.Errorf("live text is %t", d.Text)
			}
			if len(d.Shapes) != c.shapes {
				t.Errorf("%d shapes, want %d:\n%s", len(d.Shapes), c.shapes, described(d))
			}
		})
	}
	// Every kind has a sentence of its own.
	said := map[string]bool{}
	for m := range matters {
		said[m.says(1).Format] = true
	}
	if len(said) != int(matters) {
		t.Errorf("%d sentences for %d kinds of notes", len(said), matters)
	}
}

func TestColoursOfDrawings(t *testing.T) {
	cases := []struct {
		inside string
		want   Colours
	}{
		{``, Colours{}},
		{`<path d="M0 0h1v1z"/>`, Colours{Grey: true}},
		{`<path d="M0 0h1v1z" fill="#777" stroke="#fff"/>`, Colours{Grey: true}},
		{`<path d="M0 0h1v1z" fill="red" opacity="0"/>`, Colours{}},
		{`<path d="M0 0h1v1z" fill="red"/>`, Colours{RGB: true}},
		{`<path d="M0 0h1v1z" fill="#f00 device-cmyk(0 1 1 0)"/>`, Colours{CMYK: true}},
		{`<path d="M0 0h1v1z" fill="none" stroke="red" stroke-width="0"/>`, Colours{}},
		{`<linearGradient id="a"><stop stop-color="red"/><stop offset="1" stop-color="device-cmyk(1 0 0 0)"/></linearGradient><path d="M0 0h1v1z" fill="url(#a)"/>`, Colours{RGB: true, CMYK: true}},
		{`<image width="1" height="1" href="` + dataJPEG() + `"/>`, Colours{RGB: true}},
	}
	for _, c := range cases {
		if got := mustRead(t, head+`width="100" height="100">`+c.inside+`</svg>`).Colours; got != c.want {
			t.Errorf("%.80s: %+v, want %+v", c.inside, got, c.want)
		}
	}
}

func TestLeastLine(t *testing.T) {
	cases := []struct {
		name, inside string
		width        float64
		at           geometry.Vec2
		found        bool
	}{
		{"none", `<path d="M0 0h9v9z"/>`, 0, geometry.Vec2{}, false},
		{"of two", `<path d="M0 10h20" stroke="#000" stroke-width="2"/><path d="M30 40h20" stroke="#000" stroke-width=".5"/>`, 0.5, geometry.Vec2{X: 40, Y: 60}, true},
		{"scaled", `<g transform="scale(.1)"><path d="M0 100h200" stroke="#000" stroke-width="1"/></g>`, 0.1, geometry.Vec2{X: 10, Y: 90}, true},
		{"flattened", `<g transform="scale(4 .5)"><path d="M0 20h10" stroke="#000" stroke-width="1"/></g>`, 0.5, geometry.Vec2{X: 20, Y: 90}, true},
		{"hairline", `<path d="M0 10h20" stroke="#000" stroke-width="0"/>`, 0, geometry.Vec2{X: 10, Y: 90}, true},
		{"not seen", `<path d="M0 10h20" stroke="#000" stroke-width=".1" stroke-opacity="0"/><path d="M-50 10h20" stroke="#000" stroke-width=".2"/>`, 0, geometry.Vec2{}, false},
		{"partly outside", `<path d="M-50 50h100" stroke="#000" stroke-width=".2"/>`, 0.2, geometry.Vec2{X: 25, Y: 50}, true},
		{"clipped", `<clipPath id="c"><rect x="60" width="40" height="100"/></clipPath><g clip-path="url(#c)"><path d="M0 50h50" stroke="#000" stroke-width=".2"/><path d="M0 50h100" stroke="#000"/></g>`, 1, geometry.Vec2{X: 80, Y: 50}, true},
	}
	for _, c := range cases {
		d := mustRead(t, head+`width="100mm" height="100mm" viewBox="0 0 100 100">`+c.inside+`</svg>`)
		width, at, found := d.LeastLine()
		if math.Abs(width-c.width) > 1e-9 || at.Sub(c.at).Length() > 1e-6 || found != c.found {
			t.Errorf("%s: %g at %v, %t; want %g at %v, %t", c.name, width, at, found, c.width, c.at, c.found)
		}
	}
}
