package jobsheet

import (
	"context"
	"io"
	"time"

	"gussetwright/app/document"
	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/pdf"
	"gussetwright/render/report"
)

// Order is what a job sheet is made from.
type Order struct {
	Snapshot *document.Snapshot
	Date     time.Time
	Version  string // of the bag, as its proof states it; "" leaves it out
	// Say puts English into the language of the reader; nil leaves it.
	Say func(english string) string
	// Unit is that of lengths on the page, "" for mm; inches also choose the paper Letter.
	// The table has millimetres whatever the unit.
	Unit geometry.Unit
}

// PDF writes the page. Nothing is written when ctx ends before.
func PDF(ctx context.Context, w io.Writer, order Order) error {
	m, err := newMaker(ctx, order)
	if err != nil {
		return phrase.Errorf("make the job sheet: %s", err)
	}
	page, err := m.page()
	if err != nil {
		return phrase.Errorf("make the job sheet: %s", err)
	}
	return pdf.WriteReport(w, []report.Page{page}, pdf.Info{Title: m.title(), Date: m.Date, Language: m.say("en")})
}

// CSV writes the table: a row for each number, as RFC 4180 has it or, where decimals stand
// behind a comma, as spreadsheets of such a country read it. Nothing is written when ctx
// ends before.
func CSV(ctx context.Context, w io.Writer, order Order) error {
	m, err := newMaker(ctx, order)
	if err != nil {
		return phrase.Errorf("make the table of the job: %s", err)
	}
	return m.writeTable(w, m.rows())
}

// maker makes the files of an order from its figures.
type maker struct {
	Order
	figures
}

func newMaker(ctx context.Context, order Order) (*maker, error) {
	if order.Say == nil {
		order.Say = func(english string) string { return english }
	}
	if order.Unit == "" {
		order.Unit = geometry.Millimetre
	}
	found, err := reckon(ctx, order.Snapshot)
	if err != nil {
		return nil, err
	}
	return &maker{order, found}, nil
}

// say says a word; a missing one, such as the unit of what is paid once, stays missing.
func (m *maker) say(text phrase.Word) string {
	if text == "" {
		return ""
	}
	return m.Say(string(text))
}

func (m *maker) tell(said phrase.Phrase) string { return m.voice().Tell(said) }

func (m *maker) title() string {
	if m.Snapshot.Spec.Name == "" {
		return m.say("Paper carrier bag")
	}
	return m.Snapshot.Spec.Name
}
