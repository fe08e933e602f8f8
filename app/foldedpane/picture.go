package foldedpane

import (
	"image"
	"image/color"
	"io"
	"math"

	"fyne.io/fyne/v2/theme"

	"gussetwright/app/paneview"
	"gussetwright/render/printed"
	"gussetwright/render/solid"
)

// draw orders a picture of what is to be seen now: a draft that is there at once,
// and when nothing moves any more a fine one.
func (p *Pane) draw() { p.order(draft) }

func (p *Pane) order(samples int) {
	if p.closed {
		return
	}
	if next, any := p.next(samples); any {
		p.request(next)
	}
	p.stage.arrange()
	p.bar.show()
}

// Rest draws no pictures until Wake is called.
func (p *Pane) Rest() { p.worker.Rest() }

// Wake draws what was to be seen last while the pane rested.
func (p *Pane) Wake() { p.worker.Wake() }

// drawInSize draws for another size. The first picture is there at once; later ones come
// soon, as a change of the window brings one size after the other.
func (p *Pane) drawInSize() {
	if paneview.Outgrown(p.stage.picture) {
		p.draw()
		return
	}
	if next, any := p.next(draft); any && !p.closed {
		p.show(p.artist.draw(next))
	}
	p.stage.arrange()
}

// next returns the next order, unless there is no room for a picture.
func (p *Pane) next(samples int) (o order, any bool) {
	size, density := p.stage.Size(), paneview.Density(p.stage)
	width, height := int(math.Round(float64(size.Width)*density)), int(math.Round(float64(size.Height)*density))
	if width < 1 || height < 1 {
		return order{}, false
	}
	p.ordered++
	v := p.view(width, height)
	v.Samples, v.Look = samples, themeLook()
	v.Highlight, v.Faded = p.look.Panel(), p.state.Err != nil
	if place := p.look.Place(); place != nil {
		v.Marker = &solid.Place{Piece: place.Piece, At: place.At}
	}
	return order{p.ordered, p.state.Snapshot, v}, true
}

// view returns what is seen now, as a draft without textures.
func (p *Pane) view(width, height int) solid.View {
	return solid.View{
		Width: width, Height: height, Samples: draft, Camera: p.camera, Frame: p.frame,
		Model: p.model, Paper: solid.PaperOf(p.state.Snapshot.Spec.Paper), Look: solid.LightLook(), Reference: p.reference, Side: p.side,
	}
}

// show puts a picture onto the stage, unless a newer one is there. After the last
// draft it orders the fine picture.
func (p *Pane) show(made picture) {
	if p.closed || made.number < p.shown {
		p.artist.giveBack(made.pixels)
		return
	}
	p.shown = made.number
	p.artist.giveBack(paneview.Swap(p.stage.picture, made.pixels))
	if !made.fine && made.number == p.ordered && !p.moving() {
		p.order(fine)
	}
}

// moving tells whether a draft will do, as the next picture is soon to come.
func (p *Pane) moving() bool { return p.stage.dragging || p.state.Dragging }

// Picture draws the bag as it is turned now, on light ground and without what is
// pointed at. Width and height are pixels, at least 1.
func (p *Pane) Picture(width, height int) image.Image {
	var renderer solid.Renderer
	return renderer.Draw(p.forFile(width, height))
}

// PNG returns a function that writes the picture of the bag as it is turned now, as
// Picture draws it, as PNG.
func (p *Pane) PNG(width, height int) func(io.Writer) error {
	v := p.forFile(width, height)
	return func(w io.Writer) error { return solid.WritePNG(w, v) }
}

func (p *Pane) forFile(width, height int) solid.View {
	v := p.view(max(width, 1), max(height, 1))
	v.Samples, v.Frame = forFiles, p.model.Frame(p.reference, p.side)
	v.Textures = p.artist.textures(p.state.Snapshot, v, textureScale(p.state.Snapshot, v.Scale(), mostInFile), printed.Fine)
	return v
}

// themeLook returns the colours of the picture in the colours of the theme.
func themeLook() solid.Look {
	ground := rgba(theme.Color(theme.ColorNameBackground))
	ink := color.RGBA{38, 35, 30, 255}
	look := solid.LightLook()
	look.Accent = rgba(theme.Color(theme.ColorNamePrimary))
	if isDark(ground) {
		look = solid.DarkLook()
		look.Accent = rgba(theme.Color(theme.ColorNamePrimary))
		look.Above, look.Below = blend(ground, color.RGBA{255, 255, 255, 255}, 0.12), blend(ground, color.RGBA{0, 0, 0, 255}, 0.2)
		look.Halo = color.RGBA{20, 20, 20, 255}
		return look
	}
	// A little darker than the theme, so that white paper stands out.
	look.Above, look.Below = blend(ground, ink, 0.05), blend(ground, ink, 0.16)
	return look
}

func isDark(c color.RGBA) bool { return 2*int(c.R)+5*int(c.G)+int(c.B) < 8*128 }

func rgba(c color.Color) color.RGBA {
	opaque := color.RGBAModel.Convert(c).(color.RGBA)
	opaque.A = 255
	return opaque
}

// blend returns the colour at a share of the way from a to b.
func blend(a, b color.RGBA, share float64) color.RGBA {
	at := func(x, y uint8) uint8 { return uint8(math.Round(float64(x) + (float64(y)-float64(x))*share)) }
	return color.RGBA{at(a.R, b.R), at(a.G, b.G), at(a.B, b.B), 255}
}

// Pictures returns the number of the last picture that was ordered and of the one
// that is shown, for measuring how fast the pane follows.
func (p *Pane) Pictures() (ordered, shown int) { return p.ordered, p.shown }
