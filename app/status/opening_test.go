package status_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/app/settings"
	"gussetwright/app/status"
	"gussetwright/geometry/bag"
	"gussetwright/render/artwork"
)

// slow is a gallery that goes on opening until it is done.
type slow struct{ done bool }

func (s *slow) Art(name string, _ []byte, _ int) (*artwork.Art, error) {
	if !s.done {
		return nil, nil
	}
	return &artwork.Art{Name: name, Pages: 1}, nil
}

func TestLineSaysWhatIsBeingOpened(t *testing.T) {
	app := test.NewTempApp(t)
	doc := document.New()
	line := status.New(doc, settings.New(app.Preferences()))
	says := func(want string) {
		t.Helper()
		if got, _, _ := strings.Cut(line.Text, "  ·  "); got != want {
			t.Errorf("the line begins with %q, want %q", got, want)
		}
	}
	line.Reading([]string{"front.jpg"})
	says("Opening front.jpg…")
	line.Reading([]string{"front.jpg", "back.jpg"})
	says("Opening front.jpg and 1 more…")
	line.Reading(nil)
	says("Blank 699.5 × 480 mm")
	pictures := &slow{}
	doc.ShowArt(pictures)
	spec := bag.Default()
	spec.Artwork = []bag.Artwork{bag.NewArtwork("leaf.svg", "front"), bag.NewArtwork("leaf.svg", "back")}
	doc.Load(project.Project{Spec: spec, Files: map[string][]byte{"leaf.svg": nil}})
	says("Opening leaf.svg…")
	pictures.done = true
	doc.Renew()
	says("Blank 699.5 × 480 mm")
}
