package meeting

import (
	"bytes"
	"context"
	"image"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/project"
	"gussetwright/app/settings"
	"gussetwright/assets"
	"gussetwright/geometry/bag"
	"gussetwright/render/artwork"
	"gussetwright/render/solid"
)

// bench is a view in a window of its own, drawn at once rather than soon.
type bench struct {
	*View
	window fyne.Window
	doc    *document.Document
	set    *settings.Settings
	orders map[*figure]int // since the last look
	left   int
	proofs []size // of which proofs were asked for
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
		Leave: func() { b.left++ },
		Proof: func() {
			spec := b.doc.State().Spec
			b.proofs = append(b.proofs, sizeOf(&spec))
		},
	})
	for _, f := range b.stage.all() {
		f.request = func(o order) {
			b.orders[f]++
			f.show(f.paint(o))
		}
	}
	b.window = test.NewTempWindow(t, b.View)
	b.window.SetPadded(false)
	b.window.Resize(fyne.NewSize(width, height))
	b.Open(solid.NoReference)
	b.window.Canvas().Focus(b.FirstFocus())
	t.Cleanup(b.Close)
	return b
}

func (b *bench) capture() image.Image { return b.window.Canvas().Capture() }

// keys takes keys and letters.
type keys interface {
	TypedKey(*fyne.KeyEvent)
	TypedRune(rune)
}

// focused is what takes keys: what has the focus, or the view, as in the window.
func (b *bench) focused() keys {
	if part := b.window.Canvas().Focused(); part != nil {
		return part
	}
	return b.View
}

// press types keys.
func (b *bench) press(names ...fyne.KeyName) {
	for _, name := range names {
		b.focused().TypedKey(&fyne.KeyEvent{Name: name})
	}
}

// typed types letters.
func (b *bench) typed(letters string) {
	for _, letter := range letters {
		b.focused().TypedRune(letter)
	}
}

// resize makes the bag another size, as one step.
func (b *bench) resize(width, depth, height float64) {
	b.doc.Set(size{width, depth, height}.of(b.doc.State().Spec))
}

// keepThree keeps three sizes and leaves the bag at a fourth.
func (b *bench) keepThree() {
	for _, s := range []size{{190, 95, 250}, {240, 100, 320}, {320, 120, 260}} {
		b.resize(s[width], s[depth], s[height])
		b.typed("k")
	}
	b.resize(260, 110, 300)
}

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

const leaf = `<svg xmlns="http://www.w3.org/2000/svg" width="246mm" height="366mm"><rect width="99" height="99"/></svg>`

// late is a gallery that opens files when it is told to.
type late struct {
	open bool
	kept map[string]*artwork.Art
}

func (l *late) Art(name string, data []byte, page int) (*artwork.Art, error) {
	if !l.open || l.kept[name] != nil {
		return l.kept[name], nil
	}
	opened, err := artwork.Open(context.Background(), name, data, page)
	l.kept = map[string]*artwork.Art{name: opened}
	return opened, err
}
