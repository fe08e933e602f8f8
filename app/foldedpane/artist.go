package foldedpane

import (
	"image"
	"sync"

	"gussetwright/app/document"
	"gussetwright/app/words"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/render/dieline"
	"gussetwright/render/printed"
	"gussetwright/render/solid"
)

// order asks for a picture of the bag.
type order struct {
	number   int // of the order; later ones have higher numbers
	snapshot *document.Snapshot
	view     solid.View // without textures
}

// picture is what an order came to.
type picture struct {
	number int
	fine   bool // no better one can be had
	pixels *image.RGBA
}

// Samples along each side of a pixel.
const (
	draft    = 1
	fine     = 2
	forFiles = 4
)

// artist draws orders. It may be asked from several goroutines.
type artist struct {
	say func(english string) string // the names of panels in the language of the user

	lock     sync.Mutex
	renderer solid.Renderer
	bench    printed.Bench
	papered  papered
}

// papered are the textures of a bag.
type papered struct {
	snapshot *document.Snapshot
	scale    float64 // pixels per mm
	quality  printed.Quality
	look     solid.Look
	textures []*solid.Texture
}

func newArtist() *artist { return &artist{say: words.OnDrawing()} }

// panelName returns what a panel is called, "" for none.
func (a *artist) panelName(panel string) string { return a.say(dieline.PanelName(panel)) }

// draw returns the picture that was ordered.
func (a *artist) draw(o order) picture {
	a.lock.Lock()
	defer a.lock.Unlock()
	if o.snapshot != nil {
		o.view.Textures = a.paper(&o)
	}
	return picture{o.number, o.view.Samples > draft, a.renderer.Draw(o.view)}
}

// giveBack takes a picture that is shown no longer, to be drawn over.
func (a *artist) giveBack(old *image.RGBA) { a.renderer.Recycle(old) }

// letGo frees what is kept from picture to picture.
func (a *artist) letGo() {
	a.lock.Lock()
	defer a.lock.Unlock()
	a.papered, a.bench = papered{}, printed.Bench{}
}

// paper returns the textures of the bag, as fine as the picture needs them. A draft
// takes what is there, or coarse ones, which are made soon.
func (a *artist) paper(o *order) []*solid.Texture {
	have := &a.papered
	scale, quality := 1.0, printed.Draft
	if o.view.Samples > draft {
		scale, quality = textureScale(o.snapshot, o.view.Scale(), mostInPane), printed.Fine
	}
	same := have.snapshot == o.snapshot && have.look == o.view.Look
	if same && have.scale >= scale && have.quality >= quality {
		return have.textures
	}
	*have = papered{o.snapshot, scale, quality, o.view.Look, a.textures(o.snapshot, o.view, scale, quality)}
	return have.textures
}

// texture returns that of a piece, to be that of another bag now, or a new one.
func (p *papered) texture(piece int) *solid.Texture {
	if piece < len(p.textures) {
		return p.textures[piece]
	}
	return &solid.Texture{}
}

// textures returns what is printed on each piece, or plain paper with the names of
// the panels where nothing is.
func (a *artist) textures(snapshot *document.Snapshot, v solid.View, scale float64, quality printed.Quality) []*solid.Texture {
	list := make([]*solid.Texture, len(snapshot.Blank.Pieces))
	for i := range list {
		piece := &snapshot.Blank.Pieces[i]
		if side := snapshot.Side(i); !side.Bare() {
			list[i] = a.papered.texture(i)
			list[i].Take(a.print(side, piece, scale, quality), scale, piece.Height)
			continue
		}
		list[i] = solid.Sample(piece, v.Paper, v.Look.Ink, scale, func(panel string) string {
			if hidden(panel, &snapshot.Blank) {
				return ""
			}
			return a.panelName(panel)
		})
	}
	return list
}

// print returns the picture of a piece, for now. Room is kept for drafts, which follow each
// other quickly; that of a fine picture, ten times as much, is let go of.
func (a *artist) print(side *printed.Side, piece *blank.Piece, scale float64, quality printed.Quality) *image.RGBA {
	if quality == printed.Draft {
		return side.PictureOn(&a.bench, piece, scale, quality)
	}
	return side.Picture(piece, scale, quality)
}

// hidden tells whether other layers cover most of a panel on the folded bag.
func hidden(panel string, laid *blank.Blank) bool {
	shownBase := "back-base"
	if laid.Spec.Body.Base == bag.BasePinch {
		shownBase = "front-base"
	}
	switch panel {
	case "front-base", "back-base", "gusset-left-base", "gusset-right-base":
		return panel != shownBase
	case "seam-flap", "seam-flap-base", "seam-flap-turn-in":
		return true
	}
	return false
}

// The most pixels of a texture: in the pane, where they must be there soon, and in a
// file, where small text is to be read.
const (
	mostInPane = 8_000_000
	mostInFile = 32_000_000
)

// textureScale returns the pixels per mm of the paper for a picture in which a mm
// takes some pixels: 1, 2, 4 or 8, less where that would be more than most.
func textureScale(snapshot *document.Snapshot, pixelsPerMM, most float64) float64 {
	scale := 1.0
	piece := &snapshot.Blank.Pieces[0]
	for scale < 8 && scale < pixelsPerMM && 4*scale*scale*piece.Width*piece.Height <= most {
		scale *= 2
	}
	return scale
}
