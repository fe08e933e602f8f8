package jobsheet

import (
	"gussetwright/geometry"
	"gussetwright/render/report"
	"gussetwright/render/scene"
	"gussetwright/render/typeface"
)

// point is the unit of type in mm.
const point = 25.4 / 72

var (
	dark     = report.RGB(34, 38, 42)
	faint    = report.RGB(96, 104, 112) // 4.5 : 1 and more on white, as small text needs (WCAG 2.2, 1.4.3)
	hairline = report.RGB(200, 204, 208)
)

// block is something set in a column: how high it is, and what it consists of.
type block struct {
	height float64
	draw   func(x, top float64) []report.Item
}

// stack sets blocks one below the other.
func stack(blocks ...block) block {
	sum := 0.0
	for _, b := range blocks {
		sum += b.height
	}
	return block{sum, func(x, top float64) []report.Item {
		var items []report.Item
		for _, b := range blocks {
			if b.draw != nil {
				items = append(items, b.draw(x, top)...)
			}
			top -= b.height
		}
		return items
	}}
}

func gap(height float64) block { return block{height: height} }

// setter sets text in a column of a width.
type setter struct {
	size  float64 // em square of running text in mm
	width float64
	label float64 // width of the labels
}

// leading is close, as lines are short (common practice, no published source).
const leading = 1.2

func (s setter) body() report.Style {
	return report.Style{Size: s.size, Colour: dark, Leading: leading}
}

func (s setter) quiet() report.Style {
	return report.Style{Size: s.size, Colour: faint, Leading: leading}
}

// strong is for what is looked for first.
func (s setter) strong() report.Style {
	return report.Style{Size: s.size, Bold: true, Colour: dark, Leading: leading}
}

// gutter is the distance between cells.
func (s setter) gutter() float64 { return 0.9 * s.size }

// text sets a text over the width.
func (s setter) text(style report.Style, text string) block {
	return lines(style, style.Lines(text, s.width), 0, scene.Start)
}

// lines sets lines as they are, dx to the right.
func lines(style report.Style, texts []string, dx float64, align scene.Anchor) block {
	return block{style.Height(len(texts)), func(x, top float64) []report.Item {
		var items []report.Item
		for i, text := range texts {
			if text == "" {
				continue
			}
			at := geometry.Vec2{X: x + dx, Y: top - style.Height(i) - baseline(style)}
			items = append(items, report.Text{Text: text, At: at, Size: style.Size, Bold: style.Bold, Colour: style.Colour, Align: align})
		}
		return items
	}}
}

// baseline returns how far the baseline lies below the top of its line.
func baseline(style report.Style) float64 {
	face := typeface.Of(style.Bold).Metrics()
	above, below := face.Ascent*style.Size, -face.Descent*style.Size
	return above + (style.Height(1)-above-below)/2
}

// beside sets blocks at the same height.
func beside(blocks ...block) block {
	all := block{draw: func(x, top float64) []report.Item {
		var items []report.Item
		for _, b := range blocks {
			items = append(items, b.draw(x, top)...)
		}
		return items
	}}
	for _, b := range blocks {
		all.height = max(all.height, b.height)
	}
	return all
}

// heading sets the title of a section above a thin line.
func (s setter) heading(text string) block {
	below := 0.22 * s.size
	return stack(s.text(s.strong(), text), block{2 * below, func(x, top float64) []report.Item {
		y := top - 0.4*below
		return []report.Item{report.Rule{
			From: geometry.Vec2{X: x, Y: y}, To: geometry.Vec2{X: x + s.width, Y: y},
			Line: report.Line{Width: 0.2, Colour: hairline},
		}}
	}})
}

// pair is a value behind its label. A value without label goes on with the one above.
type pair struct{ label, value string }

func (p pair) widest(s setter) float64 { return s.quiet().Advance(p.label) }

func (p pair) block(s setter) block {
	label := lines(s.quiet(), s.quiet().Lines(p.label, s.label), 0, scene.Start)
	left := s.label + s.gutter()
	return beside(label, lines(s.body(), s.body().Lines(p.value, s.width-left), left, scene.Start))
}

// remark is a text over the whole width that stands back.
type remark string

func (r remark) widest(setter) float64 { return 0 }

func (r remark) block(s setter) block { return s.text(s.quiet(), string(r)) }

// sentence is a text over the whole width.
type sentence string

func (t sentence) widest(setter) float64 { return 0 }

func (t sentence) block(s setter) block { return s.text(s.body(), string(t)) }

// part is a part of a section.
type part interface {
	widest(s setter) float64 // width of its label
	block(s setter) block
}

// section is a title with what belongs to it.
type section struct {
	title string
	parts []part
}

func (c section) block(s setter) block {
	blocks := []block{s.heading(c.title)}
	for _, p := range c.parts {
		blocks = append(blocks, p.block(s))
	}
	return stack(blocks...)
}

// withLabels returns the setter with room for the labels of all sections, so that the
// values of a page stand in line, but no more than a share of the width.
func (s setter) withLabels(sections []section) setter {
	const most = 0.34
	for _, c := range sections {
		for _, p := range c.parts {
			s.label = max(s.label, p.widest(s))
		}
	}
	s.label = min(s.label, most*s.width)
	return s
}
