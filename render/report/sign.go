package report

import (
	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// Swatch is a colour with its name and its values.
type Swatch struct {
	Colour      Colour
	Name, Value string
}

// Swatches sets colours side by side, each a field with its words to the right.
func (c *Column) Swatches(swatches ...Swatch) {
	const least, side = 52.0, 10.0 // mm, of a swatch with words and of its field
	count := max(int((c.Width()+figureGap)/(least+figureGap)), 1)
	width := (c.Width()+figureGap)/float64(count) - figureGap
	name, value := c.layout.body(), c.layout.small()
	for start := 0; start < len(swatches); start += count {
		row := swatches[start:min(start+count, len(swatches))]
		names, values, height := make([][]string, len(row)), make([][]string, len(row)), side
		for i, s := range row {
			names[i], values[i] = name.Lines(s.Name, width-side-3), value.Lines(s.Value, width-side-3)
			height = max(height, name.Height(len(names[i]))+value.Height(len(values[i])))
		}
		if height > c.area.Height()/2 {
			c.swatchesApart(row)
			continue
		}
		area := c.Reserve(height)
		for i, s := range row {
			left := area.Min.X + float64(i)*(width+figureGap)
			c.Add(field(s.Colour, geometry.RectAt(left, area.Max.Y-side, side, side)))
			c.Add(name.items(names[i], left+side+3, area.Max.Y, scene.Start)...)
			c.Add(value.items(values[i], left+side+3, area.Max.Y-name.Height(len(names[i])), scene.Start)...)
		}
	}
}

// swatchesApart sets swatches whose words would fill half a page below their fields.
func (c *Column) swatchesApart(swatches []Swatch) {
	for _, s := range swatches {
		area := c.Reserve(10)
		c.Add(field(s.Colour, geometry.RectAt(area.Min.X, area.Min.Y, 10, area.Height())))
		c.Write(Block{Text: s.Name}, Block{Kind: Note, Text: s.Value})
	}
}

func field(colour Colour, area geometry.Rect) Box {
	return Box{Rect: area, Radius: 1.2, Fill: colour, Line: Line{Width: 0.15, Colour: RGB(150, 155, 160)}}
}

// Fields sets lines to write on by hand side by side, each with what goes there below
// it: a name, a date, a signature.
func (c *Column) Fields(labels ...string) {
	if len(labels) == 0 {
		return
	}
	style := c.layout.small()
	width := (c.Width() - figureGap*float64(len(labels)-1)) / float64(len(labels))
	lines := 1
	for _, label := range labels {
		lines = max(lines, len(style.Lines(label, width)))
	}
	if style.Height(lines) > c.area.Height()/2 {
		c.WritingLines(len(labels))
		for _, label := range labels {
			c.Write(Block{Kind: Note, Text: label})
		}
		return
	}
	area := c.Reserve(handwriting + style.Height(lines))
	for i, label := range labels {
		left, y := area.Min.X+float64(i)*(width+figureGap), area.Max.Y-handwriting
		c.Add(Rule{geometry.Vec2{X: left, Y: y}, geometry.Vec2{X: left + width, Y: y}, Line{Width: 0.25, Colour: c.layout.Ink}})
		c.Add(style.items(style.Lines(label, width), left, y-0.3*style.Size, scene.Start)...)
	}
}

// handwriting is the height in mm of a line for writing by hand, with room for a
// signature.
const handwriting = 12.0

// WritingLines sets empty lines for notes by hand.
func (c *Column) WritingLines(count int) {
	for range count {
		c.place(strip{handwriting * 2 / 3, func(top float64) []Item {
			return []Item{level(c.area, top-handwriting*2/3, hairline)}
		}})
	}
	c.gap = c.layout.Size
}
