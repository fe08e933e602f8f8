package intake

import (
	"slices"
	"strings"
	"testing"

	"gussetwright/app/project"
	"gussetwright/geometry/bag"
)

// Files that were dropped on no panel fill one face after the other, each in one step, and
// only what finds no free face lies on top of others, which is said.
func TestFilesGoOnFreeFaces(t *testing.T) {
	flat, two := bag.OfSize(240, 0, 360), bag.OfSize(420, 120, 360)
	two.Body.Seams = bag.SeamsTwo
	for _, test := range []struct {
		name  string
		spec  bag.Spec
		there []string // places that have artwork
		files int
		want  []string
		told  int
	}{
		{"bare bag", bag.Default(), nil, 5, []string{"front", "back", "gusset-left", "gusset-right", "front"}, 1},
		{"front taken", bag.Default(), []string{"front"}, 1, []string{"back"}, 0},
		{"back taken", bag.Default(), []string{"back"}, 2, []string{"front", "gusset-left"}, 0},
		{"faces alike", bag.Default(), []string{bag.OnFaces}, 1, []string{"gusset-left"}, 0},
		{"gussets alike", bag.Default(), []string{bag.OnGussets}, 2, []string{"front", "back"}, 0},
		{"on turn-in and base", bag.Default(), []string{"front-turn-in", "back-base"}, 2, []string{"front", "back"}, 0},
		{"whole blank", bag.Default(), []string{bag.OnBlank}, 1, []string{"front"}, 1},
		{"front piece", two, []string{bag.OnFrontPiece}, 1, []string{"back"}, 0},
		{"no gusset", flat, []string{bag.OnFaces}, 1, []string{"front"}, 1},
	} {
		b := newBench(t)
		for _, on := range test.there {
			test.spec.Artwork = append(test.spec.Artwork, bag.NewArtwork("there.png", on))
		}
		b.doc.Load(project.Project{Spec: test.spec})
		path := b.write("tea.png", picture(t, 40, 60))
		b.Add("", slices.Repeat([]string{path}, test.files)...)
		b.idle()
		var got []string
		for _, piece := range b.doc.State().Spec.Artwork[len(test.there):] {
			got = append(got, piece.On)
		}
		if !slices.Equal(got, test.want) || b.undoSteps() != test.files {
			t.Errorf("%s: placed on %q in %d steps, want %q", test.name, got, b.undoSteps(), test.want)
		}
		if len(b.told) != test.told || test.told > 0 && !strings.Contains(b.told[0], "tea.png lies on top") {
			t.Errorf("%s: told %q", test.name, b.told)
		}
	}
}

// A drawing of the whole blank goes there, and says so where it hides what was there. What
// is dropped on a panel stays there without a word.
func TestWhatHidesOthers(t *testing.T) {
	for name, test := range map[string]struct {
		there []bag.Artwork
		told  int
	}{"bare": {nil, 0}, "over a gusset": {[]bag.Artwork{bag.NewArtwork("there.png", "gusset-left")}, 1}} {
		b := newBench(t)
		spec := bag.Default()
		spec.Artwork = test.there
		b.doc.Load(project.Project{Spec: spec})
		b.Add("", b.write("blank.svg", svg(699.5, 480)))
		b.idle()
		if got := b.doc.State().Spec.Artwork; got[len(got)-1].On != bag.OnBlank || len(b.told) != test.told {
			t.Errorf("%s: artwork %+v, told %q", name, got, b.told)
		}
	}
	b := newBench(t)
	path := b.write("tea.png", picture(t, 40, 60))
	b.Add("back", path, path)
	b.idle()
	if got := b.doc.State().Spec.Artwork; len(got) != 2 || got[1].On != "back" || len(b.told) != 0 {
		t.Errorf("dropped on the back: %+v, told %q", got, b.told)
	}
}
