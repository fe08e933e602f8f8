package meeting

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/entry"
	"gussetwright/app/foldedpane"
	"gussetwright/render/solid"
)

// page is what is round the stage: the name of the bag and what can be done above it,
// the variants and the sliders below it.
type page struct {
	view *View

	title                         *widget.Label
	beside, compare, proof, leave *button
	keep, take, remove            *button
	present                       *button // shows the bag itself
	variants                      [mostKept]*button
	tools, shelf                  *fyne.Container
	head                          *fyne.Container
	said, trouble                 *entry.Text // what was said last; why the bag cannot be made

	theme    *appearance.Larger
	content  *fyne.Container
	override *container.ThemeOverride
}

func newPage(v *View) *page {
	p := &page{view: v, title: widget.NewLabel(""), theme: &appearance.Larger{Factor: 1}}
	p.title.SizeName, p.title.TextStyle.Bold = theme.SizeNameHeadingText, true
	p.title.Truncation = fyne.TextTruncateEllipsis
	p.beside = newButton(v, "", theme.MenuDropDownIcon(), p.chooseBeside)
	p.beside.IconPlacement = widget.ButtonIconTrailingText
	p.compare = newButton(v, "", nil, v.compare)
	p.proof = newButton(v, lang.L("Proof"), theme.DocumentSaveIcon(), v.proof)
	p.leave = newButton(v, lang.L("Leave"), theme.ViewRestoreIcon(), func() { v.around.Leave() })
	for _, b := range []*button{p.beside, p.leave, p.proof} {
		b.Importance = widget.LowImportance
	}
	p.keep = newButton(v, lang.L("Keep this one"), theme.ContentAddIcon(), v.keep)
	p.present = newButton(v, lang.L("Now"), nil, func() { v.choose(none) })
	p.shelf = container.NewHBox(p.keep, p.present)
	for place := range p.variants {
		p.variants[place] = newButton(v, letter(place), nil, func() { v.choose(place) })
		p.shelf.Add(p.variants[place])
	}
	p.take = newButton(v, "", theme.ConfirmIcon(), v.takeChosen)
	p.remove = newButton(v, "", theme.DeleteIcon(), v.removeChosen)
	p.shelf.Add(layout.NewSpacer())
	p.shelf.Add(p.take)
	p.shelf.Add(p.remove)
	p.said, p.trouble = entry.NewText("", entry.Plain), entry.NewText("", entry.Muted)
	p.tools = container.NewHBox(p.beside, p.compare, p.proof, p.leave)
	p.head = container.NewBorder(nil, nil, nil, p.tools, p.title)
	dials := container.New(&thirds{}, v.dials[width], v.dials[depth], v.dials[height])
	p.content = container.New(&rows{p.said, p.trouble}, p.head, v.stage, p.said, p.trouble, p.shelf, dials)
	p.said.OnGrow(p.arrange)
	p.trouble.OnGrow(p.arrange)
	p.override = container.NewThemeOverride(p.content, p.theme)
	return p
}

// CreateRenderer is part of fyne.Widget.
func (v *View) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(v.page.override) }

// MinSize is part of fyne.CanvasObject: the view makes do with any window.
func (v *View) MinSize() fyne.Size { return fyne.NewSize(1, 1) }

// Resize is part of fyne.CanvasObject.
func (v *View) Resize(size fyne.Size) {
	v.scale(size)
	v.BaseWidget.Resize(size)
}

// growth says how large everything is.
var growth = appearance.Growth{Larger: 1.25, Most: 1.6, Text: 1.6}

// scale makes everything as large as the view has room for.
func (v *View) scale(size fyne.Size) {
	if factor := growth.For(size, v.set.TextScale()); factor != v.page.theme.Factor {
		v.page.theme.Factor = factor
		v.page.override.Refresh()
	}
}

// show brings buttons up to date.
func (p *page) show() {
	v := p.view
	if name := v.state.Spec.Name; p.title.Text != name {
		p.title.SetText(name)
	}
	p.beside.say(foldedpane.BesideName(v.stage.reference), widget.LowImportance)
	if v.comparing {
		p.compare.say(lang.L("Show one"), widget.HighImportance)
	} else {
		p.compare.say(lang.L("Compare"), widget.LowImportance)
	}
	p.compare.showIf(!v.kept.empty())
	p.present.showIf(!v.kept.empty())
	p.present.choose(v.chosen == none)
	for place, b := range p.variants {
		b.showIf(v.kept[place] != nil)
		b.choose(place == v.chosen)
	}
	if v.chosen != none {
		p.take.say(fmt.Sprintf(lang.L("Take %s"), letter(v.chosen)), widget.HighImportance)
		p.remove.say(fmt.Sprintf(lang.L("Remove %s"), letter(v.chosen)), widget.MediumImportance)
	}
	p.take.showIf(v.chosen != none)
	p.remove.showIf(v.chosen != none)
	p.arrange()
}

// arrange puts everything in its place.
func (p *page) arrange() {
	for _, box := range []*fyne.Container{p.content, p.head, p.tools, p.shelf} {
		box.Layout.Layout(box.Objects, box.Size())
	}
}

// speak says what was said last, or why the bag cannot be made, unless its card says so.
func (p *page) speak() {
	v, trouble := p.view, ""
	if v.said == "" && (!v.comparing || v.stage.brief) {
		trouble = v.seenTrouble()
	}
	p.said.SetText(v.said)
	p.trouble.SetText(trouble)
}

// chooseBeside opens the list of things for scale.
func (p *page) chooseBeside() {
	var items []*fyne.MenuItem
	for _, r := range solid.References() {
		item := fyne.NewMenuItem(foldedpane.BesideName(r), func() { p.view.setReference(r) })
		item.Checked = r == p.view.stage.reference
		items = append(items, item)
	}
	driver := fyne.CurrentApp().Driver()
	on := driver.CanvasForObject(p.beside)
	if on == nil {
		return
	}
	at := driver.AbsolutePositionForObject(p.beside).AddXY(0, p.beside.Size().Height)
	list := widget.NewPopUpMenu(fyne.NewMenu("", items...), on)
	list.ShowAtPosition(at)
	on.Focus(list)
}

// rows stacks what is on the page; the stage takes the room that the others leave. Of
// the two that may be said one is, in a line that is kept free for it, so that nothing
// moves when there is something to say.
type rows struct{ said, trouble *entry.Text }

// The rows from above, as newPage makes them; the two texts share one.
const stageRow, saidRow, troubleRow = 1, 2, 3

// Layout is part of fyne.Layout.
func (r *rows) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	padding := objects[stageRow].(*stage).padding()
	margin, gap := 2*padding, 1.5*padding
	inner := size.Width - 2*margin
	heights := make([]float32, len(objects))
	room := size.Height - 2*margin - gap*float32(len(objects)-2)
	for i, object := range objects {
		switch i {
		case stageRow, troubleRow:
			continue
		case saidRow:
			heights[i] = max(r.said.HeightFor(inner), r.trouble.HeightFor(inner), r.line())
		default:
			heights[i] = object.MinSize().Height
		}
		room -= heights[i]
	}
	heights[stageRow] = max(room, 1)
	top := margin
	for i, object := range objects {
		if i == troubleRow {
			put(object, objects[saidRow].Position(), objects[saidRow].Size())
			continue
		}
		put(object, fyne.NewPos(margin, top), fyne.NewSize(inner, heights[i]))
		top += heights[i] + gap
	}
}

func (r *rows) line() float32 {
	return fyne.MeasureText("Mg", r.said.Theme().Size(theme.SizeNameText), fyne.TextStyle{}).Height
}

// MinSize is part of fyne.Layout.
func (r *rows) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(1, 1) }

// thirds puts the dials beside each other, well apart.
type thirds struct{}

// Layout is part of fyne.Layout.
func (thirds) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	count := float32(len(objects))
	gap := size.Width / 24
	width := (size.Width - gap*(count-1)) / count
	for i, object := range objects {
		put(object, fyne.NewPos(float32(i)*(width+gap), 0), fyne.NewSize(width, size.Height))
	}
}

// MinSize is part of fyne.Layout.
func (thirds) MinSize(objects []fyne.CanvasObject) (least fyne.Size) {
	for _, object := range objects {
		least = least.Max(object.MinSize())
	}
	return fyne.NewSize(1, least.Height)
}
