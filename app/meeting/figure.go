package meeting

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/foldedpane"
	"gussetwright/app/latest"
	"gussetwright/app/paneview"
	"gussetwright/geometry/fold"
	"gussetwright/render/solid"
)

// order asks for a picture of a figure.
type order struct {
	number   int // of the order; later ones have higher numbers
	snapshot *document.Snapshot
	view     solid.View // without textures
}

// made is what an order came to.
type made struct {
	number int
	fine   bool // no better one can be had
	pixels *image.RGBA
}

// Samples along each side of a pixel.
const (
	draft = 1
	fine  = 2
)

// figure is a bag on the stage, or the thing for scale: its picture and what is written
// beside it.
type figure struct {
	place    int                // of the variant, or none
	variant  *variant           // that was shown last, or nil
	snapshot *document.Snapshot // nil of the thing for scale, and while there is no bag
	model    *solid.Model
	own      solid.Frame // around it alone

	painter *foldedpane.Painter
	worker  *latest.Worker[order, made]
	request func(order) // has an order drawn, now or soon
	ordered int         // the number of the last order
	shown   int         // the number of the order whose picture is seen
	settled func(*figure)
	closed  bool

	picture *canvas.Image
	border  *canvas.Rectangle
	name    *entry.Text
	lines   [axes]*entry.Text // the size
	trouble *signed           // what is wrong with it
	caption caption
}

// caption is what is written beside a figure. Where there is little room the brief text
// stands for the others.
type caption struct {
	name    string
	size    [axes]string
	brief   string
	trouble trouble
}

// newFigure returns a figure that shows nothing yet. settled is called when a draft is
// shown and no newer picture is on its way.
func newFigure(place int, settled func(*figure)) *figure {
	f := &figure{place: place, model: &solid.Model{}, painter: foldedpane.NewPainter(), settled: settled}
	f.worker = latest.New(f.paint, func(m made) { fyne.Do(func() { f.show(m) }) })
	f.request = f.worker.Order
	f.picture = paneview.NewPicture()
	f.border = canvas.NewRectangle(color.Transparent)
	f.name = entry.NewText("", nameStyle)
	for a := range f.lines {
		f.lines[a] = entry.NewText("", entry.Plain)
	}
	f.trouble = newSigned()
	return f
}

// objects returns all that is seen of the figure.
func (f *figure) objects() []fyne.CanvasObject {
	return append([]fyne.CanvasObject{f.picture, f.border}, f.texts()...)
}

func (f *figure) texts() []fyne.CanvasObject {
	return append([]fyne.CanvasObject{f.name}, f.below()...)
}

// below returns what is written below the name.
func (f *figure) below() (texts []fyne.CanvasObject) {
	for _, line := range f.lines {
		texts = append(texts, line)
	}
	return append(texts, f.trouble)
}

// take makes the figure one of a bag. It tells whether that is another than before.
func (f *figure) take(snapshot *document.Snapshot) bool {
	if snapshot == f.snapshot || snapshot == nil {
		return false
	}
	f.snapshot = snapshot
	f.model = solid.NewModel(fold.Standing(&snapshot.Blank))
	f.own = f.model.Frame(solid.NoReference, 0)
	return true
}

// takeVariant makes the figure one of a variant. One that cannot be drawn leaves the last that
// could, if that was the same variant.
func (f *figure) takeVariant(v *variant) {
	if f.variant != v {
		f.variant = v
		f.snapshot, f.model, f.own = nil, &solid.Model{}, solid.Frame{}
	}
	f.take(v.snapshot)
}

// order orders a picture of a view.
func (f *figure) order(v solid.View) {
	if f.closed {
		return
	}
	f.ordered++
	f.request(order{f.ordered, f.snapshot, v})
}

func (f *figure) paint(o order) made {
	return made{o.number, o.view.Samples > draft, f.painter.Paint(o.snapshot, o.view)}
}

// show puts a picture onto the stage, unless a newer one is there.
func (f *figure) show(m made) {
	if f.closed || m.number < f.shown {
		f.painter.GiveBack(m.pixels)
		return
	}
	f.shown = m.number
	f.painter.GiveBack(paneview.Swap(f.picture, m.pixels))
	if !m.fine && m.number == f.ordered {
		f.settled(f)
	}
}

// showIf shows the figure, or hides it. The border is for several figures.
func (f *figure) showIf(wanted bool) {
	for _, object := range append(f.texts(), f.picture) {
		switch {
		case wanted && !object.Visible():
			object.Show()
		case !wanted && object.Visible():
			object.Hide()
		}
	}
	if !wanted {
		f.border.Hidden = true
	}
}

func (f *figure) close() {
	f.closed = true
	f.worker.Close()
}

// write puts the caption into the texts, in full or in brief.
func (f *figure) write(brief bool) {
	c := &f.caption
	f.name.SetText(c.name)
	size, said := c.size, c.trouble
	if brief {
		size = [axes]string{c.brief}
		if said.text != "" { // there is room for its sign alone
			size, said.text = [axes]string{}, c.brief
		}
	}
	for a, line := range f.lines {
		line.SetText(size[a])
	}
	f.trouble.say(said)
}

// nameStyle is that of names, which are read from afar.
var nameStyle = entry.Style{Colour: theme.ColorNameForeground, Size: theme.SizeNameSubHeadingText, Bold: true}

// tall is something whose height follows from its width.
type tall interface{ HeightFor(width float32) float32 }

// linesHeight returns the height of what is written below the name.
func (f *figure) linesHeight(width float32) (height float32) {
	for _, text := range f.below() {
		height += text.(tall).HeightFor(width)
	}
	return height
}

// style takes the border from the theme. chosen figures stand out by a thick
// border, others have a thin one where there are several.
func (f *figure) style(th fyne.Theme, chosen, several bool) {
	variant := fyne.CurrentApp().Settings().ThemeVariant()
	f.border.StrokeColor, f.border.StrokeWidth = th.Color(theme.ColorNameSeparator, variant), 1
	if chosen {
		f.border.StrokeColor, f.border.StrokeWidth = th.Color(theme.ColorNamePrimary, variant), 4
	}
	f.border.Hidden = !several
}
