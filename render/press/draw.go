package press

import (
	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/scene"
)

// Draw returns a drawing of each form at true size. The date stands in the title block
// as it is given; print may be nil for bare paper. Texts and numbers are in a voice; nil
// is English.
func Draw(forms []Form, date string, print Print, voice scene.Voice) []scene.Drawing {
	stock := newStock(print)
	drawings := make([]scene.Drawing, len(forms))
	for i := range forms {
		drawings[i] = draw(&forms[i], date, stock, scene.OrEnglish(voice))
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
	voice  scene.Voice
	u      float64
	spread spread
	items  []scene.Item
	taken  []geometry.Rect // where marks must not stand
	notes  []phrase.Phrase // what had to be left out
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

func draw(form *Form, date string, stock *stock, voice scene.Voice) scene.Drawing {
	paper := geometry.RectAt(0, 0, form.Sheet.Width, form.Sheet.Height)
	d := drafter{Form: form, frame: frameOf(form.Sheet), stock: stock, date: date, voice: voice, u: letterHeight(max(paper.Width(), paper.Height()))}
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
	name := d.Form.Title
	if name == "" {
		name = d.voice.Word("Paper carrier bag")
	}
	if d.Part != "" {
		name += ", " + d.voice.Word(d.Part)
	}
	return name + ", " + d.voice.Word("press sheet")
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
