package blankpane

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/paneview"
	"gussetwright/geometry"
)

// artOverlay shows the frames of the artwork that is being placed, and what it snaps to.
type artOverlay struct {
	*fyne.Container
	frames [mostFrames]*frameShapes
	guides [2]*canvas.Line
	tag    *paneview.Caption
}

// mostFrames is in how many places one piece of artwork lies at most: two faces, two
// gussets, or two pieces.
const mostFrames = 2

// frameShapes are the lines and handles of one frame. Each line has a wider one under it,
// so that it is seen on any artwork.
type frameShapes struct {
	*fyne.Container
	under, over [5]*canvas.Line // four sides and the stem of the handle that turns
	corners     [4]*canvas.Rectangle
	knob        *canvas.Circle
}

// Sizes of what is shown, in pixels.
const (
	frameWidth = 1.5
	haloWidth  = 4
	cornerSide = 11
	knobRadius = 6.5
)

func newArtOverlay() *artOverlay {
	o := &artOverlay{Container: container.NewWithoutLayout(), tag: paneview.NewCaption()}
	for i := range o.frames {
		o.frames[i] = newFrameShapes()
		o.Add(o.frames[i].Container)
	}
	for i := range o.guides {
		o.guides[i] = &canvas.Line{StrokeWidth: 1}
		o.Add(o.guides[i])
	}
	o.Add(o.tag.Container)
	return o
}

func newFrameShapes() *frameShapes {
	f := &frameShapes{Container: container.NewWithoutLayout(), knob: &canvas.Circle{StrokeWidth: 2}}
	for i := range f.under {
		f.under[i], f.over[i] = &canvas.Line{StrokeWidth: haloWidth}, &canvas.Line{StrokeWidth: frameWidth}
		f.Add(f.under[i])
	}
	for i := range f.over {
		f.Add(f.over[i])
	}
	for i := range f.corners {
		f.corners[i] = &canvas.Rectangle{StrokeWidth: 2}
		f.Add(f.corners[i])
	}
	f.Add(f.knob)
	return f
}

// restyle takes the colours of the theme.
func (o *artOverlay) restyle() {
	accent, paper := theme.Color(theme.ColorNamePrimary), theme.Color(theme.ColorNameBackground)
	for _, f := range o.frames {
		for i := range f.over {
			f.under[i].StrokeColor, f.over[i].StrokeColor = paper, accent
		}
		for _, corner := range f.corners {
			corner.StrokeColor = accent
		}
		f.knob.StrokeColor = accent
	}
	for _, guide := range o.guides {
		guide.StrokeColor = theme.Color(theme.ColorNameError)
	}
	o.tag.Restyle()
}

// arrange puts everything where it belongs now, or hides it.
func (o *artOverlay) arrange(s *surface) {
	frames := s.pane.artFrames()
	for i, shapes := range o.frames {
		show(shapes.Container, i < len(frames))
		if i < len(frames) {
			held := s.artGrip
			if held.frame != i {
				held.handle = noHandle
			}
			shapes.arrange(s.pane.onScreen(&frames[i]), held.handle)
		}
	}
	d, _ := s.drag.(*placing)
	for i, shape := range o.guides {
		show(shape, d != nil && i < len(d.guides))
		if shape.Visible() {
			g := d.guides[i]
			line(shape, s.pane.view.screen(s.pane.desk.at(g.piece, g.from)), s.pane.view.screen(s.pane.desk.at(g.piece, g.to)))
		}
	}
	if d == nil {
		o.tag.Hide()
		return
	}
	o.tag.Say(d.says, atPoint(s.pointer, s.Size()))
}

// fill gives a handle its colour: full while the pointer has it.
func fill(colour *color.Color, held bool, of fyne.CanvasObject) {
	name := theme.ColorNameBackground
	if held {
		name = theme.ColorNamePrimary
	}
	if wanted := theme.Color(name); *colour != wanted {
		*colour = wanted
		of.Refresh()
	}
}

func (f *frameShapes) arrange(corners [4]geometry.Vec2, held handle) {
	stem, knob := turner(corners)
	for i := range 4 {
		line(f.under[i], corners[i], corners[(i+1)%4])
		line(f.over[i], corners[i], corners[(i+1)%4])
	}
	line(f.under[4], stem, knob)
	line(f.over[4], stem, knob)
	for i, shape := range f.corners {
		shape.Move(position(corners[i].Sub(geometry.Vec2{X: cornerSide / 2.0, Y: cornerSide / 2.0})))
		shape.Resize(fyne.NewSquareSize(cornerSide))
		fill(&shape.FillColor, held == corner0+handle(i), shape)
	}
	ring(f.knob, knob, knobRadius)
	fill(&f.knob.FillColor, held == turning, f.knob)
}
