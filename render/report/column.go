package report

import (
	"fmt"
	"slices"

	"gussetwright/geometry"
	"gussetwright/render/scene"
)

// Column fills pages from the top down, and goes over to a new page where one is
// full. Headings stay with what follows them; the lines of a paragraph and the rows
// of a table may part, pictures do not.
type Column struct {
	layout  Layout
	area    geometry.Rect
	pages   [][]Item
	y       float64 // where the next strip begins
	gap     float64 // to leave above it, unless it is the first of a page
	heading []strip // waits for what follows
}

// strip is what stands side by side at one height.
type strip struct {
	height float64
	draw   func(top float64) []Item
}

// NewColumn returns a column with one empty page.
func NewColumn(layout Layout) *Column {
	c := &Column{layout: layout.whole()}
	c.area = c.layout.area()
	c.turn()
	return c
}

// leastArea is the least width and height in mm in which a column can be read.
const leastArea = 25.0

// Pages returns the pages with their headers and footers. A layout whose margins,
// header and footer leave no room for text is an error.
func (c *Column) Pages() ([]Page, error) {
	if !(c.area.Width() >= leastArea && c.area.Height() >= leastArea) {
		return nil, fmt.Errorf("lay out pages: %g × %g mm with margins of %g mm, header and footer leave %.0f × %.0f mm for text; choose larger paper, narrower margins or a shorter header",
			c.layout.Paper.Width, c.layout.Paper.Height, c.layout.Margin, c.area.Width(), c.area.Height())
	}
	c.place(strip{})
	var pages []Page
	for i, items := range c.pages {
		frame := c.layout.frame(i+1, len(c.pages))
		pages = append(pages, Page{c.layout.Paper.Width, c.layout.Paper.Height, slices.Concat(items, frame)})
	}
	return pages, nil
}

// Width returns the width of the column in mm.
func (c *Column) Width() float64 { return c.area.Width() }

// Left returns the height in mm that is left on the page.
func (c *Column) Left() float64 {
	left := c.y - c.area.Min.Y - c.needed(c.heading)
	if !c.first() {
		left -= c.gap
	}
	return max(left, 0)
}

// Break goes over to a new page, unless this one is empty.
func (c *Column) Break() {
	c.place(strip{})
	if !c.first() {
		c.turn()
	}
}

// Space leaves a height free, unless the page ends there.
func (c *Column) Space(height float64) { c.gap += height }

// Keep goes over to a new page where this one has less height left than needed.
func (c *Column) Keep(height float64) {
	if c.Left() < height-geometry.Tolerance && !c.first() {
		c.turn()
	}
}

// Reserve sets a strip of the column aside and returns where it is, for items that
// the caller adds. It is no higher than a page.
func (c *Column) Reserve(height float64) geometry.Rect {
	height = min(height, c.area.Height())
	top := c.place(strip{height: height})
	c.gap = c.layout.Size
	return geometry.Rect{Min: geometry.Vec2{X: c.area.Min.X, Y: top - height}, Max: geometry.Vec2{X: c.area.Max.X, Y: top}}
}

// Add puts items on the page as they are.
func (c *Column) Add(items ...Item) {
	last := len(c.pages) - 1
	c.pages[last] = append(c.pages[last], items...)
}

// Heading sets a heading of level 1, 2 or 3, which stays with what follows.
func (c *Column) Heading(level int, text string) {
	style := c.layout.heading(level)
	if len(c.heading) == 0 {
		c.gap = max(c.gap, 1.1*style.Size)
	}
	for _, line := range style.Lines(text, c.Width()) {
		c.heading = append(c.heading, strip{
			height: style.Height(1),
			draw:   func(top float64) []Item { return style.items([]string{line}, c.area.Min.X, top, scene.Start) },
		})
	}
	c.heading[len(c.heading)-1].height += 0.4 * style.Size
}

func (c *Column) turn() {
	c.pages = append(c.pages, nil)
	c.y, c.gap = c.area.Max.Y, 0
}

// first tells whether the page is empty so far.
func (c *Column) first() bool {
	return c.y >= c.area.Max.Y-geometry.Tolerance && len(c.pages[len(c.pages)-1]) == 0
}

func (c *Column) needed(strips []strip) float64 {
	height := 0.0
	for _, s := range strips {
		height += s.height
	}
	return height
}

// place puts a strip, below the heading that waits for it, on this page or the next,
// and returns where its top is.
func (c *Column) place(s strip) float64 {
	waiting := c.heading
	c.heading = nil
	height := c.needed(waiting) + s.height
	if c.y-c.gap-height < c.area.Min.Y-geometry.Tolerance && !c.first() && height > 0 {
		c.turn()
	}
	if !c.first() && height > 0 {
		c.y -= c.gap
	}
	if height > 0 {
		c.gap = 0
	}
	top := c.y
	for _, s := range append(waiting, s) {
		// A heading of more than a page goes on over it.
		if c.y-s.height < c.area.Min.Y-geometry.Tolerance && !c.first() {
			c.turn()
		}
		top = c.y
		if s.draw != nil {
			c.Add(s.draw(top)...)
		}
		c.y -= s.height
	}
	return top
}
