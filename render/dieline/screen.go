package dieline

import (
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/render/scene"
)

// Screen draws blanks for a screen: lettering, dashes and hatching keep their size
// in pixels at every zoom, and there is neither legend nor title block.
type Screen struct {
	// Letter is the height of the lettering in mm: as many as give the wanted
	// height in pixels at the zoom.
	Letter float64
	// Dash is the factor on the dash patterns; 0 keeps them in proportion to the
	// lettering, so that mountain and valley are told apart at every zoom.
	Dash float64
	// Unit is the unit of the dimensions; empty is millimetres.
	Unit geometry.Unit
	// Voice says the names and numbers on the drawing; nil is English.
	Voice scene.Voice
	// Plain leaves out the dimensions round the piece, and the room that they take.
	Plain bool
	// Covered are the panels on which artwork is shown: no name is written over it.
	Covered []string
}

// usualLetter is the lettering, in mm, that dash patterns and hatching were drawn for.
const usualLetter = 5.0

// leastHatch bounds the distance between hatch lines on a screen, in mm: zoomed in
// far, one hatch line on the screen is enough, and thousands would be slow.
const leastHatch = 2.0

// leastFace is the width of a face, in letters, below which the openings in it are
// not measured on a screen.
const leastFace = 14

// Margins round the piece on a screen, in letters, beyond the bleed. The dimensions
// stand in them; the heights on the left of the first piece alone.
const (
	marginLeft   = 12
	marginBottom = 8
	marginRest   = 1.5
)

// OnScreen draws one piece in lettering of the given height in mm.
func OnScreen(laid *blank.Blank, piece int, letter float64) scene.Drawing {
	return Screen{Letter: letter}.Draw(laid, piece)
}

// Draw draws one piece. What is drawn first has the first claim to room for its
// lettering; lettering that finds none is left out.
func (s Screen) Draw(laid *blank.Blank, index int) scene.Drawing {
	piece := &laid.Pieces[index]
	d := drafter{laid: laid, spec: laid.Spec, piece: piece, u: s.Letter, voice: scene.OrEnglish(s.Voice), screen: &s}
	d.items = make([]scene.Item, 0, 512)
	d.holes()
	d.names()
	d.grain()
	if !s.Plain {
		d.dimensionsBelow()
		if index == 0 {
			d.dimensionsLeft() // both pieces of a bag are of one height
		}
	}
	d.dimensionsOfHoles()
	d.glue()
	d.zones()
	d.lines()
	d.voice = scene.English() // no one sees the title
	return scene.Drawing{
		Title: d.title(),
		Media: s.Media(laid, index),
		Bleed: piece.Box().Inset(-laid.Spec.Print.Bleed),
		Trim:  piece.Box(),
		Items: d.items,
	}
}

// Media returns the room that a piece and its dimensions take.
func (s Screen) Media(laid *blank.Blank, index int) geometry.Rect {
	box := laid.Pieces[index].Box().Inset(-laid.Spec.Print.Bleed - marginRest*s.Letter)
	if s.Plain {
		return box
	}
	if index == 0 {
		box.Min.X -= (marginLeft - marginRest) * s.Letter
	}
	box.Min.Y -= (marginBottom - marginRest) * s.Letter
	return box
}

// Sample draws what a role looks like, in the middle of a box, or nothing for a
// role that has no lines.
func (s Screen) Sample(role scene.Role, box geometry.Rect) scene.Drawing {
	d := drafter{u: s.Letter, voice: scene.OrEnglish(s.Voice), screen: &s}
	left, right := box.Center(), box.Center()
	left.X, right.X = box.Min.X, box.Max.X
	if role == scene.Legend {
		left.Y -= s.Letter / 3
		d.write(role, d.voice.Word("Name"), left, scene.Start, 0)
	} else {
		d.sample(role, role, left, right)
	}
	return scene.Drawing{Title: role.String(), Media: box, Bleed: box, Trim: box, Items: d.items}
}

// SamplePart draws what the outline of a part looks like that is glued to the reverse, in
// the middle of a box.
func (s Screen) SamplePart(part blank.GlueRole, box geometry.Rect) scene.Drawing {
	d := drafter{u: s.Letter, voice: scene.OrEnglish(s.Voice), screen: &s}
	left, right := box.Center(), box.Center()
	left.X, right.X = box.Min.X, box.Max.X
	d.samplePart(part, left, right)
	return scene.Drawing{Title: string(part), Media: box, Bleed: box, Trim: box, Items: d.items}
}

// Behind returns the kinds of parts that are glued to the reverse of a piece.
func Behind(piece *blank.Piece) []blank.GlueRole {
	d := drafter{piece: piece}
	var kinds []blank.GlueRole
	for _, part := range d.behind() {
		kinds = append(kinds, part.Role)
	}
	return kinds
}

// covers tells whether a panel goes without its name.
func (s *Screen) covers(panel string) bool { return s != nil && slices.Contains(s.Covered, panel) }

// unitDecimals is how finely lengths are written on a screen: to some hundredths
// of a millimetre in every unit.
var unitDecimals = map[geometry.Unit]int{geometry.Millimetre: 2, geometry.Centimetre: 3, geometry.Inch: 3}

// number writes a length as it stands on the drawing.
func (d *drafter) number(length float64) string {
	if d.screen == nil || d.screen.Unit == "" {
		return d.voice.Number(length, 2)
	}
	return d.voice.Number(length/d.screen.Unit.Length(), unitDecimals[d.screen.Unit])
}

// dashed returns a dash pattern at the size of the drawing.
func (d *drafter) dashed(pattern []float64) []float64 {
	if d.screen == nil || pattern == nil {
		return pattern
	}
	factor := d.screen.Dash
	if factor == 0 {
		factor = d.u / usualLetter
	}
	scaled := make([]float64, len(pattern))
	for i, length := range pattern {
		scaled[i] = length * factor
	}
	return scaled
}

// hatchGaps returns the distance between hatch lines, and that between a glue area
// and the lines round it.
func (d *drafter) hatchGaps() (spacing, inset float64) {
	if d.screen == nil {
		return hatchSpacing, glueInset
	}
	return max(hatchSpacing*d.u/usualLetter, leastHatch), min(glueInset*d.u/usualLetter, glueInset)
}

// leastMargin returns the bleed and the safe margin that are too narrow to be drawn:
// on a screen a dashed line less than some two pixels beside a crease or a cut would
// only make it look torn.
func (d *drafter) leastMargin() float64 {
	if d.screen == nil {
		return 0
	}
	return d.u / 5
}

// place draws the first of the labels that runs into no other, and tells whether
// one did not.
func (d *drafter) place(labels ...scene.Label) bool {
	for _, label := range labels {
		box := labelBox(label)
		if label.Role == scene.Dimensions {
			box = box.Inset(-d.u / 8) // numbers that touch would be read as one
		}
		if !d.taken(box) {
			d.add(label)
			d.lettering = append(d.lettering, box)
			return true
		}
	}
	return false
}

func (d *drafter) taken(box geometry.Rect) bool {
	for _, other := range d.lettering {
		if box.Min.X < other.Max.X && other.Min.X < box.Max.X && box.Min.Y < other.Max.Y && other.Min.Y < box.Max.Y {
			return true
		}
	}
	return false
}

// placeNumber writes a dimension on a screen: on its line where it fits, first with
// its symbol and then without, else beside the line at aside, or not at all. Beside the
// line it ends before the span, where no line runs through it and the edge of the picture
// is not near.
func (d *drafter) placeNumber(s span, at, aside geometry.Vec2, turn float64) {
	label := func(text string, at geometry.Vec2) scene.Label {
		return scene.Label{Role: scene.Dimensions, Text: text, At: at, Size: d.u, Anchor: scene.Middle, Turn: turn}
	}
	full, short := d.spanText(s), d.number(s.length())
	room := s.length() - d.u/2
	var ways []scene.Label
	for _, text := range []string{full, short} {
		if d.textWidth(text) <= room {
			ways = append(ways, label(text, at))
		}
	}
	for _, text := range []string{full, short} {
		beside := label(text, aside)
		beside.Anchor = scene.End
		along := geometry.Polar(s.length()/2+d.u/3, turn)
		beside.At = aside.Sub(along)
		ways = append(ways, beside)
	}
	d.place(ways...)
}
