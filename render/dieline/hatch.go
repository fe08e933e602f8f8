package dieline

import (
	"math"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
)

// hatchSpacing is the distance between hatch lines, glueInset how far glue is
// drawn away from creases and cuts so that both stay visible; both in mm.
const (
	hatchSpacing = 4
	glueInset    = 1
)

// glue hatches what is glued on the print side, with what of a turn-in is glued on,
// and outlines cards and patches that are glued to the reverse.
func (d *drafter) glue() {
	for _, area := range d.piece.Glue {
		switch {
		case area.Side == blank.PrintSide:
			d.hatchGlue(area.Shape)
		case area.Role == blank.GlueTopCard:
			d.onReverse(area, "top card")
		case area.Role == blank.GluePatch:
			d.onReverse(area, "patch")
		}
	}
	for _, area := range d.piece.GluedTurnIns(d.spec) {
		d.hatchGlue(area.Box.Path())
	}
}

// hatchGlue draws one glue area, leaving out the lettering that stands in it.
func (d *drafter) hatchGlue(shape geometry.Path) {
	spacing, inset := d.hatchGaps()
	if inner := shape.Offset(-inset); len(inner.Vertices) > 0 {
		shape = inner
	}
	d.add(scene.Stroke{Role: scene.Gluing, Path: shape, Width: scene.Gluing.Style().Width})
	for _, line := range hatch(shape, spacing) {
		for _, part := range outside(line, d.lettering) {
			d.line(scene.Gluing, part.From, part.To)
		}
	}
}

// outside returns the parts of a line that lie in none of the boxes.
func outside(line geometry.Edge, boxes []geometry.Rect) []geometry.Edge {
	for i, box := range boxes {
		enter, leave, hit := box.Through(line.From, line.To)
		if !hit {
			continue
		}
		along := line.To.Sub(line.From)
		var parts []geometry.Edge
		if enter > 0 {
			parts = append(parts, outside(geometry.Edge{From: line.From, To: line.From.Add(along.Scale(enter))}, boxes[i+1:])...)
		}
		if leave < 1 {
			parts = append(parts, outside(geometry.Edge{From: line.From.Add(along.Scale(leave)), To: line.To}, boxes[i+1:])...)
		}
		return parts
	}
	return []geometry.Edge{line}
}

// onReverse outlines a part that lies behind the paper, with its name and size below it,
// which on a printed blank are in the legend alone.
func (d *drafter) onReverse(area blank.GlueArea, name phrase.Word) {
	d.add(scene.Stroke{Role: scene.Legend, Path: area.Shape, Width: scene.Legend.Style().Width, Dash: d.dashed(behind[area.Role])})
	if d.outside {
		return
	}
	box := area.Shape.Bounds()
	text := d.voice.Word(name) + " " + d.number(box.Width()) + " × " + d.number(box.Height()) + ", " + d.voice.Word("on the reverse")
	at := geometry.Vec2{X: box.Min.X + 2*d.u, Y: box.Min.Y - 0.9*d.u}
	label := scene.Label{Role: scene.Legend, Text: text, At: at, Size: 0.7 * d.u}
	if d.screen == nil {
		d.add(label)
		return
	}
	label.Size = 0.9 * d.u
	label.At.Y -= 0.3 * d.u
	if labelBox(label).Max.X < box.Max.X {
		d.place(label)
	}
}

// hatch returns lines at 45° inside a polygon: where each of a family of parallel
// lines, spacing apart, enters and leaves it, by the even-odd rule.
func hatch(shape geometry.Path, spacing float64) []geometry.Edge {
	along := geometry.Polar(1, math.Pi/4)
	across := along.Left()
	low, high := math.Inf(1), math.Inf(-1)
	for _, v := range shape.Vertices {
		low, high = min(low, v.Dot(across)), max(high, v.Dot(across))
	}
	var lines []geometry.Edge
	for level := low + spacing/2; level < high; level += spacing {
		stops := crossings(shape, along, across, level)
		for i := 0; i+1 < len(stops); i += 2 {
			from, to := along.Scale(stops[i]), along.Scale(stops[i+1])
			lines = append(lines, geometry.Edge{From: from.Add(across.Scale(level)), To: to.Add(across.Scale(level))})
		}
	}
	return lines
}

// crossings returns where along the hatch line at level the polygon is crossed.
func crossings(shape geometry.Path, along, across geometry.Vec2, level float64) []float64 {
	var stops []float64
	for i := range shape.Vertices {
		edge := shape.Edge(i)
		a, b := edge.From.Dot(across)-level, edge.To.Dot(across)-level
		if (a > 0) == (b > 0) {
			continue
		}
		p := edge.From.Add(edge.To.Sub(edge.From).Scale(a / (a - b)))
		stops = append(stops, p.Dot(along))
	}
	slices.Sort(stops)
	return stops
}
