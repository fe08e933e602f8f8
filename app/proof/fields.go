package proof

import (
	"slices"
	"strings"

	"gussetwright/geometry"
	"gussetwright/render/report"
)

// Of the fields of colour, in mm.
const (
	colourColumns = 3
	colourGap     = 6.0
	colourSide    = 7.5
	colourWords   = 3.0 // from a field to its name
)

// setColours sets the colours side by side, each a field with its name behind it.
func (b *builder) setColours() {
	if len(b.colours) == 0 {
		return
	}
	b.column.Heading(2, b.say("Colours"))
	name := report.Style{Size: 3.5, Colour: dark}
	width := (b.column.Width()+colourGap)/colourColumns - colourGap
	for row := range slices.Chunk(b.colours, colourColumns) {
		names, height := make([][]string, len(row)), colourSide
		for i, c := range row {
			names[i] = name.Lines(c.name, width-colourSide-colourWords)
			height = max(height, name.Height(len(names[i])))
		}
		area := b.column.Reserve(height)
		for i, c := range row {
			left, middle := area.Min.X+float64(i)*(width+colourGap), area.Center().Y
			b.column.Add(report.Box{
				Rect: geometry.RectAt(left, middle-colourSide/2, colourSide, colourSide), Radius: 1,
				Fill: report.RGB(c.shown.R, c.shown.G, c.shown.B), Line: report.Line{Width: 0.15, Colour: fieldEdge},
			})
			top := middle + name.Height(len(names[i]))/2
			set([]paragraph{{style: name, lines: names[i]}}, left+colourSide+colourWords, top, b.column.Add)
		}
	}
	if b.onBrown() {
		b.column.Write(report.Block{Kind: report.Note, Text: b.say("On brown paper every colour turns darker and warmer; the fields show it so.")})
	}
	if values := b.forPrinter(); values != "" {
		b.column.Write(report.Block{Kind: report.Note, Text: b.say("For the printer") + ": " + values})
	}
}

// fieldEdge keeps a field apart from the paper where its colour is light.
var fieldEdge = report.RGB(150, 155, 160)

// forPrinter returns the values of all colours, which only those who print can read.
func (b *builder) forPrinter() string {
	var values []string
	for _, c := range b.colours {
		if c.value != "" {
			values = append(values, c.name+" ("+strings.ReplaceAll(c.value, " ", space)+")")
		}
	}
	return strings.Join(values, " · ")
}
