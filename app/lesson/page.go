package lesson

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/entry"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// page is what is round the two panes: the title above them, below them what the hands
// do, the slider over the lesson and the buttons.
type page struct {
	view *View

	step, title *entry.Text
	size        *entry.Text // of the bag
	full, leave *button
	play        *button
	speeds      [len(speeds)]*button
	left, right *fyne.Container // of the bar
	message     *message
	words       *reading
	probe       *entry.Text // never seen: to measure titles with
	theme       *appearance.Larger
	content     *fyne.Container
	override    *container.ThemeOverride
}

func newPage(v *View) *page {
	p := &page{view: v, theme: &appearance.Larger{Factor: 1}}
	p.step, p.title = entry.NewText("", noteStyle), entry.NewText("", titleStyle)
	p.size = entry.NewText("", captionStyle)
	p.full = newButton(v, "", theme.ViewFullScreenIcon(), func() { v.around.FullScreen() }).quiet()
	p.leave = newButton(v, lang.L("Leave"), theme.ViewRestoreIcon(), func() { v.around.Leave() }).quiet()
	back := newButton(v, "", theme.MediaSkipPreviousIcon(), func() { v.next(-1) })
	on := newButton(v, "", theme.MediaSkipNextIcon(), func() { v.next(1) })
	p.play = newButton(v, "", theme.MediaPlayIcon(), v.play)
	again := newButton(v, lang.L("Once more"), theme.MediaReplayIcon(), v.again)
	p.left = container.NewHBox(back, p.play, on, again)
	for i, speed := range speeds {
		p.speeds[i] = newButton(v, words.Number(speed, 1)+"×", nil, func() { v.setSpeed(speed) })
		p.left.Add(p.speeds[i])
	}
	p.right = container.NewHBox(
		newButton(v, lang.L("Write the lesson as PDF"), theme.DocumentSaveIcon(), func() { v.write("lesson") }),
		newButton(v, lang.L("Write practice blanks as PDF"), theme.DocumentSaveIcon(), func() { v.write("practice") }),
	)
	p.message = newMessage(v)
	p.words, p.probe = newReading(v.text), entry.NewText("", titleStyle)
	p.probe.Hide()
	p.content = container.New(p, p.step, p.title, p.size, p.full, p.leave, v.flat, v.bag, p.words.override, v.line, p.left, p.right, p.message, p.probe)
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
var growth = appearance.Growth{Larger: 1.15, Most: 1.7, Text: 1.5}

// scale makes everything as large as the view has room for.
func (v *View) scale(size fyne.Size) {
	if factor := growth.For(size, v.set.TextScale()); factor != v.page.theme.Factor {
		v.page.theme.Factor = factor
		v.page.override.Refresh()
		v.page.words.scale(factor)
	}
}

// show brings words and buttons up to date.
func (p *page) show() {
	v := p.view
	stage := v.player.at.stage
	p.step.SetText(fmt.Sprintf(lang.L("Step %d of %d"), stage+1, len(v.course.Stages)))
	p.title.SetText(words.Measured(v.course.Stages[stage].Title, v.set.Unit()))
	if v.player.pace == resting {
		p.play.Say(lang.L("Play"), theme.MediaPlayIcon(), widget.HighImportance)
	} else {
		p.play.Say(lang.L("Pause"), theme.MediaPauseIcon(), widget.HighImportance)
	}
	for i, b := range p.speeds {
		importance := widget.LowImportance
		if speeds[i] == v.player.speed {
			importance = widget.HighImportance
		}
		b.Say(b.Text, nil, importance)
	}
	p.size.SetText(sizeOf(&v.course.snapshot.Spec.Body, v.set.Unit()))
	v.text.show(v.course, stage, v.set.Unit())
	v.flat.legend.show(v.course.marksOf(stage, v.flat.reverse(stage)))
	v.flat.tell()
	v.bag.tell()
	p.message.show()
	p.arrange()
	p.words.begin(v.course, stage)
}

// sizeOf states the three dimensions of a bag.
func sizeOf(body *bag.Body, unit geometry.Unit) string {
	length := func(mm float64) string { return words.Number(mm/unit.Length(), unit.Decimals()) }
	return fmt.Sprintf(lang.L("W %s × D %s × H %s %s"), length(body.Width), length(body.Gusset), length(body.Height), string(unit))
}

func (p *page) arrange() { p.Layout(p.content.Objects, p.content.Size()) }

// Layout is part of fyne.Layout.
func (p *page) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	if size.Width <= 1 {
		return
	}
	v, th := p.view, p.step.Theme()
	padding := th.Size(theme.SizeNamePadding)
	margin, gap := 2*padding, 1.5*padding
	inner := size.Width - 2*margin
	top := margin + p.layHead(margin, margin, inner) + gap
	bottom := size.Height - margin
	bottom -= p.layBar(margin, bottom, inner)
	line := v.line.MinSize().Height
	bottom -= line + gap
	fill(v.line, margin, bottom, inner, line)
	const most = 0.5 // of the room, for words
	left, wide := rounded(margin+padding), rounded(inner-2*padding)
	tall := min(rounded(v.text.room(wide)+0.5), rounded(most*(bottom-top)-2*padding))
	v.text.fit(wide, tall)
	bottom -= tall + 2*padding
	p.words.lay(left, rounded(bottom+padding), wide, tall)
	const flat = 0.46 // of the width
	room := max(bottom-top-gap/2, 1)
	fill(v.flat, margin, top, flat*(inner-gap), room)
	fill(v.bag, margin+flat*(inner-gap)+gap, top, (1-flat)*(inner-gap), room)
	if p.message.Visible() {
		p.layMessage(padding, room, size.Height-top)
	}
}

// fill gives an object a place of whole pixels.
func fill(object fyne.CanvasObject, x, y, width, height float32) {
	put(object, x, y, rounded(x+width)-rounded(x), rounded(y+height)-rounded(y))
}

// layHead lays the title out, with the buttons beside it, and returns its height.
func (p *page) layHead(x, y, width float32) float32 {
	right := x + width
	for _, b := range []*button{p.leave, p.full} {
		least := b.MinSize()
		right -= least.Width
		put(b, right, y, least.Width, least.Height)
	}
	wide := right - x - 8
	if needed := p.size.OneLine() + 1; needed < wide/2 { // beside the title
		tall := p.size.HeightFor(needed)
		put(p.size, right-needed-8, y+(p.leave.MinSize().Height-tall)/2, needed, tall)
		wide -= needed + 16
	}
	step := p.step.HeightFor(wide)
	put(p.step, x, y, wide, step)
	put(p.title, x, y+step, wide, p.title.HeightFor(wide))
	return max(step+p.titleHeight(wide), p.leave.MinSize().Height)
}

// titleHeight is the height of the highest title, so that nothing moves from stage to
// stage.
func (p *page) titleHeight(width float32) (height float32) {
	for i := range p.view.course.Stages {
		title := words.Measured(p.view.course.Stages[i].Title, p.view.set.Unit())
		p.probe.SetText(title)
		height = max(height, p.probe.HeightFor(width))
	}
	return height
}

// layBar lays the buttons out so that they end at a height: in one row, or in two where
// they have no room beside each other. It returns the height that they take.
func (p *page) layBar(x, bottom, width float32) float32 {
	left, right := p.left.MinSize(), p.right.MinSize()
	tall := max(left.Height, right.Height)
	padding := p.step.Theme().Size(theme.SizeNamePadding)
	put(p.right, x+width-right.Width, bottom-tall, right.Width, tall)
	if left.Width+right.Width+4*padding <= width {
		put(p.left, x, bottom-tall, left.Width, tall)
		return tall
	}
	put(p.right, x, bottom-tall, right.Width, tall)
	put(p.left, x, bottom-2*tall-padding, left.Width, tall)
	return 2*tall + padding
}

// MinSize is part of fyne.Layout.
func (p *page) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(1, 1) }
