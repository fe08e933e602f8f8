package intake

import (
	"errors"
	"math"
	"slices"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/render/artwork"
)

// place adds the file to the bag, on top of what is there; where no place is named, on a
// free face.
func (i *Intake) place(a *arrival, on string) {
	state := i.doc.State()
	spec := state.Spec
	laid, chosen := &state.Snapshot.Blank, on != ""
	if !chosen {
		on = freeFace(laid, spec.Artwork)
	}
	piece := standing(laid, a.art, on)
	piece.File = a.name
	hides := !chosen && hidesArtwork(laid, piece.On, spec.Artwork)
	spec.Artwork = append(slices.Clone(spec.Artwork), piece)
	if err := refused(&spec); err != nil {
		i.around.Alarm(err)
		return
	}
	i.doc.PutFile(a.name, a.data)
	i.remember(a)
	i.doc.Set(spec)
	i.around.Placed(len(spec.Artwork) - 1)
	switch {
	case hides && piece.On == on:
		i.around.Tell(phrase.New("Every face has artwork already: %s lies on top of it, on the front.", a.name))
	case hides:
		i.around.Tell(phrase.New("%s has the size of the blank and lies on top of the artwork that was there.", a.name))
	}
}

// replace puts the file in the place of another.
func (i *Intake) replace(a *arrival, index int) {
	spec := i.doc.State().Spec
	if index >= len(spec.Artwork) {
		return // the piece was taken out meanwhile
	}
	i.doc.PutFile(a.name, a.data)
	i.remember(a)
	spec.Artwork = slices.Clone(spec.Artwork)
	piece := &spec.Artwork[index]
	piece.File = a.name
	if int(piece.Page) > a.art.Pages {
		piece.Page = 1
	}
	i.doc.Set(spec)
}

// useProfile makes the file the profile of the printing condition.
func (i *Intake) useProfile(a *arrival) {
	i.doc.PutFile(a.name, a.data)
	i.remember(a)
	spec := i.doc.State().Spec
	spec.Profile = a.name
	i.doc.Set(spec)
}

// refused returns the complaint about the list of artwork as a whole, such as that it
// is too long.
func refused(spec *bag.Spec) error {
	all, joined := spec.Validate().(interface{ Unwrap() []error })
	if !joined {
		return nil
	}
	for _, one := range all.Unwrap() {
		var complaint *bag.FieldError
		if errors.As(one, &complaint) && complaint.Path == "artwork" {
			return complaint
		}
	}
	return nil
}

// sameSize is how much the size of a drawing may differ from that of the blank, in mm,
// for which it was drawn all the same. Programs round sizes to points and pixels.
const sameSize = 1

// standing returns where a file goes that was dropped on a place. A drawing of the size
// of the blank, with or without its bleed, was made for the blank.
func standing(b *blank.Blank, art *artwork.Art, on string) bag.Artwork {
	whole := wholeOf(b, on)
	if art.Raster == nil && madeFor(art, pieceOf(b, on).Box(), b.Spec.Print.Bleed) {
		piece := bag.NewArtwork(art.Name, whole)
		piece.Fit = bag.FitExact
		return piece
	}
	return bag.NewArtwork(art.Name, on)
}

// madeFor tells whether artwork has the size of a piece.
func madeFor(art *artwork.Art, trim geometry.Rect, bleed float64) bool {
	near := func(size geometry.Vec2, box geometry.Rect) bool {
		return math.Abs(size.X-box.Width()) <= sameSize && math.Abs(size.Y-box.Height()) <= sameSize
	}
	if cut := art.Source.Trim; !cut.Empty() {
		return near(geometry.Vec2{X: cut.Width(), Y: cut.Height()}, trim)
	}
	return near(art.Source.Size, trim) || near(art.Source.Size, trim.Inset(-bleed))
}

// pieceOf returns the piece of the blank that holds a panel, else the first.
func pieceOf(b *blank.Blank, panel string) *blank.Piece {
	for i := range b.Pieces {
		if _, here := b.Pieces[i].Panel(panel); here {
			return &b.Pieces[i]
		}
	}
	return &b.Pieces[0]
}

// wholeOf returns the place that is the whole piece with a panel.
func wholeOf(b *blank.Blank, panel string) string {
	switch {
	case len(b.Pieces) == 1:
		return bag.OnBlank
	case pieceOf(b, panel) == &b.Pieces[0]:
		return bag.OnFrontPiece
	}
	return bag.OnBackPiece
}
