package practice

import (
	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/dieline"
	"gussetwright/render/report"
	"gussetwright/render/scene"
)

// cover returns the page, or pages, before the tiles: what this is, the map, how the
// tiles are printed and joined, and what the lines mean.
func (m maker) cover(sheets []sheet) ([]report.Page, error) {
	following := len(sheets)
	for i := range sheets {
		following += sheets[i].grid.count()
	}
	column := report.NewColumn(report.Layout{
		Paper: m.Paper.Size(), Margin: max(m.Margin, 16*m.Paper.growth()), Ink: dark, Size: 3.4 * m.Paper.growth(),
		Footer: m.title() + "  ·  " + m.say("Practice blank"),
		Number: func(page, of int) string { return m.tell(phrase.New("Page %d of %d", page, of+following)) },
	})
	column.Write(report.Block{Kind: report.Note, Text: m.say("Practice blank")})
	column.Heading(1, m.title())
	column.Rows(m.sizes(sheets)...)
	column.Heading(2, m.say("Map of the tiles"))
	m.maps(column, sheets)
	column.Heading(2, m.say("How to print and join it"))
	column.Steps(1, m.steps(sheets)...)
	column.Heading(2, m.say("What the lines mean"))
	m.legend(column)
	return column.Pages()
}

// sizes returns what is to be known in numbers.
func (m maker) sizes(sheets []sheet) []report.Row {
	b := m.Snapshot.Spec.Body
	g := &sheets[0].grid
	piece := &m.Snapshot.Blank.Pieces[0]
	count := 0
	for i := range sheets {
		count += sheets[i].grid.count()
	}
	way := phrase.Word("upright")
	if g.paper.Width > g.paper.Height {
		way = "lying"
	}
	blanks := m.size(piece.Width, piece.Height)
	if len(sheets) > 1 {
		blanks = m.tell(phrase.New("%d pieces of %s", len(sheets), blanks))
	}
	return []report.Row{
		{Label: m.say("Bag"), Value: m.tell(phrase.New("width %s, gusset %s, height %s", m.length(b.Width), m.length(b.Gusset), m.length(b.Height)))},
		{Label: m.say("Blank"), Value: blanks},
		{Label: m.say("Tiles"), Value: m.tell(phrase.New("%d pages %s, %s; each shows %s, neighbours overlap by %s", count, string(m.Paper), way, m.size(g.window.Width(), g.window.Height()), m.length(overlap)))},
		{Label: m.say("Printer margin"), Value: m.tell(phrase.New("%s on all sides stay white", m.length(m.Margin)))},
	}
}

// steps says how the tiles become a blank.
func (m maker) steps(sheets []sheet) []string {
	steps := []string{
		m.say("Print all pages at actual size, not fitted to the page, on one side, on the stiffest paper that the printer takes. Measure the bar at the foot of a tile."),
	}
	joined := false
	for i := range sheets {
		joined = joined || sheets[i].grid.count() > 1
	}
	if joined {
		steps = append(steps,
			m.say("Cut each tile along its dashed lines, on the left and at the foot, with a knife along a ruler. Cut away from your hand."),
			m.say("Begin in the lower left corner. Lay each tile over its neighbours on the left and below, up to the dotted lines, so that the half diamonds with the same number meet. Glue it down on the overlap."),
		)
	}
	cut := phrase.Word("Cut out the blank along the solid black lines.")
	if len(m.Snapshot.Blank.Pieces[0].Holes) > 0 {
		cut = "Cut out the blank along the solid black lines and punch the holes."
	}
	return append(steps,
		m.say(cut),
		m.say("Leave the lines up and press in every crease along its line with a bone folder and a ruler. Bend valleys once both ways, since a crease folds best away from the side it was pressed on."),
		m.say("Turn the blank over and fold it. The side with the lines is the print side, the outside of the bag."),
	)
}

// Of the map and the legend, in mm on the smaller paper of a series.
const (
	mapHeight   = 82.0
	mapGap      = 8.0
	sampleWide  = 22.0
	sampleRow   = 5.2
	sampleWords = 3.2
)

// maps draws the pieces side by side with the tiles over them.
func (m maker) maps(column *report.Column, sheets []sheet) {
	area := column.Reserve(mapHeight * m.Paper.growth())
	count := float64(len(sheets))
	width := (area.Width() - mapGap*(count-1)) / count
	for i := range sheets {
		room := geometry.RectAt(area.Min.X+float64(i)*(width+mapGap), area.Min.Y, width, area.Height())
		column.Add(m.tileMap(&sheets[i], room)...)
	}
}

func (m maker) tileMap(s *sheet, room geometry.Rect) []report.Item {
	g := &s.grid
	all := g.part(place{0, g.rows - 1}).Union(g.part(place{g.columns - 1, 0}))
	letters := 3.2 * m.Paper.growth()
	if name := m.pieceName(s.piece); name != "" {
		room.Max.Y -= letters + 1.8
	}
	scale := min(room.Width()/all.Width(), room.Height()/all.Height())
	t := transfer{scale: scale}
	t.origin = room.Center().Sub(all.Center().Scale(scale))
	var items []report.Item
	if name := m.pieceName(s.piece); name != "" {
		top := geometry.Vec2{X: room.Center().X, Y: t.at(all.Max).Y + 1.5}
		items = append(items, report.Text{Text: name, At: top, Size: letters, Colour: faint, Align: scene.Middle})
	}
	items = append(items, t.items(m.plain(s), all)...)
	for number := range g.count() {
		p := g.place(number)
		part := g.part(p)
		box := geometry.Rect{Min: t.at(part.Min), Max: t.at(part.Max)}
		items = append(items, report.Box{Rect: box, Line: report.Line{Width: 0.25, Colour: markColour}})
		size := min(9*m.Paper.growth(), box.Height()/3)
		at := box.Center().Sub(geometry.Vec2{Y: size * 0.35})
		items = append(items, report.Text{Text: s.name(p), At: at, Size: size, Bold: true, Colour: markColour, Align: scene.Middle})
	}
	return items
}

// plain returns the cuts and creases of a piece alone.
func (m maker) plain(s *sheet) scene.Drawing {
	d := s.drawing
	d.Items = nil
	for _, item := range s.drawing.Items {
		stroke, is := item.(scene.Stroke)
		if !is || stroke.Role < scene.Creasing {
			continue
		}
		stroke.Dash = nil // too fine to be seen
		stroke.Width = 0.13
		if stroke.Role == scene.Cutting {
			stroke.Width = 0.3
		}
		d.Items = append(d.Items, stroke)
	}
	return d
}

// legend explains the lines by samples, two side by side.
func (m maker) legend(column *report.Column) {
	rows := []struct {
		role scene.Role
		text string
	}{
		{scene.Cutting, m.say("cut")},
		{scene.Creasing, m.say("mountain: fold away from the print side")},
		{scene.ReverseCreasing, m.say("valley: fold toward the print side")},
		{scene.Gluing, m.say("glued on the print side")},
	}
	grown := m.Paper.growth()
	screen := dieline.Screen{Letter: fullLetter, Voice: m.voice()}
	for start := 0; start < len(rows); start += 2 {
		area := column.Reserve(sampleRow * grown)
		for i, row := range rows[start:min(start+2, len(rows))] {
			left := area.Min.X + float64(i)*area.Width()/2
			box := geometry.RectAt(left, area.Min.Y, sampleWide*grown, area.Height())
			sample := screen.Sample(row.role, box)
			column.Add(transfer{scale: 1}.items(sample, box)...)
			size := sampleWords * grown
			at := geometry.Vec2{X: left + box.Width() + size, Y: area.Center().Y - size*0.35}
			column.Add(report.Text{Text: row.text, At: at, Size: size, Colour: dark})
		}
	}
}
