package practice

import (
	"slices"

	"gussetwright/geometry"
	"gussetwright/render/dieline"
	"gussetwright/render/report"
	"gussetwright/render/scene"
)

// Heights of the lettering on paper, in mm.
const (
	fullLetter    = 4.0
	reducedLetter = 2.4
)

// edge is left free around a piece at full size, in mm, so that no line is cut in half.
const edge = 2.0

// fullSize returns the drawing of a piece to be cut out and folded: without what only
// matters for printing, and without the dimensions around it.
func (m maker) fullSize(piece int) scene.Drawing {
	d := m.drawn(piece, fullLetter)
	d.Media = d.Trim.Inset(-edge)
	d.Items = slices.DeleteFunc(d.Items, func(item scene.Item) bool {
		within := d.Media.Contains(bounds(item).Min) && d.Media.Contains(bounds(item).Max)
		return forPrinting(item) || !within
	})
	d.Items = append(d.Items, m.labels(&m.Snapshot.Blank.Pieces[piece], piece, d, fullLetter*labelSize)...)
	return d
}

// measured returns the drawing of a piece with its dimensions, in lettering that has the
// wanted height once it is reduced.
func (m maker) measured(piece int, reduction float64) scene.Drawing {
	letter := reducedLetter * reduction
	d := m.drawn(piece, letter)
	d.Items = slices.DeleteFunc(d.Items, forPrinting)
	d.Items = append(d.Items, m.labels(&m.Snapshot.Blank.Pieces[piece], piece, d, letter*labelSize)...)
	return d
}

// drawn returns the drawing of a piece, its measures in the unit of the order.
func (m maker) drawn(piece int, letter float64) scene.Drawing {
	return dieline.Screen{Letter: letter, Unit: m.Unit, Voice: m.voice()}.Draw(&m.Snapshot.Blank, piece)
}

// forPrinting tells whether an item matters for printing alone.
func forPrinting(item scene.Item) bool {
	return slices.Contains([]scene.Role{scene.Artwork, scene.Bleed, scene.ContentArea}, item.Layer())
}

// bounds returns a box around an item.
func bounds(item scene.Item) geometry.Rect {
	switch item := item.(type) {
	case scene.Stroke:
		return item.Path.Bounds()
	case scene.Fill:
		return item.Path.Bounds()
	case scene.Label:
		return boxOf(item).bounds()
	}
	return geometry.Rect{}
}

// transfer carries a drawing to paper.
type transfer struct {
	scale  float64       // mm on paper for each mm of the drawing
	origin geometry.Vec2 // where the point (0, 0) of the drawing lies
}

func (t transfer) at(p geometry.Vec2) geometry.Vec2 { return t.origin.Add(p.Scale(t.scale)) }

func (t transfer) path(path geometry.Path) geometry.Path {
	moved := geometry.Path{Closed: path.Closed, Vertices: make([]geometry.Vertex, len(path.Vertices))}
	for i, v := range path.Vertices {
		moved.Vertices[i] = geometry.Vertex{Vec2: t.at(v.Vec2), Bulge: v.Bulge}
	}
	return moved
}

// items returns what of a drawing reaches into a part of it, in the order of the roles.
// Lines keep their width on paper.
func (t transfer) items(d scene.Drawing, part geometry.Rect) []report.Item {
	groups := d.ByRole()
	var items []report.Item
	for _, role := range scene.Roles() {
		for _, item := range groups[role] {
			box := bounds(item).Inset(-1) // of what has no breadth but its line
			if box.Max.X < part.Min.X || box.Min.X > part.Max.X || box.Max.Y < part.Min.Y || box.Min.Y > part.Max.Y {
				continue
			}
			items = append(items, t.item(item)...)
		}
	}
	return items
}

// item returns what an item looks like on paper. Hatching is left out behind letters.
func (t transfer) item(item scene.Item) []report.Item {
	colour := colourOf(item.Layer())
	switch item := item.(type) {
	case scene.Stroke:
		dash := make([]float64, len(item.Dash))
		for i, length := range item.Dash {
			dash[i] = length * t.scale
		}
		return []report.Item{report.Shape{Path: t.path(item.Path), Line: report.Line{Width: item.Width, Colour: colour, Dash: dash}}}
	case scene.Fill:
		return []report.Item{report.Shape{Path: t.path(item.Path), Fill: colour}}
	case scene.Label:
		text := report.Text{
			Text: item.Text, At: t.at(item.At), Size: item.Size * t.scale, Bold: item.Bold,
			Colour: colour, Align: item.Anchor, Turn: item.Turn,
		}
		if !isFold(item.Role) {
			return []report.Item{text}
		}
		return []report.Item{report.Shape{Path: t.path(boxOf(item).path()), Fill: white}, text}
	}
	return nil
}

func isFold(role scene.Role) bool { return role == scene.Creasing || role == scene.ReverseCreasing }

// colourOf returns the colour of a role on paper: what is cut is black.
func colourOf(role scene.Role) report.Colour {
	if role == scene.Cutting || role == scene.Punching {
		return report.RGB(0, 0, 0)
	}
	c := role.Style().Screen
	return report.RGB(c.R, c.G, c.B)
}
