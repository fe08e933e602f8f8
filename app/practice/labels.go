package practice

import (
	"math"

	"gussetwright/app/creases"
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// Of the labels along creases.
const (
	labelSize  = 0.7  // of the other lettering
	labelGap   = 0.3  // of the label, between it and its crease
	labelEvery = 30.0 // times its height there is one along a crease
)

// labels returns what is written along the creases of a piece: name and fold where there
// is room, else the fold alone. They keep clear of other lines and lettering.
func (m maker) labels(piece *blank.Piece, index int, d scene.Drawing, size float64) []scene.Item {
	l := lettering{size: size}
	for _, item := range d.Items {
		if label, is := item.(scene.Label); is {
			l.taken = append(l.taken, boxOf(label))
		}
	}
	var all []fold.Crease
	for _, line := range piece.Lines {
		l.lines = append(l.lines, line.Edge)
		if line.Kind == blank.Crease {
			all = append(all, fold.Crease{Piece: index, Edge: line.Edge, Role: line.Role, Fold: line.Fold})
		}
	}
	for _, hole := range piece.Holes {
		across := geometry.Vec2{X: hole.Diameter / 2}
		l.lines = append(l.lines, geometry.Edge{From: hole.Center.Sub(across), To: hole.Center.Add(across)})
	}
	for _, crease := range creases.Joined(all) {
		role := scene.Creasing
		if crease.Fold == blank.Valley {
			role = scene.ReverseCreasing
		}
		short := m.say(creases.Fold(crease.Fold))
		long := m.say(creases.Name(crease.Role)) + ", " + short
		l.along(crease.Edge, role, long, short)
	}
	return l.items
}

// lettering gathers labels along lines.
type lettering struct {
	size  float64
	lines []geometry.Edge
	taken []textBox
	items []scene.Item
}

// along writes the first of the texts that finds room, again and again along a crease.
func (l *lettering) along(crease geometry.Edge, role scene.Role, texts ...string) {
	length := crease.Length()
	for _, text := range texts {
		width := typeface.Advance(text, l.size, false)
		count := max(math.Round(length/(labelEvery*l.size)), 1)
		written := false
		for k := range int(count) {
			middle := length * (float64(k) + 0.5) / count
			written = l.near(crease, middle, length/count, width, role, text) || written
		}
		if written {
			return
		}
	}
}

// near writes a text about a point of a crease, where it finds room within a reach.
func (l *lettering) near(crease geometry.Edge, middle, reach, width float64, role scene.Role, text string) bool {
	for _, shift := range []float64{0, 0.2, -0.2, 0.35, -0.35} {
		at := middle + shift*reach
		if at-width/2 < l.size/2 || at+width/2 > crease.Length()-l.size/2 {
			continue
		}
		for _, side := range []float64{1, -1} {
			label := l.label(crease, at, side, role, text)
			if box := boxOf(label); l.free(box) {
				l.items = append(l.items, label)
				l.taken = append(l.taken, box)
				return true
			}
		}
	}
	return false
}

// label returns a text beside a crease, at a distance along it, on its left for side 1
// and on its right for −1, to be read from below or from the right.
func (l *lettering) label(crease geometry.Edge, at, side float64, role scene.Role, text string) scene.Label {
	along := crease.To.Sub(crease.From).Unit()
	point := crease.From.Add(along.Scale(at))
	if turn := along.Angle(); turn > math.Pi/2+1e-9 || turn <= -math.Pi/2+1e-9 {
		along, side = along.Scale(-1), -side
	}
	rise := labelGap * l.size
	if side < 0 {
		rise = -(labelGap + capitals) * l.size
	}
	return scene.Label{
		Role: role, Text: text, At: point.Add(along.Left().Scale(rise)), Size: l.size,
		Anchor: scene.Middle, Turn: along.Angle(),
	}
}

func (l *lettering) free(box textBox) bool {
	for _, line := range l.lines {
		if box.crosses(line) {
			return false
		}
	}
	for _, other := range l.taken {
		if box.meets(other) {
			return false
		}
	}
	return true
}

// Of the em square: how high capitals are, and how far letters reach below the line.
const (
	capitals   = 0.72
	descenders = 0.22
)

// textBox is an upright box that was turned with the text in it.
type textBox struct {
	at     geometry.Vec2 // the middle of the baseline
	along  geometry.Vec2
	across geometry.Rect // from at, with the text lying level
}

func boxOf(l scene.Label) textBox {
	width, along := typeface.Advance(l.Text, l.Size, l.Bold), geometry.Polar(1, l.Turn)
	at := l.At
	switch l.Anchor {
	case scene.Start:
		at = at.Add(along.Scale(width / 2))
	case scene.End:
		at = at.Sub(along.Scale(width / 2))
	}
	return textBox{at, along, geometry.RectAt(-width/2, -descenders*l.Size, width, (capitals+descenders)*l.Size)}
}

// level returns where a point lies when the box is turned level.
func (b textBox) level(p geometry.Vec2) geometry.Vec2 {
	d := p.Sub(b.at)
	return geometry.Vec2{X: d.Dot(b.along), Y: d.Dot(b.along.Left())}
}

func (b textBox) corners() [4]geometry.Vec2 {
	low, high := b.across.Min, b.across.Max
	var corners [4]geometry.Vec2
	for i, c := range [4]geometry.Vec2{low, {X: high.X, Y: low.Y}, high, {X: low.X, Y: high.Y}} {
		corners[i] = b.at.Add(b.along.Scale(c.X)).Add(b.along.Left().Scale(c.Y))
	}
	return corners
}

func (b textBox) path() geometry.Path {
	corners := b.corners()
	return geometry.Polygon(corners[:]...)
}

func (b textBox) bounds() geometry.Rect { return b.path().Bounds() }

// crosses tells whether a line runs through the box; arcs are taken as their chords.
func (b textBox) crosses(line geometry.Edge) bool {
	_, _, hit := b.across.Through(b.level(line.From), b.level(line.To))
	return hit
}

// meets tells whether the box and another may overlap: no side of either parts them.
func (b textBox) meets(other textBox) bool { return !b.parts(other) && !other.parts(b) }

// parts tells whether all of another box lies beyond one of the sides.
func (b textBox) parts(other textBox) bool {
	var box geometry.Rect
	for i, corner := range other.corners() {
		p := b.level(corner)
		if i == 0 {
			box = geometry.Rect{Min: p, Max: p}
		}
		box = box.Union(geometry.Rect{Min: p, Max: p})
	}
	return box.Min.X >= b.across.Max.X || box.Max.X <= b.across.Min.X || box.Min.Y >= b.across.Max.Y || box.Max.Y <= b.across.Min.Y
}
