package artstep

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// flow puts objects beside each other, and into further lines where there is no room.
type flow struct {
	widget.BaseWidget
	objects []fyne.CanvasObject
}

func newFlow(objects ...fyne.CanvasObject) *flow {
	f := &flow{objects: objects}
	f.ExtendBaseWidget(f)
	return f
}

// Objects returns what flows.
func (f *flow) Objects() []fyne.CanvasObject { return f.objects }

// HeightFor returns the height at a width.
func (f *flow) HeightFor(width float32) float32 {
	return f.run(width, func(fyne.CanvasObject, fyne.Position, fyne.Size) {})
}

// run visits the objects line by line and returns the height.
func (f *flow) run(width float32, visit func(fyne.CanvasObject, fyne.Position, fyne.Size)) float32 {
	gap := f.Theme().Size(theme.SizeNamePadding)
	at, line := fyne.NewPos(0, 0), float32(0)
	for _, object := range f.objects {
		if !object.Visible() {
			continue
		}
		size := object.MinSize()
		if at.X > 0 && at.X+size.Width > width {
			at, line = fyne.NewPos(0, at.Y+line+gap), 0
		}
		visit(object, at, fyne.NewSize(min(size.Width, width), size.Height))
		at.X += size.Width + gap
		line = max(line, size.Height)
	}
	return at.Y + line
}

// MinSize returns the width of the widest object, and the height at the present width.
func (f *flow) MinSize() fyne.Size {
	widest := float32(0)
	for _, object := range f.objects {
		if object.Visible() {
			widest = max(widest, object.MinSize().Width)
		}
	}
	return fyne.NewSize(widest, f.HeightFor(max(f.Size().Width, widest)))
}

// CreateRenderer is part of fyne.Widget.
func (f *flow) CreateRenderer() fyne.WidgetRenderer { return &flowRenderer{f} }

type flowRenderer struct{ f *flow }

func (r *flowRenderer) Layout(size fyne.Size) {
	r.f.run(size.Width, func(object fyne.CanvasObject, at fyne.Position, size fyne.Size) {
		object.Move(at)
		object.Resize(size)
	})
}
func (r *flowRenderer) MinSize() fyne.Size           { return r.f.MinSize() }
func (r *flowRenderer) Objects() []fyne.CanvasObject { return r.f.objects }
func (r *flowRenderer) Destroy()                     {}

func (r *flowRenderer) Refresh() {
	for _, object := range r.f.objects {
		object.Refresh()
	}
	r.Layout(r.f.Size())
}
