package practice

import (
	"strconv"

	"gussetwright/geometry"
	"gussetwright/render/report"
	"gussetwright/render/scene"
)

// sheet is a piece with its tiles.
type sheet struct {
	piece   int
	drawing scene.Drawing
	lines   []geometry.Edge // cuts and creases, of which marks keep clear
	grid    grid
	// How many rows and seams the sheets before have: no two tiles have one name, no two
	// seams one number.
	rowsBefore, seamsBefore int
}

// sheets returns the sheets of all pieces.
func (m maker) sheets() []sheet {
	list := make([]sheet, len(m.Snapshot.Blank.Pieces))
	for i := range list {
		list[i] = m.sheet(i)
		if i > 0 {
			before := &list[i-1]
			list[i].rowsBefore = before.rowsBefore + before.grid.rows
			list[i].seamsBefore = before.seamsBefore + before.grid.seams()
		}
	}
	return list
}

func (m maker) sheet(piece int) sheet {
	s := sheet{piece: piece, drawing: m.fullSize(piece)}
	for _, line := range m.Snapshot.Blank.Pieces[piece].Lines {
		s.lines = append(s.lines, line.Edge)
	}
	s.grid = newGrid(s.drawing.Media, m.Paper.Size(), m.Margin)
	return s
}

// name returns the name of a tile.
func (s *sheet) name(p place) string { return p.name(s.rowsBefore) }

// Of the joining marks, in mm. A mark is half of a diamond: its base lies on the line
// where the edge of one tile comes to lie on another, half of it on each of them.
const (
	markBase   = 7.0
	markHeight = 5.0
	markNumber = 3.0 // height of its number
	cutLine    = 0.5 // of which half is cut off with the paper beyond it
	layLine    = 0.25
)

var (
	markColour = report.RGB(176, 0, 96)
	guide      = report.RGB(120, 126, 132)
	white      = report.RGB(255, 255, 255)
)

// mark is where two tiles meet: a point of the drawing on the edge of the one that lies
// above, and the number that both show.
type mark struct {
	at     geometry.Vec2
	number int
}

// marks returns the marks between a tile and its neighbour on the right or above, which
// lies over it.
func (s *sheet) marks(p place, toRight bool) []mark {
	g, part := &s.grid, s.grid.part(p)
	from, along := geometry.Vec2{X: part.Max.X - overlap, Y: part.Min.Y}, geometry.Vec2{Y: part.Height()}
	seam := p.row*(g.columns-1) + p.column
	if !toRight {
		from, along = geometry.Vec2{X: part.Min.X, Y: part.Max.Y - overlap}, geometry.Vec2{X: part.Width()}
		seam = g.rows*(g.columns-1) + (p.row-1)*g.columns + p.column
	}
	marks := make([]mark, 2)
	for i, share := range []float64{0.25, 0.75} {
		marks[i] = mark{s.clear(from, along, share), 2*(s.seamsBefore+seam) + i + 1}
	}
	return marks
}

// clear returns the point nearest to a share of a seam whose mark hides no line.
func (s *sheet) clear(from, along geometry.Vec2, share float64) geometry.Vec2 {
	const step, most = 0.02, 0.16
	for shift := 0.0; shift <= most; shift += step {
		for _, at := range []float64{share + shift, share - shift} {
			point := from.Add(along.Scale(at))
			box := geometry.Rect{Min: point, Max: point}.Inset(-markHeight - markNumber)
			if !s.crossed(box) {
				return point
			}
		}
	}
	return from.Add(along.Scale(share))
}

func (s *sheet) crossed(box geometry.Rect) bool {
	for _, line := range s.lines {
		if _, _, hit := box.Through(line.From, line.To); hit {
			return true
		}
	}
	return false
}

// joints draws where a tile meets its neighbours: dashed the edges along which it is
// cut, dotted the lines to which neighbours are laid, and the marks on both.
func (m maker) joints(s *sheet, p place, t transfer) []report.Item {
	g, part := &s.grid, s.grid.part(p)
	var items []report.Item
	line := func(from, to geometry.Vec2, width float64, dash ...float64) {
		items = append(items, report.Rule{From: t.at(from), To: t.at(to), Line: report.Line{Width: width, Colour: guide, Dash: dash}})
	}
	corner := func(x, y float64) geometry.Vec2 { return geometry.Vec2{X: x, Y: y} }
	low, high := part.Min, part.Max
	if g.has(p.left()) {
		line(low, corner(low.X, high.Y), cutLine, 4, 2)
		items = append(items, halves(t, s.marks(p.left(), true), geometry.Vec2{X: 1})...)
	}
	if g.has(p.below()) {
		line(low, corner(high.X, low.Y), cutLine, 4, 2)
		items = append(items, halves(t, s.marks(p.below(), false), geometry.Vec2{Y: 1})...)
	}
	if right := p.right(); g.has(right) {
		x := high.X - overlap
		line(corner(x, low.Y), corner(x, high.Y), layLine, 0.4, 1.6)
		items = append(items, halves(t, s.marks(p, true), geometry.Vec2{X: -1})...)
		items = append(items, m.lies(s.name(right), t.at(corner(x+overlap/2, part.Center().Y)), quarterTurn)...)
	}
	if above := p.above(); g.has(above) {
		y := high.Y - overlap
		line(corner(low.X, y), corner(high.X, y), layLine, 0.4, 1.6)
		items = append(items, halves(t, s.marks(p, false), geometry.Vec2{Y: -1})...)
		items = append(items, m.lies(s.name(above), t.at(corner(part.Center().X, y+overlap/2)), 0)...)
	}
	return items
}

// halves draws the halves of marks that point into a tile.
func halves(t transfer, marks []mark, inward geometry.Vec2) []report.Item {
	var items []report.Item
	for _, mark := range marks {
		base, side := t.at(mark.at), inward.Left().Scale(markBase/2)
		tip := base.Add(inward.Scale(markHeight))
		label := scene.Label{
			Text: strconv.Itoa(mark.number), Size: markNumber, Bold: true, Anchor: scene.Middle,
			At: tip.Add(inward.Scale(markNumber * 0.9)).Sub(geometry.Vec2{Y: markNumber * 0.35}),
		}
		items = append(items,
			report.Shape{Path: geometry.Polygon(base.Add(side), base.Sub(side), tip), Fill: markColour},
			report.Shape{Path: boxOf(label).path(), Fill: white},
			report.Text{Text: label.Text, At: label.At, Size: markNumber, Bold: true, Colour: markColour, Align: scene.Middle},
		)
	}
	return items
}
