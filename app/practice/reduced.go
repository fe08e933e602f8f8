package practice

import (
	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
	"gussetwright/render/scene"
)

// Of the reduced page, in mm.
const (
	header    = 13.0
	scaleStep = 0.5 // of the number by which lengths are divided
)

// reduced returns a page with the whole piece, at the greatest of the scales 1 : 1,
// 1 : 1.5, 1 : 2 and so on at which it fits.
func (m maker) reduced(piece int) report.Page {
	for divisor := 1.0; ; divisor += scaleStep {
		d := m.measured(piece, divisor)
		for _, paper := range []report.Paper{m.Paper.Size(), m.Paper.Size().Landscape()} {
			room := geometry.RectAt(0, 0, paper.Width, paper.Height).Inset(m.Margin)
			room.Min.Y += footer
			room.Max.Y -= header
			if d.Media.Width()/divisor <= room.Width() && d.Media.Height()/divisor <= room.Height() {
				return m.reducedOn(paper, room, piece, d, divisor)
			}
		}
	}
}

func (m maker) reducedOn(paper report.Paper, room geometry.Rect, piece int, d scene.Drawing, divisor float64) report.Page {
	t := transfer{scale: 1 / divisor}
	t.origin = room.Center().Sub(d.Media.Center().Scale(t.scale))
	number := m.voice().Number(divisor, 1)
	title := m.title()
	if name := m.pieceName(piece); name != "" {
		title += ", " + name
	}
	heading := m.tell(phrase.New("%s, reduced to 1 : %s", title, number))
	note := m.tell(phrase.New("Every length is divided by %s. Print at actual size, not fitted to the page.", number))
	style := report.Style{Size: 5, Bold: true, Colour: dark}
	lines := style.Lines(heading, room.Width())
	items := []report.Item{report.Window{Rect: room, Items: t.items(d, d.Media)}}
	top := room.Max.Y + header
	items = append(items,
		report.Text{Text: lines[0], At: geometry.Vec2{X: room.Min.X, Y: top - 5}, Size: 5, Bold: true, Colour: dark},
		report.Text{Text: note, At: geometry.Vec2{X: room.Min.X, Y: top - 10}, Size: 3, Colour: faint},
	)
	items = append(items, m.bar(geometry.Vec2{X: room.Min.X, Y: room.Min.Y - footer + 1})...)
	return report.Page{Width: paper.Width, Height: paper.Height, Items: items}
}
