package handout

import (
	"strconv"

	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
)

// opening sets what stands before the steps.
func (m maker) opening() {
	b := m.Snapshot.Spec.Body
	m.column.Write(report.Block{Kind: report.Note, Text: m.say("Folding lesson")})
	m.column.Heading(1, m.title())
	m.column.Paragraph(m.tell(phrase.New("Width %s, gusset %s, height %s", m.length(b.Width), m.length(b.Gusset), m.length(b.Height))))
	m.column.Heading(2, m.say("What you need"))
	m.column.Table(report.Table{
		Columns: []report.TableColumn{{Title: m.say("Part")}, {Title: m.say("Count"), Numbers: true}, {Title: m.say("Size")}, {Title: m.say("Material")}},
		Rows:    m.materials(),
	})
	m.column.Rows(report.Row{Label: m.say("Tools"), Value: m.tools()})
	m.column.Heading(2, m.say("Take care"))
	m.column.Bullets(m.cautions()...)
	m.column.Heading(2, m.say("How to read the steps"))
	m.column.Paragraph(m.say("Of two pictures the left one is on the way and the right one at the end of the step. The creases that are folded stand out in blue, dashed where paper hides them; what is glued is striped. Mountain and valley are named as seen from the side that is up: a valley is folded toward you, a mountain away from you. While the print side lies on the table that is the reverse, and what drawing and practice blank call a mountain is a valley."))
	m.column.Heading(2, m.say("Steps"))
}

// materials returns the parts of one bag.
func (m maker) materials() [][]string {
	snapshot := m.Snapshot
	paper := m.tell(phrase.New("paper of %s g/m²", geometry.FormatNumber(snapshot.Spec.Paper.Grammage, 0)))
	var rows [][]string
	for i := range snapshot.Blank.Pieces {
		piece := &snapshot.Blank.Pieces[i]
		name := m.say("Blank")
		if len(snapshot.Blank.Pieces) > 1 {
			name += ", " + m.Say(piece.Name)
		}
		rows = append(rows, []string{name, strconv.Itoa(piece.Count), m.size(piece.Width, piece.Height), paper})
	}
	for _, card := range snapshot.Blank.Cards {
		if card.Width <= 0 || card.Height <= 0 {
			continue
		}
		of := m.tell(phrase.New("board of %s g/m²", geometry.FormatNumber(card.Grammage, 0)))
		if card.Role == "patch" {
			of = m.tell(phrase.New("paper of %s g/m²", geometry.FormatNumber(card.Grammage, 0)))
		}
		if openings := m.openings(&card); openings != "" {
			of += ", " + openings
		}
		rows = append(rows, []string{m.say(card.Name()), strconv.Itoa(card.Count), m.size(card.Width, card.Height), of})
	}
	if handle := snapshot.Spec.Handle; snapshot.Job.RopePerHandle > 0 {
		rows = append(rows, []string{capitalised(m.say(handle.Kind.Name())), "2", m.length(snapshot.Job.RopePerHandle), ""})
		if handle.Kind.HasHoles() && handle.Eyelets {
			rows = append(rows, []string{m.say("Eyelet"), "4", m.tell(phrase.New("for holes of %s", m.length(handle.HoleDiameter))), ""})
		}
	}
	glue := m.tell(phrase.New("on %s", m.area(snapshot.Job.GlueArea)))
	return append(rows, []string{m.say("Adhesive"), "", glue, m.say("hot glue, paste or double-sided tape")})
}

// openings says that a card has those of the face, and how many; "" where it has none.
func (m maker) openings(card *blank.Card) string {
	count := len(m.Snapshot.Blank.CardOpenings(card))
	switch kind := m.Snapshot.Spec.Handle.Kind; {
	case count == 0:
		return ""
	case kind.HasHoles():
		return m.tell(phrase.New("with %d holes like the face", count))
	case kind.HasSlits():
		return m.tell(phrase.New("with %d slits like the face", count))
	}
	return m.say("with the hand hole of the face")
}

// tools returns what lies on the table beside the parts.
func (m maker) tools() string {
	tools := m.say("bone folder, steel ruler, knife and cutting mat, a flat block to press with")
	if m.Snapshot.Spec.Handle.Kind.HasHoles() && len(m.Snapshot.Blank.Pieces[0].Holes) > 0 {
		tools += ", " + m.say("hole punch")
	}
	if m.Snapshot.Spec.Handle.Eyelets && m.Snapshot.Spec.Handle.Kind.HasHoles() {
		tools += ", " + m.say("tool for the eyelets")
	}
	return tools
}

// cautions returns what may hurt, and what spoils the bag (common practice, no published
// source).
func (m maker) cautions() []string {
	list := []string{
		m.say("Knife: cut along the steel ruler and away from your hand, on the mat. Put the cap on when you lay it down."),
		m.say("Hot glue: it burns and stays hot for a minute. Keep fingers off it, and lay the gun on its stand."),
		m.say("Paper: its edges cut. Run the bone folder, not a finger, along a crease."),
	}
	if loop := m.Snapshot.Spec.Handle.Loop(); loop > bag.LongLoop {
		list = append(list, m.tell(phrase.New("Cords: a handle makes a loop of %s, long enough to be dangerous to small children. Say so on bags for toys or children's goods, and follow the local rules for cords.", geometry.Length(loop))))
	}
	for i := range m.Snapshot.Blank.Pieces {
		for _, area := range m.Snapshot.Blank.Pieces[i].Glue {
			if area.Side == blank.PrintSide && m.Snapshot.Spec.Paper.Lamination != bag.LaminationNone {
				return append(list, m.say("Film: glue does not hold on it. Keep film off what is glued, or roughen it first."))
			}
		}
	}
	return list
}
