package blankpane

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/toolrow"
	"gussetwright/app/words"
)

// toolbar is the row of buttons above the blank.
type toolbar struct {
	widget.BaseWidget
	pane    *Pane
	percent *widget.Button
	measure *toolrow.Button
	legend  *widget.Button
	body    *fyne.Container
}

func newToolbar(p *Pane) *toolbar {
	t := &toolbar{pane: p}
	title := widget.NewLabel(lang.L("Blank"))
	title.TextStyle.Bold = true
	t.percent = toolrow.Quiet("100 %", nil, p.TrueSize)
	t.measure = toolrow.Named(lang.L("Measure"), appearance.MeasureIcon(), func() { p.Measure(!p.Measuring()) })
	t.legend = toolrow.Quiet(lang.L("Legend"), nil, func() { p.ShowLegend(!p.LegendShown()) })
	layers := toolrow.Named(lang.L("Layers"), appearance.LayersIcon(), nil)
	layers.OnTapped = func() { p.chooseLayers(toolrow.Seen(t.body, layers)) }
	out := toolrow.Sign(lang.L("Zoom out"), appearance.ZoomOutIcon(), p.ZoomOut)
	in := toolrow.Sign(lang.L("Zoom in"), appearance.ZoomInIcon(), p.ZoomIn)
	fit := toolrow.Sign(lang.L("Show the whole blank"), appearance.FitIcon(), p.Fit)
	t.body = toolrow.New(title,
		[]fyne.CanvasObject{out, t.percent, in, fit, t.measure, layers, t.legend},
		[]fyne.CanvasObject{title}, []fyne.CanvasObject{out, in}, []fyne.CanvasObject{t.percent}, []fyne.CanvasObject{t.legend},
		[]fyne.CanvasObject{fit}, []fyne.CanvasObject{layers})
	t.ExtendBaseWidget(t)
	return t
}

// CreateRenderer is part of fyne.Widget.
func (t *toolbar) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(t.body) }

// show brings the buttons up to date.
func (t *toolbar) show() {
	if text := fmt.Sprintf("%s %%", percentText(t.pane.Percent())); text != t.percent.Text {
		t.percent.SetText(text)
	}
	setPressed(&t.measure.Button, t.pane.Measuring())
	setPressed(t.legend, t.pane.LegendShown())
}

// percentText writes a zoom with two or three digits.
func percentText(percent float64) string {
	if percent < 10 {
		return words.Number(percent, 1)
	}
	return words.Number(percent, 0)
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
