package lesson

import (
	"bytes"
	"image"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/app/settings"
	"gussetwright/assets"
	"gussetwright/geometry/bag"
)

// bench is a view in a window of its own, drawn at once rather than soon, with a clock
// that goes when it is told to.
type bench struct {
	*View
	window  fyne.Window
	doc     *document.Document
	set     *settings.Settings
	orders  map[*figure]int // since the last look
	left    int
	full    int
	written []string
	opened  []string
	time    time.Time
	beat    func() // nil while the clock stands
}

// newBench returns an open view of the given size on a bag.
func newBench(t testing.TB, spec bag.Spec, width, height float32, adjust ...func(*settings.Settings)) *bench {
	app := test.NewTempApp(t)
	b := &bench{doc: document.New(), set: settings.New(app.Preferences()), orders: map[*figure]int{}}
	b.set.SetAppearance(settings.Light)
	for _, change := range adjust {
		change(b.set)
	}
	appearance.Wear(app, b.set)
	b.doc.Load(project.Project{Spec: spec})
	b.View = New(b.doc, b.set, Around{
		Leave:      func() { b.left++ },
		FullScreen: func() { b.full++ },
		Write:      func(kind string) { b.written = append(b.written, kind) },
		Open:       func(path string) { b.opened = append(b.opened, path) },
	})
	b.clock.now = func() time.Time { return b.time }
	b.clock.start = func(do func()) (stop func()) {
		b.beat = do
		return func() { b.beat = nil }
	}
	for _, f := range []*figure{b.flat.figure, b.bag.figure} {
		f.request = func(o order) {
			b.orders[f]++
			f.show(f.drawn(o))
		}
	}
	b.window = test.NewTempWindow(t, b.View)
	b.window.SetPadded(false)
	b.window.Resize(fyne.NewSize(width, height))
	b.Open()
	b.window.Canvas().Focus(b.FirstFocus())
	t.Cleanup(b.Close)
	return b
}

// blind leaves the pictures out, for tests that look at none.
func (b *bench) blind() *bench {
	for _, f := range []*figure{b.flat.figure, b.bag.figure} {
		f.request = func(order) {}
	}
	return b
}

func (b *bench) capture() image.Image { return b.window.Canvas().Capture() }

// press types a key where the focus is, as the window does.
func (b *bench) press(names ...fyne.KeyName) {
	for _, name := range names {
		b.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: name})
	}
}

// typed types letters where the focus is.
func (b *bench) typed(letters string) {
	for _, letter := range letters {
		b.window.Canvas().Focused().TypedRune(letter)
	}
}

// wait lets a time pass, in beats of a sixtieth of a second, as long as the clock goes.
func (b *bench) wait(passes time.Duration) {
	const beat = time.Second / 60
	for ; passes > 0; passes -= beat {
		b.time = b.time.Add(beat)
		if b.beat != nil {
			b.beat()
		}
	}
}

// at goes to a place.
func (b *bench) at(stage int, share float64) { b.scrub(place{stage, share}) }

// stageOf returns the number of the stage of a name.
func (b *bench) stageOf(t testing.TB, name string) int { return stageNamed(t, b.course, name) }

// demo returns the bag of the demo project, without its artwork.
func demo(t testing.TB) bag.Spec {
	opened, err := project.Read(bytes.NewReader(assets.Demo), int64(len(assets.Demo)))
	if err != nil {
		t.Fatal(err)
	}
	opened.Spec.Artwork = nil
	return opened.Spec
}

func dark(set *settings.Settings) { set.SetAppearance(settings.Dark) }

// derived returns a bag with all that follows from it.
func derived(t testing.TB, spec bag.Spec) *document.Snapshot {
	t.Helper()
	snapshot, err := document.Derive(spec)
	if err != nil {
		t.Fatal(err)
	}
	return snapshot
}

// stageNamed returns the number of a stage.
func stageNamed(t testing.TB, c *course, name string) int {
	t.Helper()
	for i := range c.Stages {
		if c.Stages[i].Name == name {
			return i
		}
	}
	t.Fatalf("there is no stage %s", name)
	return 0
}
