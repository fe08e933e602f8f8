// Package flipbook shows the folding of a bag in one picture file: moving, as an
// animated GIF, or as a strip with a moment of each stage.
//
// Texts are English words and phrases of package phrase, put through Order.Say before
// anybody reads them.
package flipbook

import (
	"context"
	"image"
	"image/color"

	"gussetwright/app/document"
	"gussetwright/app/folding"
	"gussetwright/geometry"
	"gussetwright/geometry/phrase"
	"gussetwright/render/report"
)

// Order is what a flipbook is made from.
type Order struct {
	Snapshot *document.Snapshot
	// Say puts English into the language of the reader; nil leaves it.
	Say func(english string) string
}

// maker makes the pictures of an order.
type maker struct {
	Order
	studio *folding.Studio
}

func newMaker(ctx context.Context, order Order) (*maker, error) {
	if order.Say == nil {
		order.Say = func(english string) string { return english }
	}
	studio, err := folding.New(ctx, order.Snapshot, order.Say)
	if err != nil {
		return nil, err
	}
	return &maker{order, studio}, nil
}

// side is the width and the height in pixels of a picture of the bag.
const side = 480

// Of the words below, which are set as on a page: pixels to the mm of that page.
const (
	perMM     = 4.0
	titleSize = 5.0 // mm
	padding   = 4.0
)

var (
	// ground is behind the bag and behind the words.
	ground = color.RGBA{240, 238, 234, 255}
	dark   = report.RGB(34, 38, 42)
	faint  = report.RGB(96, 104, 112)
)

// stages is how many stages can be shown.
func (m *maker) stages() int { return min(m.studio.Lesson.Foldable, len(m.studio.Lesson.Stages)) }

// heading names a stage with its number.
func (m *maker) heading(stage int) string {
	title := m.studio.Lesson.Stages[stage].Title.In(m.Say)
	if m.studio.Lesson.Stages[stage].Schematic {
		title = phrase.New("%s (sketch)", title).In(m.Say)
	}
	return phrase.New("%d of %d: %s", stage+1, m.stages(), title).In(m.Say)
}

// block is lines of text in one style.
type block struct {
	lines []string
	style report.Style
}

// words returns blocks of text below each other, on the ground of the pictures.
func words(width, height float64, blocks ...block) (*image.RGBA, error) {
	page := report.Page{Width: width, Height: height, Items: []report.Item{
		report.Box{Rect: geometry.RectAt(0, 0, width, height), Fill: report.RGB(ground.R, ground.G, ground.B)},
	}}
	y := height - padding
	for _, b := range blocks {
		for _, line := range b.lines {
			at := geometry.Vec2{X: padding, Y: y - b.style.Size}
			page.Items = append(page.Items, report.Text{Text: line, At: at, Size: b.style.Size, Bold: b.style.Bold, Colour: b.style.Colour})
			y -= b.style.Height(1)
		}
	}
	return report.Draw(page, perMM)
}

var titleStyle = report.Style{Size: titleSize, Bold: true, Colour: dark, Leading: 1.3}
