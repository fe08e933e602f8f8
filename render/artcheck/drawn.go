package artcheck

import (
	"gussetwright/geometry"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/placement"
)

// The thinnest line and the smallest letters that print safely.
const (
	point     = inch / 72 // mm
	leastLine = 0.25      // points
	leastText = 5.0       // points
)

// drawn looks at what a drawing or a page of a PDF file consists of.
func (l *inspection) drawn(index int) {
	art := l.pieces[index].Art
	p := l.firstOf(index)
	if p == nil {
		return
	}
	for _, note := range art.Notes {
		l.find(check.Note, "artwork-note", p.Piece, p.Target.Center(), phrase.New("%q: %s", art.Name, note),
			phrase.New("look whether it is shown as it was meant"))
	}
	grown := p.Magnification(art.Source)
	scale := min(grown.X, grown.Y)
	if width, at, found := l.thinnest(index); found && width*scale < leastLine*point-1e-6 {
		l.find(check.Warning, "line-thin", p.Piece, p.At.At(l.onUnit(index, at)),
			phrase.New("the thinnest line of %q is %s pt on the bag", art.Name, geometry.FormatNumber(width*scale/point, 2)),
			phrase.New("draw it at least %g pt wide, %g where it is left white in a colour", leastLine, 2*leastLine))
	}
	if art.Drawing != nil && art.Drawing.Text {
		l.find(check.Error, "artwork-live-text", p.Piece, p.Target.Center(),
			phrase.New("%q holds text that is not turned into outlines; it is neither shown nor printed", art.Name),
			phrase.New("turn all text into outlines (paths) and save the file again"))
	}
	page := art.Document
	if page == nil {
		return
	}
	if page.LeastText.Found && page.LeastText.Value*scale < leastText-1e-6 {
		l.find(check.Warning, "text-small", p.Piece, p.At.At(l.onUnit(index, page.LeastText.At.Center())),
			phrase.New("the smallest text of %q is %s pt on the bag", art.Name, geometry.FormatNumber(page.LeastText.Value*scale, 1)),
			phrase.New("set it at least %g pt high, 8 where it is white or of several inks", leastText))
	}
	for _, font := range page.Fonts {
		if !font.Embedded {
			l.find(check.Error, "font-missing", p.Piece, p.Target.Center(),
				phrase.New("the font %s is not embedded in %q", font.Name, art.Name),
				phrase.New("save the PDF with all fonts embedded, or turn text into outlines"))
		}
	}
}

// firstOf returns the first appearance of an entry, or nil.
func (l *inspection) firstOf(index int) *placement.Placed {
	for i := range l.placed {
		if l.placed[i].Index == index {
			return &l.placed[i]
		}
	}
	return nil
}

// thinnest returns the thinnest line of the file of an entry in mm, and where it is.
func (l *inspection) thinnest(index int) (width float64, at geometry.Vec2, found bool) {
	art := l.pieces[index].Art
	switch {
	case art.Drawing != nil:
		return art.Drawing.LeastLine()
	case art.Document != nil:
		line := art.Document.LeastLine
		return line.Value, line.At.Center(), line.Found
	}
	return 0, geometry.Vec2{}, false
}

// onUnit returns a point of a file, in mm, in its unit square.
func (l *inspection) onUnit(index int, at geometry.Vec2) geometry.Vec2 {
	size := l.pieces[index].Art.Source.Size
	return geometry.Vec2{X: at.X / size.X, Y: at.Y / size.Y}
}
