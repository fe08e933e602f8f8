package jobsheet

import (
	"strings"

	"gussetwright/geometry/blank"
	"gussetwright/geometry/job"
	"gussetwright/geometry/phrase"
)

// lists is how many entries of each list are shown.
type lists struct{ findings, members, breaks, lines, missing int }

// mostFindings is how many findings a page begins with: what is long is not read.
const mostFindings = 6

// full returns the lists in their whole length.
func (m *maker) full() lists {
	return lists{
		findings: min(len(m.errors)+len(m.warnings), mostFindings), members: len(m.members), breaks: len(m.breaks),
		lines: len(m.quote.Lines), missing: len(m.quote.Missing),
	}
}

// least is how many entries of a list stay as long as anything else can give way.
const least = 2

// shorter takes an entry from the list that takes the most room for its worth, and false
// where all are down to least. The costs of this run are worth twice a size of the family,
// and quantities stand two in a row.
func (l *lists) shorter(least int) bool {
	longest, most := (*int)(nil), 0
	for _, list := range []struct {
		count *int
		room  int
	}{{&l.members, 4 * l.members}, {&l.findings, 4 * l.findings}, {&l.lines, 2 * l.lines}, {&l.breaks, 2 * l.breaks}, {&l.missing, l.missing}} {
		if *list.count > least && list.room > most {
			longest, most = list.count, list.room
		}
	}
	if longest == nil {
		return false
	}
	*longest--
	return true
}

// andMore says how many entries are left out, "" where none are.
func (m *maker) andMore(all, shown int) string {
	if all <= shown {
		return ""
	}
	return m.tell(phrase.New("and %d more", all-shown))
}

func (m *maker) cardParts() []part {
	var parts []part
	for i := range m.cuttings {
		c := &m.cuttings[i]
		card := m.tell(phrase.New("%d of %s, %s", c.Card.Count, m.size(c.Card.Width, c.Card.Height), m.measure(c.Card.Grammage, "g/m²")))
		from := m.say("fits no sheet")
		if c.Up > 0 {
			from = m.tell(phrase.New("%d from %s, %s sheets, %s", c.Up, m.cutFrom(c)+" ("+m.size(c.Sheet.Width, c.Sheet.Height)+")", count(c.Sheets), m.measure(c.Kilograms, "kg")))
		}
		parts = append(parts, pair{m.say(c.Card.Name()), card + m.openings(&c.Card)}, pair{"", from})
	}
	return parts
}

// openings adds to a card that it has those of the face, nothing where it has none.
func (m *maker) openings(card *blank.Card) string {
	switch kind := m.Snapshot.Spec.Handle.Kind; {
	case len(m.Snapshot.Blank.CardOpenings(card)) == 0:
		return ""
	case kind.HasHoles():
		return ", " + m.say("with holes")
	case kind.HasSlits():
		return ", " + m.say("with slits")
	}
	return ", " + m.say("with hand hole")
}

func (m *maker) handleParts() []part {
	h, run := &m.Snapshot.Spec.Handle, &m.Snapshot.Job
	parts := []part{pair{m.label("handle.kind"), m.carriedBy()}}
	if run.RopePerHandle > 0 {
		parts = append(parts, pair{m.say("Length"), m.tell(phrase.New("%s a handle, %s for the run", m.length(run.RopePerHandle), m.measure(run.RopeMetres, "m")))})
	}
	switch {
	case h.Kind.HasHoles():
		holes := m.tell(phrase.New("%s wide, %s apart, %s below the edge", m.length(h.HoleDiameter), m.length(h.Spacing), m.length(h.Drop)))
		parts = append(parts, pair{m.say("Holes"), holes})
	case h.Kind.HasSlits():
		slits := m.tell(phrase.New("%s high, %s apart, their middle %s below the edge", m.length(h.SlitHeight), m.length(h.Spacing), m.length(h.Drop)))
		parts = append(parts, pair{m.say("Slits"), slits})
	case h.Kind.HasPatch():
		parts = append(parts, pair{m.say("Legs"), m.tell(phrase.New("%s apart, rise %s", m.length(h.Spacing), m.length(h.Rise)))})
	case run.RopePerHandle == 0 && h.Kind != "none":
		parts = append(parts, pair{m.say("Hand hole"), m.size(h.HandHoleWidth, h.HandHoleHeight)})
	}
	if run.Eyelets > 0 {
		parts = append(parts, pair{m.label("handle.eyelets"), m.tell(phrase.New("%s for the run", count(run.Eyelets)))})
	}
	return parts
}

// carriedBy names what the bag is carried by.
func (m *maker) carriedBy() string {
	if name := m.Snapshot.Spec.Handle.Kind.Name(); name != "" {
		return m.say(name)
	}
	return m.say("its top edge")
}

func (m *maker) packingParts() []part {
	p := &m.packing
	if p.Thickness <= 0 {
		return []part{remark(m.say("The bag cannot be packed flat."))}
	}
	parts := []part{
		pair{m.say("Packed bag"), m.tell(phrase.New("%s, %s thick without handle and cards", m.size(p.Width, p.Height), m.length(p.Thickness)))},
		pair{m.say("Pile"), m.tell(phrase.New("%s a bag", m.length(p.PileThickness)))},
	}
	if p.Cartons == 0 {
		return append(parts, pair{m.say("Cartons"), m.say("a bag is too heavy for a carton")})
	}
	parts = append(parts,
		pair{m.say("Carton"), m.tell(phrase.New("inside %s", m.box(p.Inside)))},
		pair{"", m.tell(phrase.New("outside %s", m.box(p.Outside)))},
		pair{m.say("Cartons"), m.tell(phrase.New("%s of %s bags, %s each, %s gross", count(p.Cartons), count(p.BagsPerCarton), m.measure(p.CartonGrams/1000, "kg"), m.measure(p.Kilograms, "kg")))},
	)
	if p.Pallets == 0 {
		return append(parts, pair{m.say("Pallets"), m.say("a carton is too large or too heavy for the pallet")})
	}
	return append(parts,
		pair{m.say("Pallets"), m.tell(phrase.New("%s of %s cartons, %d in a layer", count(p.Pallets), count(p.PerPallet), p.Layer.Up()))},
		pair{"", m.tell(phrase.New("the fullest %s high, %s", m.length(p.PalletHeight), m.measure(p.PalletKilograms, "kg")))},
	)
}

func (m *maker) box(b job.Box) string { return m.size(b.Width, b.Length, b.Height) }

func (m *maker) quoteParts(shown lists) []part {
	if !m.quote.Known() {
		return nil
	}
	currency := m.Snapshot.Spec.Currency
	costs := table{titles: []string{m.tell(phrase.New("%s bags", count(m.quote.Quantity))), m.say("quantity"), m.say("price"), strings.Join(together(m.say("amount"), currency), " ")}}
	for _, line := range m.quote.Lines[:shown.lines] {
		row := []string{m.say(line.Name), "", "", m.money(line.Amount)}
		if line.Unit != "" {
			row[1] = m.measure(line.Quantity, m.say(unitName(line.Unit, line.Quantity)))
			row[2] = m.each(line.Price) + "/" + strings.ReplaceAll(m.perUnit(&line.Item), " ", space)
		}
		costs.rows = append(costs.rows, row)
	}
	costs.rest = m.andMore(len(m.quote.Lines), shown.lines)
	if m.quote.Markup > 0 {
		costs.after = append(costs.after, []string{m.label("prices.markup_percent"), "", m.measure(m.Snapshot.Spec.Prices.Markup, "%"), m.money(m.quote.Markup)})
	}
	costs.total = []string{m.say("Total"), "", m.tell(phrase.New("%s a bag", m.each(m.quote.PerBag))), m.money(m.quote.Total)}
	parts := []part{costs}
	if missing := m.missing(shown.missing); missing != "" {
		parts = append(parts, sentence(m.tell(phrase.New("Not in this quote: %s", missing))))
	}
	return parts
}

// missing names what has no price.
func (m *maker) missing(shown int) string {
	var names []string
	for _, item := range m.quote.Missing[:shown] {
		names = append(names, m.say(item.Name))
	}
	return strings.Join(together(strings.Join(names, ", "), m.andMore(len(m.quote.Missing), shown)), " ")
}

func (m *maker) breakParts(shown lists) []part {
	if len(m.breaks) < 2 {
		return nil
	}
	currency := m.Snapshot.Spec.Currency
	in := func(title phrase.Word) string { return strings.Join(together(m.say(title), currency), " ") }
	prices := table{titles: []string{m.say("bags"), in("a bag"), in("total")}}
	for _, b := range m.breaks[:shown.breaks] {
		prices.rows = append(prices.rows, []string{count(b.Quantity), m.each(b.PerBag), m.money(b.Total)})
	}
	rest := m.andMore(len(m.breaks), shown.breaks)
	if len(prices.rows) < folded {
		prices.rest = rest
		return []part{prices}
	}
	half, second := (len(prices.rows)+1)/2, prices
	second.rows, prices.rows, second.rest = prices.rows[half:], prices.rows[:half], rest
	return []part{twin{prices, second}}
}

// folded is from how many rows on a list of quantities is set in two halves.
const folded = 7

func (m *maker) familyParts(shown lists) []part {
	if len(m.members) == 0 {
		return nil
	}
	sizes := table{
		titles: []string{m.say("Size"), wdh, m.say("bags"), m.say("up"), m.say("sheets")},
		rest:   m.andMore(len(m.members), shown.members),
	}
	for _, member := range m.members[:shown.members] {
		spec := &member.Spec
		size := m.size(spec.Body.Width, spec.Body.Gusset, spec.Body.Height)
		sizes.rows = append(sizes.rows, []string{
			m.memberName(spec.Name), size, count(spec.Run.Quantity), count(float64(member.Plan.Up())), count(member.Job.Sheets),
		})
	}
	return []part{sizes}
}

// longestMember is how many characters of the name of a size stand in a table.
const longestMember = 20

// memberName shortens a name that would take more than its share of a row.
func (m *maker) memberName(name string) string {
	if name == "" {
		return m.say("Paper carrier bag")
	}
	letters := []rune(name)
	if len(letters) <= longestMember {
		return name
	}
	return strings.TrimSpace(string(letters[:longestMember-1])) + "…"
}
