package lesson

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/foldedpane"
	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/fold"
	"gussetwright/render/dieline"
	"gussetwright/render/flat"
)

// mark is what stands out on the blank.
type mark int

// The marks, in the order of the legend.
const (
	mountain mark = iota
	valley
	glueHere
	glueBehind
	marks
)

func (m mark) name() string {
	switch m {
	case mountain:
		return lang.L("Mountain crease")
	case valley:
		return lang.L("Valley crease")
	case glueHere:
		return lang.L("Glue on the print side")
	}
	return lang.L("Glue on the reverse")
}

// marksOf tells which marks a stage has on the blank as it is seen.
func (c *course) marksOf(stage int, reverse bool) (has [marks]bool) {
	for _, crease := range c.Stages[stage].Creases {
		isValley := (crease.Fold == blank.Valley) != reverse
		has[mountain] = has[mountain] || !isValley
		has[valley] = has[valley] || isValley
	}
	areas, _ := c.areas(stage)
	for _, area := range areas {
		has[glueHere] = has[glueHere] || area.Side == blank.PrintSide
		has[glueBehind] = has[glueBehind] || area.Side == blank.ReverseSide
	}
	return has
}

// legend says what the marks on the blank mean, side by side as far as there is room.
type legend struct {
	widget.BaseWidget
	samples [marks]*canvas.Raster
	names   [marks]*canvas.Text
}

func newLegend() *legend {
	l := &legend{}
	for m := range marks {
		l.samples[m] = canvas.NewRaster(func(width, height int) image.Image { return l.sample(m, width, height) })
		l.names[m] = canvas.NewText(m.name(), color.Transparent)
	}
	l.ExtendBaseWidget(l)
	return l
}

// show shows some of the marks.
func (l *legend) show(has [marks]bool) {
	for m := range marks {
		l.samples[m].Hidden, l.names[m].Hidden = !has[m], !has[m]
	}
	l.Refresh()
}

func (l *legend) letters() float32 { return l.Theme().Size(theme.SizeNameText) }

// sample draws what a mark looks like, in the sizes of the blank.
func (l *legend) sample(m mark, width, height int) image.Image {
	picture := image.NewRGBA(image.Rect(0, 0, width, height))
	if width < 1 || height < 1 {
		return picture
	}
	density := float64(width) / float64(max(l.samples[m].Size().Width, 1))
	box := geometry.RectAt(0, 0, float64(width)/density, float64(height)/density)
	palette := flat.Light()
	if appearance.IsDark() {
		palette = flat.Dark()
	}
	s := sheet{palette: palette, dashes: dashesOf(dieline.Screen{Letter: float64(l.letters())})}
	s.painter.Begin(picture, flat.View{Scale: density, Origin: geometry.Vec2{Y: box.Max.Y}, Pen: pen * density})
	if m == glueHere || m == glueBehind {
		area := blank.GlueArea{Side: blank.PrintSide, Shape: box.Inset(1.5).Path()}
		if m == glueBehind {
			area.Side = blank.ReverseSide
		}
		s.glue(&area, 1, 1)
		return picture
	}
	level := box.Center().Y
	crease := fold.Crease{Edge: geometry.Edge{From: geometry.Vec2{Y: level}, To: geometry.Vec2{X: box.Max.X, Y: level}}, Fold: blank.Mountain}
	if m == valley {
		crease.Fold = blank.Valley
	}
	s.light([]fold.Crease{crease}, 0, foldedpane.Look().Accent)
	return picture
}

// lay puts the marks that are shown side by side.
func (l *legend) lay(width float32) {
	var has [marks]bool
	for m := range marks {
		has[m] = !l.names[m].Hidden
	}
	padding, sample := l.Theme().Size(theme.SizeNamePadding), 3*l.letters()
	l.rows(has, width, func(m mark, x, y, wide, tall float32) {
		l.samples[m].Move(fyne.NewPos(x, y))
		l.samples[m].Resize(fyne.NewSize(sample, tall))
		l.names[m].Move(fyne.NewPos(x+sample+padding, y))
		l.names[m].Resize(fyne.NewSize(wide-sample-padding, tall))
	})
}

// rows parts marks into rows, tells where each goes, and returns the height of all.
func (l *legend) rows(has [marks]bool, width float32, put func(m mark, x, y, wide, tall float32)) float32 {
	padding := l.Theme().Size(theme.SizeNamePadding)
	x, y := float32(0), float32(0)
	tall := fyne.MeasureText("Mg", l.letters(), fyne.TextStyle{}).Height
	for m := range marks {
		if !has[m] {
			continue
		}
		name := l.names[m]
		wide := 3*l.letters() + padding + fyne.MeasureText(name.Text, l.letters(), name.TextStyle).Width
		if x > 0 && x+wide > width {
			x, y = 0, y+tall
		}
		put(m, x, y, wide, tall)
		x += wide + 3*padding
	}
	return y + tall
}

// room is the height that the legend takes in the stage in which it takes most.
func (l *legend) room(c *course, width float32) (most float32) {
	for stage := range c.Stages {
		for _, reverse := range []bool{false, true} {
			most = max(most, l.rows(c.marksOf(stage, reverse), width, func(mark, float32, float32, float32, float32) {}))
		}
	}
	return most
}

// CreateRenderer is part of fyne.Widget.
func (l *legend) CreateRenderer() fyne.WidgetRenderer {
	r := &legendRenderer{l}
	r.colour()
	return r
}

type legendRenderer struct{ l *legend }

func (r *legendRenderer) colour() {
	for _, name := range r.l.names {
		name.TextSize = r.l.letters()
		name.Color = r.l.Theme().Color(theme.ColorNameForeground, fyne.CurrentApp().Settings().ThemeVariant())
	}
}

// Layout is part of fyne.WidgetRenderer.
func (r *legendRenderer) Layout(size fyne.Size) { r.l.lay(size.Width) }

// MinSize is part of fyne.WidgetRenderer.
func (r *legendRenderer) MinSize() fyne.Size { return fyne.NewSize(1, 1) }

// Destroy is part of fyne.WidgetRenderer.
func (r *legendRenderer) Destroy() {}

// Objects is part of fyne.WidgetRenderer.
func (r *legendRenderer) Objects() []fyne.CanvasObject {
	var objects []fyne.CanvasObject
	for m := range marks {
		objects = append(objects, r.l.samples[m], r.l.names[m])
	}
	return objects
}

// Refresh is part of fyne.WidgetRenderer.
func (r *legendRenderer) Refresh() {
	r.colour()
	r.l.lay(r.l.Size().Width)
	for m := range marks {
		r.l.samples[m].Refresh()
		r.l.names[m].Refresh()
	}
}
