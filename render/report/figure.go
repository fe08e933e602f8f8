package report

import (
	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// Figure is a picture with words below it.
type Figure struct {
	Picture Picture // its Rect is found by the layout
	Caption string
}

// figureGap is the distance in mm between figures side by side.
const figureGap = 6.0

// Pictures sets figures side by side, each as large as a share of the column and the
// height in mm allow. It is made lower where a page is too low for it.
func (c *Column) Pictures(height float64, figures ...Figure) {
	if len(figures) == 0 {
		return
	}
	style := c.layout.small()
	width := (c.Width() - figureGap*float64(len(figures)-1)) / float64(len(figures))
	captions, lines := make([][]string, len(figures)), 0
	for i, figure := range figures {
		if figure.Caption != "" {
			captions[i] = style.Lines(figure.Caption, width)
			lines = max(lines, len(captions[i]))
		}
	}
	below := style.Height(lines) + 0.7*style.Size
	if lines > 0 && below > c.area.Height()/2 {
		c.picturesApart(height, figures)
		return
	}
	height = min(height, c.room()-below)
	height = min(height, tallest(figures, width, height))
	area := c.Reserve(height + below)
	for i, figure := range figures {
		left := area.Min.X + float64(i)*(width+figureGap)
		place := geometry.RectAt(left, area.Max.Y-height, width, height)
		c.Add(figure.Picture.Within(place))
		c.Add(style.items(captions[i], left+width/2, place.Min.Y-0.7*style.Size, scene.Middle)...)
	}
}

// picturesApart sets figures whose words would fill half a page: first the pictures,
// then all that is said about them.
func (c *Column) picturesApart(height float64, figures []Figure) {
	var words []Block
	bare := make([]Figure, len(figures))
	for i, figure := range figures {
		bare[i].Picture = figure.Picture
		if figure.Caption != "" {
			words = append(words, Block{Kind: Note, Text: figure.Caption})
		}
	}
	c.Pictures(height, bare...)
	c.Write(words...)
}

// room returns the height that a page has below the heading that waits, or without it
// where it would take most of the page.
func (c *Column) room() float64 {
	room := c.area.Height() - c.needed(c.heading)
	if room < c.area.Height()/2 {
		return c.area.Height()
	}
	return room
}

// tallest returns the height that the tallest of the pictures takes.
func tallest(figures []Figure, width, height float64) float64 {
	most := 0.0
	for _, figure := range figures {
		most = max(most, figure.Picture.Within(geometry.RectAt(0, 0, width, height)).Rect.Height())
	}
	return most
}

// Beside sets a picture of the given width in mm with text to its right, together on
// one page. Text that would need more than a page goes below the picture.
func (c *Column) Beside(picture Picture, width float64, blocks ...Block) {
	width = min(width, c.Width()/2)
	tall := c.room()
	picture = picture.Within(geometry.RectAt(0, 0, width, tall))
	var set []setting
	height := 0.0
	for _, block := range blocks {
		s := c.layout.set(block, c.Width()-width-figureGap)
		set = append(set, s)
		height += s.height() + s.below
	}
	if height > tall {
		c.Pictures(picture.Rect.Height(), Figure{Picture: picture})
		c.Write(blocks...)
		return
	}
	area := c.Reserve(max(height, picture.Rect.Height()))
	c.Add(picture.Within(geometry.RectAt(area.Min.X, area.Max.Y-picture.Rect.Height(), width, picture.Rect.Height())))
	top := area.Max.Y
	for _, s := range set {
		c.Add(s.items(span{0, len(s.lines)}, area.Min.X+width+figureGap, top)...)
		top -= s.height() + s.below
	}
	c.gap = 1.5 * c.layout.Size
}
