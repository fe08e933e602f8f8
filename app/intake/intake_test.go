package intake

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/geometry/bag"
)

func TestAddPutsFilesOnTheBag(t *testing.T) {
	b := newBench(t)
	data := picture(t, 40, 60)
	b.Add("front", b.write("tea.png", data), b.write("leaf.svg", svg(50, 50)))
	if !slices.Equal(b.busy, []string{"tea.png", "leaf.svg"}) {
		t.Errorf("busy with %q", b.busy)
	}
	b.idle()
	want := []bag.Artwork{bag.NewArtwork("tea.png", "front"), bag.NewArtwork("leaf.svg", "front")}
	if got := b.doc.State().Spec.Artwork; !slices.Equal(got, want) {
		t.Errorf("artwork %+v, want %+v", got, want)
	}
	if kept, _ := b.doc.File("tea.png"); !bytes.Equal(kept, data) {
		t.Error("the file is not in the project as it was")
	}
	if undo := b.doc.State().Undo; undo != (document.Change{Label: "place %s on %s", File: "leaf.svg", Place: "front"}) || b.undoSteps() != 2 {
		t.Errorf("%d steps, the last %+v", b.undoSteps(), undo)
	}
	if !slices.Equal(b.placed, []int{0, 1}) || len(b.busy) != 0 || len(b.alarms) != 0 {
		t.Errorf("placed %v, busy with %q, alarms %v", b.placed, b.busy, b.alarms)
	}
}

// Two files of one name are both kept; one that is added twice is kept once.
func TestFilesOfOneName(t *testing.T) {
	b := newBench(t)
	first := b.write("tea.png", picture(t, 40, 60))
	if err := os.Mkdir(filepath.Join(b.folder, "other"), 0o755); err != nil {
		t.Fatal(err)
	}
	second := b.write("other/tea.png", picture(t, 41, 60))
	b.Add("front", first, second, first)
	b.idle()
	names := func() (names []string) {
		for _, piece := range b.doc.State().Spec.Artwork {
			names = append(names, piece.File)
		}
		return names
	}
	if want := []string{"tea.png", "tea-2.png", "tea.png"}; !slices.Equal(names(), want) {
		t.Errorf("files %q, want %q", names(), want)
	}
}

// The blank of the default bag is 699.5 × 480 mm with a bleed of 3 mm.
func TestDrawingOfTheSizeOfTheBlank(t *testing.T) {
	for _, test := range []struct {
		name          string
		width, height float64
		on            string
		fit           bag.Fit
	}{
		{"trim.svg", 699.5, 480, "blank", bag.FitExact},
		{"rounded.svg", 700, 479.2, "blank", bag.FitExact},
		{"bleed.svg", 705.5, 486, "blank", bag.FitExact},
		{"wide.svg", 701, 480, "back", bag.FitCover},
		{"between.svg", 702.5, 483, "back", bag.FitCover},
		{"upright.svg", 480, 699.5, "back", bag.FitCover},
	} {
		b := newBench(t)
		b.Add("back", b.write(test.name, svg(test.width, test.height)))
		b.idle()
		got := b.doc.State().Spec.Artwork
		if len(got) != 1 || got[0].On != test.on || got[0].Fit != test.fit {
			t.Errorf("%s: %+v, want on %s, %s", test.name, got, test.on, test.fit)
		}
	}
}

// A drawing of one of two pieces goes on the piece with the panel it was dropped on.
func TestDrawingOfTheSizeOfAPiece(t *testing.T) {
	for panel, want := range map[string]string{"front": "front-piece", "back": "back-piece", "gusset-left": "back-piece"} {
		b := newBench(t)
		spec := bag.OfSize(420, 120, 360)
		spec.Body.Seams = bag.SeamsTwo
		b.doc.Load(project.Project{Spec: spec})
		piece := b.doc.State().Snapshot.Blank.Pieces[0]
		b.Add(panel, b.write("piece.svg", svg(piece.Width, piece.Height)))
		b.idle()
		if got := b.doc.State().Spec.Artwork; len(got) != 1 || got[0].On != want {
			t.Errorf("dropped on %s: %+v, want on %s", panel, got, want)
		}
	}
}

func TestWhatCannotBeTaken(t *testing.T) {
	b := newBench(t)
	b.Add("front", filepath.Join(b.folder, "gone.png"), b.write("broken.png", picture(t, 9, 9)[:40]), b.folder)
	b.Add("front", b.write("fine.png", picture(t, 40, 60)))
	b.idle()
	if got := b.doc.State().Spec.Artwork; len(got) != 1 || got[0].File != "fine.png" {
		t.Errorf("artwork %+v", got)
	}
	if len(b.alarms) != 3 {
		t.Fatalf("alarms %v", b.alarms)
	}
	for at, want := range []string{"gone.png", "broken.png", "this is a folder"} {
		if !strings.Contains(b.alarms[at].Error(), want) {
			t.Errorf("alarm %v does not say %q", b.alarms[at], want)
		}
	}
	if _, found := b.doc.File("broken.png"); found {
		t.Error("what cannot be opened is in the project")
	}
}

func TestTooManyPieces(t *testing.T) {
	b := newBench(t)
	spec := b.doc.State().Spec
	spec.Artwork = slices.Repeat([]bag.Artwork{bag.NewArtwork("tea.png", "front")}, 64)
	b.doc.Set(spec)
	b.Add("front", b.write("more.png", picture(t, 40, 60)))
	b.idle()
	if len(b.doc.State().Spec.Artwork) != 64 || len(b.alarms) != 1 || !strings.Contains(b.alarms[0].Error(), "more than 64") {
		t.Errorf("%d pieces, alarms %v", len(b.doc.State().Spec.Artwork), b.alarms)
	}
}

func TestReplace(t *testing.T) {
	b := newBench(t)
	b.Add("back", b.write("tea.png", picture(t, 40, 60)))
	b.idle()
	spec := b.doc.State().Spec
	spec.Artwork = slices.Clone(spec.Artwork)
	spec.Artwork[0].X, spec.Artwork[0].Page = 7, 2
	b.doc.Set(spec)
	b.Replace(0, b.write("coffee.png", picture(t, 50, 60)))
	b.Replace(5, b.write("nowhere.png", picture(t, 51, 60)))
	b.idle()
	want := bag.NewArtwork("coffee.png", "back")
	want.X = 7
	if got := b.doc.State().Spec.Artwork; len(got) != 1 || got[0] != want {
		t.Errorf("artwork %+v, want %+v", got, want)
	}
	if undo := b.doc.State().Undo; undo != (document.Change{Label: "replace %s", File: "tea.png"}) {
		t.Errorf("undo %+v", undo)
	}
}

// What arrives during a drag must not become part of its step.
func TestArrivalWaitsForTheEndOfADrag(t *testing.T) {
	b := newBench(t)
	dragged := b.doc.State().Spec
	dragged.Body.Width = 260
	b.doc.Drag(dragged)
	b.Add("front", b.write("tea.png", picture(t, 40, 60)))
	b.until("reading", func() bool { return b.queue[0].data != nil })
	b.until("opening", func() bool {
		art, _ := b.gallery.Art("tea.png", b.queue[0].data, 1)
		return art != nil
	})
	if state := b.doc.State(); len(state.Spec.Artwork) != 0 || !state.Dragging {
		t.Fatalf("the drag ended: %+v", state.Spec.Artwork)
	}
	b.doc.Drop()
	b.idle()
	if state := b.doc.State(); len(state.Spec.Artwork) != 1 || state.Spec.Body.Width != 260 || b.undoSteps() != 2 {
		t.Errorf("%d pieces, %d steps", len(state.Spec.Artwork), b.undoSteps())
	}
}

// What was on its way for another project does not arrive in this one.
func TestOtherProject(t *testing.T) {
	b := newBench(t)
	b.Add("front", b.write("tea.png", picture(t, 40, 60)))
	b.doc.Load(project.Project{Spec: bag.OfSize(200, 80, 300)})
	b.Add("front", b.write("leaf.png", picture(t, 40, 60)))
	b.idle()
	if got := b.doc.State().Spec.Artwork; len(got) != 1 || got[0].File != "leaf.png" {
		t.Errorf("artwork %+v", got)
	}
	if len(b.watched) != 1 {
		t.Errorf("watched are %v", b.watched)
	}
}

func TestClosedIntakeTakesNothing(t *testing.T) {
	b := newBench(t)
	b.Add("front", b.write("tea.png", picture(t, 40, 60)))
	b.Close()
	b.Add("front", b.write("leaf.png", picture(t, 40, 60)))
	(<-b.later)() // what was read
	if len(b.doc.State().Spec.Artwork) != 0 || len(b.queue) != 0 {
		t.Error("a closed intake goes on")
	}
}
