package svg

import (
	"bytes"
	"encoding/xml"
	"math"
	"strconv"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// decimals is how many decimals a length has: a ten-thousandth of a millimetre
// is finer than any plotter.
const decimals = 4

// text adds markup as it stands.
func (d *document) text(markup string) { d.buffer = append(d.buffer, markup...) }

// escaped adds text that may hold any character.
func (d *document) escaped(text string) {
	var out bytes.Buffer
	// A bytes.Buffer never returns an error.
	_ = xml.EscapeText(&out, []byte(text))
	d.buffer = append(d.buffer, out.Bytes()...)
}

// attribute adds an attribute, nothing when the value is empty.
func (d *document) attribute(name, value string) {
	if value == "" {
		return
	}
	d.text(" " + name + `="`)
	d.escaped(value)
	d.text(`"`)
}

// measure adds an attribute with a length in mm.
func (d *document) measure(name string, value float64) {
	d.text(" " + name + `="`)
	d.number(value)
	d.text(`"`)
}

// number adds a number without trailing zeros, as geometry.FormatNumber does but
// without a string for each.
func (d *document) number(value float64) {
	start := len(d.buffer)
	d.buffer = strconv.AppendFloat(d.buffer, value, 'f', decimals, 64)
	end := len(d.buffer)
	for d.buffer[end-1] == '0' {
		end--
	}
	if d.buffer[end-1] == '.' {
		end--
	}
	d.buffer = d.buffer[:end]
	if string(d.buffer[start:]) == "-0" {
		d.buffer = append(d.buffer[:start], '0')
	}
}

// flip returns where a point of the drawing lies on the page.
func (d *document) flip(p, move geometry.Vec2) geometry.Vec2 {
	return geometry.Vec2{X: p.X + move.X - d.page.Min.X, Y: d.page.Max.Y - p.Y - move.Y}
}

// anchors holds the text-anchor of each anchor.
var anchors = map[scene.Anchor]string{scene.Start: "start", scene.Middle: "middle", scene.End: "end"}

// label writes a line of text. Turning is anticlockwise in a drawing and
// clockwise in SVG.
func (d *document) label(label scene.Label, move geometry.Vec2) {
	at := d.flip(label.At, move)
	d.text("<text")
	d.measure("x", at.X)
	d.measure("y", at.Y)
	d.measure("font-size", label.Size)
	d.text(` font-family="Go, Arial, Helvetica, sans-serif"`)
	if label.Bold {
		d.text(` font-weight="bold"`)
	}
	d.attribute("text-anchor", anchors[label.Anchor])
	d.text(` fill="` + colour(label.Role) + `" stroke="none"`)
	if label.Turn != 0 {
		d.text(` transform="rotate(`)
		d.number(-label.Turn * 180 / math.Pi)
		d.text(" ")
		d.number(at.X)
		d.text(" ")
		d.number(at.Y)
		d.text(`)"`)
	}
	d.text(">")
	d.escaped(label.Text)
	d.text("</text>\n")
}
