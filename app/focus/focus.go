// Package focus is what the user looks at: the panel under the pointer, the place that
// was asked for, and the piece of artwork that is being placed. The panes and the steps
// share it, so that what is pointed at in one lights up in the other.
package focus

import "gussetwright/geometry"

// Place is a point on a piece of the blank.
type Place struct {
	Piece int
	At    geometry.Vec2
}

// Focus belongs to the goroutine of the window.
type Focus struct {
	panel     string
	place     *Place
	artwork   int // NoArtwork, or the index in Spec.Artwork
	listeners []func()
}

// NoArtwork is the index of no artwork.
const NoArtwork = -1

// New returns a focus on nothing.
func New() *Focus { return &Focus{artwork: NoArtwork} }

// Panel returns the panel under the pointer, such as "gusset-right-base", or "".
func (f *Focus) Panel() string { return f.panel }

// Place returns the place to show, or nil.
func (f *Focus) Place() *Place { return f.place }

// Hover says which panel is under the pointer; "" is none.
func (f *Focus) Hover(panel string) {
	if panel != f.panel {
		f.panel = panel
		f.tell()
	}
}

// Show asks all panes to show a place; nil asks for none.
func (f *Focus) Show(place *Place) {
	f.place = place
	f.tell()
}

// Artwork returns the index in Spec.Artwork of the piece that is being placed, or
// NoArtwork. While the document changes the index may be one that is not there.
func (f *Focus) Artwork() int { return f.artwork }

// ChooseArtwork says which piece of artwork is being placed.
func (f *Focus) ChooseArtwork(index int) {
	if index != f.artwork {
		f.artwork = index
		f.tell()
	}
}

// Listen calls tell after every change.
func (f *Focus) Listen(tell func()) { f.listeners = append(f.listeners, tell) }

func (f *Focus) tell() {
	for _, tell := range f.listeners {
		tell()
	}
}
