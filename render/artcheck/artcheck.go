// Package artcheck looks at the artwork on a bag and says what will not print as it
// should: a finding each, with a remedy and a place on the blank.
//
// The limits are common practice of printers without a published source, unless a
// comment beside them says otherwise.
package artcheck

import (
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/check"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/placement"
	"gussetwright/render/artwork"
	"gussetwright/render/dieline"
)

// Piece is one entry of Spec.Artwork: what was opened, or why it cannot be shown, or
// neither while it is being opened.
type Piece struct {
	Art *artwork.Art
	Err error
}

// inspection is one look at the artwork of a bag.
type inspection struct {
	blank    *blank.Blank
	spec     *bag.Spec
	pieces   []Piece
	placed   []placement.Placed
	cuts     []cutLook
	findings []check.Finding
}

// Inspect returns what can be said at once: it looks at few pixels, those along the edges
// of a place that artwork runs over. pieces goes by the index of Spec.Artwork; it may be
// shorter.
func Inspect(b *blank.Blank, pieces []Piece, placed []placement.Placed) []check.Finding {
	look := inspection{blank: b, spec: &b.Spec, pieces: pieces, placed: placed}
	for i := range pieces {
		look.piece(i)
	}
	look.colours()
	look.background()
	return look.findings
}

// piece looks at one entry.
func (l *inspection) piece(index int) {
	entry := &l.spec.Artwork[index]
	art := l.pieces[index].Art
	if err := l.pieces[index].Err; err != nil {
		l.find(check.Error, "artwork-unreadable", 0, l.blank.Pieces[0].Box().Center(),
			phrase.New("artwork cannot be shown: %s", err), phrase.New("replace the file, or take it out"))
		return
	}
	if !placement.Has(l.blank, entry.On) {
		l.find(check.Warning, "artwork-without-place", 0, l.blank.Pieces[0].Box().Center(),
			phrase.New("%q is put on the place “%s”, which this bag does not have", entry.File, placeWord(entry.On)),
			phrase.New("choose another place, or take the artwork out"))
	}
	if art == nil {
		return
	}
	l.drawn(index)
	for i := range l.placed {
		if l.placed[i].Index == index {
			l.appearance(&l.placed[i], art)
		}
	}
}

// appearance looks at one place where the artwork is shown.
func (l *inspection) appearance(p *placement.Placed, art *artwork.Art) {
	entry := &l.spec.Artwork[p.Index]
	l.sharpness(p, art)
	l.bleed(p, art)
	l.upright(p, entry)
	l.flatFold(p, entry)
	l.cutOff(p, art)
	if entry.Holds == bag.HoldsEAN13 {
		l.code(p, art)
	}
	if p.Cut {
		l.find(check.Warning, "pattern-too-small", p.Piece, p.Target.Center(),
			phrase.New("%q is repeated so small that %d copies do not fill its place", entry.File, placement.MostCopies),
			phrase.New("make it larger, or join several repeats into one file"))
	}
}

// find adds a finding about a place on a piece, moved onto the paper.
func (l *inspection) find(severity check.Severity, code string, piece int, at geometry.Vec2, message, remedy phrase.Phrase) {
	paper := &l.blank.Pieces[piece]
	at = geometry.Vec2{X: min(max(at.X, 0), paper.Width), Y: min(max(at.Y, 0), paper.Height)}
	l.findings = append(l.findings, check.Finding{Severity: severity, Code: code, Message: message, Remedy: remedy, Piece: piece, At: at})
}

// placeWord returns what a place is called, which is translated.
func placeWord(place string) phrase.Word {
	switch place {
	case bag.OnFaces:
		return "both faces"
	case bag.OnGussets:
		return "both gussets"
	case bag.OnFrontPiece:
		return "piece with the front"
	case bag.OnBackPiece:
		return "piece with the back"
	}
	if name := dieline.PanelName(place); name != "" {
		return phrase.Word(name)
	}
	return phrase.Word(place) // the blank, or a piece by its name
}

// mm makes millimetres a value of a sentence.
func mm(length float64) geometry.Length { return geometry.Length(length) }
