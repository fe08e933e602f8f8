package filestep

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// helped is a tick with a line of help right below its text, and below that, while it is
// ticked, a choice of how it is done where there is one.
type helped struct {
	widget.BaseWidget

	check  *widget.Check
	help   *entry.Text
	option *entry.Choice // or nil
}

func newHelped(check *widget.Check, help *entry.Text) *helped {
	h := &helped{check: check, help: help}
	h.ExtendBaseWidget(h)
	return h
}

// attach adds a choice.
func (h *helped) attach(option *entry.Choice) {
	h.option = option
	h.showOption()
}

// showOption shows the choice where it matters.
func (h *helped) showOption() {
	switch {
	case h.option == nil || h.option.Visible() == h.check.Checked:
		return
	case h.check.Checked:
		h.option.Show()
	default:
		h.option.Hide()
	}
	h.option.Grown()
}

// HeightFor returns the height at a width.
func (h *helped) HeightFor(width float32) float32 {
	height := h.optionAt(width)
	if h.option == nil || !h.option.Visible() {
		return height
	}
	return height + h.size(theme.SizeNamePadding) + h.option.HeightFor(h.helpWidth(width))
}

// optionAt is where the help ends.
func (h *helped) optionAt(width float32) float32 {
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
	if option := r.h.option; option != nil {
		option.Move(fyne.NewPos(r.h.indent(), r.h.optionAt(size.Width)+r.h.size(theme.SizeNamePadding)))
		option.Resize(fyne.NewSize(width, option.HeightFor(width)))
		option.Arrange()
	}
}

func (r *helpedRenderer) MinSize() fyne.Size {
	least := max(r.h.check.MinSize().Width, r.h.indent()+r.h.help.MinSize().Width)
	return fyne.NewSize(least, r.h.HeightFor(max(least, r.h.Size().Width)))
}

func (r *helpedRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.h.help, r.h.check}
	if r.h.option != nil {
		objects = append(objects, r.h.option)
	}
	return objects
}

func (r *helpedRenderer) Destroy() {}

func (r *helpedRenderer) Refresh() {
	r.h.check.Refresh()
	r.h.help.Refresh()
	if r.h.option != nil {
		r.h.option.Refresh()
	}
	r.Layout(r.h.Size())
}
