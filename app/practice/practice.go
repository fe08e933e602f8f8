// Package practice makes blanks to print on an office printer, cut out and fold: the
// blank at full size on tiles that are joined by marks, and once more reduced to a
// page. All of it is lines and letters, none is a picture.
//
// Texts are English words and phrases of package phrase, put through Order.Say before
// anybody reads them.
package practice

import (
	"context"
	"io"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/voice"
	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf"
	"gussetwright/render/report"
)

// Order is what practice blanks are made from.
type Order struct {
	Snapshot *document.Snapshot
	Date     time.Time
	// Say puts English into the language of the reader; nil leaves it.
	Say  func(english string) string
	Unit geometry.Unit // of sizes, "" for mm
	// Paper is what the blanks are printed on, "" for what is usual with the unit: A4, or
	// Letter with inches.
	Paper Paper
	// Margin is what the printer leaves white on all four sides, in mm from
	// LeastMargin to MostMargin; 0 for 7.
	Margin float64
}

// Bounds of the margin in mm. Office printers leave 3 to 6.5 mm white, some more at the
// foot (values from memory).
const (
	LeastMargin = 3
	MostMargin  = 25
	usualMargin = 7
)

// overlap is the breadth in mm of the strip that neighbouring tiles both show.
const overlap = 10.0

// Write writes the practice blanks as a PDF file: a page with the map of the tiles, the
// tiles row by row from the upper left one, and a reduced page, each for every piece.
// Nothing is written when ctx ends before.
func Write(ctx context.Context, w io.Writer, order Order) error {
	pages, err := pages(ctx, order)
	if err != nil {
		return phrase.Errorf("make the practice blanks: %s", err)
	}
	m := maker{order}.whole()
	return pdf.WriteReport(w, pages, pdf.Info{Title: m.title(), Date: m.Date, Language: m.say("en")})
}

func pages(ctx context.Context, order Order) ([]report.Page, error) {
	m := maker{order}.whole()
	if err := m.Paper.check(); err != nil {
		return nil, err
	}
	if !(m.Margin >= LeastMargin && m.Margin <= MostMargin) {
		return nil, phrase.Errorf("the margin of the printer is %s; give %s to %s", m.length(m.Margin), m.length(LeastMargin), m.length(MostMargin))
	}
	sheets := m.sheets()
	list, err := m.cover(sheets)
	if err != nil {
		return nil, err
	}
	for i := range sheets {
		for number := range sheets[i].grid.count() {
			if err := ctx.Err(); err != nil {
				return nil, err
			}
			list = append(list, m.tile(&sheets[i], number))
		}
	}
	for i := range sheets {
		list = append(list, m.reduced(i))
	}
	return list, ctx.Err()
}

// maker makes the pages of an order.
type maker struct{ Order }

// whole returns the maker with everything filled in.
func (m maker) whole() maker {
	if m.Say == nil {
		m.Say = func(english string) string { return english }
	}
	if m.Unit == "" {
		m.Unit = geometry.Millimetre
	}
	if m.Paper == "" {
		m.Paper = UsualPaper(m.Unit)
	}
	if m.Margin == 0 {
		m.Margin = usualMargin
	}
	return m
}

func (m maker) say(text phrase.Word) string { return m.Say(string(text)) }

// tell says a phrase, with lengths in the unit of the order.
func (m maker) tell(said phrase.Phrase) string { return m.voice().Tell(said) }

// voice says texts and numbers as the reader is used to.
func (m maker) voice() voice.Voice { return voice.Voice{Say: m.Say, Unit: m.Unit} }

func (m maker) length(mm float64) string { return m.voice().Length(mm) }

// size writes a width and a height.
func (m maker) size(width, height float64) string { return m.voice().Size(width, height) }

func (m maker) title() string {
	if m.Snapshot.Spec.Name == "" {
		return m.say("Paper carrier bag")
	}
	return m.Snapshot.Spec.Name
}

// pieceName returns the name of a piece, "" where there is but one.
func (m maker) pieceName(piece int) string {
	if len(m.Snapshot.Blank.Pieces) == 1 {
		return ""
	}
	return m.Say(m.Snapshot.Blank.Pieces[piece].Name)
}
