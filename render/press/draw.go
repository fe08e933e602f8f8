package press

import (
	"math"
	"slices"
	"strconv"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// Draw returns a drawing of each form at true size. The date stands in the title block
// as it is given; print may be nil for bare paper.
func Draw(forms []Form, date string, print Print) []scene.Drawing {
	stock := newStock(print)
	drawings := make([]scene.Drawing, len(forms))
	for i := range forms {
		drawings[i] = draw(&forms[i], date, stock)
	}
	return drawings
}

// drafter draws one form. Lettering and spacing are measured in multiples of the
// letter height u.
type drafter struct {
	*Form
	frame
	stock  *stock
	date   string
	u      float64
	spread spread
	items  []scene.Item
	taken  []geometry.Rect // where marks must not stand
	notes  []string        // what had to be left out
}

// letterHeight returns the height of the lettering in mm: 3.5, 5 or 7, steps of the
// series in ISO 3098 (values from memory).
func letterHeight(size float64) float64 {
	switch {
	case size <= 500:
		return 3.5
	case size <= 1100:
		return 5
	}
	return 7
}

func draw(form *Form, date string, stock *stock) scene.Drawing {
	paper := geometry.RectAt(0, 0, form.Sheet.Width, form.Sheet.Height)
	d := drafter{Form: form, frame: frameOf(form.Sheet), stock: stock, date: date, u: letterHeight(max(paper.Width(), paper.Height()))}
	d.spread = spreadOf(form, d.rect(0, d.length, d.Sheet.Gripper, d.depth))
	d.taken = append(d.taken, d.spread.shown...)
	d.blanks()
	d.numbers()
	d.outline(scene.SheetEdge, paper)
	d.gripper()
	d.registerMarks()
	d.colourBar()
	d.trimMarks()
	d.lays()
	d.dimensions()
	d.titleBlock()
	return scene.Drawing{
		Title: d.title(), Media: wholeMillimetres(d.extent().Union(paper).Inset(-2 * d.u)),
		Bleed: paper, Trim: paper, Items: d.items,
	}
}

func (d *drafter) title() string {
	if d.Form.Title == "" {
		return "Press sheet"
	}
	return d.Form.Title + ", press sheet"
}

// blanks places artwork and die of all blanks: those of one kind together.
func (d *drafter) blanks() {
	places := map[*scene.Part][]scene.Place{}
	var order []*scene.Part
	add := func(part *scene.Part, place scene.Place) {
		if part == nil {
			return
		}
		if places[part] == nil {
			order = append(order, part)
		}
		places[part] = append(places[part], place)
	}
	for i, laid := range d.Blanks {
		of, at := source{laid.Blank, laid.Piece}, laid.Motion()
		add(d.stock.printed(ink{of, d.within(i)}), scene.Place{At: at, Window: d.spread.shown[i]})
		for _, part := range d.stock.die(of) {
			add(part, scene.Place{At: at})
		}
	}
	for _, part := range order {
		d.add(scene.Repeated{Part: part, Places: places[part]})
	}
}

// within returns to which distance from its outline the ink of a blank is held: half
// the gap where a neighbour reaches into its box, else negative for no such bound.
func (d *drafter) within(i int) float64 {
	if !d.spread.nested[i] {
		return -1
	}
	return min(d.Blanks[i].Blank.Spec.Print.Bleed, d.Sheet.Gap/2)
}

// numbers writes into each blank its number on the sheet, in the middle of its widest
// panel and upright as the blank is; and which piece it is where there are several.
func (d *drafter) numbers() {
	kinds, several := map[source]bool{}, d.severalBags()
	for _, laid := range d.Blanks {
		kinds[source{laid.Blank, laid.Piece}] = true
	}
	for i, laid := range d.Blanks {
		text := strconv.Itoa(i + 1)
		if len(kinds) > 1 {
			text += " " + kindName(laid, several)
		}
		middle, size := laid.Blank.Pieces[laid.Piece].Box().Center(), 2*d.u
		if panel, found := widest(laid.Blank, laid.Piece); found {
			middle = panel.Box.Center()
			size = min(size, size*0.9*panel.Box.Width()/typeface.Advance(text, size, true))
		}
		d.centred(scene.PieceNumbers, text, laid.Motion().At(middle), size, float64(laid.At.Turn)*math.Pi/180, true)
	}
}

// severalBags tells whether the sheet holds more than one bag.
func (d *drafter) severalBags() bool {
	return slices.ContainsFunc(d.Blanks, func(l Laid) bool { return l.Blank != d.Blanks[0].Blank })
}

// kindName names a piece, and its bag where the sheet holds several.
func kindName(laid Laid, several bool) string {
	piece := laid.Blank.Pieces[laid.Piece].Name
	switch {
	case several && len(laid.Blank.Pieces) > 1:
		return laid.Blank.Spec.Name + ", " + piece
	case several:
		return laid.Blank.Spec.Name
	}
	return piece
}

// widest returns the face of a piece.
func widest(b *blank.Blank, piece int) (blank.Panel, bool) {
	face, found := b.Pieces[piece].Panel("front")
	if !found {
		face, found = b.Pieces[piece].Panel("back")
	}
	return face, found
}
