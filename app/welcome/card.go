package welcome

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// card is a sheet of paper with content on it.
type card struct {
	widget.BaseWidget

	content fyne.CanvasObject
	border  fyne.ThemeColorName
}

func newCard(content fyne.CanvasObject) *card {
	c := &card{content: content, border: theme.ColorNameSeparator}
	c.ExtendBaseWidget(c)
	return c
}

// CreateRenderer is part of fyne.Widget.
func (c *card) CreateRenderer() fyne.WidgetRenderer {
	ground := canvas.NewRectangle(nil)
	r := &cardRenderer{
		WidgetRenderer: widget.NewSimpleRenderer(container.NewStack(ground, container.NewPadded(container.NewPadded(c.content)))),
		card:           c, ground: ground,
	}
	r.colour()
	return r
}

type cardRenderer struct {
	fyne.WidgetRenderer

	card   *card
	ground *canvas.Rectangle
}

// Refresh is part of fyne.WidgetRenderer; it comes when the theme changes.
func (r *cardRenderer) Refresh() {
	r.colour()
	r.WidgetRenderer.Refresh()
}

func (r *cardRenderer) colour() {
	r.ground.FillColor = theme.Color(theme.ColorNameOverlayBackground)
	r.ground.StrokeColor = theme.Color(r.card.border)
	r.ground.StrokeWidth = theme.Size(theme.SizeNameInputBorder)
	if r.card.border != theme.ColorNameSeparator {
		r.ground.StrokeWidth *= 2
	}
	r.ground.CornerRadius = 2 * theme.Size(theme.SizeNameInputRadius)
}

// way is a card that begins a bag: a picture, a title, one sentence, what is to be
// entered, and the button that begins. cards is how the cards lie.
func way(cards *rank, picture fyne.Resource, title, sentence string, entries, button fyne.CanvasObject) *card {
	const side = 56
	drawing := canvas.NewImageFromResource(picture)
	drawing.FillMode = canvas.ImageFillContain
	drawing.SetMinSize(fyne.NewSquareSize(side))
	head := widget.NewLabel(title)
	head.SizeName = theme.SizeNameSubHeadingText
	head.TextStyle.Bold = true
	head.Wrapping = fyne.TextWrapWord
	words := widget.NewLabel(sentence)
	words.Wrapping = fyne.TextWrapWord
	text := container.NewVBox(head, words)
	if entries != nil {
		text.Add(entries)
	}
	return newCard(container.New(wayLayout{cards}, drawing, text, button))
}
