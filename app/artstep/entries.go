package artstep

import (
	"math"

	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/settings"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/render/artwork"
)

// entries are those of the piece that is chosen.
type entries struct {
	*entry.Column

	step          *Step
	set           *settings.Settings
	title         *entry.Text
	facts         *entry.Text
	notes         []*entry.Message
	noteBox       *entry.Column
	place         *entry.Choice
	page          *entry.Number
	x, y          *entry.Number
	pageBox       *entry.Column
	puts          []func(*bag.Artwork)
	numbers       []*entry.Number
	forward, back *widget.Button
}

// Limits of the entries, as of bag.Artwork, and what their sliders cover.
const (
	mostOffset              = 5000         // mm
	leastScale, mostScale   = 0.1, 100_000 // percent
	smallScale, largeScale  = 10, 400      // percent
	mostTurn, turnReach     = 360, 180     // degrees
	quarter, half, fullTurn = 90, 180, 360
)

func newEntries(step *Step, set *settings.Settings) *entries {
	e := &entries{step: step, set: set, title: entry.NewText("", entry.Heading), facts: entry.NewText("", entry.Muted)}
	e.noteBox = entry.NewColumn(1)
	e.place = e.choice(lang.L("Place"), lang.L("The panel, or all that the piece covers."), nil,
		func(a *bag.Artwork) *string { return &a.On })
	fit := e.choice(lang.L("Fit"), lang.L("How the file fills its place, before it is moved and scaled."), fits(),
		func(a *bag.Artwork) *string { return (*string)(&a.Fit) })
	repeat := e.choice(lang.L("Repeat"), lang.L("A pattern is laid side by side until its place is full."), repeats(),
		func(a *bag.Artwork) *string { return (*string)(&a.Repeat) })
	holds := e.choice(lang.L("Holds"), lang.L("A bar code is checked for what scanners need."), contents(),
		func(a *bag.Artwork) *string { return (*string)(&a.Holds) })
	e.page = e.number(entry.Quantity{Label: lang.L("Page"), Least: 1, Most: 1, Whole: true, Help: lang.L("Which page of the file is shown.")},
		func(a *bag.Artwork) *float64 { return &a.Page }, 1)
	e.pageBox = entry.NewColumn(0, e.page)
	e.x = e.number(offset("X", lang.L("To the right, as the panel hangs on the blank.")), func(a *bag.Artwork) *float64 { return &a.X }, 1)
	e.y = e.number(offset("Y", lang.L("Upwards, as the panel hangs on the blank.")), func(a *bag.Artwork) *float64 { return &a.Y }, 1)
	e.Column = entry.NewColumn(2.5,
		entry.NewColumn(1, e.title, e.facts, e.noteBox),
		e.place, fit, repeat, e.pageBox,
		e.x, e.y,
		e.number(entry.Quantity{
			Label: lang.L("Scale"), Unit: "%", Least: leastScale, Most: mostScale, Low: smallScale, High: largeScale,
			Help: lang.L("Percent of the size that the fit gives."),
		}, func(a *bag.Artwork) *float64 { return &a.Scale }, 100),
		entry.NewColumn(1, e.number(entry.Quantity{
			Label: lang.L("Turn"), Unit: "°", Least: -mostTurn, Most: mostTurn, Low: -turnReach, High: turnReach,
			Help: lang.L("Anticlockwise, about the middle."),
		}, func(a *bag.Artwork) *float64 { return &a.Turn }, 1), e.quarters()),
		e.mirror(),
		e.number(entry.Quantity{
			Label: lang.L("Opacity"), Unit: "%", Most: 100, High: 100,
			Help: lang.L("How much the piece hides what lies under it."),
		}, func(a *bag.Artwork) *float64 { return &a.Opacity }, 1),
		holds, e.buttons(),
	)
	e.Hide()
	return e
}

func offset(axis, help string) entry.Quantity {
	return entry.Quantity{
		Label: axis, Unit: string(geometry.Millimetre), Least: -mostOffset, Most: mostOffset, Help: help,
	}
}

// number returns the entry of a number of the piece, which is shown so many times as
// large as it is.
func (e *entries) number(quantity entry.Quantity, of func(*bag.Artwork) *float64, times float64) *entry.Number {
	changed := func(value float64) bag.Spec {
		return e.step.change(func(a *bag.Artwork) { *of(a) = math.Round(value/times*1e9) / 1e9 })
	}
	doc := e.step.doc
	quantity.Set = func(value float64) { doc.Set(changed(value)) }
	quantity.Drag = func(value float64) { doc.Drag(changed(value)) }
	quantity.Drop = doc.Drop
	number := entry.NewNumber(quantity, e.set)
	number.OnFocus(e.step.focused)
	e.numbers = append(e.numbers, number)
	e.puts = append(e.puts, func(a *bag.Artwork) { number.Put(math.Round(*of(a)*times*1e9) / 1e9) })
	return number
}

// choice returns the entry of a choice about the piece.
func (e *entries) choice(label, help string, options []entry.Option, of func(*bag.Artwork) *string) *entry.Choice {
	choice := entry.NewChoice(label, help, options, func(value string) {
		e.step.doc.Set(e.step.change(func(a *bag.Artwork) { *of(a) = value }))
	})
	choice.OnFocus(e.step.focused)
	e.puts = append(e.puts, func(a *bag.Artwork) { choice.Put(*of(a)) })
	return choice
}

func (e *entries) mirror() *entry.Switch {
	mirror := entry.NewSwitch(lang.L("Mirror"), lang.L("Left and right are exchanged."), func(on bool) {
		e.step.doc.Set(e.step.change(func(a *bag.Artwork) { a.Mirror = on }))
	})
	mirror.OnFocus(e.step.focused)
	e.puts = append(e.puts, func(a *bag.Artwork) { mirror.Put(a.Mirror) })
	return mirror
}

// quarters returns the buttons that turn by a quarter.
func (e *entries) quarters() *flow {
	turn := func(by float64) func() {
		return func() {
			e.step.doc.Set(e.step.change(func(a *bag.Artwork) { a.Turn = turned(a.Turn, by) }))
		}
	}
	return newFlow(
		widget.NewButton(lang.L("90° left"), turn(quarter)),
		widget.NewButton(lang.L("90° right"), turn(-quarter)),
	)
}

// turned returns a turn by so many degrees more, more than −180° and at most 180°.
func turned(from, by float64) float64 {
	to := math.Mod(from+by, fullTurn)
	switch {
	case to > half:
		to -= fullTurn
	case to <= -half:
		to += fullTurn
	}
	return to
}

func (e *entries) buttons() *flow {
	s := e.step
	replace := widget.NewButton(lang.L("Replace file…"), func() {
		chosen := s.chosen
		s.ask(endings(), func(path string) { s.source.Replace(chosen, path) })
	})
	e.forward = widget.NewButton(lang.L("Bring forward"), func() { s.order(1) })
	e.back = widget.NewButton(lang.L("Send back"), func() { s.order(-1) })
	remove := widget.NewButton(lang.L("Remove"), s.remove)
	return newFlow(replace, e.forward, e.back, remove)
}

// show shows the piece that is chosen, if there is one.
func (e *entries) show(state document.State, chosen int) {
	any := chosen < len(state.Spec.Artwork)
	if any {
		piece := state.Spec.Artwork[chosen]
		e.title.SetText(piece.File)
		e.showArt(state.Snapshot, chosen)
		e.place.SetOptions(placesOn(&state.Snapshot.Blank, piece.On))
		across, up := reachOn(&state.Snapshot.Blank, piece.On)
		e.x.SetReach(-across, across)
		e.y.SetReach(-up, up)
		for _, put := range e.puts {
			put(&piece)
		}
		able(e.forward, chosen+1 < len(state.Spec.Artwork))
		able(e.back, chosen > 0)
	}
	reveal(e.Column, any)
}

// showArt shows what is known of the file.
func (e *entries) showArt(snapshot *document.Snapshot, chosen int) {
	var art *artwork.Art
	if chosen < len(snapshot.Hung) {
		art = snapshot.Hung[chosen].Art
	}
	pages, facts := 1, ""
	if art != nil {
		pages, facts = art.Pages, factsOf(art, e.set.Unit())
	}
	e.facts.SetText(facts)
	if pages > 1 {
		e.page.SetLimits(1, float64(pages))
	}
	reveal(e.pageBox, pages > 1)
	e.showNotes(art)
}

// showNotes shows what the user should know of the file.
func (e *entries) showNotes(art *artwork.Art) {
	var notes []string
	if art != nil {
		for _, note := range art.Notes {
			notes = append(notes, words.Of(note))
		}
	}
	for len(e.notes) < len(notes) {
		message := entry.NewMessage()
		e.notes = append(e.notes, message)
		e.noteBox.Add(message)
	}
	for i, message := range e.notes {
		text := ""
		if i < len(notes) {
			text = notes[i]
		}
		message.Say(check.Note, text, nil)
	}
}

// forget drops what was typed and not taken over.
func (e *entries) forget() {
	for _, number := range e.numbers {
		number.Forget()
	}
}

// reveal hides or shows a column.
func reveal(c *entry.Column, visible bool) {
	if c.Visible() == visible {
		return
	}
	if visible {
		c.Show()
	} else {
		c.Hide()
	}
	c.Grown()
}

// able makes a button answer or not.
func able(button *widget.Button, can bool) {
	if button.Disabled() != can {
		return
	}
	if can {
		button.Enable()
	} else {
		button.Disable()
	}
}
