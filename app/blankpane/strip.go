package blankpane

import (
	"image/color"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/steady"
	"gussetwright/geometry/blank"
	"gussetwright/render/dieline"
	"gussetwright/render/flat"
	"gussetwright/render/scene"
)

// strip is the legend below the blank: a sample of each kind of line with its name. Where
// it has less room than it needs it can be scrolled.
type strip struct {
	widget.BaseWidget
	shown  explained
	body   *fyne.Container
	scroll *steady.Scroll
	off    bool // hidden by the user
}

// explained is what the strip depends on.
type explained struct {
	roles []scene.Role
	parts []blank.GlueRole // on the reverse
	paper color.NRGBA
}

func (e explained) equal(other explained) bool {
	return slices.Equal(e.roles, other.roles) && slices.Equal(e.parts, other.parts) && e.paper == other.paper
}

func newStrip() *strip {
	s := &strip{}
	s.body = container.New(stripRows{s})
	s.scroll = steady.NewScroll(s.body)
	s.ExtendBaseWidget(s)
	return s
}

// CreateRenderer is part of fyne.Widget.
func (s *strip) CreateRenderer() fyne.WidgetRenderer { return &stripRenderer{s} }

// legendRoles are explained by the strip. Dimensions and names explain themselves.
var legendRoles = []scene.Role{
	scene.Cutting, scene.Creasing, scene.ReverseCreasing, scene.Punching, scene.Gluing, scene.Bleed, scene.ContentArea,
}

// show explains the layers that are shown and are on the blank. It tells whether these are
// others than before, so that the strip needs another height.
func (s *strip) show(layers flat.Layers, laid *blank.Blank) (others bool) {
	next := explained{paper: paperOf(laid)}
	for _, role := range legendRoles {
		absent := role == scene.Punching && len(laid.Pieces[0].Holes) == 0 ||
			role == scene.Bleed && laid.Spec.Print.Bleed == 0
		if layers.Has(role) && !absent {
			next.roles = append(next.roles, role)
		}
	}
	if layers.Has(scene.Legend) {
		next.parts = dieline.Behind(&laid.Pieces[0])
	}
	if next.equal(s.shown) {
		return false
	}
	s.shown = next
	s.body.Objects = nil
	for _, role := range next.roles {
		s.add(newSample(role, next.paper), roleWord(role))
	}
	for _, part := range next.parts {
		s.add(newPartSample(part, next.paper), partWord(part))
	}
	s.Refresh()
	return true
}

func (s *strip) add(sample fyne.CanvasObject, text string) {
	word := widget.NewLabel(text)
	word.SizeName = theme.SizeNameCaptionText
	s.body.Add(container.NewBorder(nil, nil, container.NewCenter(sample), nil, word))
}

// heightAt returns the height of the strip at a width.
func (s *strip) heightAt(width float32) float32 {
	if s.off || len(s.body.Objects) == 0 {
		return 0
	}
	return s.flow(width, func(fyne.CanvasObject, fyne.Position) {})
}

// heightIn returns the height of the strip in a pane: at most a third of it, in whole rows.
func (s *strip) heightIn(pane fyne.Size) float32 {
	height := s.heightAt(pane.Width)
	if height <= max(pane.Height/3, 0) {
		return height
	}
	pad := theme.Padding()
	row := s.body.Objects[0].MinSize().Height - pad
	return max(float32(int((pane.Height/3-pad)/row)), 1)*row + pad
}

// flow visits the entries of the strip row by row, and returns their height.
func (s *strip) flow(width float32, place func(fyne.CanvasObject, fyne.Position)) float32 {
	pad := theme.Padding()
	at, row := fyne.NewPos(pad, 0), float32(0)
	for _, object := range s.body.Objects {
		size := object.MinSize()
		if at.X > pad && at.X+size.Width > width {
			at = fyne.NewPos(pad, at.Y+row)
		}
		place(object, at)
		at.X += size.Width + 3*pad
		row = size.Height - pad // rows of captions stand close
	}
	return at.Y + row + pad
}

type stripRenderer struct{ strip *strip }

// Layout is part of fyne.WidgetRenderer.
func (r *stripRenderer) Layout(size fyne.Size) { r.strip.scroll.Resize(size) }

// MinSize is part of fyne.WidgetRenderer; the pane asks heightAt for the height.
func (r *stripRenderer) MinSize() fyne.Size { return fyne.NewSize(1, 1) }

// Objects is part of fyne.WidgetRenderer.
func (r *stripRenderer) Objects() []fyne.CanvasObject {
	if r.strip.off {
		return nil
	}
	return []fyne.CanvasObject{r.strip.scroll}
}

// Refresh is part of fyne.WidgetRenderer.
func (r *stripRenderer) Refresh() {
	r.Layout(r.strip.Size())
	r.strip.body.Refresh()
	r.strip.scroll.Refresh()
}

// Destroy is part of fyne.WidgetRenderer.
func (r *stripRenderer) Destroy() {}

// stripRows lays out the entries of the strip.
type stripRows struct{ strip *strip }

// Layout is part of fyne.Layout.
func (l stripRows) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	l.strip.flow(size.Width, func(object fyne.CanvasObject, at fyne.Position) {
		object.Move(at)
		object.Resize(object.MinSize())
	})
}

// MinSize is part of fyne.Layout: the height is that at the present width.
func (l stripRows) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(1, l.strip.heightAt(l.strip.Size().Width))
}
