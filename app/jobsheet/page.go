package jobsheet

import (
	"math"
	"time"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
	"gussetwright/render/scene"
)

// Of the page, in mm.
const (
	margin    = 10.0
	columnGap = 8.0
)

// attempt is a way to lay the page out.
type attempt struct {
	points   float64 // size of running text
	pictures float64 // height of the drawings in mm
	shorten  int     // lists may be shortened down to so many entries; -1 keeps them whole
}

// attempts are tried in their order until the page holds everything. Below 8 points is
// for bags and languages that leave no other way.
func attempts() []attempt {
	return []attempt{
		{10, 76, -1},
		{9.5, 70, -1},
		{9, 66, -1},
		{8.5, 62, -1},
		{8, 58, -1},
		{8, 50, -1},
		{8, 40, -1},
		{8, 40, least},
		{7.5, 40, 1},
		{7, 36, 0},
		{6, 30, 0},
		{5, 24, 0},
		{4, 20, 0},
	}
}

// page lays everything out on one page.
func (m *maker) page() (report.Page, error) {
	for _, a := range attempts() {
		shown := m.full()
		for {
			if items, fits := m.lay(a, shown); fits {
				paper := report.Usual(m.Unit)
				return report.Page{Width: paper.Width, Height: paper.Height, Items: items}, nil
			}
			if a.shorten < 0 || !shown.shorter(a.shorten) {
				break
			}
		}
	}
	return report.Page{}, phrase.Errorf("the texts are too long for one page; shorten the name of the project")
}

// lay lays the page out one way, and tells whether it holds everything.
func (m *maker) lay(a attempt, shown lists) (items []report.Item, fits bool) {
	paper := report.Usual(m.Unit)
	area := geometry.RectAt(0, 0, paper.Width, paper.Height).Inset(margin)
	whole := setter{size: a.points * point, width: area.Width()}
	between := 0.6 * whole.size
	page := stack(
		m.head(whole), gap(1.3*between),
		m.pictures(whole, a.pictures), gap(between),
		m.columns(whole, shown, between), gap(1.3*between),
		m.foot(whole, shown),
	)
	if page.height > area.Height()+geometry.Tolerance {
		return nil, false
	}
	return page.draw(area.Min.X, area.Max.Y), true
}

// head is the title block: what and how large the bag is, and which state of it.
func (m *maker) head(s setter) block {
	texts := together(m.say("Job sheet"), m.Date.Format(time.DateOnly), m.version())
	side := s
	side.width = 0
	for _, text := range texts {
		side.width = min(max(side.width, s.quiet().Advance(text)), s.width/3)
	}
	var about []block
	for _, text := range texts {
		about = append(about, lines(s.quiet(), s.quiet().Lines(text, side.width), s.width, scene.End))
	}
	name := s
	name.width = s.width - side.width - columnGap
	large := report.Style{Size: 1.7 * s.size, Bold: true, Colour: dark, Leading: 1.15}
	title := name.text(large, m.title())
	return stack(
		beside(stack(title, gap(0.2*s.size), name.text(name.body(), m.words())), stack(about...)),
		gap(0.5*s.size),
		rule(s.width, dark),
	)
}

func rule(width float64, colour report.Colour) block {
	return block{0.3, func(x, top float64) []report.Item {
		return []report.Item{report.Rule{
			From: geometry.Vec2{X: x, Y: top - 0.15}, To: geometry.Vec2{X: x + width, Y: top - 0.15},
			Line: report.Line{Width: 0.3, Colour: colour},
		}}
	}}
}

func (m *maker) version() string {
	if m.Version == "" {
		return ""
	}
	return m.tell(phrase.New("Version %s", m.Version))
}

// words returns the size of the bag and what is wanted, in words.
func (m *maker) words() string {
	b := m.Snapshot.Spec.Body
	size := phrase.New("%s wide, %s deep, %s high", m.length(b.Width), m.length(b.Gusset), m.length(b.Height))
	if b.Gusset == 0 {
		size = phrase.New("%s wide, %s high, flat", m.length(b.Width), m.length(b.Height))
	}
	return m.tell(size) + "  ·  " + m.tell(phrase.New("%s bags", count(m.Snapshot.Spec.Run.Quantity)))
}

// columns sets the sections in two columns, cut where the higher one is lowest.
func (m *maker) columns(s setter, shown lists, between float64) block {
	s.width = (s.width - columnGap) / 2
	sections := m.sections(shown)
	s = s.withLabels(sections)
	blocks := make([]block, len(sections))
	for i, c := range sections {
		blocks[i] = c.block(s)
	}
	best, lowest := block{}, math.Inf(1)
	for cut := range len(blocks) + 1 {
		left, right := spread(blocks[:cut], between), spread(blocks[cut:], between)
		if height := max(left.height, right.height); height < lowest {
			best, lowest = beside(left, shifted(right, s.width+columnGap)), height
		}
	}
	return best
}

// spread stacks blocks with a distance between them.
func spread(blocks []block, between float64) block {
	var all []block
	for i, b := range blocks {
		if i > 0 {
			all = append(all, gap(between))
		}
		all = append(all, b)
	}
	return stack(all...)
}

func shifted(b block, by float64) block {
	return block{b.height, func(x, top float64) []report.Item { return b.draw(x+by, top) }}
}

// foot is what needs the whole width: sentences.
func (m *maker) foot(s setter, shown lists) block {
	open := section{m.say("Open findings"), m.findingParts(shown.findings)}
	if len(m.errors)+len(m.warnings) > 0 {
		open.title = m.tell(phrase.New("Open findings: errors %d, warnings %d", len(m.errors), len(m.warnings)))
	}
	s = s.withLabels([]section{open})
	return spread([]block{open.block(s), section{m.say("Take care"), m.cautionParts()}.block(s)}, 0.6*s.size)
}
