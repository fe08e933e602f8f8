package blankpane

import (
	"image"
	"image/color"
	"sync"

	"gussetwright/app/document"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/render/dieline"
	"gussetwright/render/flat"
	"gussetwright/render/printed"
	"gussetwright/render/scene"
	"gussetwright/render/solid"
	"gussetwright/render/spares"
)

// order asks for a picture of the desk.
type order struct {
	number        int // of the order; later ones have higher numbers
	snapshot      *document.Snapshot
	width, height int     // of the picture, in pixels of the screen
	density       float64 // pixels of the screen per pixel of fyne
	view          view
	layers        flat.Layers
	panel         string // that is lit up, or ""
	unit          geometry.Unit
	dark, faded   bool
	draft         bool // be quick about the artwork: the bag has just changed
}

// picture is what an order came to.
type picture struct {
	number   int
	snapshot *document.Snapshot
	fine     bool // nothing is left to be made better
	pixels   *image.RGBA
}

// Line widths in pixels of fyne; see flat.View.Pen.
const (
	pen     = 1.4
	glowPen = 2
	shadow  = 7
)

// artist paints orders. It may be asked from several goroutines.
type artist struct {
	voice scene.Voice // of the names and numbers on the drawing

	spare spares.Pictures

	lock     sync.Mutex
	painter  flat.Painter
	drawn    drawnFor
	drawings []scene.Drawing
	bench    printed.Bench
	inked    *document.Snapshot
	sides    []*printed.Side
}

// drawnFor is what drawings depend on; while it stays the same, as in panning, they
// are used again.
type drawnFor struct {
	laid   *blank.Blank
	letter float64
	unit   geometry.Unit
	inked  bool
	plain  bool
}

// paint returns the picture that was ordered.
func (a *artist) paint(o order) picture {
	a.lock.Lock()
	defer a.lock.Unlock()
	canvas := a.spare.Take(o.width, o.height)
	sides := a.print(o)
	palette := paletteOf(o, sides != nil)
	paper := paperOf(&o.snapshot.Blank)
	laid := &o.snapshot.Blank
	spread := layOut(laid, o.view)
	a.begin(canvas, o, geometry.Vec2{})
	ground := palettes[o.dark]
	a.painter.Clear(ground.Ground)
	for i := range laid.Pieces {
		a.begin(canvas, o, spread.moves[i])
		a.painter.Shadow(ground.Shadow, laid.Pieces[i].Outline, shadow*o.density)
		if sides == nil {
			a.painter.Fill(paper, laid.Pieces[i].Outline)
		} else {
			sides[i].Paint(&a.bench, canvas, a.viewOf(o, spread.moves[i]), quality(o))
		}
		a.marks(&laid.Pieces[i], palette, ground, o)
	}
	for i, drawing := range a.draw(o, sides != nil) {
		a.begin(canvas, o, spread.moves[i])
		a.painter.Draw(drawing, palette, o.layers)
	}
	return picture{o.number, o.snapshot, !o.draft || sides == nil, canvas}
}

// begin turns the painter to the coordinates of a piece that was moved.
func (a *artist) begin(canvas *image.RGBA, o order, move geometry.Vec2) {
	a.painter.Begin(canvas, a.viewOf(o, move))
}

func (a *artist) viewOf(o order, move geometry.Vec2) flat.View {
	return flat.View{Scale: o.view.scale * o.density, Origin: o.view.corner.Sub(move), Pen: pen * o.density}
}

// print returns the print sides of all pieces, nil where bare paper is to be seen.
func (a *artist) print(o order) []*printed.Side {
	if !o.layers.Has(scene.Artwork) {
		return nil
	}
	if a.inked == o.snapshot {
		return a.sides
	}
	a.inked, a.sides = o.snapshot, nil
	seen := o.snapshot.Spec.Paper.Colour != bag.ColourWhite
	for i := range o.snapshot.Blank.Pieces {
		a.sides = append(a.sides, o.snapshot.Side(i))
		seen = seen || !a.sides[i].Bare()
	}
	if !seen {
		a.sides = nil
	}
	return a.sides
}

func quality(o order) printed.Quality {
	if o.draft {
		return printed.Draft
	}
	return printed.Fine
}

// marks paints the panel that is lit up and the holes of a piece.
func (a *artist) marks(piece *blank.Piece, palette, ground *flat.Palette, o order) {
	if panel, found := piece.Panel(o.panel); found && o.panel != "" {
		a.painter.Fill(palette.Glow, panel.Shape)
		edge := palette.Glow
		edge.A = 255
		a.painter.Outline(edge, panel.Shape, glowPen*o.density)
	}
	for _, hole := range piece.Holes {
		a.painter.Fill(ground.Ground, geometry.Circle(hole.Center, hole.Diameter/2))
	}
	for _, opening := range piece.CutOuts() {
		a.painter.Fill(ground.Ground, opening.Shape)
	}
}

// draw returns the drawings of all pieces.
func (a *artist) draw(o order, inked bool) []scene.Drawing {
	laid := &o.snapshot.Blank
	wanted := drawnFor{laid, o.view.mm(), o.unit, inked, o.view.plain}
	if a.drawn == wanted {
		return a.drawings
	}
	screen := dieline.Screen{Letter: wanted.letter, Unit: o.unit, Voice: a.voice, Plain: o.view.plain}
	for i := range o.snapshot.Placed {
		if inked {
			screen.Covered = append(screen.Covered, o.snapshot.Placed[i].Place)
		}
	}
	a.drawings = a.drawings[:0]
	for i := range laid.Pieces {
		a.drawings = append(a.drawings, screen.Draw(laid, i))
	}
	a.drawn = wanted
	return a.drawings
}

// giveBack takes a picture that is shown no longer, to be painted over.
func (a *artist) giveBack(old *image.RGBA) { a.spare.Give(old) }

// paperOf returns the colour of the paper on its print side.
func paperOf(laid *blank.Blank) color.NRGBA {
	return color.NRGBA(solid.PaperOf(laid.Spec.Paper).Print)
}

// paletteOf returns the colours of the picture. The paper has its own colour, in a dark
// window too. Only where something is printed can a line be lost in it; while the bag
// changes lines go without their halo, which takes a sixth of the time of a picture.
func paletteOf(o order, inked bool) *flat.Palette {
	switch {
	case o.faded:
		return fadedPalettes[o.dark]
	case !inked || o.draft:
		return barePalettes[o.dark]
	}
	return palettes[o.dark]
}

// The palettes of light and of dark windows.
var (
	palettes      = map[bool]*flat.Palette{false: flat.Light(), true: flat.OnPrint()}
	barePalettes  = map[bool]*flat.Palette{false: flat.Light().WithoutHalo(), true: flat.OnPrint().WithoutHalo()}
	fadedPalettes = map[bool]*flat.Palette{false: flat.Light().Faded(), true: flat.OnPrint().Faded()}
)
