package meeting

import (
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/geometry"
)

// dial is a measure of the bag: its name, a big number and the slider.
type dial struct {
	widget.BaseWidget

	axis               axis
	name, number, unit *canvas.Text
	slider             *slider
	widest             string // a number as wide as any of the slider
}

func newDial(view *View, a axis) *dial {
	text := func() *canvas.Text { return canvas.NewText("", color.Black) }
	d := &dial{axis: a, name: text(), number: text(), unit: text(), slider: newSlider(view, a)}
	d.name.Text = a.name()
	d.number.TextStyle.Bold = true
	d.ExtendBaseWidget(d)
	return d
}

// show puts a value of the measure into the dial, with what the slider covers.
func (d *dial) show(value, low, high float64, unit geometry.Unit) {
	d.slider.set(low, high, value)
	text := number(value, unit)
	if text == d.number.Text && d.unit.Text == string(unit) {
		return
	}
	d.number.Text, d.unit.Text = text, string(unit)
	if most := max(len(text), len(number(high, unit))); most != len(d.widest) {
		d.widest = strings.Repeat("8", most)
	}
	d.place()
	d.number.Refresh()
	d.unit.Refresh()
}

// style takes colours and sizes of letters from the theme. The number is as large as
// there is room for all that the slider covers.
func (d *dial) style() {
	variant := fyne.CurrentApp().Settings().ThemeVariant()
	heading := d.Theme().Size(theme.SizeNameHeadingText)
	for _, text := range []*canvas.Text{d.name, d.number, d.unit} {
		text.Color = d.Theme().Color(theme.ColorNameForeground, variant)
	}
	d.name.TextSize, d.unit.TextSize = d.Theme().Size(theme.SizeNameSubHeadingText), heading
	d.number.TextSize = d.largest()
	if d.Size().Width > 0 {
		room := d.Size().Width - d.unit.MinSize().Width - d.gap()
		if needed := fyne.MeasureText(d.widest, d.number.TextSize, d.number.TextStyle).Width; needed > room {
			d.number.TextSize = max(heading, d.number.TextSize*room/needed)
		}
	}
}

// largest is the size of the letters of the number where it has room.
func (d *dial) largest() float32 {
	const larger = 2 // than a heading
	return larger * d.Theme().Size(theme.SizeNameHeadingText)
}

func (d *dial) gap() float32 { return 2 * d.Theme().Size(theme.SizeNamePadding) }

// numberHeight is the height of the largest number.
func (d *dial) numberHeight() float32 {
	return fyne.MeasureText("8", d.largest(), d.number.TextStyle).Height
}

func (d *dial) place() {
	d.style()
	size, above := d.Size(), d.name.MinSize().Height
	d.name.Resize(fyne.NewSize(size.Width, above))
	foot := above + d.numberHeight()
	put := func(text *canvas.Text, x float32) {
		least := text.MinSize()
		text.Resize(least)
		// Letters of different sizes stand on one line a fifth of their height above their foot.
		text.Move(fyne.NewPos(x, foot-least.Height-0.2*(d.numberHeight()-least.Height)))
	}
	put(d.number, 0)
	put(d.unit, d.number.MinSize().Width+d.gap()/2)
	least := d.slider.MinSize().Height
	d.slider.Move(fyne.NewPos(0, foot))
	d.slider.Resize(fyne.NewSize(size.Width, least))
}

// MinSize is part of fyne.CanvasObject.
func (d *dial) MinSize() fyne.Size {
	d.style()
	least := d.slider.MinSize()
	return fyne.NewSize(2*least.Width, d.name.MinSize().Height+d.numberHeight()+least.Height)
}

// CreateRenderer is part of fyne.Widget.
func (d *dial) CreateRenderer() fyne.WidgetRenderer { return &dialRenderer{d} }

type dialRenderer struct{ d *dial }

func (r *dialRenderer) Layout(fyne.Size)   { r.d.place() }
func (r *dialRenderer) MinSize() fyne.Size { return r.d.MinSize() }
func (r *dialRenderer) Destroy()           {}
func (r *dialRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.d.name, r.d.number, r.d.unit, r.d.slider}
}

func (r *dialRenderer) Refresh() {
	r.d.place()
	r.d.slider.Refresh()
	canvas.Refresh(r.d)
}
