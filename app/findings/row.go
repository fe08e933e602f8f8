package findings

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
	"gussetwright/app/focus"
	"gussetwright/app/keyrelay"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/check"
)

// row is one finding: a sign, the message, the remedy. It can be reached with the
// tab key; a click, Enter or the space bar shows its place and leads to its entry.
type row struct {
	widget.BaseWidget

	strip   *Strip
	finding check.Finding
	sign    *widget.Icon
	kind    *widget.Label
	message *widget.Label
	remedy  *widget.Label
	ground  *canvas.Rectangle
}

func newRow(strip *Strip) *row {
	r := &row{
		strip: strip, sign: widget.NewIcon(nil), kind: widget.NewLabel(""),
		message: widget.NewLabel(""), remedy: widget.NewLabel(""), ground: canvas.NewRectangle(color.Transparent),
	}
	r.kind.TextStyle.Bold = true
	r.message.Wrapping = fyne.TextWrapWord
	r.remedy.Wrapping = fyne.TextWrapWord
	r.remedy.Importance = widget.LowImportance
	r.ExtendBaseWidget(r)
	return r
}

// show puts a finding into the row, with lengths in a unit. Only what changed is drawn
// anew.
func (r *row) show(f check.Finding, unit geometry.Unit) {
	if f.Severity != r.finding.Severity {
		r.sign.SetResource(entry.Sign(f.Severity))
		r.kind.Importance = importance(f.Severity)
		setText(r.kind, severityName(f.Severity))
	}
	r.finding = f
	setText(r.message, words.Measured(f.Message, unit))
	setText(r.remedy, words.Measured(f.Remedy, unit))
}

func importance(s check.Severity) widget.Importance {
	switch s {
	case check.Error:
		return widget.DangerImportance
	case check.Warning:
		return widget.WarningImportance
	}
	return widget.MediumImportance
}

func severityName(s check.Severity) string {
	switch s {
	case check.Error:
		return lang.L("Error")
	case check.Warning:
		return lang.L("Warning")
	}
	return lang.L("Note")
}

// CreateRenderer is part of fyne.Widget.
func (r *row) CreateRenderer() fyne.WidgetRenderer {
	head := container.New(headLayout{}, r.sign, r.kind)
	return widget.NewSimpleRenderer(container.NewStack(r.ground, container.New(&rowLayout{}, head, r.message, r.remedy)))
}

// showPlace rings the place of the finding in the panes.
func (r *row) showPlace() {
	r.strip.look.Show(&focus.Place{Piece: r.finding.Piece, At: r.finding.At})
}

// Tapped shows the place of the finding and leads to the entry that mends it.
func (r *row) Tapped(*fyne.PointEvent) { r.strip.chosen(r) }

// Cursor tells that the row can be clicked.
func (r *row) Cursor() desktop.Cursor { return desktop.PointerCursor }

// MouseIn lights the row up.
func (r *row) MouseIn(*desktop.MouseEvent) { r.light(theme.ColorNameHover) }

// MouseMoved is part of desktop.Hoverable.
func (r *row) MouseMoved(*desktop.MouseEvent) {}

// MouseOut takes the light away.
func (r *row) MouseOut() { r.light("") }

// FocusGained lights the row up and brings it in sight.
func (r *row) FocusGained() {
	r.light(theme.ColorNameFocus)
	r.strip.bring(r)
}

// FocusLost takes the light away.
func (r *row) FocusLost() { r.light("") }

// TypedRune is part of fyne.Focusable.
func (r *row) TypedRune(rune) {}

// TypedKey does what a click does.
func (r *row) TypedKey(key *fyne.KeyEvent) {
	keyrelay.ToWindow(r, key)
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		r.Tapped(nil)
	}
}

func (r *row) light(name fyne.ThemeColorName) {
	r.ground.FillColor = color.Transparent
	if name != "" {
		r.ground.FillColor = r.Theme().Color(name, fyne.CurrentApp().Settings().ThemeVariant())
	}
	r.ground.Refresh()
}
