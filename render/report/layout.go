package report

import (
	"fmt"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// Layout is how the pages of a Column look.
type Layout struct {
	Paper  Paper                     // zero for A4
	Margin float64                   // mm on all four sides; 0 for 18
	Size   float64                   // em square of running text in mm; 0 for 3.5, which is 10 points
	Ink    Colour                    // of text; no colour for a dark grey
	Accent Colour                    // of headings and of what leads the eye; no colour for Ink
	Header string                    // at the top of every page, left
	Mark   string                    // at the top of every page, right: a date, a version
	Footer string                    // at the foot of every page, left
	Number func(page, of int) string // at the foot, right; nil for "1 / 3"
}

// What a layout has where it says nothing (common practice, no published source).
const (
	usualMargin = 18.0
	usualSize   = 3.5
)

// whole returns the layout with everything filled in.
func (l Layout) whole() Layout {
	if l.Paper == (Paper{}) {
		l.Paper = A4()
	}
	if l.Margin == 0 {
		l.Margin = usualMargin
	}
	if l.Size == 0 {
		l.Size = usualSize
	}
	l.Ink = l.Ink.or(RGB(34, 38, 42))
	l.Accent = l.Accent.or(l.Ink)
	if l.Number == nil {
		l.Number = func(page, of int) string { return fmt.Sprintf("%d / %d", page, of) }
	}
	return l
}

// faint is the colour of what stands back: labels, captions, page numbers. On white
// it has the contrast of 4.5 : 1 that small text needs (WCAG 2.2, 1.4.3).
var faint = RGB(96, 104, 112)

// hairline is the colour of lines between rows.
var hairline = RGB(200, 204, 208)

func (l Layout) body() Style { return Style{Size: l.Size, Colour: l.Ink} }

func (l Layout) small() Style { return Style{Size: 0.8 * l.Size, Colour: faint} }

func (l Layout) heading(level int) Style {
	sizes := []float64{2, 1.4, 1.1}
	return Style{Size: sizes[min(max(level, 1), len(sizes))-1] * l.Size, Bold: true, Colour: l.Accent, Leading: 1.2}
}

// halves breaks the texts at the left and the right of a line of header or footer.
// The right one may take up to half of the width, the left one has the rest.
func (l Layout) halves(left, right string) (leftLines, rightLines []string) {
	style, width := l.small(), l.Paper.Width-2*l.Margin
	if right != "" {
		rightLines = style.Lines(right, width/2)
		taken := 0.0
		for _, line := range rightLines {
			taken = max(taken, style.Advance(line))
		}
		width -= taken + 2*style.Size
	}
	if left != "" {
		leftLines = style.Lines(left, width)
	}
	return leftLines, rightLines
}

// area returns where the text of a page goes: within the margins, below the header
// and above the footer.
func (l Layout) area() geometry.Rect {
	area := geometry.RectAt(0, 0, l.Paper.Width, l.Paper.Height).Inset(l.Margin)
	style := l.small()
	if left, right := l.halves(l.Header, l.Mark); len(left)+len(right) > 0 {
		area.Max.Y -= style.Height(max(len(left), len(right))) + 2*style.Size
	}
	// Numbers of pages as long as they may get hold the place for all.
	left, right := l.halves(l.Footer, l.Number(9999, 9999))
	area.Min.Y += style.Height(max(len(left), len(right))) + 2*style.Size
	return area
}

// frame returns the header and the footer of a page.
func (l Layout) frame(page, of int) []Item {
	style := l.small()
	side := geometry.Rect{Min: geometry.Vec2{X: l.Margin, Y: l.Margin}, Max: geometry.Vec2{X: l.Paper.Width - l.Margin, Y: l.Paper.Height - l.Margin}}
	var items []Item
	row := func(left, right []string, top float64) {
		items = append(items, style.items(left, side.Min.X, top, scene.Start)...)
		items = append(items, style.items(right, side.Max.X, top, scene.End)...)
	}
	left, right := l.halves(l.Header, l.Mark)
	if lines := max(len(left), len(right)); lines > 0 {
		row(left, right, side.Max.Y)
		items = append(items, level(side, side.Max.Y-style.Height(lines)-0.5*style.Size, l.Accent))
	}
	left, right = l.halves(l.Footer, l.Number(page, of))
	height := style.Height(max(len(left), len(right)))
	row(left, right, side.Min.Y+height)
	return append(items, level(side, side.Min.Y+height+0.5*style.Size, hairline))
}

// level is a thin line from side to side.
func level(side geometry.Rect, y float64, colour Colour) Rule {
	return Rule{geometry.Vec2{X: side.Min.X, Y: y}, geometry.Vec2{X: side.Max.X, Y: y}, Line{Width: 0.2, Colour: colour}}
}

// items sets lines of text one below the other, the first at top.
func (s Style) items(lines []string, x, top float64, align scene.Anchor) []Item {
	var items []Item
	for i, line := range lines {
		if line == "" {
			continue
		}
		at := geometry.Vec2{X: x, Y: top - s.Height(i) - s.baseline()}
		items = append(items, Text{Text: line, At: at, Size: s.Size, Bold: s.Bold, Colour: s.Colour, Align: align})
	}
	return items
}
