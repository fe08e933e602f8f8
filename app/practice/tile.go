package practice

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
	"gussetwright/render/scene"
)

const quarterTurn = math.Pi / 2

// barLength is the length in mm of the bar by which a print is checked.
const barLength = 100.0

var (
	dark  = report.RGB(34, 38, 42)
	faint = report.RGB(96, 104, 112)
)

// tile returns the page of a tile.
func (m maker) tile(s *sheet, number int) report.Page {
	g, p := &s.grid, s.grid.place(number)
	part := g.part(p)
	t := transfer{scale: 1, origin: g.window.Min.Sub(part.Min)}
	seen := append(t.items(s.drawing, part), m.joints(s, p, t)...)
	items := []report.Item{report.Window{Rect: g.window, Items: seen}}
	return report.Page{Width: g.paper.Width, Height: g.paper.Height, Items: append(items, m.foot(s, p)...)}
}

// lies says which tile is to be laid on a strip.
func (m maker) lies(over string, middle geometry.Vec2, turn float64) []report.Item {
	const size = 2.6
	label := scene.Label{
		Text: m.tell(phrase.New("%s is laid over this strip", over)), Size: size, Anchor: scene.Middle, Turn: turn,
		At: middle.Add(geometry.Polar(size*0.35, turn-quarterTurn)),
	}
	return []report.Item{
		report.Shape{Path: boxOf(label).path(), Fill: white},
		report.Text{Text: label.Text, At: label.At, Size: size, Colour: guide, Align: scene.Middle, Turn: turn},
	}
}

// foot returns what stands below the drawing: the bar, the name of the tile, and how it
// is printed and joined.
func (m maker) foot(s *sheet, p place) []report.Item {
	low := geometry.Vec2{X: s.grid.window.Min.X, Y: s.grid.window.Min.Y - footer}
	items := m.bar(low.Add(geometry.Vec2{Y: 1}))
	const nameSize, textSize, gap = 7.0, 2.5, 5.0
	name := report.Style{Size: nameSize, Bold: true, Colour: dark}
	right := s.grid.window.Max.X
	items = append(items, report.Text{Text: s.name(p), At: geometry.Vec2{X: right, Y: low.Y + 2}, Size: nameSize, Bold: true, Colour: dark, Align: scene.End})
	left := low.X + barLength + gap
	words := report.Style{Size: textSize, Colour: dark, Leading: 1.25}
	lines := words.Lines(m.footWords(s, p), right-name.Advance(s.name(p))-gap-left)
	for i, line := range lines {
		at := geometry.Vec2{X: left, Y: low.Y + footer - 1.4*textSize - words.Height(i)}
		items = append(items, report.Text{Text: line, At: at, Size: textSize, Colour: dark})
	}
	return items
}

func (m maker) footWords(s *sheet, p place) string {
	text := m.title()
	if name := m.pieceName(s.piece); name != "" {
		text += ", " + name
	}
	text += ". " + m.say("Print at actual size, not fitted to the page.")
	left, below := p.left(), p.below()
	switch hasLeft, hasBelow := s.grid.has(left), s.grid.has(below); {
	case hasLeft && hasBelow:
		text += " " + m.tell(phrase.New("Cut along the dashed lines and lay it over %s and %s.", s.name(left), s.name(below)))
	case hasLeft:
		text += " " + m.tell(phrase.New("Cut along the dashed line and lay it over %s.", s.name(left)))
	case hasBelow:
		text += " " + m.tell(phrase.New("Cut along the dashed line and lay it over %s.", s.name(below)))
	}
	return text
}

// bar returns a bar of 100 mm from its lower left corner on, with its length above it.
func (m maker) bar(at geometry.Vec2) []report.Item {
	const high, size = 2.0, 2.5
	line := report.Line{Width: 0.25, Colour: dark}
	items := []report.Item{report.Rule{From: at, To: at.Add(geometry.Vec2{X: barLength}), Line: line}}
	for k := range 11 {
		tick := high / 2
		if k%5 == 0 {
			tick = high
		}
		foot := at.Add(geometry.Vec2{X: barLength / 10 * float64(k)})
		if k == 0 || k == 10 { // the outer edge of the line, not its middle, is the end
			foot.X += map[int]float64{0: 0.125, 10: -0.125}[k]
		}
		items = append(items, report.Rule{From: foot, To: foot.Add(geometry.Vec2{Y: tick}), Line: line})
	}
	length := "100\u00a0mm"
	if m.Unit != geometry.Millimetre {
		length += " = " + m.length(barLength)
	}
	text := m.tell(phrase.New("Check: this bar must be %s long.", length)) + " (100\u00a0%)" // as printers call it
	return append(items, report.Text{Text: text, At: at.Add(geometry.Vec2{Y: high + 1.2}), Size: size, Colour: dark})
}
