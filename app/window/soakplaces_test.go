//go:build linux

package window

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// dialogs holds the places of files and buttons in the dialogs that open a file.
type dialogs struct{ artwork, project map[string]fyne.Position }

// The words on the buttons of such a dialog.
const openWord, cancelWord = "Open", "Cancel"

// artworkNames are the files that the soak imports in turn.
var artworkNames = []string{"leaf.pdf", "moss.png", "seal.svg"}

// findPlaces opens the dialogs in the twin and notes where things are.
func (s *soak) findPlaces() {
	s.t.Helper()
	for _, name := range artworkNames {
		s.writeArtwork(name)
	}
	s.twin.addArtwork()
	s.dialogs.artwork = s.inDialog(artworkNames...)
	s.twin.openAsked()
	s.dialogs.project = s.inDialog(filepath.Base(s.path))
}

// inDialog returns the places of files in the dialog that the twin shows, and closes it.
func (s *soak) inDialog(names ...string) map[string]fyne.Position {
	s.t.Helper()
	top := s.twin.window.Canvas().Overlays().Top()
	if top == nil {
		s.fail("the dialog does not open")
	}
	names = append(names, openWord, cancelWord)
	found := map[string]fyne.Position{}
	walk(top, fyne.Position{}, func(object fyne.CanvasObject, at fyne.Position) {
		text := ""
		switch object := object.(type) {
		case *widget.Label:
			text = object.Text
		case *widget.Button:
			text = object.Text
		}
		for _, name := range names {
			if text == name || text+filepath.Ext(name) == name { // the dialog leaves endings out where an icon tells them
				size := object.Size()
				found[name] = at.AddXY(size.Width/2, size.Height/2+s.menuHeight)
			}
		}
	})
	for _, name := range names {
		if _, seen := found[name]; !seen {
			s.fail("no " + name + " in the dialog")
		}
	}
	s.twin.window.Canvas().Overlays().Remove(top)
	return found
}

// walk visits an object and all that is seen inside of it, with the places of their
// corners. The driver of the toolkit knows no places inside of a grid of files.
func walk(object fyne.CanvasObject, corner fyne.Position, visit func(fyne.CanvasObject, fyne.Position)) {
	if !object.Visible() {
		return
	}
	corner = corner.Add(object.Position())
	visit(object, corner)
	var inside []fyne.CanvasObject
	switch object := object.(type) {
	case *fyne.Container:
		inside = object.Objects
	case fyne.Widget:
		inside = test.WidgetRenderer(object).Objects()
	}
	for _, child := range inside {
		walk(child, corner, visit)
	}
}

// chooseFile chooses a file in the dialog that is open.
func (s *soak) chooseFile(in map[string]fyne.Position, name string) {
	s.t.Helper()
	s.tap(in[name])
	s.pause()
	s.tap(in[openWord])
}

// writeArtwork writes artwork of a new colour.
func (s *soak) writeArtwork(name string) {
	s.t.Helper()
	ink := color.RGBA{uint8(s.random.IntN(256)), uint8(s.random.IntN(256)), uint8(s.random.IntN(256)), 255}
	data := map[string]func(color.RGBA) []byte{".pdf": inkPDF, ".png": inkPNG, ".svg": inkSVG}[filepath.Ext(name)](ink)
	if err := os.WriteFile(filepath.Join(s.artworkFolder(), name), data, 0o644); err != nil {
		s.t.Fatal(err)
	}
}

// inkPNG is a picture of 1.5 megapixels, shaded so that it does not pack to nothing.
func inkPNG(ink color.RGBA) []byte {
	const width, height = 1500, 1000
	picture := image.NewRGBA(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			picture.SetRGBA(x, y, color.RGBA{ink.R + uint8(x*y>>10), ink.G + uint8(x>>3), ink.B + uint8(y>>2), 255})
		}
	}
	var file bytes.Buffer
	if err := png.Encode(&file, picture); err != nil {
		panic(err) // a buffer takes everything
	}
	return file.Bytes()
}

func inkSVG(ink color.RGBA) []byte {
	return fmt.Appendf(nil, `<svg xmlns="http://www.w3.org/2000/svg" width="80mm" height="60mm" viewBox="0 0 80 60"><circle cx="40" cy="30" r="25" fill="#%02x%02x%02x"/></svg>`,
		ink.R, ink.G, ink.B)
}

// inkPDF is a page of 80 × 60 mm with a rectangle.
func inkPDF(ink color.RGBA) []byte {
	content := fmt.Sprintf("%.3f %.3f %.3f rg 20 20 180 130 re f", float64(ink.R)/255, float64(ink.G)/255, float64(ink.B)/255)
	objects := []string{
		"<</Type/Catalog/Pages 2 0 R>>",
		"<</Type/Pages/Kids[3 0 R]/Count 1>>",
		"<</Type/Page/Parent 2 0 R/MediaBox[0 0 227 170]/Resources<<>>/Contents 4 0 R>>",
		fmt.Sprintf("<</Length %d>>stream\n%s\nendstream", len(content), content),
	}
	var file bytes.Buffer
	file.WriteString("%PDF-1.4\n")
	var offsets []int
	for i, object := range objects {
		offsets = append(offsets, file.Len())
		fmt.Fprintf(&file, "%d 0 obj%s\nendobj\n", i+1, object)
	}
	start := file.Len()
	fmt.Fprintf(&file, "xref\n0 %d\n0000000000 65535 f \n", len(objects)+1)
	for _, offset := range offsets {
		fmt.Fprintf(&file, "%010d 00000 n \n", offset)
	}
	fmt.Fprintf(&file, "trailer<</Size %d/Root 1 0 R>>\nstartxref\n%d\n%%%%EOF\n", len(objects)+1, start)
	return file.Bytes()
}

// numberEntry returns an entry for a number, counted from 0 down the page.
func (s *soak) numberEntry(number int) fyne.CanvasObject {
	s.t.Helper()
	return s.object("entry for a number", func(object fyne.CanvasObject) bool {
		if _, err := strconv.ParseFloat(typedText(object), 64); err != nil {
			return false
		}
		number--
		return number < 0
	})
}

// button returns the button with a text.
func (s *soak) button(text string) fyne.CanvasObject {
	s.t.Helper()
	return s.object("button "+text, func(object fyne.CanvasObject) bool {
		button, ok := object.(*widget.Button)
		return ok && button.Text == text
	})
}

// wheel turns the wheel down by notches at a place; up where they are negative.
func (s *soak) wheel(at fyne.Position, notches int) {
	s.t.Helper()
	s.move(at)
	button := "5"
	if notches < 0 {
		button, notches = "4", -notches
	}
	s.do("click", "--repeat", strconv.Itoa(notches), "--delay", "40", button)
}

// choose chooses an item of a submenu with the keys. The menu opens at its left end by
// mouse.
func (s *soak) choose(menu, item, choice string) {
	s.t.Helper()
	main := s.twin.menu.main.Items
	across := slices.IndexFunc(main, func(m *fyne.Menu) bool { return m.Label == menu })
	parent := slices.IndexFunc(main[across].Items, func(i *fyne.MenuItem) bool { return i.Label == item })
	within := main[across].Items[parent].ChildMenu.Items
	chosen := slices.IndexFunc(within, func(i *fyne.MenuItem) bool { return i.Label == choice })
	s.tap(fyne.NewPos(18, s.menuHeight/2))
	s.pause()
	for range across {
		s.press("Right")
	}
	for _, above := range main[across].Items[:parent+1] {
		if !above.IsSeparator {
			s.press("Down")
		}
	}
	s.press("Right")
	for range chosen {
		s.press("Down")
	}
	time.Sleep(200 * time.Millisecond)
	s.keep("menu")
	s.press("Return")
}
