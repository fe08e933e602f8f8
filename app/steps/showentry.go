package steps

import (
	"fyne.io/fyne/v2"

	"gussetwright/app/steppage"
	"gussetwright/geometry/check"
)

// ShowEntryOf shows the step in which a finding is mended, with the focus in the entry
// it is about; an entry that has the focus is scrolled into view and explained.
func (p *Panel) ShowEntryOf(f check.Finding) {
	spec := p.bench.Doc.State().Spec
	path := steppage.EntryOf(&f, &spec)
	step := stepOf(path)
	if step < 0 {
		return
	}
	p.Select(step)
	if step == filesStep {
		return
	}
	canvas := fyne.CurrentApp().Driver().CanvasForObject(p)
	if slot := p.page(step).Slot(path); slot != nil && canvas != nil {
		if entry := firstFocusable(slot); entry != nil {
			// The toolkit gives the focus only to what it has made ready to be drawn. It does
			// so on the way to an object whose place it is asked for; this one is behind the page.
			fyne.CurrentApp().Driver().AbsolutePositionForObject(p.explain)
			canvas.Focus(entry)
		}
	}
}

// holder is what entries stand in.
type holder interface{ Objects() []fyne.CanvasObject }

// firstFocusable returns the first part of an entry that can have the focus, or nil.
func firstFocusable(object fyne.CanvasObject) fyne.Focusable {
	if one, is := object.(fyne.Focusable); is {
		return one
	}
	if one, is := object.(interface{ Focusable() fyne.Focusable }); is {
		return one.Focusable()
	}
	if in, is := object.(holder); is {
		for _, inner := range in.Objects() {
			if found := firstFocusable(inner); found != nil {
				return found
			}
		}
	}
	return nil
}
