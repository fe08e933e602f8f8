// Package dieline draws the blank of a bag as a technical drawing: cuts, creases,
// holes, glue areas, bleed and safe areas, with dimensions, names, a legend and a
// title block. The drawing is true to size; files and pictures are made from it.
package dieline

import (
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// Sheets returns one drawing for each piece of the bag, in English. The date stands in
// the title block as it is given.
func Sheets(laid *blank.Blank, date string) []scene.Drawing { return SheetsIn(laid, date, nil) }

// SheetsIn returns what Sheets does, with texts and numbers in a voice; nil is English.
func SheetsIn(laid *blank.Blank, date string, voice scene.Voice) []scene.Drawing {
	drawings := make([]scene.Drawing, len(laid.Pieces))
	for i := range laid.Pieces {
		drawings[i] = draw(laid, i, date, scene.OrEnglish(voice))
	}
	return drawings
}

// drafter draws one piece. All lettering and spacing is measured in multiples of
// the letter height u.
type drafter struct {
	laid  *blank.Blank
	spec  bag.Spec
	piece *blank.Piece
	u     float64
	items []scene.Item
	// lettering is where the names of panels stand, and on a screen every label;
	// hatching keeps clear of it.
	lettering []geometry.Rect
	voice     scene.Voice
	screen    *Screen // nil for a drawing that goes into files
	outside   bool    // the blank is printed: nothing is written on it
}

// letterHeight returns the height of the lettering in mm for a drawing of this
// size: 3.5, 5 or 7, steps of the series in ISO 3098 (values from memory).
func letterHeight(piece *blank.Piece) float64 {
	switch size := max(piece.Width, piece.Height); {
	case size <= 400:
		return 3.5
	case size <= 1000:
		return 5
	}
	return 7
}

func draw(laid *blank.Blank, index int, date string, voice scene.Voice) scene.Drawing {
	piece := &laid.Pieces[index]
	d := drafter{laid: laid, spec: laid.Spec, piece: piece, u: letterHeight(piece), voice: voice, outside: printed(&laid.Spec)}
	d.items = make([]scene.Item, 0, 256)
	d.names()
	d.glue()
	d.zones()
	d.lines()
	d.holes()
	d.grain()
	bottom := d.dimensions()
	frame := d.titleBlock(bottom, date)
	media := wholeMillimetres(frame.Union(d.extent()).Inset(-2 * d.u))
	return scene.Drawing{
		Title: d.title(),
		Media: media,
		Bleed: piece.Box().Inset(-laid.Spec.Print.Bleed),
		Trim:  piece.Box(),
		Items: d.items,
	}
}

// wholeMillimetres grows a page to whole millimetres, so that its size and the
// place of the piece on it are round numbers in every file.
func wholeMillimetres(r geometry.Rect) geometry.Rect {
	r.Min.X, r.Min.Y = math.Floor(r.Min.X), math.Floor(r.Min.Y)
	r.Max.X, r.Max.Y = math.Ceil(r.Max.X), math.Ceil(r.Max.Y)
	return r
}

// title names the drawing: the project and, with two pieces, which one it is.
func (d *drafter) title() string {
	name := d.spec.Name
	if name == "" {
		name = d.voice.Word("Paper carrier bag")
	}
	if len(d.laid.Pieces) > 1 {
		return name + ", " + d.voice.Word(phrase.Word(d.piece.Name))
	}
	return name
}

func (d *drafter) add(item scene.Item) { d.items = append(d.items, item) }

// line draws a straight thin line in the width of its role.
func (d *drafter) line(role scene.Role, a, b geometry.Vec2) {
	path := geometry.Path{Vertices: []geometry.Vertex{{Vec2: a}, {Vec2: b}}}
	d.add(scene.Stroke{Role: role, Path: path, Width: role.Style().Width})
}

// write draws a label.
func (d *drafter) write(role scene.Role, text string, at geometry.Vec2, anchor scene.Anchor, turn float64) {
	d.add(scene.Label{Role: role, Text: text, At: at, Size: d.u, Anchor: anchor, Turn: turn})
}

// note writes a label to the right of a point; on a screen only where it runs into
// no other.
func (d *drafter) note(role scene.Role, text string, at geometry.Vec2) {
	if d.screen != nil {
		d.place(scene.Label{Role: role, Text: text, At: at, Size: d.u})
		return
	}
	d.write(role, text, at, scene.Start, 0)
}

// textWidth returns the length of a text in the height of the lettering.
func (d *drafter) textWidth(text string) float64 { return typeface.Advance(text, d.u, false) }

// extent returns the box round everything drawn so far.
func (d *drafter) extent() geometry.Rect {
	box := d.piece.Box()
	for _, item := range d.items {
		switch item := item.(type) {
		case scene.Stroke:
			box = box.Union(item.Path.Bounds())
		case scene.Fill:
			box = box.Union(item.Path.Bounds())
		case scene.Label:
			box = box.Union(labelBox(item))
		}
	}
	return box
}

// labelBox returns a box that surely holds the label, whichever way it is turned.
func labelBox(l scene.Label) geometry.Rect {
	width := typeface.Advance(l.Text, l.Size, l.Bold)
	along := geometry.Polar(1, l.Turn)
	start := l.At.Sub(along.Scale(width * map[scene.Anchor]float64{scene.Start: 0, scene.Middle: 0.5, scene.End: 1}[l.Anchor]))
	end := start.Add(along.Scale(width))
	up := along.Left().Scale(l.Size)
	return geometry.Polygon(start, end, end.Add(up), start.Add(up)).Bounds()
}
