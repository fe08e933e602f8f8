package meeting

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/entry"
	"gussetwright/app/project"
)

// page is what is round the stage: the name of the bag and what can be done above it, how
// it is looked at beside it, the variants and the sliders below it.
type page struct {
	view *View

	title              *heading
	undo, proof, leave *button
	aside              *aside
	keep, take, remove *button
	answer             *button // to what was said
	present            *button // shows the bag itself
	variants           [mostKept]*button
	said               *entry.Text // what was said last
	trouble            *signed     // what is wrong with the size; it shares a row with what was said
	brief              bool        // there is little room on the buttons of the variants

	head, tools, scene, shelf *fyne.Container
	theme                     *appearance.Larger
	content                   *fyne.Container
	override                  *container.ThemeOverride
}

func newPage(v *View) *page {
	p := &page{view: v, title: newHeading(), theme: &appearance.Larger{Factor: 1}}
	p.undo = newButton(v, lang.L("Undo"), appearance.UndoIcon(), v.Undo)
	p.proof = newButton(v, lang.L("Proof to sign"), theme.DocumentSaveIcon(), v.proof)
	p.leave = newButton(v, lang.L("Leave"), theme.ViewRestoreIcon(), func() { v.around.Leave() })
	for _, b := range []*button{p.undo, p.proof, p.leave} {
		b.Importance = widget.LowImportance
	}
	p.said, p.trouble = entry.NewText("", entry.Plain), newSigned()
	p.said.OnGrow(p.arrange)
	p.trouble.text.OnGrow(p.arrange)
	p.aside = newAside(p)
	p.fillShelf()
	p.tools = container.New(&bar{p.gap, 3}, p.undo, p.proof, p.leave)
	p.head = container.New(&titled{p.gap}, p.title, p.tools)
	p.scene = container.New(&besides{p}, v.stage, p.aside.box)
	dials := container.New(&thirds{}, v.dials[width], v.dials[depth], v.dials[height])
	p.content = container.New(&rows{p}, p.head, p.scene, p.said, p.trouble, p.shelf, dials)
	p.override = container.NewThemeOverride(p.content, p.theme)
	return p
}

// fillShelf makes the row of the variants: on its left which there are, on its right what
// can be done with the one that is shown, or about what was said.
func (p *page) fillShelf() {
	v := p.view
	p.keep = newButton(v, "", theme.ContentAddIcon(), v.keep)
	p.present = newButton(v, "", nil, func() { v.choose(none) })
	p.answer = newButton(v, "", appearance.UndoIcon(), func() {
		if v.answer != nil {
			v.answer.do()
		}
	})
	p.answer.Importance = widget.HighImportance
	p.take = newButton(v, "", theme.ConfirmIcon(), v.takeChosen)
	p.remove = newButton(v, "", theme.DeleteIcon(), v.removeChosen)
	p.shelf = container.New(&bar{p.gap, 2 + mostKept}, p.keep, p.present)
	for i := range p.variants {
		p.variants[i] = newButton(v, "", nil, func() { v.choose(v.kept.order()[i]) })
		p.shelf.Add(p.variants[i])
	}
	for _, b := range []*button{p.answer, p.take, p.remove} {
		p.shelf.Add(b)
	}
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
	v.page.label(size.Width)
}

// gap is the room between things that belong together.
func (p *page) gap() float32 { return p.theme.Size(theme.SizeNamePadding) }

// needs returns the width of a button.
func (p *page) needs(text string, icon bool) float32 {
	width := fyne.MeasureText(text, p.theme.Size(theme.SizeNameText), fyne.TextStyle{Bold: true}).Width + 2*p.theme.Size(theme.SizeNameInnerPadding)
	if icon {
		width += p.theme.Size(theme.SizeNameInlineIcon) + p.gap()
	}
	return width
}

// label chooses the words on the buttons of the variants: long ones where there is room for
// all that may be there, so that they do not change in the midst of a meeting.
func (p *page) label(width float32) {
	last := project.Letter(mostKept - 1)
	needed := p.needs(lang.L("Keep this one"), true) + p.needs(lang.L("The bag now"), false) + mostKept*(p.needs(last, false)+p.gap()) +
		p.needs(fmt.Sprintf(lang.L("Make %s the bag"), last), true) + p.needs(fmt.Sprintf(lang.L("Remove %s"), last), true) + 4*p.gap()
	p.brief = needed > width-2*p.margin()
	p.showShelf()
}

// show brings buttons up to date.
func (p *page) show() {
	v := p.view
	p.title.set(v.state.Spec.Name)
	p.undo.enableIf(v.canUndo())
	p.aside.show()
	p.showShelf()
	p.arrange()
}

func (p *page) showShelf() {
	v := p.view
	keep, present, take, remove := lang.L("Keep this one"), lang.L("The bag now"), lang.L("Make %s the bag"), lang.L("Remove %s")
	if p.brief {
		keep, present, take, remove = lang.L("Keep"), lang.L("Now"), lang.L("Take %s"), ""
	}
	p.keep.say(keep, widget.MediumImportance)
	p.present.say(present, p.present.Importance)
	p.present.showIf(!v.kept.empty())
	p.present.choose(v.chosen == none)
	order := v.kept.order()
	for i, b := range p.variants {
		b.showIf(i < len(order))
		if i < len(order) {
			b.say(v.kept[order[i]].letter(), b.Importance)
			b.choose(order[i] == v.chosen)
		}
	}
	p.answer.showIf(v.answer != nil)
	p.take.showIf(v.chosen != none && v.answer == nil)
	p.remove.showIf(v.chosen != none && v.answer == nil)
	if v.answer != nil {
		p.answer.Say(v.answer.label, v.answer.icon, widget.HighImportance)
	}
	if v.chosen != none {
		name := v.kept[v.chosen].letter()
		p.take.say(fmt.Sprintf(take, name), widget.HighImportance)
		p.take.enableIf(!v.isTaken())
		if remove != "" {
			remove = fmt.Sprintf(remove, name)
		}
		p.remove.say(remove, widget.MediumImportance)
	}
}

// showView brings up to date from where the bags are seen.
func (p *page) showView() { p.aside.showView() }

// arrange puts everything in its place.
func (p *page) arrange() {
	for _, box := range []*fyne.Container{p.content, p.head, p.tools, p.scene, p.aside.box, p.shelf} {
		box.Layout.Layout(box.Objects, box.Size())
	}
}

// speak says what was said last, or what is wrong with the size, unless its card says so.
func (p *page) speak() {
	v, wrong := p.view, trouble{}
	if v.said == "" && (!v.comparing || v.stage.brief) {
		wrong = v.seenTrouble()
	}
	p.said.SetText(v.said)
	p.trouble.say(wrong)
}
