// Package handout makes the printed lesson: how a bag is folded, in numbered steps with
// pictures, for trainers and finishers.
//
// Texts are English words and phrases of package phrase, put through Order.Say before
// anybody reads them.
package handout

import (
	"context"
	"io"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/folding"
	"gussetwright/app/voice"
	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf"
	"gussetwright/render/report"
)

// Order is what a printed lesson is made from.
type Order struct {
	Snapshot *document.Snapshot
	Date     time.Time
	// Say puts English into the language of the reader; nil leaves it.
	Say  func(english string) string
	Unit geometry.Unit // of sizes, "" for mm; inches also choose the paper Letter
}

// Write writes the lesson as a PDF file: what is needed and what to take care of, then
// the steps, some four to a page. Nothing is written when ctx ends before.
func Write(ctx context.Context, w io.Writer, order Order) error {
	m := maker{Order: order}.whole()
	pages, err := m.pages(ctx)
	if err != nil {
		return phrase.Errorf("make the printed lesson: %s", err)
	}
	return pdf.WriteReport(w, pages, pdf.Info{Title: m.title(), Date: m.Date, Language: m.say("en")})
}

// maker makes the pages of an order.
type maker struct {
	Order
	studio *folding.Studio
	column *report.Column
}

// whole returns the maker with everything filled in.
func (m maker) whole() maker {
	if m.Say == nil {
		m.Say = func(english string) string { return english }
	}
	if m.Unit == "" {
		m.Unit = geometry.Millimetre
	}
	return m
}

func (m maker) pages(ctx context.Context) ([]report.Page, error) {
	var err error
	if m.studio, err = folding.New(ctx, m.Snapshot, m.Say); err != nil {
		return nil, err
	}
	m.column = report.NewColumn(m.layout())
	m.opening()
	lesson := m.studio.Lesson
	for stage := range min(lesson.Foldable, len(lesson.Stages)) {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		m.step(stage)
	}
	m.ending()
	return m.column.Pages()
}

var dark = report.RGB(34, 38, 42)

func (m maker) layout() report.Layout {
	return report.Layout{
		Paper: report.Usual(m.Unit), Margin: 16, Size: 3.3, Ink: dark,
		Footer: m.title() + "  ·  " + m.say("Folding lesson") + "  ·  " + m.Date.Format(time.DateOnly),
		Number: func(page, of int) string { return m.tell(phrase.New("Page %d of %d", page, of)) },
	}
}

func (m maker) say(text phrase.Word) string { return m.Say(string(text)) }

// tell says a phrase, with lengths in the unit of the order.
func (m maker) tell(said phrase.Phrase) string { return m.voice().Tell(said) }

func (m maker) title() string {
	if m.Snapshot.Spec.Name == "" {
		return m.say("Paper carrier bag")
	}
	return m.Snapshot.Spec.Name
}

// voice says texts and numbers as the reader is used to.
func (m maker) voice() voice.Voice { return voice.Voice{Say: m.Say, Unit: m.Unit} }

func (m maker) length(mm float64) string { return m.voice().Length(mm) }

// size writes a width and a height.
func (m maker) size(width, height float64) string { return m.voice().Size(width, height) }

// area writes an area in mm² in square centimetres or inches.
func (m maker) area(mm2 float64) string { return m.voice().Area(mm2, 0) }
