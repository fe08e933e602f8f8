package jobsheet

import (
	"math"
	"strconv"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/sheet"
	"gussetwright/render/press"
	"gussetwright/render/report"
	"gussetwright/render/scene"
)

// pictures sets the drawings of blank and sheet side by side, above what they show.
func (m *maker) pictures(s setter, height float64) block {
	s.width = (s.width - columnGap) / 2
	letter := min(s.size, 0.06*height)
	draw := func(make func(area geometry.Rect, letter float64) []report.Item, caption string) block {
		words := s.quiet().Lines(caption, s.width)
		picture := block{height, func(x, top float64) []report.Item {
			return make(geometry.RectAt(x, top-height, s.width, height), letter)
		}}
		return stack(picture, gap(0.3*s.size), lines(s.quiet(), words, s.width/2, scene.Middle))
	}
	left := draw(m.blankPicture, m.say("Blank, seen from the print side; glue areas are toned"))
	right := draw(m.sheetPicture, m.sheetCaption())
	return beside(left, shifted(right, s.width+columnGap))
}

// blankPicture draws the pieces of a bag side by side, in true proportion.
func (m *maker) blankPicture(area geometry.Rect, letter float64) []report.Item {
	pieces := m.Snapshot.Blank.Pieces
	width, height := 0.0, 0.0
	for i := range pieces {
		width += pieces[i].Width
		height = max(height, pieces[i].Height)
	}
	between := 0.12 * width * float64(len(pieces)-1)
	d := fitted(area, width+between, height, letter)
	x := 0.0
	for i := range pieces {
		motion := geometry.Shift(geometry.Vec2{X: x})
		d.piece(&pieces[i], motion)
		box := geometry.RectAt(x, 0, pieces[i].Width, pieces[i].Height)
		d.across(box, m.length(pieces[i].Width))
		if i == 0 {
			d.upward(box, m.length(pieces[i].Height))
		}
		if len(pieces) > 1 {
			face := face(&pieces[i])
			d.write(capitalised(m.Say(pieces[i].Name)), d.at(motion.At(face.Center())), 0, letter, 0.9*d.scale*face.Width(), true, dark)
		}
		x += pieces[i].Width + between
	}
	return d.items
}

// face returns the box of the face of a piece, where its name stands clear of creases.
func face(piece *blank.Piece) geometry.Rect {
	for _, id := range []string{"front", "back"} {
		if panel, found := piece.Panel(id); found {
			return panel.Box
		}
	}
	return piece.Box()
}

// piece draws cuts, creases and glue areas.
func (d *drawing) piece(piece *blank.Piece, motion geometry.Affine) {
	d.shape(piece.Outline, motion, paperFill, report.Line{})
	for _, area := range piece.Glue {
		d.shape(area.Shape, motion, glueFill, report.Line{})
	}
	for _, line := range piece.Lines {
		if line.Kind == blank.Crease {
			d.edge(line.Edge, motion, creaseLine)
		}
	}
	for _, line := range piece.Lines {
		if line.Kind == blank.Cut {
			d.edge(line.Edge, motion, cutLine)
		}
	}
	for _, hole := range piece.Holes {
		d.shape(geometry.Circle(hole.Center, hole.Diameter/2), motion, report.RGB(255, 255, 255), cutLine)
	}
}

// laid is a piece in its place on the sheet.
type laid struct {
	piece  *blank.Piece
	motion geometry.Affine
	box    geometry.Rect
}

// onSheet returns what lies on the first sheet; where no whole bag does, the pieces that
// do.
func (m *maker) onSheet() []laid {
	var list []laid
	plan, pieces := &m.Snapshot.Plan, m.Snapshot.Blank.Pieces
	if forms := press.Forms(&m.Snapshot.Blank, plan); len(forms) > 0 {
		for _, l := range forms[0].Blanks {
			list = append(list, laid{&pieces[l.Piece], l.Motion(), l.Box()})
		}
		return list
	}
	for i := range plan.Placements {
		list = append(list, laid{&pieces[0], plan.Motion(i), plan.Box(i)})
	}
	return list
}

// sheetPicture draws the sheet with its gripper and numbered blanks, in true proportion.
func (m *maker) sheetPicture(area geometry.Rect, letter float64) []report.Item {
	s := m.Snapshot.Plan.Sheet
	// The arrow of the grain stands above, or at the right.
	if m.fibres() == bag.GrainWidth {
		area.Max.Y -= dimensionRoom(letter)
	} else {
		area.Max.X -= dimensionRoom(letter)
	}
	d := fitted(area, s.Width, s.Height, letter)
	paper, here := geometry.RectAt(0, 0, s.Width, s.Height), geometry.Identity()
	d.shape(paper.Path(), here, report.RGB(255, 255, 255), report.Line{})
	if s.Gripper > 0 {
		held := geometry.RectAt(0, 0, s.Width, s.Gripper)
		if sheet.GripOf(s) == sheet.GripLeft {
			held = geometry.RectAt(0, 0, s.Gripper, s.Height)
		}
		d.shape(held.Path(), here, gripFill, report.Line{})
	}
	placed := m.onSheet()
	for _, l := range placed {
		d.shape(l.piece.Outline, l.motion, paperFill, report.Line{Width: 0.16, Colour: dark})
	}
	for i, l := range placed {
		width, height := d.scale*l.box.Width(), d.scale*l.box.Height()
		size := min(2*letter, 0.5*height)
		d.write(strconv.Itoa(i+1), d.at(l.box.Center()), 0, size, 0.7*width, true, dark)
	}
	d.shape(paper.Path(), here, report.Colour{}, cutLine)
	d.across(paper, m.length(s.Width))
	d.upward(paper, m.length(s.Height))
	d.grain(paper, m.fibres(), m.say("grain"))
	return d.items
}

// grain draws an arrow along the fibres of the sheet, beside it.
func (d *drawing) grain(paper geometry.Rect, along bag.Grain, word string) {
	low, high := d.at(paper.Min), d.at(paper.Max)
	half, beyond := min(5*d.letter, (high.X-low.X)/2), 0.55*d.letter
	if along == bag.GrainWidth {
		middle := geometry.Vec2{X: (low.X + high.X) / 2, Y: high.Y + beyond}
		d.arrow(middle.Sub(geometry.Vec2{X: half}), middle.Add(geometry.Vec2{X: half}))
		d.write(word, middle.Add(geometry.Vec2{Y: 0.75 * d.letter}), 0, d.letter, 2*half, false, dark)
		return
	}
	half = min(5*d.letter, (high.Y-low.Y)/2)
	middle := geometry.Vec2{X: high.X + beyond, Y: (low.Y + high.Y) / 2}
	d.arrow(middle.Sub(geometry.Vec2{Y: half}), middle.Add(geometry.Vec2{Y: half}))
	d.write(word, middle.Add(geometry.Vec2{X: 0.8 * d.letter}), math.Pi/2, d.letter, 2*half, false, dark)
}

// sheetCaption says what the drawing of the sheet shows.
func (m *maker) sheetCaption() string {
	switch {
	case m.Snapshot.Plan.Up() == 0:
		return m.say("Press sheet; the blank does not fit on it")
	case m.Snapshot.Job.Forms > 1:
		return m.tell(phrase.New("Press sheet of form 1 of %d; the gripper is grey", m.Snapshot.Job.Forms))
	}
	return m.say("Press sheet, seen from the print side; the gripper is grey")
}
