package press

import (
	"fmt"
	"slices"
	"strings"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
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

// dimensions draws the size of the sheet above it and to its right.
func (d *drafter) dimensions() {
	width, height, off := d.Sheet.Width, d.Sheet.Height, 1.2*d.u
	d.dimension(geometry.Vec2{Y: height}, geometry.Vec2{X: width, Y: height}, geometry.Vec2{Y: off})
	d.dimension(geometry.Vec2{X: width}, geometry.Vec2{X: width, Y: height}, geometry.Vec2{X: off})
}

// dimension draws a measured line beside an edge.
func (d *drafter) dimension(a, b, off geometry.Vec2) {
	along := b.Sub(a).Unit()
	for _, end := range []geometry.Vec2{a, b} {
		d.line(scene.Dimensions, end.Add(off.Scale(0.3)), end.Add(off.Scale(1.3)))
	}
	from, to := a.Add(off), b.Add(off)
	d.line(scene.Dimensions, from, to)
	d.arrowhead(scene.Dimensions, from, along.Scale(-1), d.u)
	d.arrowhead(scene.Dimensions, to, along, d.u)
	beyond := off.Unit().Scale(0.9 * d.u)
	d.centred(scene.Dimensions, d.number(b.Sub(a).Length()), from.Mid(to).Add(beyond), d.u, along.Angle(), false)
}

// titleBlock draws what the sheet is, and the legend, below the sheet.
func (d *drafter) titleBlock() {
	at := geometry.Vec2{X: 0, Y: -4.5 * d.u}
	right := d.titleLines(at)
	legend := geometry.Vec2{X: max(right+columnGap*d.u, d.Sheet.Width/2), Y: at.Y}
	d.grain(d.legend(legend))
}

// titleLines writes the lines one below the other and returns how far right they reach.
func (d *drafter) titleLines(at geometry.Vec2) float64 {
	at.Y -= titleSize * d.u * 0.8
	d.add(scene.Label{Role: scene.Legend, Text: d.title(), At: at, Size: titleSize * d.u, Bold: true})
	right := typeface.Advance(d.title(), titleSize*d.u, true)
	at.Y -= 0.4 * d.u
	for _, text := range d.titleTexts() {
		at.Y -= lineFeed * d.u
		d.write(scene.Legend, text, at)
		right = max(right, typeface.Advance(text, d.u, false))
	}
	return at.X + right
}

func (d *drafter) titleTexts() []string {
	s := d.Sheet
	texts := []string{
		d.voice.Tell(phrase.New("Sheet: %s × %s mm, seen from the print side; gripper %s mm at the %s edge",
			d.number(s.Width), d.number(s.Height), d.number(s.Gripper), phrase.Word(s.GripperEdge))) + d.fibres(),
		d.voice.Tell(phrase.New("%d-up: %s", len(d.Blanks), strings.Join(d.kinds(), "; "))),
		d.bleedText(),
	}
	for _, note := range append(slices.Clone(d.Notes), d.notes...) {
		texts = append(texts, d.voice.Tell(note))
	}
	if d.date != "" {
		texts = append(texts, d.voice.Tell(phrase.New("Date: %s", d.date)))
	}
	return append(texts,
		d.voice.Word("Scale 1:1, all measures in millimetres. Drawn with Gussetwright."),
		d.voice.Word("Have printer and die-maker check this sheet before plates and dies are made. Cutting rules are sharp."))
}

// fibres says how the sheet must be ordered.
func (d *drafter) fibres() string {
	side := d.Sheet.Width
	switch d.Fibres {
	case "":
		return ""
	case bag.GrainHeight:
		side = d.Sheet.Height
	}
	return "; " + d.voice.Tell(phrase.New("grain along the side of %s", d.number(side)+" mm"))
}

// kinds counts the pieces of each kind.
func (d *drafter) kinds() []string {
	var texts []string
	counts := map[source]int{}
	several := d.severalBags()
	var order []Laid
	for _, laid := range d.Blanks {
		of := source{laid.Blank, laid.Piece}
		if counts[of] == 0 {
			order = append(order, laid)
		}
		counts[of]++
	}
	for _, laid := range order {
		piece := &laid.Blank.Pieces[laid.Piece]
		name := d.voice.Word("blank")
		if several || len(laid.Blank.Pieces) > 1 {
			name = d.kindName(laid, several)
		}
		texts = append(texts, fmt.Sprintf("%d × %s, %s × %s mm", counts[source{laid.Blank, laid.Piece}], name, d.number(piece.Width), d.number(piece.Height)))
	}
	return texts
}

// bleedText says how far ink runs past the blanks.
func (d *drafter) bleedText() string {
	most := 0.0
	for _, laid := range d.Blanks {
		most = max(most, laid.Blank.Spec.Print.Bleed)
	}
	text := d.voice.Tell(phrase.New("Bleed: %s mm", d.number(most)))
	if d.spread.halved {
		text += ", " + d.voice.Word("between blanks up to half their gap")
	}
	if d.spread.cut {
		text += ", " + d.voice.Word("none in the gripper and off the sheet")
	}
	return text + "; " + d.voice.Tell(phrase.New("gap %s mm", d.number(d.Sheet.Gap)))
}

// legend explains the kinds of line by samples and returns its lower left corner. The
// samples are on the layer of the legend: a machine that follows the cutting layer must
// not cut them.
func (d *drafter) legend(at geometry.Vec2) geometry.Vec2 {
	d.add(scene.Label{Role: scene.Legend, Text: d.voice.Word("Lines"), At: geometry.Vec2{X: at.X, Y: at.Y - 1.6*d.u}, Size: d.u, Bold: true})
	at.Y -= 1.6 * d.u
	for _, role := range []scene.Role{
		scene.Cutting, scene.Creasing, scene.ReverseCreasing, scene.Punching, scene.Gluing,
		scene.Gripper, scene.ColourBar, scene.PressMarks,
	} {
		example, used := d.example(role)
		if !used {
			continue
		}
		at.Y -= lineFeed * d.u
		d.sample(role, example.Dash, geometry.RectAt(at.X, at.Y-d.u/6, sampleLength*d.u, d.u))
		style := role.Style()
		d.write(scene.Legend, style.Name+": "+d.voice.Word(phrase.Word(style.Help)), geometry.Vec2{X: at.X + (sampleLength+1)*d.u, Y: at.Y})
	}
	return at
}

// example returns a stroke of a role, and whether there is one.
func (d *drafter) example(role scene.Role) (scene.Stroke, bool) {
	for _, item := range d.items {
		if item.Layer() != role {
			continue
		}
		if repeated, is := item.(scene.Repeated); is {
			item = repeated.Part.Items[0]
		}
		if stroke, is := item.(scene.Stroke); is {
			return stroke, true
		}
	}
	return scene.Stroke{}, false
}

// sample draws what a role looks like.
func (d *drafter) sample(role scene.Role, dash []float64, box geometry.Rect) {
	width, middle := role.Style().Width, box.Center()
	stroke := func(path geometry.Path) {
		d.add(scene.Stroke{Role: scene.Legend, Path: path, Width: width, Dash: dash})
	}
	switch role {
	case scene.Gripper:
		stroke(box.Path())
		d.hatch(scene.Legend, box, geometry.Rect{}, d.u/2)
	case scene.ColourBar, scene.Gluing:
		stroke(box.Path())
	case scene.Punching:
		stroke(geometry.Circle(middle, d.u/2))
	case scene.PressMarks:
		stroke(geometry.Circle(middle, 0.3*d.u))
		for _, arm := range []geometry.Vec2{{X: d.u / 2}, {Y: d.u / 2}} {
			d.line(scene.Legend, middle.Sub(arm), middle.Add(arm))
		}
	default:
		left, right := geometry.Vec2{X: box.Min.X, Y: middle.Y}, geometry.Vec2{X: box.Max.X, Y: middle.Y}
		stroke(geometry.Path{Vertices: []geometry.Vertex{{Vec2: left}, {Vec2: right}}})
	}
}

// grain draws the direction of the fibres as it is on the sheet, below the legend.
func (d *drafter) grain(below geometry.Vec2) {
	along := geometry.Vec2{X: 1}
	switch d.Fibres {
	case "":
		return
	case bag.GrainHeight:
		along = geometry.Vec2{Y: 1}
	}
	reach := sampleLength * d.u / 2
	middle := below.Add(geometry.Vec2{X: reach, Y: -1.5 * d.u})
	if along.Y != 0 {
		reach = 1.5 * d.u
		middle.Y -= d.u
	}
	d.line(scene.Legend, middle.Sub(along.Scale(reach)), middle.Add(along.Scale(reach)))
	d.arrowhead(scene.Legend, middle.Add(along.Scale(reach)), along, d.u)
	d.arrowhead(scene.Legend, middle.Sub(along.Scale(reach)), along.Scale(-1), d.u)
	d.write(scene.Legend, d.voice.Word("grain of the sheet"), geometry.Vec2{X: below.X + (sampleLength+1)*d.u, Y: middle.Y - d.u/3})
}
