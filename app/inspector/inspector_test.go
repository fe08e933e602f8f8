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
	later.runOne(t)
	if inkInGlue(doc.State()) {
		t.Error("there is no ink yet")
	}

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

// A bag without artwork is looked at as well: somewhat smaller it may lie more often on
// the sheet. The figures are those of the example of advice.Note.
func TestNearMissIsFoundWithoutArtwork(t *testing.T) {
	doc := document.New()
	later := make(desk, 8)
	i := inspector.New(doc, later.later)
	defer i.Close()
	later.runOne(t)

	spec := bag.OfSize(210, 100, 320)
	spec.Sheet.Width, spec.Sheet.Height = 900, 640
	doc.Set(spec)
	noted := func() string {
		for _, f := range doc.State().Snapshot.Findings {
			if f.Code == "near-miss" {
				return f.Message.String()
			}
		}
		return ""
	}
	if got := noted(); got != "" {
		t.Errorf("%q is found at once, where a drag would wait for it", got)
	}
	later.runOne(t)
	if got, want := noted(), "the sheet is 1-up; 2-up if the face width were 201.7 mm instead of 210 mm"; got != want {
		t.Errorf("found %q, want %q", got, want)
	}
	later.idle(t)
}
