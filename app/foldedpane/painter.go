package foldedpane

import (
	"image"

	"gussetwright/app/document"
	"gussetwright/render/solid"
)

// Painter draws a folded bag for another part of the window, as the pane draws its own,
// but without the names of panels on bare paper. It may be asked from several goroutines.
// One for each bag keeps what is printed on it from picture to picture.
type Painter struct{ artist *artist }

// NewPainter returns a painter.
func NewPainter() *Painter {
	return &Painter{&artist{say: func(string) string { return "" }}}
}

// NewNamingPainter returns a painter that writes the names of panels on bare paper, as
// the pane does.
func NewNamingPainter() *Painter { return &Painter{newArtist()} }

// Paint returns the picture that a view shows, with what is printed on the bag. The view
// is one of the snapshot and has no textures; without a snapshot it shows no bag.
func (p *Painter) Paint(snapshot *document.Snapshot, v solid.View) *image.RGBA {
	return p.artist.draw(order{snapshot: snapshot, view: v}).pixels
}

// LetGo frees what is kept from picture to picture, tens of megabytes for a large one. It
// waits for a picture that is being drawn.
func (p *Painter) LetGo() { p.artist.letGo() }

// GiveBack takes a picture that is shown no longer, to be drawn over.
func (p *Painter) GiveBack(old *image.RGBA) { p.artist.giveBack(old) }

// Look returns the colours of pictures in the colours of the theme.
func Look() solid.Look { return themeLook() }
