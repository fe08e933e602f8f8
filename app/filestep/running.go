package filestep

import (
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// running is the bar and the button to cancel, which are shown when writing takes
// its time.
type running struct {
	*entry.Column
	what   *entry.Text
	bar    *widget.ProgressBar
	cancel *widget.Button
	active bool
	share  float64 // that is done,
	next   string  // and what comes next
}

func newRunning(cancel func()) *running {
	r := &running{what: entry.NewText("", entry.Small), bar: widget.NewProgressBar()}
	r.cancel = widget.NewButtonWithIcon(lang.L("Cancel"), theme.CancelIcon(), func() {
		r.cancel.Disable()
		cancel()
	})
	r.Column = entry.NewColumn(1, r.what, container.NewBorder(nil, nil, nil, r.cancel, r.bar))
	r.Hide()
	return r
}

func (r *running) begin() {
	r.active = true
	r.cancel.Enable()
	r.tell(0, "")
}

// reveal shows the bar, unless all is done by now.
func (r *running) reveal() {
	if r.active && !r.Visible() {
		r.Show()
		r.write()
		r.Grown()
	}
}

// tell says how far it is. Nothing is drawn for it while the bar is hidden.
func (r *running) tell(share float64, next string) {
	r.share, r.next = share, next
	if r.Visible() {
		r.write()
	}
}

func (r *running) write() {
	r.bar.SetValue(r.share)
	r.what.SetText(r.next)
}

func (r *running) end() {
	r.active = false
	r.Hide()
	r.Grown()
}
