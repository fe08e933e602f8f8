package blankpane

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/settings"
	"gussetwright/render/flat"
	"gussetwright/render/scene"
)

// Layer is a kind of line that can be switched off.
type Layer struct {
	Role  scene.Role
	Name  string // in the language of the user
	Shown bool
}

// layerRoles are the roles that can be switched on and off, the topmost first.
func layerRoles() []scene.Role {
	return []scene.Role{
		scene.Cutting, scene.Creasing, scene.ReverseCreasing, scene.Punching, scene.Gluing,
		scene.Bleed, scene.ContentArea, scene.Dimensions, scene.Legend, scene.Artwork,
	}
}

// layersOf returns the layers that the settings do not hide.
func layersOf(set *settings.Settings) flat.Layers {
	layers := flat.AllLayers()
	hidden := set.HiddenLayers()
	for _, role := range layerRoles() {
		layers = layers.With(role, !slices.Contains(hidden, role.String()))
	}
	return layers
}

// Layers returns what can be switched on and off, the topmost first.
func (p *Pane) Layers() []Layer {
	var layers []Layer
	for _, role := range layerRoles() {
		layers = append(layers, Layer{role, roleWord(role), p.layers.Has(role)})
	}
	return layers
}

// SetLayer shows or hides the lines of a role, and remembers it.
func (p *Pane) SetLayer(role scene.Role, shown bool) {
	if p.layers.Has(role) == shown {
		return
	}
	p.layers = p.layers.With(role, shown)
	p.rememberLayers()
	p.strip.show(p.layers, p.laid())
	p.Refresh()
	p.draw()
}

func (p *Pane) rememberLayers() {
	var hidden []string
	for _, role := range layerRoles() {
		if !p.layers.Has(role) {
			hidden = append(hidden, role.String())
		}
	}
	p.set.SetHiddenLayers(hidden)
}

// ShowLegend shows or hides the legend below the blank, and remembers it.
func (p *Pane) ShowLegend(shown bool) {
	p.set.SetLegendShown(shown)
	p.strip.off = !shown
	p.strip.Refresh()
	p.Refresh()
	p.bar.show()
}

// LegendShown tells whether the legend is shown.
func (p *Pane) LegendShown() bool { return !p.strip.off }

// chooseLayers opens the list of layers below a button.
func (p *Pane) chooseLayers(below fyne.CanvasObject) {
	driver := fyne.CurrentApp().Driver()
	on := driver.CanvasForObject(below)
	if on == nil {
		return
	}
	list := container.NewVBox()
	for _, layer := range p.Layers() {
		check := widget.NewCheck(layer.Name, nil)
		check.Checked = layer.Shown
		check.OnChanged = func(shown bool) { p.SetLayer(layer.Role, shown) }
		list.Add(container.NewBorder(nil, nil, check, container.NewCenter(newSample(layer.Role, paperOf(p.laid())))))
	}
	closing := widget.NewButton(lang.L("Close"), nil)
	list.Add(closing)
	popup := widget.NewPopUp(container.NewPadded(list), on)
	closing.OnTapped = popup.Hide
	at := driver.AbsolutePositionForObject(below)
	popup.ShowAtPosition(at.AddXY(0, below.Size().Height))
	on.Focus(list.Objects[0].(*fyne.Container).Objects[0].(*widget.Check))
}
