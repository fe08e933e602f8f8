package jobsheet

import (
	"math"
	"strings"

	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/load"
	"gussetwright/geometry/phrase"
)

// sections returns what stands in the two columns of the page, with lists of such lengths.
func (m *maker) sections(shown lists) []section {
	all := []section{
		{m.say("Bag and construction"), m.bagParts()},
		{m.say("Paper"), m.paperParts()},
		{m.say("Blank"), m.blankParts()},
		{m.say("Sheet"), m.sheetParts()},
		{m.say("Run"), m.runParts()},
		{m.say("Cutting and creasing"), m.dieParts()},
		{m.say("Gluing"), m.glueParts()},
		{m.say("Cards and their board"), m.cardParts()},
		{m.say("Handle"), m.handleParts()},
		{m.say("Packing"), m.packingParts()},
		{m.say("Load"), m.loadParts()},
		{m.say("Quote"), m.quoteParts(shown)},
		{m.say("Prices by quantity"), m.breakParts(shown)},
		{m.say("Family"), m.familyParts(shown)},
	}
	some := all[:0]
	for _, s := range all {
		if len(s.parts) > 0 {
			some = append(some, s)
		}
	}
	return some
}

// wdh is how the sides of a bag are named on drawings.
const wdh = "W" + space + "×" + space + "D" + space + "×" + space + "H"

func (m *maker) bagParts() []part {
	body := &m.Snapshot.Spec.Body
	top := m.chosen("bag.top")
	switch body.Top {
	case bag.TopTurnIn:
		top += ", " + m.length(body.TurnIn)
	case bag.TopZigzag:
		top = m.tell(phrase.New("zigzag, a tooth every %s, %s deep", m.length(body.ZigzagPitch), m.length(body.ZigzagDepth)))
	}
	base := m.tell(phrase.New("%s, flap %s, overlap %s", phrase.Word(body.Base), m.length(body.BaseFlap()), m.length(body.BaseOverlap)))
	if body.Base == bag.BaseSlotted {
		base += ", " + m.tell(phrase.New("slots %s wide", m.length(body.SlotWidth)))
	}
	return []part{
		pair{m.say("Size"), wdh + "  " + m.size(body.Width, body.Gusset, body.Height) + ", " + m.voice().Number(body.Volume(), 2) + space + "l"},
		pair{m.label("bag.top"), top},
		pair{m.label("bag.base"), base},
		pair{m.label("bag.seams"), m.tell(phrase.New("%d, flap %s, chamfer %s", m.Snapshot.Blank.Seams, m.length(body.SeamFlap), count(body.Chamfer)+"°"))},
	}
}

func (m *maker) paperParts() []part {
	paper := &m.Snapshot.Spec.Paper
	film := m.chosen("paper.lamination")
	if grams := m.Snapshot.Job.FilmGrams; grams > 0 {
		film = m.tell(phrase.New("%s, %s a bag", phrase.Word(paper.Lamination), m.measure(grams, "g")))
	}
	return []part{
		pair{m.label("paper.kind"), m.chosen("paper.kind") + ", " + m.chosen("paper.colour")},
		pair{m.label("paper.grammage_gsm"), m.tell(phrase.New("%s, caliper %s", m.measure(paper.Grammage, "g/m²"), m.measure(m.Snapshot.Job.CaliperMicrons, "µm")))},
		pair{m.label("paper.grain"), m.tell(phrase.New("along the %s of the bag", phrase.Word(paper.Grain)))},
		pair{m.label("paper.lamination"), film},
	}
}

func (m *maker) blankParts() []part {
	laid, run := &m.Snapshot.Blank, &m.Snapshot.Job
	var parts []part
	for i := range laid.Pieces {
		piece := &laid.Pieces[i]
		name := m.say("Size")
		if len(laid.Pieces) > 1 {
			name = capitalised(m.Say(piece.Name))
		}
		size := m.size(piece.Width, piece.Height)
		if piece.Count > 1 {
			size = m.tell(phrase.New("%d of %s", piece.Count, size))
		}
		parts = append(parts, pair{name, size})
	}
	return append(parts,
		pair{m.say("Paper"), m.tell(phrase.New("%s in a bag, %s", m.measure(run.PaperArea/1e6, "m²"), m.measure(run.PaperGrams, "g")))},
		pair{m.say("One bag"), m.measure(run.BagGrams, "g") + " " + m.weighed()},
	)
}

func (m *maker) sheetParts() []part {
	s, plan, run := &m.Snapshot.Spec.Sheet, &m.Snapshot.Plan, &m.Snapshot.Job
	parts := []part{
		pair{m.say("Size"), strings.Join(together(m.size(s.Width, s.Height), m.stockName()), ", ")},
		pair{m.say("Gripper"), m.tell(phrase.New("%s on the %s edge", m.length(s.Gripper), phrase.Word(s.GripperEdge)))},
		pair{m.say("Margins"), m.tell(phrase.New("side %s, tail %s, gap %s", m.length(s.Side), m.length(s.Tail), m.length(s.Gap)))},
	}
	if plan.Up() == 0 {
		return append(parts, pair{m.say("Up"), strings.Join(together(m.say("the blank does not fit"), m.tell(plan.Reason())), ": ")})
	}
	up := m.tell(phrase.New("%d-up, bags from a sheet: %s", plan.Up(), m.voice().Number(plan.BagsPerSheet(), 2)))
	if run.Forms > 1 {
		up += ", " + m.tell(phrase.New("%d forms", run.Forms))
	}
	proven := m.tell(phrase.New("not proven to be the most; no layout holds more than %d", plan.Bound))
	if plan.Proven {
		proven = m.say("proven: no layout holds more")
	}
	parts = append(parts,
		pair{m.say("Up"), up}, pair{"", proven},
		pair{m.say("Waste"), m.voice().Number(plan.WastePercent(), 1) + "%" + space + m.say("of the whole sheet")},
		pair{m.say("Grain"), m.grainToOrder()},
	)
	if run.Sheets > 0 {
		sheets := m.tell(phrase.New("%s with spoilage, %s of them for make-ready", count(run.Sheets), count(run.MakeReadySheets)))
		parts = append(parts, pair{m.say("Sheets"), sheets}, pair{m.say("Paper"), m.tell(phrase.New("%s, %s a sheet", m.measure(run.PaperKilograms, "kg"), m.measure(run.SheetGrams, "g")))})
	}
	return parts
}

// stockName returns the name of the user's own sheet that the press sheet is, "" where it
// is none of them.
func (m *maker) stockName() string {
	s := &m.Snapshot.Spec.Sheet
	alike := func(a, b float64) bool { return math.Abs(a-b) < 0.1 } // as sheets in inches are entered
	for _, own := range m.Snapshot.Spec.Stock {
		if alike(own.Width, s.Width) && alike(own.Height, s.Height) || alike(own.Width, s.Height) && alike(own.Height, s.Width) {
			return own.Name
		}
	}
	return ""
}

// together returns the texts that say something.
func together(texts ...string) []string {
	var some []string
	for _, text := range texts {
		if text != "" {
			some = append(some, text)
		}
	}
	return some
}

// grainToOrder says along which side of the sheet the fibres must lie.
func (m *maker) grainToOrder() string {
	s := &m.Snapshot.Spec.Sheet
	side, other := s.Width, s.Height
	if m.fibres() == bag.GrainHeight {
		side, other = other, side
	}
	if side >= other {
		return m.tell(phrase.New("along the long side, %s", m.length(side)))
	}
	return m.tell(phrase.New("along the short side, %s", m.length(side)))
}

func (m *maker) runParts() []part {
	run, entered := &m.Snapshot.Job, &m.Snapshot.Spec.Run
	parts := []part{
		pair{m.label("run.quantity"), m.tell(phrase.New("%s bags, %s printed with spoilage of %s", count(run.Quantity), count(run.BagsPrinted), m.voice().Number(entered.Spoilage, 1)+"%"))},
	}
	if run.Forms > 0 {
		parts = append(parts, pair{m.say("Forms"), m.tell(phrase.New("%d, make-ready %s sheets each", run.Forms, count(entered.MakeReady)))})
	}
	return parts
}

func (m *maker) dieParts() []part {
	run := &m.Snapshot.Job
	rule := func(ofBag, inDies float64) string {
		if run.Forms == 0 {
			return m.tell(phrase.New("%s a bag", m.measure(ofBag, "m")))
		}
		return m.tell(phrase.New("%s a bag, %s in the dies of all forms", m.measure(ofBag, "m"), m.measure(inDies, "m")))
	}
	return []part{
		pair{m.say("Cutting rule"), rule(run.CutMetres, run.DieCutMetres)},
		pair{m.say("Creasing rule"), rule(run.CreaseMetres, run.DieCreaseMetres)},
	}
}

func (m *maker) glueParts() []part {
	run := &m.Snapshot.Job
	parts := []part{
		pair{m.say("One bag"), m.tell(phrase.New("%s long, %s, %s wet", m.measure(run.GlueMetres, "m"), m.area(run.GlueArea), m.measure(run.GlueGrams, "g")))},
		pair{m.say("Run"), m.tell(phrase.New("%s at %s", m.measure(run.GlueKilograms, "kg"), m.measure(m.Snapshot.Spec.Run.GlueCoat, "g/m²")))},
	}
	for _, side := range []blank.Side{blank.PrintSide, blank.ReverseSide} {
		var areas []string
		for _, g := range glueAreas(&m.Snapshot.Blank) {
			if g.side == side {
				areas = append(areas, strings.ReplaceAll(m.say(g.name), " ", space)+space+m.area(g.area))
			}
		}
		if len(areas) > 0 {
			parts = append(parts, pair{capitalised(m.say(sideName(side))), strings.Join(areas, ", ")})
		}
	}
	return parts
}

func (m *maker) loadParts() []part {
	if !m.carried {
		return nil
	}
	return []part{
		pair{m.say("Estimate"), m.tell(m.load.Sentence())},
		remark(capitalised(m.tell(m.load.Basis())) + "; " + m.tell(load.Caution()) + "."),
	}
}
