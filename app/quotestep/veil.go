package quotestep

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// veiled is a column that can be dimmed while what it shows is out of date.
type veiled struct {
	widget.BaseWidget
	column *entry.Column
	veil   *canvas.Rectangle
}

func newVeiled(gaps float32, objects ...fyne.CanvasObject) *veiled {
	v := &veiled{column: entry.NewColumn(gaps, objects...), veil: canvas.NewRectangle(color.Transparent)}
	v.veil.Hide()
	v.ExtendBaseWidget(v)
	return v
}

// OnGrow sets what is called when the height has changed.
func (v *veiled) OnGrow(grow func()) { v.column.OnGrow(grow) }

// Objects returns what stands in the column, hidden or not.
func (v *veiled) Objects() []fyne.CanvasObject { return v.column.Objects() }

// Arrange puts the objects in their places for the present width.
func (v *veiled) Arrange() { v.column.Arrange() }

// HeightFor returns the height at a width.
func (v *veiled) HeightFor(width float32) float32 { return v.column.HeightFor(width) }

// dim shows that all of it is out of date, or no more.
func (v *veiled) dim(on bool) {
	if v.veil.Hidden == on {
		v.veil.Hidden = !on
		v.veil.Refresh()
	}
}

// CreateRenderer is part of fyne.Widget.
func (v *veiled) CreateRenderer() fyne.WidgetRenderer {
	r := &veiledRenderer{v}
	r.colour()
	return r
}

type veiledRenderer struct{ v *veiled }

func (r *veiledRenderer) colour() {
	ground := color.NRGBAModel.Convert(r.v.Theme().Color(theme.ColorNameBackground, fyne.CurrentApp().Settings().ThemeVariant())).(color.NRGBA)
	ground.A = 140 // of 255
	r.v.veil.FillColor = ground
}

func (r *veiledRenderer) Layout(size fyne.Size) {
	r.v.column.Resize(size)
	r.v.veil.Resize(size)
}
func (r *veiledRenderer) MinSize() fyne.Size { return r.v.column.MinSize() }
func (r *veiledRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.v.column, r.v.veil}
}
func (r *veiledRenderer) Destroy() {}

func (r *veiledRenderer) Refresh() {
	r.colour()
	r.v.column.Refresh()
	r.v.veil.Refresh()
}
