package inspector_test

import (
	"bytes"
	"context"
	"image"
	"image/png"
	"slices"
	"testing"
	"time"

	"gussetwright/app/document"
	"gussetwright/app/inspector"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/check"
	"gussetwright/render/artwork"
)

// open is a gallery that opens at once.
type open struct{ art *artwork.Art }

func (o *open) Art(name string, data []byte, page int) (*artwork.Art, error) {
	if o.art == nil {
		o.art, _ = artwork.Open(context.Background(), name, data, page)
	}
	return o.art, nil
}

// desk runs what is handed to the goroutine of the window when it is told to.
type desk chan func()

func (d desk) later(do func()) { d <- do }

func (d desk) runOne(t *testing.T) {
	t.Helper()
	select {
	case do := <-d:
		do()
	case <-time.After(time.Minute):
		t.Fatal("nothing came")
	}
}

func (d desk) idle(t *testing.T) {
	t.Helper()
	select {
	case <-d:
		t.Error("something more came")
	case <-time.After(100 * time.Millisecond):
	}
}

// grey returns a picture that inks everything it lies on.
func grey(t *testing.T) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := png.Encode(&out, image.NewGray(image.Rect(0, 0, 70, 48))); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func inkInGlue(state document.State) bool {
	return slices.ContainsFunc(state.Snapshot.Findings, func(f check.Finding) bool { return f.Code == "ink-in-glue" })
}

// Findings of the pixels come after the bag has come to rest, once, and stay with the
// bag that they are about.
func TestFindingsComeOnceTheBagRests(t *testing.T) {
	doc := document.New()
	doc.ShowArt(&open{})
	later := make(desk, 8)
	i := inspector.New(doc, later.later)
	defer i.Close()
	later.idle(t) // without artwork there is nothing to look at

	spec := doc.State().Spec
	spec.Artwork = []bag.Artwork{bag.NewArtwork(doc.PutFile("grey.png", grey(t)), bag.OnBlank)}
	doc.Set(spec)
	if inkInGlue(doc.State()) {
		t.Error("found before anybody looked")
	}
	later.runOne(t)
	if !inkInGlue(doc.State()) {
		t.Error("ink in the glue area is not found")
	}
	later.idle(t) // the findings themselves are no reason to look again

	spec.Body.Width += 10
	doc.Drag(spec)
	later.idle(t)
	doc.Drop()
	later.runOne(t)
	if !inkInGlue(doc.State()) {
		t.Error("not found after the drag")
	}
}
