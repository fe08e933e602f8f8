package proof

import (
	"image"
	"math"

	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
	"gussetwright/render/solid"
)

// Of the large picture on the first page.
const (
	coverPixels  = 8.0  // to the mm, some 200 to the inch
	coverQuality = 90   // of JPEG
	leastCover   = 90.0 // mm of height
	coverEdge    = 0.08 // of the shorter side, left free around the bag
	gapBelow     = 4.0  // mm between the picture and the words
)

// coverCamera sees the bag at an angle, more of its front than of its side.
var coverCamera = solid.Camera{Azimuth: 0.62, Elevation: 0.4, Zoom: 1}

// cover lays out the first page: the picture takes what the words leave.
func (b *builder) cover() error {
	words := report.NewColumn(b.layout())
	b.coverWords(words)
	height := max(words.Left()-gapBelow, leastCover)
	area := b.column.Reserve(height)
	sheet := report.Usual(b.Unit)
	full := geometry.RectAt(0, area.Min.Y, sheet.Width, sheet.Height-area.Min.Y)
	if b.hero == nil {
		b.hero = b.coverPicture(full)
	}
	b.column.Add(report.Picture{Rect: full, Image: b.hero, Quality: coverQuality})
	b.coverWords(b.column)
	return b.ctx.Err()
}

// coverPicture returns the bag at an angle for an area of the page.
func (b *builder) coverPicture(area geometry.Rect) image.Image {
	return b.stage.atAnAngle(int(math.Round(area.Width()*coverPixels)), int(math.Round(area.Height()*coverPixels)))
}

// atAnAngle returns the bag as it is on the cover, in a picture of so many pixels.
func (s *stage) atAnAngle(width, height int) *image.RGBA {
	v := s.view(coverCamera, softLook())
	v.Width, v.Height = width, height
	edge := int(coverEdge * float64(min(width, height)))
	fit(&v, s.outline(v), image.Rect(0, 0, width, height).Inset(edge))
	return s.draw(v)
}

// Of the small picture beside the place to sign.
const (
	smallWidth  = 38.0 // mm on paper
	smallPixels = 360  // across, some 240 to the inch
	smallAspect = 4.0 / 3
)

// smallPicture returns the bag as it stands beside the place to sign.
func (s *stage) smallPicture() *image.RGBA {
	return s.atAnAngle(smallPixels, int(smallAspect*smallPixels))
}

// paragraph is lines of text in one style.
type paragraph struct {
	style report.Style
	lines []string
	below float64 // mm left free
}

// set puts texts one below the other, each broken to a width, and returns how high all
// of it is. add may be nil, to measure.
func set(texts []paragraph, x, top float64, add func(...report.Item)) float64 {
	height := 0.0
	for _, text := range texts {
		for _, line := range text.lines {
			if add != nil {
				add(textAt(text.style, line, x, top-height))
			}
			height += text.style.Height(1)
		}
		height += text.below
	}
	return height
}

// textAt returns a line of text whose upper edge is at top.
func textAt(style report.Style, line string, x, top float64) report.Text {
	const capitals = 0.72 // of the em square, height of the letters
	below := (style.Height(1) + capitals*style.Size) / 2
	return report.Text{Text: line, At: geometry.Vec2{X: x, Y: top - below}, Size: style.Size, Bold: style.Bold, Colour: style.Colour}
}

// coverWords sets the words of the first page.
func (b *builder) coverWords(column *report.Column) {
	width := column.Width()
	line := func(style report.Style, text string, below float64) paragraph {
		return paragraph{style, style.Lines(text, width), below}
	}
	texts := []paragraph{
		line(report.Style{Size: 3.1, Colour: faint}, b.say("Proof to sign"), 1),
		line(report.Style{Size: 8.2, Bold: true, Colour: dark, Leading: 1.15}, b.title(), 2),
		line(report.Style{Size: 4.6, Colour: dark}, b.size(), 0.5),
	}
	for _, more := range []string{b.handleNote(), b.room()} {
		if more != "" {
			texts = append(texts, line(report.Style{Size: 3.8, Colour: faint}, more, 0))
		}
	}
	area := column.Reserve(set(texts, 0, 0, nil))
	set(texts, area.Min.X, area.Max.Y, column.Add)
	b.factsGrid(column)
}

// Of the grid of facts on the first page.
const (
	factColumns = 3
	factGap     = 7.0 // mm between columns
	factBelow   = 3.0 // mm between rows
)

// factsGrid sets the facts side by side, each value below its label.
func (b *builder) factsGrid(column *report.Column) {
	label, value := report.Style{Size: 2.8, Colour: faint}, report.Style{Size: 3.6, Colour: dark}
	width := (column.Width()+factGap)/factColumns - factGap
	facts := append(b.facts(), fact{b.say("Still open"), b.openCount()})
	for start := 0; start < len(facts); start += factColumns {
		var cells [][]paragraph
		height := 0.0
		for _, f := range facts[start:min(start+factColumns, len(facts))] {
			cell := []paragraph{{label, label.Lines(f.label, width), 0}, {value, value.Lines(f.value, width), 0}}
			cells = append(cells, cell)
			height = max(height, set(cell, 0, 0, nil))
		}
		area := column.Reserve(height)
		for i, cell := range cells {
			set(cell, area.Min.X+float64(i)*(width+factGap), area.Max.Y, column.Add)
		}
	}
}

// openCount says how much is not settled.
func (b *builder) openCount() string {
	if count := len(b.mustChange) + len(b.mayChange); count > 0 {
		return b.tell(phrase.New("%d, see the next pages", count))
	}
	return b.say("None")
}
