package filestep

import (
	"fmt"
	"image"
	"image/color"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/export"
	"gussetwright/app/latest"
	"gussetwright/app/settings"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/render/dieline"
)

// Sizes of the small picture: its height on the screen, and the pixels across,
// enough for a screen with two to each unit.
const (
	pictureHeight = 170
	picturePixels = 640
)

// picture is the drawing as it will be in the files, small, with its size in words.
// It is drawn away from fyne's goroutine.
type picture struct {
	set      *settings.Settings
	pictures *fyne.Container
	words    *entry.Text
	box      *entry.Column
	worker   *latest.Worker[drawing, []image.Image]
	last     drawing
}

// drawing is an order for a picture.
type drawing struct {
	snapshot *document.Snapshot
	day      string
}

func newPicture(set *settings.Settings, later func(func())) *picture {
	p := &picture{set: set, pictures: container.NewGridWithColumns(1), words: entry.NewText("", entry.Small)}
	space := canvas.NewRectangle(color.Transparent)
	space.SetMinSize(fyne.NewSize(0, pictureHeight))
	p.box = entry.NewColumn(1, container.NewStack(space, p.pictures), p.words)
	p.worker = latest.New(draw, func(drawn []image.Image) { later(func() { p.show(drawn) }) })
	return p
}

func (p *picture) close() { p.worker.Close() }

// order asks for a picture, unless it is the one that is shown.
func (p *picture) order(snapshot *document.Snapshot, day time.Time) {
	wanted := drawing{snapshot, day.Format(time.DateOnly)}
	if wanted != p.last {
		p.last = wanted
		p.worker.Order(wanted)
	}
	p.caption()
}

// draw draws every piece. One that cannot be drawn is left out here; writing it
// says why.
func draw(order drawing) (drawn []image.Image) {
	for i, sheet := range dieline.SheetsIn(&order.snapshot.Blank, order.day, words.Document(geometry.Millimetre)) { // as in the file
		across := max(sheet.Media.Width(), sheet.Media.Height())
		if picture, err := export.Draw(order.snapshot, sheet, i, picturePixels/across); err == nil {
			drawn = append(drawn, picture)
		}
	}
	return drawn
}

func (p *picture) show(drawn []image.Image) {
	p.pictures.Layout = container.NewGridWithColumns(max(len(drawn), 1)).Layout
	p.pictures.RemoveAll()
	for _, picture := range drawn {
		shown := canvas.NewImageFromImage(picture)
		shown.FillMode = canvas.ImageFillContain
		p.pictures.Add(shown)
	}
	p.pictures.Refresh() // or it shows when something else changes
}

// caption says how large the blank is, in the unit of the user.
func (p *picture) caption() {
	pieces := p.last.snapshot.Blank.Pieces
	dimensions := words.Size(p.set.Unit(), pieces[0].Width, pieces[0].Height)
	if len(pieces) > 1 {
		p.words.SetText(fmt.Sprintf(lang.L("Two pieces, the first %s"), dimensions))
		return
	}
	p.words.SetText(fmt.Sprintf(lang.L("One piece, %s"), dimensions))
}
