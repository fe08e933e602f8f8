package proof

import (
	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
)

// openPoints lists what is not settled, up to a number of points; the rest is counted.
func (b *builder) openPoints(most int) {
	if len(b.mustChange)+len(b.mayChange) == 0 {
		return
	}
	b.column.Heading(2, b.say("Not settled yet"))
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

// What the approval takes in mm: below it lines for changes fill the page as far as is
// useful.
const (
	approvalHeight = 92.0
	lineHeight     = 8.0
	leastLines     = 3
	mostLines      = 9
)

// approval lays out what the client fills in, all on one page.
func (b *builder) approval() {
	b.column.Keep(approvalHeight + leastLines*lineHeight)
	lines := int((b.column.Left() - approvalHeight) / lineHeight)
	b.column.Heading(2, b.say("Changes and remarks"))
	b.column.WritingLines(min(max(lines, leastLines), mostLines))
	b.column.Heading(2, b.say("Approval"))
	b.column.Paragraph(b.tell(phrase.New("This approval is for version %s only.", b.Version)))
	for _, choice := range []phrase.Word{"Approved", "Approved with the changes above", "Not approved: please show it again"} {
		b.column.Write(report.Block{Kind: report.Tick, Text: b.say(choice)})
	}
	b.column.Space(3)
	b.column.Fields(b.say("Name and company"), b.say("Date"), b.say("Signature"))
	b.column.Space(1)
	for _, caution := range b.cautions() {
		b.column.Write(report.Block{Kind: report.Note, Text: caution})
	}
}
