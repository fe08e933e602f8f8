package blankpane

import (
	"testing"

	"gussetwright/geometry/bag"
	"gussetwright/render/flat"
	"gussetwright/render/scene"
)

// The layers that were hidden last, and the legend, are hidden in the next window.
func TestLayersAndLegendAreRemembered(t *testing.T) {
	b := newBench(t, bag.Default(), 600, 500)
	b.SetLayer(scene.Gluing, false)
	b.SetLayer(scene.Dimensions, false)
	b.SetLayer(scene.Gluing, true)
	b.ShowLegend(false)

	next := New(b.doc, b.look, b.set)
	defer next.Close()
	for _, layer := range next.Layers() {
		if layer.Shown != (layer.Role != scene.Dimensions) {
			t.Errorf("layer %s: shown is %v", layer.Role, layer.Shown)
		}
	}
	if next.LegendShown() {
		t.Error("the legend that was hidden is shown again")
	}
}

func TestUnknownLayersAreLeftAlone(t *testing.T) {
	b := newBench(t, bag.Default(), 600, 500)
	b.set.SetHiddenLayers([]string{"Foil", "", "bleed", "Bleed", "Bleed"})
	next := New(b.doc, b.look, b.set)
	defer next.Close()
	if want := flat.AllLayers().With(scene.Bleed, false); next.layers != want {
		t.Errorf("layers %b, want %b: all but Bleed", next.layers, want)
	}
}
