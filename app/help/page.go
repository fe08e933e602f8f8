// Package help is the help page of the window: keys, how to read the drawing, terms,
// cautions, what the program is made of, and what changed in each version.
package help

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/keyrelay"
)

// section is a part of the page with a title of its own.
type section struct {
	title   string
	content func() fyne.CanvasObject
}

// Page is the help page.
type Page struct {
	widget.BaseWidget

	sections []section
	keys     *fyne.Container
	heads    []fyne.CanvasObject // of the sections that have been filled in, in their order
	text     *fyne.Container
	scroll   *container.Scroll
	back     *keyrelay.Button
	leave    func()
	content  fyne.CanvasObject
}

// New returns the help page of a version of the program. back leads to where the
// user came from.
func New(version string, back func()) *Page {
	list := keys("")
	p := &Page{leave: back, keys: list, text: container.NewVBox(), sections: []section{
		{lang.L("Keys"), func() fyne.CanvasObject { return list }},
		{lang.L("With the mouse"), mouse},
		{lang.L("How to read the drawing"), reading},
		{lang.L("Mountain and valley"), folds},
		{lang.L("Terms"), terms},
		{lang.L("Cautions"), cautions},
		{lang.L("About"), func() fyne.CanvasObject { return about(version) }},
		{lang.L("What is new"), changes},
	}}
	p.back = keyrelay.New(lang.L("Back to the bag"), back, p.TypedKey)
	p.back.Icon = theme.NavigateBackIcon()
	contents := container.NewVBox(p.back, widget.NewSeparator())
	for i, part := range p.sections {
		link := keyrelay.New(part.title, func() { p.GoTo(i) }, p.TypedKey)
		link.Importance = widget.LowImportance
		link.Alignment = widget.ButtonAlignLeading
		contents.Add(link)
	}
	// Both scroll where large text leaves too little room.
	p.scroll = container.NewScroll(container.New(readable{}, p.text))
	p.content = container.NewBorder(nil, nil, container.NewVScroll(container.NewPadded(contents)), nil, p.scroll)
	p.ExtendBaseWidget(p)
	p.fillIn()
	return p
}

// fillIn adds a section, and the others one after the other while the page is shown: all
// of it at once is more than a picture of the window has time for.
func (p *Page) fillIn() {
	if p.add(); len(p.heads) < len(p.sections) {
		appearance.AfterDrawn(p.fillIn)
	}
}

// add adds the next section, unless all are there.
func (p *Page) add() {
	if next := len(p.heads); next < len(p.sections) {
		head := title(p.sections[next].title)
		p.heads = append(p.heads, head)
		p.text.Add(head)
		p.text.Add(p.sections[next].content())
	}
}

// CreateRenderer is part of fyne.Widget.
func (p *Page) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(p.content) }

// GoTo scrolls to a section, counted from 0.
func (p *Page) GoTo(number int) {
	for range p.sections {
		p.add() // one has to be below it, or it could not come to the top
	}
	p.scroll.ScrollToOffset(fyne.NewPos(0, p.heads[number].Position().Y))
}

// BeginWith lists the keys of one group, named by its title, before all others.
func (p *Page) BeginWith(group string) {
	p.keys.Objects = keys(group).Objects
	p.keys.Refresh()
}

// readable keeps text no wider than can be read with ease.
type readable struct{}

// widestInLetters is the width of the page in heights of its letters.
const widestInLetters = 62

// Layout is part of fyne.Layout.
func (readable) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, object := range objects {
		object.Resize(fyne.NewSize(min(size.Width, widestInLetters*theme.TextSize()), size.Height))
	}
}

// MinSize is part of fyne.Layout.
func (readable) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, object := range objects {
		size = size.Max(object.MinSize())
	}
	return size
}

func title(text string) *widget.Label {
	label := widget.NewLabel(text)
	label.SizeName = theme.SizeNameHeadingText
	label.TextStyle.Bold = true
	return label
}

func heading(text string) *widget.Label {
	label := widget.NewLabel(text)
	label.TextStyle.Bold = true
	return label
}

func words(text string) *widget.Label {
	label := widget.NewLabel(text)
	label.Wrapping = fyne.TextWrapWord
	return label
}

// pair is a row of a table.
type pair struct {
	left  fyne.CanvasObject
	right string
}

// table lays rows out in two columns. The left one is as wide as the widest of all
// its objects needs.
func table(rows []pair) fyne.CanvasObject {
	box := container.New(columns{})
	for _, row := range rows {
		box.Add(row.left)
		box.Add(words(row.right))
	}
	return box
}
