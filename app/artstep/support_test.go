package artstep

import (
	"fmt"
	"image"
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/appearance"
	"gussetwright/app/document"
	"gussetwright/app/entry"
	"gussetwright/app/focus"
	"gussetwright/app/project"
	"gussetwright/app/settings"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/phrase"
	"gussetwright/geometry/placement"
	"gussetwright/render/artwork"
	"gussetwright/render/artwork/raster"
)

// shelf is a gallery of artwork that is open, by name; what is not on it is being opened.
type shelf map[string]document.Hanging

func (s shelf) Art(name string, _ []byte, _ int) (*artwork.Art, error) {
	return s[name].Art, s[name].Err
}

// stripes returns a picture to look at.
func stripes(width, height int, colour color.RGBA) *image.RGBA {
	picture := image.NewRGBA(image.Rect(0, 0, width, height))
	for x := range width {
		for y := range height {
			picture.SetRGBA(x, y, color.RGBA{240, 230, 210, 255})
			if (x+y)/20%2 == 0 {
				picture.SetRGBA(x, y, colour)
			}
		}
	}
	return picture
}

// pixels returns raster artwork of 300 pixels to the inch.
func pixels(name string, width, height int) *artwork.Art {
	return &artwork.Art{
		Name: name, Format: "JPEG", Pages: 1, Stated: true,
		Source: placement.Source{Size: geometry.Vec2{X: float64(width) * 25.4 / 300, Y: float64(height) * 25.4 / 300}},
		Raster: &raster.Picture{Size: image.Pt(width, height)},
		Levels: []*image.RGBA{stripes(240, 240*height/width, color.RGBA{190, 80, 50, 255})},
	}
}

// drawn returns artwork without pixels of its own.
func drawn(name string, width, height float64, pages int) *artwork.Art {
	return &artwork.Art{
		Name: name, Format: "PDF", Pages: pages, Stated: true, Source: placement.Source{Size: geometry.Vec2{X: width, Y: height}},
		Levels: []*image.RGBA{stripes(int(width)*2, int(height)*2, color.RGBA{40, 120, 80, 255})},
	}
}

// asked is a source that notes what it is asked for.
type asked struct {
	calls []string
	alone map[string]bool // files that are not watched
}

func (a *asked) Add(place string, paths ...string) {
	for _, path := range paths {
		a.calls = append(a.calls, "add "+path+" on "+place)
	}
}
func (a *asked) Replace(_ int, path string) { a.calls = append(a.calls, "replace by "+path) }
func (a *asked) ChooseProfile(path string)  { a.calls = append(a.calls, "profile "+path) }
func (a *asked) Watches(name string) bool   { return !a.alone[name] }

// bench is a step in a window, on the default bag with artwork.
type bench struct {
	*Step
	t      *testing.T
	window fyne.Window
	set    *settings.Settings
	source *asked
	shelf  shelf
}

// stepWidth and stepHeight are about what the window gives to the step.
const stepWidth, stepHeight = 236, 1500

func newBench(t *testing.T, look settings.Appearance, scale float64, pieces ...bag.Artwork) *bench {
	app := test.NewTempApp(t)
	b := &bench{t: t, set: settings.New(app.Preferences()), source: &asked{}, shelf: shelf{
		"front.jpg":  {Art: pixels("front.jpg", 2906, 4323)}, // 246 × 366 mm
		"small.jpg":  {Art: pixels("small.jpg", 900, 1500)},
		"soft.jpg":   {Art: pixels("soft.jpg", 1950, 2900)},
		"leaf.pdf":   {Art: drawn("leaf.pdf", 120, 80, 5)},
		"broken.png": {Err: phrase.Errorf("open artwork %q: %s", "broken.png", phrase.Errorf("it is cut short; save it again where it was drawn"))},
	}}
	b.set.SetAppearance(look)
	b.set.SetTextScale(scale)
	appearance.Wear(app, b.set)
	app.Settings().SetTheme(appearance.New(b.set))
	doc := document.New()
	spec := bag.Default()
	spec.Artwork = pieces
	files := map[string][]byte{}
	for _, piece := range pieces {
		files[piece.File] = []byte(piece.File)
	}
	doc.Load(project.Project{Spec: spec, Files: files})
	doc.ShowArt(b.shelf)
	b.Step = New(doc, focus.New(), b.set, b.source, nil)
	column := entry.NewColumn(0, b.Column)
	column.SetInset(2)
	b.window = test.NewTempWindow(t, column)
	b.Step.window = b.window
	b.window.SetPadded(false)
	b.window.Resize(fyne.NewSize(stepWidth, stepHeight))
	doc.Listen(b.Follow)
	b.Enter()
	if b.chosen != max(len(pieces)-1, 0) {
		t.Errorf("at first %d is chosen, not the topmost", b.chosen)
	}
	b.Choose(0)
	column.Arrange()
	return b
}

func (b *bench) pieces() []bag.Artwork { return b.doc.State().Spec.Artwork }

func (b *bench) undone() string {
	undo := b.doc.State().Undo
	b.doc.Undo()
	if undo.Place != "" {
		return fmt.Sprintf(undo.Label, undo.File, undo.Place)
	}
	return fmt.Sprintf(undo.Label, undo.File)
}

func (b *bench) key(name fyne.KeyName) { b.list.TypedKey(&fyne.KeyEvent{Name: name}) }

// several are pieces of every kind, the last on top.
func several() []bag.Artwork {
	soft := bag.NewArtwork("soft.jpg", "gusset-left")
	soft.Fit, soft.Scale = bag.FitExact, 1.5
	return []bag.Artwork{
		bag.NewArtwork("front.jpg", "front"), bag.NewArtwork("small.jpg", "back"), soft,
		bag.NewArtwork("broken.png", "front"), bag.NewArtwork("late.svg", bag.OnFaces), bag.NewArtwork("leaf.pdf", bag.OnBackPiece),
		bag.NewArtwork("leaf.pdf", bag.OnGussets),
	}
}
