package proof

import (
	"strings"

	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
)

// openPoints lists what is not settled, up to a number of points; the rest is counted.
func (b *builder) openPoints(most int) {
	if len(b.mustChange)+len(b.mayChange) == 0 {
		return
	}
	b.column.Heading(2, b.say("Still open"))
	left := most
	list := func(title string, points []string) {
		shown := points[:min(left, len(points))]
		left -= len(shown)
		if len(shown) == 0 {
			return
		}
		b.column.Write(report.Block{Kind: report.Strong, Text: title})
		b.column.Bullets(shown...)
		b.column.Space(1.5)
	}
	list(b.say("Must be solved before the bag can be made"), b.mustChange)
	list(b.say("To be decided, or accepted as it is"), b.mayChange)
	if hidden := len(b.mustChange) + len(b.mayChange) - most; hidden > 0 {
		b.column.Write(report.Block{Kind: report.Note, Text: b.tell(phrase.New("Points that found no room here: %d. Ask for the whole list before you sign.", hidden))})
	}
}

// Lines for changes fill the page as far as is useful.
const (
	lineHeight = 8.0 // mm, as of report.Column.WritingLines
	leastLines = 3
	mostLines  = 14
)

// approval lays out what the client fills in, all on one page.
func (b *builder) approval() {
	measured := report.NewColumn(b.layout())
	free := measured.Left()
	b.changes(measured, 0)
	b.signature(measured)
	needed := free - measured.Left() + 6 // what comes before the heading
	b.column.Keep(needed + leastLines*lineHeight)
	lines := int((b.column.Left() - needed) / lineHeight)
	b.changes(b.column, min(max(lines, leastLines), mostLines))
	b.signature(b.column)
}

func (b *builder) changes(column *report.Column, lines int) {
	column.Heading(2, b.say("Changes and remarks"))
	column.WritingLines(lines)
}

func (b *builder) signature(column *report.Column) {
	column.Heading(2, b.say("Approval"))
	b.approvedBag(column)
	for _, choice := range []phrase.Word{"Approved", "Approved with the changes above", "Not approved: please show it again"} {
		column.Write(report.Block{Kind: report.Tick, Text: b.say(choice)})
	}
	column.Space(3)
	column.Fields(b.say("Name and company"), b.say("Date"), b.say("Signature"))
	column.Space(1)
	for _, caution := range b.cautions() {
		column.Write(report.Block{Kind: report.Note, Text: caution})
	}
}

// approvedBag sets beside a small picture what the signature is for, so that the page can
// stand alone.
func (b *builder) approvedBag(column *report.Column) {
	column.Beside(report.Picture{Image: b.small, Quality: coverQuality}, smallWidth,
		report.Block{Kind: report.Strong, Text: b.title()},
		report.Block{Text: strings.Join(b.approved(len(b.mustChange)+len(b.mayChange)), "\n")},
		report.Block{Kind: report.Note, Text: b.onlyThis()})
}
