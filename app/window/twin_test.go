//go:build linux

package window

import (
	"image"
	"image/color"
	"reflect"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"

	"gussetwright/geometry"
)

// makeTwin lays the window out in this process and finds the height of the menu: how
// much further down the real window shows the mark of the chosen step.
func (s *screen) makeTwin(path string) {
	s.t.Helper()
	app := newApp(s.t)
	for key, folder := range s.folders() { // as in the real one, or steps and dialogs are laid out otherwise
		app.Preferences().SetString(key, folder)
	}
	s.twin = openedIn(s.t, app, path, s.t.TempDir())
	s.twin.window.SetPadded(true)
	s.twin.window.Resize(fyne.NewSize(screenWidth, screenHeight))
	inTwin := markTop(s.twin.window.Canvas().Capture())
	s.waitFor("the menu", func() bool {
		s.settle()
		s.menuHeight = float32(markTop(s.picture()) - inTwin)
		return inTwin >= 0 && s.menuHeight > 10 && s.menuHeight < 60
	})
	s.twin.window.Resize(fyne.NewSize(screenWidth, screenHeight-s.menuHeight))
}

// markTop returns the height at which the mark of the chosen step begins: the first
// pixel in the primary colour near the left edge, or −1 while there is none.
func markTop(picture image.Image) int {
	for y := range picture.Bounds().Dy() {
		for x := range 12 {
			if isPrimary(picture.At(x, y)) {
				return y
			}
		}
	}
	return -1
}

// isPrimary tells whether a colour is the primary one of the theme.
func isPrimary(c color.Color) bool {
	wr, wg, wb, _ := theme.Color(theme.ColorNamePrimary).RGBA()
	r, g, b, _ := c.RGBA()
	return r>>8 == wr>>8 && g>>8 == wg>>8 && b>>8 == wb>>8
}

// object returns the first visible object of the twin for which wanted says yes.
func (s *screen) object(what string, wanted func(fyne.CanvasObject) bool) fyne.CanvasObject {
	s.t.Helper()
	for _, object := range test.LaidOutObjects(s.twin.window.Content()) {
		if wanted(object) {
			return object
		}
	}
	s.fail("no " + what + " in the window")
	return nil
}

// entry returns the middle of the entry that shows a text.
func (s *screen) entry(text string) fyne.Position {
	s.t.Helper()
	return s.at(s.object("entry with "+text, func(object fyne.CanvasObject) bool { return typedText(object) == text }), 0.5, 0.5)
}

// typedText returns the text of an object that can be typed in, or "".
func typedText(object fyne.CanvasObject) string {
	value := reflect.Indirect(reflect.ValueOf(object))
	if _, focusable := object.(fyne.Focusable); !focusable || value.Kind() != reflect.Struct {
		return ""
	}
	field := value.FieldByName("Text")
	if !field.IsValid() || field.Kind() != reflect.String {
		return ""
	}
	return field.String()
}

// slider returns the slider with a number, counted from 0 down the page.
func (s *screen) slider(number int) fyne.CanvasObject {
	s.t.Helper()
	return s.object("slider", func(object fyne.CanvasObject) bool {
		if !strings.HasSuffix(reflect.TypeOf(object).String(), ".slide") {
			return false
		}
		number--
		return number < 0
	})
}

// at returns the place on the screen that lies at shares of the width and height of
// an object of the twin.
func (s *screen) at(object fyne.CanvasObject, across, down float32) fyne.Position {
	corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(object)
	size := object.Size()
	return corner.AddXY(across*size.Width, down*size.Height+s.menuHeight)
}

// onBlank returns the place on the screen of a point of the first piece.
func (s *screen) onBlank(point geometry.Vec2) fyne.Position {
	corner := fyne.CurrentApp().Driver().AbsolutePositionForObject(s.twin.blank)
	return corner.Add(s.twin.blank.PositionOf(0, point)).AddXY(0, s.menuHeight)
}
