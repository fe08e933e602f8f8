package report

import (
	"fmt"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// Block is a piece of running text.
type Block struct {
	Kind   Kind
	Text   string
	Lead   string  // a number or a sign before a Bullet; empty for a dot
	Indent float64 // mm that a Bullet keeps free for its Lead; 0 for as much as it needs
}

// Kind is what a Block is.
type Kind int

// The kinds of blocks.
const (
	Body   Kind = iota // running text
	Strong             // running text that is to be seen first
	Note               // small text that stands back
	Bullet             // one of a list, behind its Lead
	Tick               // behind a box to tick by hand
)

// Paragraph sets running text.
func (c *Column) Paragraph(text string) { c.Write(Block{Text: text}) }

// Bullets sets a list, each text behind a dot.
func (c *Column) Bullets(texts ...string) {
	for _, text := range texts {
		c.Write(Block{Kind: Bullet, Text: text})
	}
}

// Steps sets a list with numbers from first on.
func (c *Column) Steps(first int, texts ...string) {
	lead := func(i int) string { return fmt.Sprintf("%d.", first+i) }
	indent := 0.0
	for i := range texts {
		indent = max(indent, c.layout.lead(lead(i)))
	}
	for i, text := range texts {
		c.Write(Block{Kind: Bullet, Text: text, Lead: lead(i), Indent: indent})
	}
}

// Write sets blocks one below the other. A line of a paragraph does not stand alone
// at the foot or the head of a page.
func (c *Column) Write(blocks ...Block) {
	for _, block := range blocks {
		set := c.layout.set(block, c.Width())
		c.gap = max(c.gap, set.above)
		for _, part := range together(len(set.lines)) {
			c.place(strip{
				height: set.style.Height(part.end - part.start),
				draw:   func(top float64) []Item { return set.items(part, c.area.Min.X, top) },
			})
		}
		c.gap = set.below
	}
}

// setting is a block broken into lines.
type setting struct {
	kind         Kind
	style        Style
	lines        []string
	lead         string
	indent       float64
	above, below float64 // mm to leave
}

func (l Layout) set(b Block, width float64) setting {
	s := setting{kind: b.Kind, style: l.body(), lead: b.Lead, below: 0.7 * l.Size}
	switch b.Kind {
	case Strong:
		s.style.Bold, s.below = true, 0.3*l.Size
	case Note:
		s.style = l.small()
	case Bullet:
		if s.lead == "" {
			s.lead = "•"
		}
		s.indent = max(b.Indent, l.lead(s.lead))
		s.below = 0.35 * l.Size
	case Tick:
		s.indent = 1.9 * l.Size
		s.below = 0.55 * l.Size
	}
	s.lines = s.style.Lines(b.Text, width-s.indent)
	return s
}

// lead returns the width in mm that a number or sign before a text needs.
func (l Layout) lead(text string) float64 {
	return max(1.4*l.Size, l.body().Advance(text)+0.5*l.Size)
}

// items returns some of the lines, the first at top.
func (s setting) items(part span, x, top float64) []Item {
	items := s.style.items(s.lines[part.start:part.end], x+s.indent, top, scene.Start)
	if part.start > 0 {
		return items
	}
	switch s.kind {
	case Bullet:
		items = append(s.style.items([]string{s.lead}, x, top, scene.Start), items...)
	case Tick:
		side := 1.1 * s.style.Size
		box := geometry.RectAt(x, top-s.style.baseline()-0.2*s.style.Size, side, side)
		items = append(items, Box{Rect: box, Radius: 0.15 * side, Line: Line{Width: 0.25, Colour: s.style.Colour}})
	}
	return items
}

func (s setting) height() float64 { return s.style.Height(len(s.lines)) }

// span is a run of lines, end excluded.
type span struct{ start, end int }

// together parts lines into runs that stay on one page: two at the start, two at the
// end, single ones between.
func together(lines int) []span {
	if lines <= 3 {
		return []span{{0, lines}}
	}
	runs := []span{{0, 2}}
	for i := 2; i < lines-2; i++ {
		runs = append(runs, span{i, i + 1})
	}
	return append(runs, span{lines - 2, lines})
}
