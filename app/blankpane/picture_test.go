package blankpane

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"gussetwright/app/focus"
	"gussetwright/app/settings"
	"gussetwright/app/words"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
	"gussetwright/geometry/blank"
	"gussetwright/geometry/geomtest"
	"gussetwright/render/dieline"
	"gussetwright/render/scene"
)

// tolerance is the share of pixels that may differ on another processor.
const tolerance = 0.005

func TestGoldenPictures(t *testing.T) {
	for _, c := range []struct {
		name          string
		spec          bag.Spec
		width, height float32
		looks         settings.Appearance
	}{
		{"demo-light", demo(t), 900, 700, settings.Light},
		{"demo-dark", demo(t), 900, 700, settings.Dark},
		{"two-seams-light", twoSeams(), 900, 700, settings.Light},
		{"big-dark", sized(600, 250, 700), 600, 500, settings.Dark},
		{"tiny-light", sized(60, 30, 80), 600, 500, settings.Light},
		{"hand-hole-light", handHole(), 600, 500, settings.Light},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := newBench(t, c.spec, c.width, c.height, c.looks)
			geomtest.GoldenPicture(t, "blankpane/"+c.name+".png", b.capture(), tolerance)
		})
	}
}

func TestGoldenPictureOfWork(t *testing.T) {
	b := newBench(t, demo(t), 900, 700, settings.Light)
	b.look.Show(&focus.Place{Piece: 0, At: geometry.Vec2{X: 500, Y: 300}})
	b.Measure(true)
	b.click(b.pixel(0, 0, 67.5))
	b.click(b.pixel(0, 190, 332.5))
	geomtest.GoldenPicture(t, "blankpane/measuring.png", b.capture(), tolerance)
	b.Measure(false)
	from := b.pixel(0, 190, 200)
	b.down(from, desktop.MouseButtonPrimary)
	b.dragTo(from, from.AddXY(30, 0))
	geomtest.GoldenPicture(t, "blankpane/dragging.png", b.capture(), tolerance)
}

// On a screen of double density the picture has twice the pixels, and its lines
// and letters are twice as large.
func TestDoubleDensity(t *testing.T) {
	b := newBench(t, demo(t), 450, 350, settings.Light)
	b.window.Canvas().(test.WindowlessCanvas).SetScale(2)
	b.Pane.draw()
	if got, want := b.surface.picture.Image.Bounds().Dx(), 900; got != want {
		t.Errorf("the picture is %d pixels wide, want %d", got, want)
	}
	geomtest.GoldenPicture(t, "blankpane/double-density.png", b.surface.picture.Image, tolerance)
}

// Every name on any drawing is in the table of translated words.
func TestDrawingWordsAreComplete(t *testing.T) {
	known, asked := words.DrawingWords(), map[string]bool{}
	say := func(text string) string {
		asked[text] = true
		return text
	}
	random := rand.New(rand.NewPCG(2, 7))
	specs := []bag.Spec{demo(t), handHole(), zigzagTop(), twoSeams()}
	for range 200 {
		specs = append(specs, geomtest.RandomBag(random))
	}
	for _, spec := range specs {
		spec.Handle.Eyelets = true
		laid := blank.Lay(spec)
		for i := range laid.Pieces {
			dieline.Screen{Letter: 3, Voice: scene.Spoken(say)}.Draw(&laid, i)
		}
	}
	for text := range asked {
		if _, named := known[text]; !named && text != "" {
			t.Errorf("%q on the drawing has no translation", text)
		}
	}
	if len(asked) < 25 {
		t.Errorf("only %d names were asked for", len(asked))
	}
}

// In German the dimensions on the blank have a decimal comma.
func TestDimensionsInGerman(t *testing.T) {
	speak := func(language string) {
		if err := words.Load(language); err != nil {
			t.Fatal(err)
		}
	}
	speak("de")
	t.Cleanup(func() { speak("en") })
	spec := demo(t)
	spec.Body.Width, spec.Body.Height = 182.5, 240.25
	b := newBench(t, spec, 900, 700, settings.Light)
	said := map[string]bool{}
	for _, drawing := range b.artist.drawings {
		for _, item := range drawing.Items {
			if label, is := item.(scene.Label); is && label.Role == scene.Dimensions {
				said[label.Text] = true
			}
		}
	}
	if !said["W 182,5"] && !said["B 182,5"] {
		t.Errorf("no dimension of %q is the width of the face", slices.Collect(maps.Keys(said)))
	}
	for text := range said {
		if strings.Contains(text, ".") {
			t.Errorf("a dimension is %q", text)
		}
	}
}

// BenchmarkChange is a change of the demo bag up to its new picture: laying out,
// checking, drawing and painting, without the screen.
func BenchmarkChange(b *testing.B) {
	for _, size := range []fyne.Size{{Width: 900, Height: 700}, {Width: 1600, Height: 1000}} {
		b.Run(fmt.Sprintf("%g×%g", size.Width, size.Height), func(b *testing.B) {
			pane := newBench(b, demo(b), size.Width, size.Height)
			spec, width := demo(b), demo(b).Body.Width
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				spec.Body.Width = width + float64(i%20)
				pane.doc.Drag(spec)
			}
		})
	}
}

// BenchmarkPan is pushing the paper, with all drawings at hand.
func BenchmarkPan(b *testing.B) {
	pane := newBench(b, demo(b), 900, 700)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		pane.pan(geometry.Vec2{X: float64(i%2*2 - 1)})
	}
}
