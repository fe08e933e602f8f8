package blankpane

import (
	"image"
	"sync"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/render/dieline"
	"gussetwright/render/flat"
	"gussetwright/render/scene"
)

// order asks for a picture of the desk.
type order struct {
	number        int // of the order; later ones have higher numbers
	laid          *blank.Blank
	width, height int     // of the picture, in pixels of the screen
	density       float64 // pixels of the screen per pixel of fyne
	view          view
	layers        flat.Layers
	panel         string // that is lit up, or ""
	unit          geometry.Unit
	dark, faded   bool
}

// picture is what an order came to.
type picture struct {
	number int
	pixels *image.RGBA
}

// Line widths in pixels of fyne; see flat.View.Pen.
const (
	pen     = 1.4
	glowPen = 2
	shadow  = 7
)

// mostSpare bounds the pictures that are kept to be painted over.
const mostSpare = 2

// artist paints orders. It may be asked from several goroutines.
type artist struct {
	say func(string) string // translates names on the drawing

	lock     sync.Mutex
	painter  flat.Painter
	spare    []*image.RGBA
	drawn    drawnFor
	drawings []scene.Drawing
}

// drawnFor is what drawings depend on; while it stays the same, as in panning, they
// are used again.
type drawnFor struct {
	laid   *blank.Blank
	letter float64
	unit   geometry.Unit
}

// paint returns the picture that was ordered.
func (a *artist) paint(o order) picture {
	a.lock.Lock()
	defer a.lock.Unlock()
	canvas := a.canvas(o.width, o.height)
	palette := palettes[o.dark]
	if o.faded {
		palette = fadedPalettes[o.dark]
	}
	spread := layOut(o.laid, o.view.mm())
	a.begin(canvas, o, geometry.Vec2{})
	a.painter.Clear(palette.Ground)
	for i := range o.laid.Pieces {
		a.begin(canvas, o, spread.moves[i])
		a.paper(&o.laid.Pieces[i], palette, o)
	}
	for i, drawing := range a.draw(o) {
		a.begin(canvas, o, spread.moves[i])
		a.painter.Draw(drawing, palette, o.layers)
	}
	return picture{o.number, canvas}
}

// begin turns the painter to the coordinates of a piece that was moved.
func (a *artist) begin(canvas *image.RGBA, o order, move geometry.Vec2) {
	a.painter.Begin(canvas, flat.View{
		Scale: o.view.scale * o.density, Origin: o.view.corner.Sub(move), Pen: pen * o.density,
	})
}

// paper paints a piece of paper with its holes and the panel that is lit up.
func (a *artist) paper(piece *blank.Piece, palette *flat.Palette, o order) {
	a.painter.Shadow(palette.Shadow, piece.Outline, shadow*o.density)
	a.painter.Fill(palette.Paper, piece.Outline)
	if panel, found := piece.Panel(o.panel); found && o.panel != "" {
		a.painter.Fill(palette.Glow, panel.Shape)
		edge := palette.Glow
		edge.A = 255
		a.painter.Outline(edge, panel.Shape, glowPen*o.density)
	}
	for _, hole := range piece.Holes {
		a.painter.Fill(palette.Ground, geometry.Circle(hole.Center, hole.Diameter/2))
	}
	for _, hole := range handHoles(piece) {
		a.painter.Fill(palette.Ground, hole)
	}
}

// draw returns the drawings of all pieces.
func (a *artist) draw(o order) []scene.Drawing {
	wanted := drawnFor{o.laid, o.view.mm(), o.unit}
	if a.drawn == wanted {
		return a.drawings
	}
	screen := dieline.Screen{Letter: wanted.letter, Unit: o.unit, Say: a.say}
	a.drawings = a.drawings[:0]
	for i := range o.laid.Pieces {
		a.drawings = append(a.drawings, screen.Draw(o.laid, i))
	}
	a.drawn = wanted
	return a.drawings
}

// canvas returns pixels to paint on.
func (a *artist) canvas(width, height int) *image.RGBA {
	size := image.Point{X: width, Y: height}
	for len(a.spare) > 0 {
		last := a.spare[len(a.spare)-1]
		a.spare = a.spare[:len(a.spare)-1]
		if last.Rect.Size() == size {
			return last
		}
	}
	return image.NewRGBA(image.Rectangle{Max: size})
}

// giveBack takes a picture that is shown no longer, to be painted over.
func (a *artist) giveBack(old *image.RGBA) {
	a.lock.Lock()
	defer a.lock.Unlock()
	if old != nil && len(a.spare) < mostSpare {
		a.spare = append(a.spare, old)
	}
}

var (
	palettes      = map[bool]*flat.Palette{false: flat.Light(), true: flat.Dark()}
	fadedPalettes = map[bool]*flat.Palette{false: flat.Light().Faded(), true: flat.Dark().Faded()}
)
