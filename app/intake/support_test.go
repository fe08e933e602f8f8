package intake

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"gussetwright/app/document"
	"gussetwright/app/gallery"
	"gussetwright/app/settings"
	"gussetwright/geometry/phrase"
)

// limit is how long something may take that does happen.
const limit = 60 * time.Second

// bench is an intake with its document and what it said. Its goroutine is that of the
// test, which does what is to be done later when it waits.
type bench struct {
	*Intake
	t      *testing.T
	doc    *document.Document
	folder string
	later  chan func()
	told   []string
	alarms []error
	busy   []string
	placed []int
	path   string // of the project
}

func newBench(t *testing.T) *bench {
	app := test.NewTempApp(t)
	b := &bench{t: t, doc: document.New(), folder: t.TempDir(), later: make(chan func(), 1000)}
	later := func(do func()) { b.later <- do }
	pictures := gallery.New(func() {
		later(func() {
			b.doc.Renew()
			b.Opened()
		})
	})
	t.Cleanup(pictures.Close)
	b.doc.ShowArt(pictures)
	b.Intake = New(b.doc, pictures, settings.New(app.Preferences()), Around{
		Later: later,
		Tell:  func(p phrase.Phrase) { b.told = append(b.told, p.String()) },
		Alarm: func(err error) { b.alarms = append(b.alarms, err) },
		Busy:  func(names []string) { b.busy = names },
		Placed: func(index int) {
			b.placed = append(b.placed, index)
		},
		Path: func() string { return b.path },
	})
	t.Cleanup(b.Close)
	return b
}

// until does what is to be done later until something has come about.
func (b *bench) until(what string, reached func() bool) {
	b.t.Helper()
	end := time.After(limit)
	for !reached() {
		select {
		case do := <-b.later:
			do()
		case <-end:
			b.t.Fatalf("%s never came about; alarms %v, told %q", what, b.alarms, b.told)
		}
	}
}

// idle waits until nothing is under way.
func (b *bench) idle() {
	b.t.Helper()
	b.until("the end of the work", func() bool { return len(b.queue) == 0 })
}

func (b *bench) undoSteps() int {
	steps := 0
	for b.doc.State().Undo.Label != "" {
		b.doc.Undo()
		steps++
	}
	for range steps {
		b.doc.Redo()
	}
	return steps
}

// write puts a file into the folder of the bench.
func (b *bench) write(name string, data []byte) string {
	b.t.Helper()
	path := filepath.Join(b.folder, name)
	if err := os.WriteFile(path, data, 0o644); err != nil {
		b.t.Fatal(err)
	}
	return path
}

// svg returns a drawing of a size in mm.
func svg(width, height float64) []byte {
	return fmt.Appendf(nil, `<svg xmlns="http://www.w3.org/2000/svg" width="%gmm" height="%gmm" viewBox="0 0 %[1]g %[2]g">`+
		`<rect width="100%%" height="50%%" fill="#275"/></svg>`, width, height)
}

// picture returns a PNG file of so many pixels.
func picture(t *testing.T, width, height int) []byte {
	t.Helper()
	pixels := image.NewRGBA(image.Rect(0, 0, width, height))
	for x := range width {
		for y := range height {
			pixels.SetRGBA(x, y, color.RGBA{uint8(x), uint8(y), 90, 255})
		}
	}
	var file bytes.Buffer
	if err := png.Encode(&file, pixels); err != nil {
		t.Fatal(err)
	}
	return file.Bytes()
}
