package filestep

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// helped is a tick with a line of help right below its text.
type helped struct {
	widget.BaseWidget

	check *widget.Check
	help  *entry.Text
}

func newHelped(check *widget.Check, help *entry.Text) *helped {
	h := &helped{check: check, help: help}
	h.ExtendBaseWidget(h)
	return h
}

// HeightFor returns the height at a width.
func (h *helped) HeightFor(width float32) float32 {
	return h.below() + h.help.HeightFor(h.helpWidth(width))
}

func (h *helped) helpWidth(width float32) float32 { return max(width-h.indent(), 1) }

// indent is where the text of a tick begins: behind its box, the padding of that and
// the border of both.
func (h *helped) indent() float32 {
	return h.size(theme.SizeNameInlineIcon) + h.size(theme.SizeNameInnerPadding) + 2*h.size(theme.SizeNameInputBorder)
}

// below is where the help begins: at the end of the tick's text, in its padding.
func (h *helped) below() float32 {
	return h.check.MinSize().Height - h.size(theme.SizeNameInnerPadding)*0.75
}

func (h *helped) size(name fyne.ThemeSizeName) float32 { return h.Theme().Size(name) }

// CreateRenderer is part of fyne.Widget.
func (h *helped) CreateRenderer() fyne.WidgetRenderer { return &helpedRenderer{h} }

type helpedRenderer struct{ h *helped }

func (r *helpedRenderer) Layout(size fyne.Size) {
	r.h.check.Resize(fyne.NewSize(size.Width, r.h.check.MinSize().Height))
	width := r.h.helpWidth(size.Width)
	r.h.help.Move(fyne.NewPos(r.h.indent(), r.h.below()))
	r.h.help.Resize(fyne.NewSize(width, r.h.help.HeightFor(width)))
}

func (r *helpedRenderer) MinSize() fyne.Size {
	least := max(r.h.check.MinSize().Width, r.h.indent()+r.h.help.MinSize().Width)
	return fyne.NewSize(least, r.h.HeightFor(max(least, r.h.Size().Width)))
}

func (r *helpedRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.h.help, r.h.check}
}

func (r *helpedRenderer) Destroy() {}

func (r *helpedRenderer) Refresh() {
	r.h.check.Refresh()
	r.h.help.Refresh()
	r.Layout(r.h.Size())
}
