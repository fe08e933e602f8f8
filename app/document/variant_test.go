package document_test

import (
	"slices"
	"testing"

	"gussetwright/app/document"
	"gussetwright/geometry/bag"
)

// Taking a variant is one step with the name of the variant, even out of a drag.
func TestTakingAVariant(t *testing.T) {
	d := document.New()
	d.Drag(width(d, 300))
	d.SetAs(width(d, 250), document.Taking("B"))
	state := d.State()
	if state.Dragging || state.Spec.Body.Width != 250 || state.Undo != document.Taking("B") {
		t.Errorf("after taking: dragging %v, %g mm, undo %+v", state.Dragging, state.Spec.Body.Width, state.Undo)
	}
	d.SetAs(width(d, 250), document.Taking("C"))
	if got := d.State().Undo; got != document.Taking("B") {
		t.Errorf("taking what the bag is already made the step %+v", got)
	}
	if d.Undo(); d.State().Spec.Body.Width != 240 {
		t.Errorf("undone: %g mm, want 240", d.State().Spec.Body.Width)
	}
	if !slices.Contains(document.Labels(), document.Taking("B").Label) {
		t.Error("the name of the step is not among the labels to translate")
	}
}

// Another bag of the document hangs the same artwork and changes nothing.
func TestDerivingAnotherBag(t *testing.T) {
	d := document.New()
	d.PutFile("front.png", []byte("no picture"))
	spec := d.State().Spec
	spec.Artwork = []bag.Artwork{bag.NewArtwork("front.png", "front"), bag.NewArtwork("gone.png", "back")}
	d.Set(spec)
	d.ShowArt(&shelf{})
	told := 0
	d.Listen(func(document.State) { told++ })
	spec.Body.Height = 400
	other, err := d.Derive(spec)
	if err != nil {
		t.Fatal(err)
	}
	if len(other.Hung) != 2 || other.Hung[0].Err != nil || other.Hung[1].Err == nil {
		t.Errorf("the artwork hangs as %+v", other.Hung)
	}
	if other.Spec.Body.Height != 400 || d.State().Spec.Body.Height != 360 || told != 0 {
		t.Error("the document changed with the other bag")
	}
	spec.Body.Width = -1
	if _, err := d.Derive(spec); err == nil {
		t.Error("a bag that cannot be drawn was derived")
	}
}
