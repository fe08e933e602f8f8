// Package findings shows what is to be known about the bag in a strip: each finding
// with its remedy, and its place in the panes at a click.
package findings

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/document"
	"gussetwright/app/focus"
	"gussetwright/app/settings"
	"gussetwright/geometry/check"
)

// Strip is the list of findings.
type Strip struct {
	widget.BaseWidget

	look   *focus.Focus
	set    *settings.Settings
	title  *widget.Label
	rows   []*row
	list   *fyne.Container
	scroll *container.Scroll
	lead   func(check.Finding) // to the entry that mends it, or nil
	at     int                 // the row that was shown last, or −1
	stop   func()
}

// New returns the strip of a document. Lengths are shown in the unit of the settings.
func New(doc *document.Document, look *focus.Focus, set *settings.Settings) *Strip {
	s := &Strip{look: look, set: set, title: widget.NewLabel(""), list: container.NewVBox(), at: -1}
	s.title.Truncation = fyne.TextTruncateEllipsis // or many findings would make a small window larger
	s.title.TextStyle.Bold = true
	s.scroll = container.NewVScroll(container.NewPadded(s.list))
	s.ExtendBaseWidget(s)
	s.show(doc.State())
	s.stop = doc.Listen(s.show)
	set.Listen(func() { s.show(doc.State()) })
	return s
}

// OnChosen sets what is called when a finding is chosen by a click or by Enter, besides
// showing its place: it leads to the entry that mends it.
func (s *Strip) OnChosen(lead func(check.Finding)) { s.lead = lead }

func (s *Strip) chosen(r *row) {
	r.showPlace()
	if s.lead != nil {
		s.lead(r.finding)
	}
}

// Next shows the place of the next finding, or with −1 of the one before. After the
// last comes the first again.
func (s *Strip) Next(by int) {
	count := len(s.rows)
	if count == 0 {
		return
	}
	if s.at < 0 && by < 0 {
		s.at = 0
	}
	s.at = ((s.at+by)%count + count) % count
	s.rows[s.at].showPlace()
	s.bring(s.rows[s.at])
	if canvas := fyne.CurrentApp().Driver().CanvasForObject(s); canvas != nil {
		canvas.Focus(s.rows[s.at])
	}
}

// Close stops listening to the document.
func (s *Strip) Close() { s.stop() }

// CreateRenderer is part of fyne.Widget.
func (s *Strip) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewBorder(s.title, nil, nil, nil, s.scroll))
}

// mostLetters is how high the first finding may be for the strip to have room for it
// whatever the window wants, in heights of a letter.
const mostLetters = 8

// MinSize is part of fyne.CanvasObject: there is room for the first finding.
func (s *Strip) MinSize() fyne.Size {
	least := s.BaseWidget.MinSize()
	if len(s.rows) == 0 {
		return least
	}
	first := min(s.rows[0].MinSize().Height, mostLetters*theme.TextSize())
	return least.Max(fyne.NewSize(0, s.title.MinSize().Height+3*theme.Padding()+first))
}

// show puts the findings of a state into the rows. Rows are used again, since this
// is called for every step of a drag.
func (s *Strip) show(state document.State) {
	found := state.Snapshot.Findings
	setText(s.title, Summary(found))
	arrived := firstGrave(s.shown(), found)
	changed := len(found) != len(s.rows)
	for len(s.rows) < len(found) {
		s.rows = append(s.rows, newRow(s))
	}
	s.rows = s.rows[:len(found)]
	s.at = min(s.at, len(found)-1)
	for i := range found {
		s.rows[i].show(found[i], s.set.Unit())
	}
	if changed {
		s.list.Objects = s.list.Objects[:0]
		for _, r := range s.rows {
			s.list.Add(r)
		}
		s.list.Refresh()
	}
	if arrived >= 0 {
		s.bring(s.rows[arrived])
	}
}

// shown returns the findings in the rows.
func (s *Strip) shown() []check.Finding {
	list := make([]check.Finding, len(s.rows))
	for i, r := range s.rows {
		list[i] = r.finding
	}
	return list
}

// firstGrave returns the first error or warning that was not there before, or −1. One
// whose numbers change while something is dragged is not a new one.
func firstGrave(before, now []check.Finding) int {
	type kind struct {
		severity check.Severity
		code     string
	}
	count := map[kind]int{}
	for i := range before {
		count[kind{before[i].Severity, before[i].Code}]++
	}
	for i := range now {
		k := kind{now[i].Severity, now[i].Code}
		if count[k]--; count[k] < 0 && k.severity != check.Note {
			return i
		}
	}
	return -1
}

// bring scrolls so that a row is in sight, its top at least.
func (s *Strip) bring(r *row) {
	top, height := r.Position().Y+theme.Padding(), r.Size().Height
	offset := min(max(s.scroll.Offset.Y, top+height-s.scroll.Size().Height), top)
	if offset < height/2 {
		offset = 0 // with the room above the first row
	}
	if offset != s.scroll.Offset.Y {
		s.scroll.ScrollToOffset(fyne.NewPos(0, offset))
	}
}

// Summary counts the findings in words.
func Summary(found []check.Finding) string {
	count := map[check.Severity]int{}
	for _, f := range found {
		count[f.Severity]++
	}
	if len(found) == 0 {
		return lang.L("Findings: none")
	}
	var parts []string
	add := func(count int, one, many string) {
		switch {
		case count == 1:
			parts = append(parts, one)
		case count > 1:
			parts = append(parts, fmt.Sprintf(many, count))
		}
	}
	add(count[check.Error], lang.L("1 error"), lang.L("%d errors"))
	add(count[check.Warning], lang.L("1 warning"), lang.L("%d warnings"))
	add(count[check.Note], lang.L("1 note"), lang.L("%d notes"))
	return fmt.Sprintf(lang.L("Findings: %s"), strings.Join(parts, ", "))
}

func setText(label *widget.Label, text string) {
	if label.Text != text {
		label.SetText(text)
	}
}
