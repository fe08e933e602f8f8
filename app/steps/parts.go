package steps

import "fyne.io/fyne/v2"

// List returns the part that lists the steps, for the tour to point at.
func (p *Panel) List() fyne.CanvasObject { return p.list }

// Page returns the part that shows the entries of the chosen step, for the tour to
// point at.
func (p *Panel) Page() fyne.CanvasObject {
	if p.chosen == filesStep {
		return p.files
	}
	return p.scroll
}
