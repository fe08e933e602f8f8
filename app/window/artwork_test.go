package window

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/app/session"
	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// queued is a window whose work for later waits until the test lets it be done.
type queued struct {
	*Window
	t     *testing.T
	later chan func()
}

func openedQueued(t *testing.T, path string) *queued {
	t.Helper()
	app := newApp(t)
	set, doc := settings.New(app.Preferences()), document.New()
	appearance.Wear(app, set)
	q := &queued{t: t, later: make(chan func(), 1000)}
	q.Window = newWindow(app, set, doc, session.New(doc, session.Options{Recent: set, Recovery: t.TempDir()}), func(do func()) { q.later <- do })
	q.Show(path)
	q.window.Resize(fyne.NewSize(1440, 900))
	t.Cleanup(func() {
		q.keeper.timer.Stop()
		q.closeArtwork()
		q.blank.Close()
		q.folded.Close()
	})
	return q
}

// plainFile returns a project without artwork.
func plainFile(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "plain.gusset")
	if err := project.Save(path, project.Project{Spec: bag.Default()}); err != nil {
		t.Fatal(err)
	}
	return path
}

// until does what waits until something has come about.
func (q *queued) until(what string, reached func() bool) {
	q.t.Helper()
	end := time.After(time.Minute)
	for !reached() {
		select {
		case do := <-q.later:
			do()
		case <-end:
			q.t.Fatalf("%s never came about; the bar says %q", what, q.bar.Text())
		}
	}
}

func (q *queued) placed(count int) func() bool {
	return func() bool { return len(q.doc.State().Spec.Artwork) == count }
}

// svgFile writes a drawing of a size in mm.
func svgFile(t *testing.T, name string, width, height float64) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	text := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" width="%gmm" height="%gmm" viewBox="0 0 9 9"><rect width="9" height="5" fill="#963"/></svg>`, width, height)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

func pngFile(t *testing.T, name string) string {
	t.Helper()
	picture := image.NewRGBA(image.Rect(0, 0, 60, 90))
	for x := range 60 {
		picture.SetRGBA(x, x, color.RGBA{200, 80, 40, 255})
	}
	var file bytes.Buffer
	if err := png.Encode(&file, picture); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, file.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// seen returns where a point of the blank is seen in the window.
func (q *queued) seen(x, y float64) fyne.Position {
	corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(q.blank)
	return corner.Add(q.blank.PositionOf(0, geometry.Vec2{X: x, Y: y}))
}

func uris(paths ...string) []fyne.URI {
	var all []fyne.URI
	for _, path := range paths {
		all = append(all, storage.NewFileURI(path))
	}
	return all
}

func TestDroppedArtworkGoesOnThePanelUnderThePointer(t *testing.T) {
	q := openedQueued(t, plainFile(t))
	q.goToStep(stepBag)
	q.window.Canvas().Capture() // lays everything out
	back, _ := q.doc.State().Snapshot.Blank.Pieces[0].Panel("back")
	at := back.Box.Center()
	q.dropped(q.seen(at.X, at.Y), uris(svgFile(t, "leaf.svg", 60, 40), pngFile(t, "tea.png")))
	if !strings.HasPrefix(q.foot.Text, "Opening leaf.svg and 1 more…") || q.steps.Selected() != stepArtwork-1 {
		t.Errorf("the status says %q, step %d", q.foot.Text, q.steps.Selected())
	}
	q.until("the artwork", q.placed(2))
	got := q.doc.State().Spec.Artwork
	if got[0] != bag.NewArtwork("leaf.svg", "back") || got[1] != bag.NewArtwork("tea.png", "back") {
		t.Errorf("artwork %+v", got)
	}
	if q.look.Artwork() != 1 || strings.Contains(q.foot.Text, "Opening") {
		t.Errorf("chosen %d, the status says %q", q.look.Artwork(), q.foot.Text)
	}
	if want := "Undo: place tea.png on Back"; q.menu.undo.Label != want {
		t.Errorf("the menu says %q, want %q", q.menu.undo.Label, want)
	}
	q.undo()
	q.undo()
	if len(q.doc.State().Spec.Artwork) != 0 || q.doc.State().Undo.Label != "" {
		t.Error("adding two files is not two steps")
	}
	q.dropped(fyne.NewPos(2, 2), uris(svgFile(t, "mark.svg", 60, 40)))
	q.until("the artwork", q.placed(1))
	if got := q.doc.State().Spec.Artwork[0]; got.On != "front" {
		t.Errorf("beside the blank it goes on %q", got.On)
	}
}

// What was dropped on no panel, or chosen in a dialog, takes one face after the other.
func TestChosenArtworkHidesNoOther(t *testing.T) {
	q := openedQueued(t, plainFile(t))
	q.dropped(fyne.NewPos(2, 2), uris(pngFile(t, "first.png")))
	q.until("the artwork", q.placed(1))
	q.intake.Add("", pngFile(t, "second.png"))
	q.until("the artwork", q.placed(2))
	q.dropped(fyne.NewPos(2, 2), uris(pngFile(t, "third.png")))
	q.until("the artwork", q.placed(3))
	for i, want := range []string{"front", "back", "gusset-left"} {
		if got := q.doc.State().Spec.Artwork[i]; got.On != want {
			t.Errorf("%s goes on %s, want %s", got.File, got.On, want)
		}
	}
	if q.bar.Visible() {
		t.Errorf("the bar says %q", q.bar.Text())
	}
}

func TestArtworkNeedsABag(t *testing.T) {
	q := openedQueued(t, "")
	q.dropped(fyne.NewPos(300, 300), uris(svgFile(t, "leaf.svg", 60, 40)))
	if !strings.HasPrefix(q.bar.Text(), "Artwork goes on a bag.") || q.atDesk() {
		t.Errorf("the bar says %q", q.bar.Text())
	}
	q.addArtwork()
	if q.atDesk() {
		t.Error("the desk is shown without a bag")
	}
}

func TestChangedArtworkIsTold(t *testing.T) {
	q := openedQueued(t, plainFile(t))
	path := svgFile(t, "leaf.svg", 60, 40)
	q.dropped(fyne.Position{}, uris(path))
	q.until("the artwork", q.placed(1))
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, bytes.Replace(data, []byte("60mm"), []byte("75mm"), 1), 0o644); err != nil {
		t.Fatal(err)
	}
	q.until("a notice", func() bool { return q.bar.Text() != "" })
	if want := "leaf.svg was changed and read again. Its size is 75 × 40 mm now; it was 60 × 40 mm."; q.bar.Text() != want {
		t.Errorf("the bar says %q, want %q", q.bar.Text(), want)
	}
}

// The frame is shown while the step is, and only then.
func TestFrameBelongsToTheStep(t *testing.T) {
	q := openedQueued(t, plainFile(t))
	q.dropped(fyne.Position{}, uris(pngFile(t, "tea.png")))
	q.until("the artwork", q.placed(1))
	if q.look.Artwork() != 0 {
		t.Errorf("chosen %d", q.look.Artwork())
	}
	q.goToStep(stepBag)
	if q.look.Artwork() >= 0 {
		t.Error("the frame stays in another step")
	}
	q.goToStep(stepArtwork)
	if q.look.Artwork() != 0 {
		t.Errorf("back in the step %d is chosen", q.look.Artwork())
	}
}

// What cannot be opened does not get onto the bag.
func TestUnreadableArtworkIsAlarmed(t *testing.T) {
	q := openedQueued(t, plainFile(t))
	path := filepath.Join(t.TempDir(), "broken.svg")
	if err := os.WriteFile(path, []byte("<svg"), 0o644); err != nil {
		t.Fatal(err)
	}
	q.dropped(fyne.Position{}, uris(path))
	q.until("an alarm", func() bool { return strings.Contains(q.bar.Text(), "broken.svg") })
	if len(q.doc.State().Spec.Artwork) != 0 {
		t.Error("what cannot be opened is on the bag")
	}
}

// What only the pixels tell joins the findings once the artwork is opened and the bag
// rests.
func TestPixelsAreLookedAt(t *testing.T) {
	q := openedQueued(t, plainFile(t))
	var grey bytes.Buffer
	if err := png.Encode(&grey, image.NewGray(image.Rect(0, 0, 70, 48))); err != nil {
		t.Fatal(err)
	}
	spec := q.doc.State().Spec
	spec.Artwork = []bag.Artwork{bag.NewArtwork(q.doc.PutFile("grey.png", grey.Bytes()), bag.OnBlank)}
	q.doc.Set(spec)
	q.until("the finding of ink in a glue area", func() bool {
		for _, f := range q.doc.State().Snapshot.Findings {
			if f.Code == "ink-in-glue" {
				return true
			}
		}
		return false
	})
}

// Artwork that lies beside the project which was opened is watched as well.
func TestArtworkBesideTheProjectIsReadAgain(t *testing.T) {
	artwork := svgFile(t, "leaf.svg", 50, 50)
	held, err := os.ReadFile(artwork)
	if err != nil {
		t.Fatal(err)
	}
	spec := bag.Default()
	spec.Artwork = []bag.Artwork{bag.NewArtwork("leaf.svg", "front")}
	path := filepath.Join(filepath.Dir(artwork), "tea.gusset")
	if err := project.Save(path, project.Project{Spec: spec, Files: map[string][]byte{"leaf.svg": held}}); err != nil {
		t.Fatal(err)
	}
	q := openedQueued(t, path)
	q.until("watching", func() bool { return q.intake.Watches("leaf.svg") })
	if err := os.WriteFile(artwork, bytes.Replace(held, []byte("50mm"), []byte("60mm"), 1), 0o644); err != nil {
		t.Fatal(err)
	}
	q.until("the notice", func() bool { return strings.Contains(q.bar.Text(), "leaf.svg was changed and read again.") })
}
