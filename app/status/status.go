// Package status is the line at the foot of the window: the blank, its sheet, the
// weight and whether the work is saved.
package status

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/document"
	"gussetwright/app/settings"
	"gussetwright/app/words"
	"gussetwright/geometry"
)

// Line is the status line.
type Line struct {
	widget.Label

	doc     *document.Document
	set     *settings.Settings
	reading []string // files that are being read
	hasFile func() bool
}

// New returns the status line of a document.
func New(doc *document.Document, set *settings.Settings) *Line {
	l := &Line{doc: doc, set: set, hasFile: func() bool { return true }}
	l.ExtendBaseWidget(l)
	l.Truncation = fyne.TextTruncateEllipsis
	l.show(doc.State())
	doc.Listen(l.show)
	set.Listen(func() { l.show(doc.State()) })
	return l
}

// AskForFile lets the line ask whether the bag has a file: until then it was never saved,
// even where nothing was changed.
func (l *Line) AskForFile(hasFile func() bool) {
	l.hasFile = hasFile
	l.show(l.doc.State())
}

// Reading says which files are being read for the bag; none when all is done.
func (l *Line) Reading(names []string) {
	l.reading = names
	l.show(l.doc.State())
}

func (l *Line) show(state document.State) {
	text := Text(state, l.set.Unit(), l.hasFile())
	if opening := openingText(state, l.reading); opening != "" {
		text = opening + "  ·  " + text
	}
	if text != l.Text {
		l.SetText(text)
	}
}

// Text states the bag in one line, lengths in the given unit.
func Text(state document.State, unit geometry.Unit, hasFile bool) string {
	if state.Err != nil {
		first, _, _ := strings.Cut(words.MeasuredError(state.Err, unit), "\n")
		return fmt.Sprintf(lang.L("Not drawn: %s"), first)
	}
	s := state.Snapshot
	piece := words.Size(unit, s.Blank.Pieces[0].Width, s.Blank.Pieces[0].Height)
	parts := []string{fmt.Sprintf(lang.L("Blank %s"), piece)}
	if s.Blank.Seams == 2 {
		parts[0] = fmt.Sprintf(lang.L("Two pieces of %s"), piece)
	}
	sheet := words.Size(unit, s.Spec.Sheet.Width, s.Spec.Sheet.Height)
	if s.Plan.Up() == 0 {
		parts = append(parts, fmt.Sprintf(lang.L("does not fit the sheet of %s"), sheet))
	} else {
		parts = append(parts, fmt.Sprintf(lang.L("%d-up on %s, gripper on the %s edge, waste %.0f %%"),
			s.Plan.Up(), sheet, lang.L(string(s.Spec.Sheet.GripperEdge)), s.Plan.WastePercent()))
	}
	parts = append(parts, fmt.Sprintf(lang.L("bag %s g"), words.Number(s.Job.BagGrams, 0)), saved(state, hasFile))
	return strings.Join(parts, "  ·  ")
}

func saved(state document.State, hasFile bool) string {
	switch {
	case !state.ReadOnly && !state.Dirty && !hasFile:
		return lang.L("not saved yet")
	case state.ReadOnly:
		return lang.L("read-only")
	case state.Dirty:
		return lang.L("not saved")
	}
	return lang.L("saved")
}
