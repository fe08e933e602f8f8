package blankpane

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/geometry"
)

// toolbar is the row of buttons above the blank.
type toolbar struct {
	widget.BaseWidget
	pane            *Pane
	percent         *widget.Button
	measure, legend *widget.Button
	body            *fyne.Container
}

func newToolbar(p *Pane) *toolbar {
	t := &toolbar{pane: p}
	title := widget.NewLabel(lang.L("Blank"))
	title.TextStyle.Bold = true
	t.percent = quiet("100 %", nil, p.TrueSize)
	t.measure = quiet(lang.L("Measure"), nil, func() { p.Measure(!p.Measuring()) })
	t.legend = quiet(lang.L("Legend"), nil, func() { p.ShowLegend(!p.LegendShown()) })
	layers := quiet(lang.L("Layers"), theme.MenuDropDownIcon(), nil)
	layers.IconPlacement = widget.ButtonIconTrailingText
	layers.OnTapped = func() { p.chooseLayers(layers) }
	t.body = container.NewHBox(title, layout.NewSpacer(),
		quiet("", theme.ZoomOutIcon(), p.ZoomOut), t.percent, quiet("", theme.ZoomInIcon(), p.ZoomIn),
		quiet(lang.L("Fit"), nil, p.Fit), t.measure, layers, t.legend)
	t.ExtendBaseWidget(t)
	return t
}

// quiet returns a button that does not shout.
func quiet(text string, icon fyne.Resource, tapped func()) *widget.Button {
	button := widget.NewButtonWithIcon(text, icon, tapped)
	button.Importance = widget.LowImportance
	return button
}

// CreateRenderer is part of fyne.Widget.
func (t *toolbar) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(t.body) }

// show brings the buttons up to date.
func (t *toolbar) show() {
	if text := fmt.Sprintf("%s %%", percentText(t.pane.Percent())); text != t.percent.Text {
		t.percent.SetText(text)
	}
	setPressed(t.measure, t.pane.Measuring())
	setPressed(t.legend, t.pane.LegendShown())
}

// percentText writes a zoom with two or three digits.
func percentText(percent float64) string {
	if percent < 10 {
		return geometry.FormatNumber(percent, 1)
	}
	return geometry.FormatNumber(percent, 0)
}

// setPressed shows a button as pressed in or not.
func setPressed(button *widget.Button, in bool) {
	importance := widget.LowImportance
	if in {
		importance = widget.MediumImportance
	}
	if button.Importance != importance {
		button.Importance = importance
		button.Refresh()
	}
}
