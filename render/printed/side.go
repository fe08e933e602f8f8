// Package printed shows what the press puts on a piece of paper: the background, the
// artwork over it, and the colour of the paper through both. Pictures of the blank
// and of the folded bag are made from it alike.
//
// Inks are transparent, so the colour of the paper multiplies theirs: on white they
// are as drawn, on brown they turn darker and warmer. Artwork over artwork covers it,
// as files are printed unless they ask for overprinting.
package printed

import (
	"image"
	"image/color"

	"gussetwright/geometry"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/placement"
	"gussetwright/render/flat"
)

// Side is the print side of one piece. It never changes and may be painted from
// several goroutines.
type Side struct {
	paper      color.RGBA
	bleed      geometry.Path
	background color.RGBA
	inkFree    []geometry.Path
	layers     []layer
}

// layer is one placed file with its pictures.
type layer struct {
	placed  placement.Placed
	levels  []*image.RGBA // finest first, premultiplied
	opacity uint32        // of 256
}

// Levels returns the pictures of the file of an entry of Spec.Artwork: the finest
// first, each next about half as large, premultiplied; nil while there are none.
type Levels func(index int) []*image.RGBA

// NewSide returns the print side of a piece of the blank with the artwork that was
// placed on it. paper is the colour of the bare paper, background that of the ink
// beneath the artwork on white paper.
func NewSide(b *blank.Blank, piece int, placed []placement.Placed, levels Levels, paper, background color.RGBA) *Side {
	p := &b.Pieces[piece]
	side := &Side{paper: paper, background: background, bleed: p.BleedOutline(b.Spec.Print.Bleed)}
	if b.Spec.Print.Background.Total() > 0 {
		side.inkFree = placement.InkFree(p, b.Spec)
	} else {
		side.background = color.RGBA{}
	}
	for _, one := range placed {
		if pictures := levels(one.Index); one.Piece == piece && len(pictures) > 0 {
			opacity := uint32(b.Spec.Artwork[one.Index].Opacity*256/100 + 0.5)
			side.layers = append(side.layers, layer{one, pictures, opacity})
		}
	}
	return side
}

// Bare tells whether nothing is printed.
func (s *Side) Bare() bool { return len(s.layers) == 0 && s.background.A == 0 }

// Quality is how carefully a picture is made.
type Quality int

// The qualities: Draft takes the nearest pixel, and of a view only every second, for
// what moves; Fine mixes neighbours.
const (
	Draft Quality = iota
	Fine
)

// draftSide is the side in pixels of the squares that a draft of a view is made of.
const draftSide = 2

// Bench is what painting needs again and again: room for the ink, and a painter with
// its buffers. It belongs to one goroutine at a time; its zero value is ready.
type Bench struct {
	pixels  []uint8
	painter flat.Painter
}

// ink returns a transparent picture. What was drawn before is taken off row by row: while
// one piece of memory is cleared the goroutine cannot be stopped, and for tens of megabytes
// the collector of garbage, and with it the window, would wait a tenth of a second.
func (b *Bench) ink(width, height int) *image.RGBA {
	stride := 4 * width
	picture := &image.RGBA{Stride: stride, Rect: image.Rect(0, 0, width, height)}
	if size := stride * height; cap(b.pixels) < size {
		b.pixels = make([]uint8, size)
	} else {
		b.pixels = b.pixels[:size]
		for row := 0; row < size; row += stride {
			clear(b.pixels[row : row+stride])
		}
	}
	picture.Pix = b.pixels
	return picture
}

// Paint paints the piece, out to its bleed, over what is in the picture. view says
// which part of the blank the picture shows.
func (s *Side) Paint(bench *Bench, picture *image.RGBA, view flat.View, quality Quality) {
	if picture.Rect.Empty() {
		return
	}
	side := 1
	if quality == Draft {
		side = draftSide
	}
	size := picture.Rect.Size()
	ink := bench.ink((size.X+side-1)/side, (size.Y+side-1)/side)
	s.ink(&bench.painter, ink, flat.View{Scale: view.Scale / float64(side), Origin: view.Origin}, quality)
	overPaper(picture, ink, side, s.paper)
}

// Picture returns the piece alone, without its bleed, at the given number of pixels
// per mm: the upper edge of the piece first.
func (s *Side) Picture(piece *blank.Piece, scale float64, quality Quality) *image.RGBA {
	return s.PictureOn(&Bench{}, piece, scale, quality)
}

// PictureOn returns what Picture does, in the room of a bench: it is good until the bench
// is used again.
func (s *Side) PictureOn(bench *Bench, piece *blank.Piece, scale float64, quality Quality) *image.RGBA {
	width, height := int(piece.Width*scale+0.5), int(piece.Height*scale+0.5)
	picture := bench.ink(max(width, 1), max(height, 1))
	fill(picture, white)
	s.ink(&bench.painter, picture, flat.View{Scale: scale, Origin: geometry.Vec2{Y: piece.Height}}, quality)
	if quality == Fine || !nearlyWhite(s.paper) {
		overPaper(picture, picture, 1, s.paper)
	}
	return picture
}

var white = color.RGBA{255, 255, 255, 255}

// ink paints what is printed as it would look on white paper; beyond the bleed the
// picture stays as it is.
func (s *Side) ink(painter *flat.Painter, picture *image.RGBA, view flat.View, quality Quality) {
	painter.Begin(picture, view)
	if s.background.A == 0 {
		painter.Fill(color.NRGBA(white), s.bleed)
	} else {
		painter.Fill(color.NRGBA(s.background), s.bleed)
		painter.Fill(color.NRGBA(white), s.inkFree...)
	}
	for i := range s.layers {
		s.layers[i].paint(picture, view, quality)
	}
}
