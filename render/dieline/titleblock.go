package dieline

import (
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// Lettering of the title block, in letter heights.
const (
	lineFeed     = 1.6
	titleSize    = 2
	sampleLength = 8
	columnGap    = 4
)

// titleBlock draws legend and title block below the height top, side by side, and
// returns the frame round them.
func (d *drafter) titleBlock(top float64, date string) geometry.Rect {
	pad := d.u
	at := geometry.Vec2{X: pad, Y: top - pad}
	legendEnd := d.legend(at)
	title := geometry.Vec2{X: max(legendEnd.X+columnGap*d.u, d.piece.Width/2), Y: at.Y}
	titleEnd := d.titleLines(title, date)
	bottom := min(legendEnd.Y, titleEnd.Y)
	frame := geometry.Rect{
		Min: geometry.Vec2{X: 0, Y: bottom - pad},
		Max: geometry.Vec2{X: max(titleEnd.X+pad, d.piece.Width), Y: top},
	}
	d.add(scene.Stroke{Role: scene.Legend, Path: frame.Path(), Width: 2 * scene.Legend.Style().Width})
	between := title.X - columnGap*d.u/2
	d.line(scene.Legend, geometry.Vec2{X: between, Y: frame.Min.Y}, geometry.Vec2{X: between, Y: top})
	return frame
}

// legend explains each kind of line that the drawing holds, by a sample, and
// returns its lower right corner.
func (d *drafter) legend(at geometry.Vec2) geometry.Vec2 {
	d.add(scene.Label{Role: scene.Legend, Text: d.voice.Word("Lines"), At: geometry.Vec2{X: at.X, Y: at.Y - d.u}, Size: d.u, Bold: true})
	at.Y -= d.u
	right := at.X
	for _, row := range d.legendRows() {
		at.Y -= lineFeed * d.u
		from := geometry.Vec2{X: at.X, Y: at.Y + d.u/3}
		d.sample(scene.Legend, row, from, geometry.Vec2{X: from.X + sampleLength*d.u, Y: from.Y})
		style := row.Style()
		text := style.Name + ": " + d.voice.Word(phrase.Word(style.Help))
		d.write(scene.Legend, text, geometry.Vec2{X: at.X + (sampleLength+1)*d.u, Y: at.Y}, scene.Start, 0)
		right = max(right, at.X+(sampleLength+1)*d.u+d.textWidth(text))
	}
	for _, part := range d.behind() {
		at.Y -= lineFeed * d.u
		from := geometry.Vec2{X: at.X, Y: at.Y + d.u/3}
		d.samplePart(part.Role, from, geometry.Vec2{X: from.X + sampleLength*d.u, Y: from.Y})
		box := part.Shape.Bounds()
		text := d.voice.Tell(phrase.New("%s: %s × %s, glued to the reverse", partNames[part.Role], d.number(box.Width()), d.number(box.Height())))
		d.write(scene.Legend, text, geometry.Vec2{X: at.X + (sampleLength+1)*d.u, Y: at.Y}, scene.Start, 0)
		right = max(right, at.X+(sampleLength+1)*d.u+d.textWidth(text))
	}
	return geometry.Vec2{X: right, Y: at.Y - d.u/2}
}

// sample draws what a role looks like from left to right, on the layer given. In
// a file that is the legend: a machine that follows the cutting layer must not cut it.
func (d *drafter) sample(layer, role scene.Role, left, right geometry.Vec2) {
	style := role.Style()
	switch role {
	case scene.Punching:
		d.add(scene.Stroke{Role: layer, Path: geometry.Circle(left.Mid(right), d.u/2), Width: style.Width})
	case scene.Gluing:
		spacing, _ := d.hatchGaps()
		box := geometry.RectAt(left.X, left.Y-d.u/2, right.X-left.X, d.u).Path()
		d.add(scene.Stroke{Role: layer, Path: box, Width: style.Width})
		for _, line := range hatch(box, spacing) {
			d.line(layer, line.From, line.To)
		}
	case scene.Dimensions:
		d.line(layer, left, right)
		d.arrowhead(layer, left, geometry.Vec2{X: -1})
		d.arrowhead(layer, right, geometry.Vec2{X: 1})
	default:
		path := geometry.Path{Vertices: []geometry.Vertex{{Vec2: left}, {Vec2: right}}}
		d.add(scene.Stroke{Role: layer, Path: path, Width: style.Width, Dash: d.dashed(dashes[role])})
	}
}

// partNames are what is glued to the reverse, as the legend calls it.
var partNames = map[blank.GlueRole]phrase.Word{blank.GlueTopCard: "Top card", blank.GluePatch: "Handle patch"}

// behind returns the first of each kind of part that is glued to the reverse.
func (d *drafter) behind() []blank.GlueArea {
	var parts []blank.GlueArea
	for _, area := range d.piece.Glue {
		alike := func(part blank.GlueArea) bool { return part.Role == area.Role }
		if area.Side != blank.PrintSide && partNames[area.Role] != "" && !slices.ContainsFunc(parts, alike) {
			parts = append(parts, area)
		}
	}
	return parts
}

// samplePart draws what the outline of a part on the reverse looks like.
func (d *drafter) samplePart(part blank.GlueRole, left, right geometry.Vec2) {
	path := geometry.Path{Vertices: []geometry.Vertex{{Vec2: left}, {Vec2: right}}}
	d.add(scene.Stroke{Role: scene.Legend, Path: path, Width: scene.Legend.Style().Width, Dash: d.dashed(behind[part])})
}

// legendRows lists the roles that the drawing uses and that need explaining.
func (d *drafter) legendRows() []scene.Role {
	used := map[scene.Role]bool{}
	for _, item := range d.items {
		used[item.Layer()] = true
	}
	var rows []scene.Role
	for _, role := range []scene.Role{
		scene.Cutting, scene.Creasing, scene.ReverseCreasing, scene.Punching,
		scene.Gluing, scene.Bleed, scene.ContentArea, scene.Dimensions,
	} {
		if used[role] {
			rows = append(rows, role)
		}
	}
	return rows
}

// titleLines writes name, size, paper, date and the scale bar, and returns the
// lower right corner.
func (d *drafter) titleLines(at geometry.Vec2, date string) geometry.Vec2 {
	at.Y -= titleSize * d.u * 0.8
	right := at.X + typeface.Advance(d.title(), titleSize*d.u, true)
	d.add(scene.Label{Role: scene.Legend, Text: d.title(), At: at, Size: titleSize * d.u, Bold: true})
	at.Y -= 0.4 * d.u
	for _, said := range d.titleTexts(date) {
		text := d.voice.Tell(said)
		at.Y -= lineFeed * d.u
		d.write(scene.Legend, text, at, scene.Start, 0)
		right = max(right, at.X+d.textWidth(text))
	}
	end := d.scaleBar(geometry.Vec2{X: at.X, Y: at.Y - 2*lineFeed*d.u})
	return geometry.Vec2{X: max(right, end.X), Y: end.Y}
}

// scaleBar draws 100 mm in steps of 10, to be measured on a print, and returns
// its lower right corner.
func (d *drafter) scaleBar(at geometry.Vec2) geometry.Vec2 {
	const length, step = 100, 10
	for i := range length / step {
		box := geometry.RectAt(at.X+float64(i*step), at.Y, step, d.u/2)
		d.add(scene.Stroke{Role: scene.Legend, Path: box.Path(), Width: scene.Legend.Style().Width})
		if i%2 == 0 {
			d.add(scene.Fill{Role: scene.Legend, Path: box.Path()})
		}
	}
	text := d.voice.Tell(phrase.New("100 mm: measure this bar, and print at %s", "100 %"))
	d.write(scene.Legend, text, geometry.Vec2{X: at.X + length + d.u, Y: at.Y}, scene.Start, 0)
	return geometry.Vec2{X: at.X + length + d.u + d.textWidth(text), Y: at.Y}
}
