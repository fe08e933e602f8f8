package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"gussetwright/app/settings"
)

// desk is where the user works: the steps on the left, the panes beside each other
// and the findings below them.
type desk struct {
	// all is between the steps and the rest. It is not embedded: the toolkit would take the
	// desk for another widget than the split, with a divider of its own that stays behind.
	all *container.Split

	set             *settings.Settings
	panes, findings *container.Split
}

// newDesk puts the parts together. The splits stand where the user left them.
func newDesk(set *settings.Settings, steps, blank, folded, findings fyne.CanvasObject) *desk {
	panes := container.NewHSplit(blank, folded)
	panes.Offset = set.Split(settings.PanesSplit, 0.58)
	work := container.NewVSplit(panes, findings)
	work.Offset = set.Split(settings.FindingsSplit, 0.83)
	all := container.NewHSplit(container.New(atLeast{stepsWidth}, steps), work)
	all.Offset = set.Split(settings.StepsSplit, 0)
	return &desk{all: all, set: set, panes: panes, findings: work}
}

// remember notes where the splits stand.
func (d *desk) remember() {
	d.set.SetSplit(settings.StepsSplit, d.all.Offset)
	d.set.SetSplit(settings.PanesSplit, d.panes.Offset)
	d.set.SetSplit(settings.FindingsSplit, d.findings.Offset)
}

// stepsWidth is what the entries need to stand unclipped at the usual text size.
const stepsWidth = 345

// atLeast lays one object out with a least width, which grows with the text.
type atLeast struct{ width float32 }

// MinSize is part of fyne.Layout.
func (l atLeast) MinSize(objects []fyne.CanvasObject) fyne.Size {
	usual := theme.DefaultTheme().Size(theme.SizeNameText)
	return objects[0].MinSize().Max(fyne.NewSize(l.width*theme.TextSize()/usual, 0))
}

// Layout is part of fyne.Layout.
func (l atLeast) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }
