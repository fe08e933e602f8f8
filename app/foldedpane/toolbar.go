package foldedpane

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/toolrow"
	"gussetwright/render/solid"
)

// toolbar is the row of buttons above the bag.
type toolbar struct {
	widget.BaseWidget
	pane   *Pane
	views  *toolrow.Button
	beside *widget.Button
	body   *fyne.Container
}

func newToolbar(p *Pane) *toolbar {
	t := &toolbar{pane: p}
	title := widget.NewLabel(lang.L("Folded bag"))
	title.TextStyle.Bold = true
	t.views = toolrow.Named(t.viewName(), appearance.ViewsIcon(), func() { t.open(t.views, t.viewItems()) })
	t.beside = list(func() { t.open(t.beside, t.besideItems()) })
	out := toolrow.Sign(lang.L("Zoom out"), appearance.ZoomOutIcon(), p.ZoomOut)
	in := toolrow.Sign(lang.L("Zoom in"), appearance.ZoomInIcon(), p.ZoomIn)
	fit := toolrow.Sign(lang.L("Show the whole bag"), appearance.FitIcon(), p.Fit)
	t.body = toolrow.New(title,
		[]fyne.CanvasObject{t.views, t.beside, out, in, fit},
		[]fyne.CanvasObject{title}, []fyne.CanvasObject{out, in}, []fyne.CanvasObject{t.beside}, []fyne.CanvasObject{fit})
	t.ExtendBaseWidget(t)
	t.show()
	return t
}

// list returns a button that opens a list.
func list(tapped func()) *widget.Button {
	button := toolrow.Quiet("", theme.MenuDropDownIcon(), tapped)
	button.IconPlacement = widget.ButtonIconTrailingText
	return button
}

// CreateRenderer is part of fyne.Widget.
func (t *toolbar) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(t.body) }

// show brings the buttons up to date.
func (t *toolbar) show() {
	t.views.SetWord(t.viewName())
	setText(t.beside, BesideName(t.pane.reference))
}

func setText(button *widget.Button, text string) {
	if button.Text != text {
		button.SetText(text)
	}
}

// viewName returns the name of the view that is seen, however large.
func (t *toolbar) viewName() string { return ViewName(t.pane.camera) }

func (t *toolbar) viewItems() []*fyne.MenuItem {
	var items []*fyne.MenuItem
	current := t.viewName()
	for _, v := range NamedViews() {
		item := fyne.NewMenuItem(v.Name, func() { t.pane.setCamera(v.Camera) })
		item.Checked = v.Name == current
		items = append(items, item)
	}
	return items
}

func (t *toolbar) besideItems() []*fyne.MenuItem {
	var items []*fyne.MenuItem
	for _, r := range solid.References() {
		item := fyne.NewMenuItem(BesideName(r), func() { t.pane.SetReference(r) })
		item.Checked = r == t.pane.reference
		items = append(items, item)
	}
	return items
}

// open shows a list below a button, or below the list that the button is in.
func (t *toolbar) open(below fyne.CanvasObject, items []*fyne.MenuItem) {
	toolrow.OpenList(toolrow.Seen(t.body, below), items)
}
