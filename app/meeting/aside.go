package meeting

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/foldedpane"
	"gussetwright/render/solid"
)

// aside is the column beside the stage: what stands beside the bag, from where it is seen,
// and whether it is seen with others.
type aside struct {
	page *page

	besideWord, viewWord  *entry.Text
	beside, view, compare *button
	hint                  *entry.Text
	box                   *fyne.Container
}

func newAside(p *page) *aside {
	a := &aside{page: p}
	a.besideWord, a.viewWord = entry.NewText(lang.L("Beside it"), entry.Plain), entry.NewText(lang.L("Seen"), entry.Plain)
	a.beside, a.view = a.list(a.chooseBeside), a.list(a.chooseView)
	a.compare = newButton(p.view, "", nil, p.view.compare)
	a.hint = entry.NewText(lang.L("Drag the bag to turn it. A double click turns it back."), entry.Small)
	a.box = container.New(&column{a}, a.besideWord, a.beside, a.viewWord, a.view, a.compare, a.hint)
	return a
}

// list returns a button that opens a list.
func (a *aside) list(tapped func()) *button {
	b := newButton(a.page.view, "", theme.MenuDropDownIcon(), tapped)
	b.IconPlacement, b.Alignment = widget.ButtonIconTrailingText, widget.ButtonAlignLeading
	return b
}

// width is wide enough for all that may stand on the buttons.
func (a *aside) width() (width float32) {
	for _, r := range solid.References() {
		width = max(width, a.page.needs(foldedpane.BesideName(r), true))
	}
	for _, v := range views() {
		width = max(width, a.page.needs(v.Name, true))
	}
	return max(width, a.page.needs(lang.L("Show only one"), false), a.page.needs(lang.L("Compare"), false))
}

// show brings the buttons up to date.
func (a *aside) show() {
	v := a.page.view
	a.beside.say(foldedpane.BesideName(v.stage.reference), widget.MediumImportance)
	a.showView()
	if v.comparing {
		a.compare.say(lang.L("Show only one"), widget.HighImportance)
	} else {
		a.compare.say(lang.L("Compare"), widget.MediumImportance)
	}
	a.compare.showIf(!v.kept.empty())
}

func (a *aside) showView() { a.view.say(viewName(a.page.view.stage.camera), widget.MediumImportance) }

// chooseBeside opens the list of things for scale.
func (a *aside) chooseBeside() {
	var items []*fyne.MenuItem
	for _, r := range solid.References() {
		item := fyne.NewMenuItem(foldedpane.BesideName(r), func() { a.page.view.setReference(r) })
		item.Checked = r == a.page.view.stage.reference
		items = append(items, item)
	}
	a.open(a.beside, items)
}

// chooseView opens the list of places to look from.
func (a *aside) chooseView() {
	var items []*fyne.MenuItem
	for _, v := range views() {
		item := fyne.NewMenuItem(v.Name, func() { a.page.view.stage.turn(v.Camera) })
		item.Checked = v.Name == a.view.Text
		items = append(items, item)
	}
	a.open(a.view, items)
}

// open shows a list below a button, in letters as large as those of the page.
func (a *aside) open(below *button, items []*fyne.MenuItem) {
	driver := fyne.CurrentApp().Driver()
	on := driver.CanvasForObject(below)
	if on == nil {
		return
	}
	list := widget.NewPopUpMenu(fyne.NewMenu("", items...), on)
	container.NewThemeOverride(list, a.page.theme) // for what it does to the list, which lies above the page
	list.Resize(list.MinSize())
	list.ShowAtPosition(driver.AbsolutePositionForObject(below).AddXY(0, below.Size().Height))
	on.Focus(list)
}
