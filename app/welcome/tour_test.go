package welcome

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/settings"
	"gussetwright/geometry/geomtest"
)

// scene is a window of six parts with a tour over it.
type scene struct {
	window fyne.Window
	tour   *Tour
	parts  map[string]fyne.CanvasObject
	below  *widget.Button
	taps   int
	left   int
}

func newScene(t *testing.T, look settings.Appearance, size fyne.Size) *scene {
	t.Helper()
	app := test.NewTempApp(t)
	set := settings.New(app.Preferences())
	set.SetAppearance(look)
	appearance.Wear(app, set)
	s := &scene{parts: map[string]fyne.CanvasObject{}}
	part := func(name string, width, height float32) fyne.CanvasObject {
		ground := canvas.NewRectangle(color.Transparent)
		ground.StrokeColor, ground.StrokeWidth = theme.Color(theme.ColorNameSeparator), 1
		ground.SetMinSize(fyne.NewSize(width, height))
		s.parts[name] = container.NewStack(ground, container.NewCenter(widget.NewLabel(name)))
		return s.parts[name]
	}
	s.below = widget.NewButton("below", func() { s.taps++ })
	s.parts["files"] = s.below
	desk := container.NewBorder(nil, nil, container.NewBorder(nil, s.below, nil, nil, part("steps", 110, 0)), nil,
		container.NewBorder(nil, part("findings", 0, 130), part("entries", 300, 0), nil,
			container.NewGridWithColumns(2, part("blank", 0, 0), part("folded", 0, 0))))
	is := func(name string) func() fyne.CanvasObject { return func() fyne.CanvasObject { return s.parts[name] } }
	stops := Stops(Parts{is("steps"), is("entries"), is("blank"), is("folded"), is("findings"), is("files")})
	s.tour = NewTour(stops, func() { s.left++ })
	s.window = test.NewTempWindow(t, container.NewStack(desk, s.tour))
	s.window.SetPadded(false)
	s.window.Resize(size)
	return s
}

func (s *scene) key(name fyne.KeyName) {
	s.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: name})
}

// place returns where an object lies in the window.
func (s *scene) place(object fyne.CanvasObject) fyne.Position {
	driver := fyne.CurrentApp().Driver()
	return driver.AbsolutePositionForObject(object).Subtract(driver.AbsolutePositionForObject(s.window.Content()))
}

func TestTourPictures(t *testing.T) {
	for name, look := range map[string]settings.Appearance{"light": settings.Light, "dark": settings.Dark} {
		s := newScene(t, look, fyne.NewSize(1024, 700))
		s.tour.Start()
		s.tour.Next()
		s.tour.Next()
		geomtest.GoldenPicture(t, "welcome/tour-"+name+".png", s.window.Canvas().Capture(), fewPixels)
	}
}

// At every stop the ring lies on the part and the card lies in the window, beside
// the part.
func TestTourPointsToEachPart(t *testing.T) {
	for _, size := range []fyne.Size{fyne.NewSize(1440, 900), fyne.NewSize(1024, 700), fyne.NewSize(2560, 1440)} {
		s := newScene(t, settings.Light, size)
		s.tour.Start()
		for _, name := range []string{"steps", "entries", "blank", "folded", "findings", "files"} {
			part := s.parts[name]
			at := s.place(part)
			if s.tour.ring.Position() != at || s.tour.ring.Size() != part.Size() {
				t.Errorf("%v, %s: the ring is at %v %v, the part at %v %v", size, name,
					s.tour.ring.Position(), s.tour.ring.Size(), at, part.Size())
			}
			card := s.tour.card
			from, to := card.Position(), card.Position().AddXY(card.Size().Width, card.Size().Height)
			if from.X < 0 || from.Y < 0 || to.X > size.Width || to.Y > size.Height {
				t.Errorf("%v, %s: the card from %v to %v leaves the window", size, name, from, to)
			}
			end := at.AddXY(part.Size().Width, part.Size().Height)
			if from.X < end.X && at.X < to.X && from.Y < end.Y && at.Y < to.Y {
				t.Errorf("%v, %s: the card lies on the part", size, name)
			}
			s.tour.Next()
		}
		if s.tour.Visible() || s.left != 1 {
			t.Errorf("%v: after the last stop visible %v, left %d times", size, s.tour.Visible(), s.left)
		}
	}
}

func TestTourByKeyboard(t *testing.T) {
	s := newScene(t, settings.Light, fyne.NewSize(1024, 700))
	s.tour.Start()
	for _, step := range []struct {
		key  fyne.KeyName
		want int
	}{{fyne.KeyRight, 1}, {fyne.KeyRight, 2}, {fyne.KeyLeft, 1}, {fyne.KeyReturn, 2}, {fyne.KeyLeft, 1}, {fyne.KeyLeft, 0}, {fyne.KeyLeft, 0}} {
		if step.key == fyne.KeyReturn {
			s.window.Canvas().Focused().TypedRune(' ')
			s.key(fyne.KeySpace)
		} else {
			s.key(step.key)
		}
		if s.tour.at != step.want {
			t.Fatalf("after %s at stop %d, want %d", step.key, s.tour.at, step.want)
		}
	}
	s.key(fyne.KeyEscape)
	if s.tour.Visible() || s.left != 1 {
		t.Errorf("after Escape visible %v, left %d times", s.tour.Visible(), s.left)
	}
	if s.window.Canvas().Focused() != nil {
		t.Error("the tour keeps the focus after it was left")
	}
	if s.tour.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight}) {
		t.Error("a hidden tour takes keys")
	}
}

// The tour can be left at every stop, and taken again.
func TestTourCanBeLeftAnywhere(t *testing.T) {
	s := newScene(t, settings.Light, fyne.NewSize(1024, 700))
	for stop := range s.tour.stops {
		s.tour.Start()
		for range stop {
			s.tour.Next()
		}
		test.Tap(&s.tour.leave.Button)
		if s.tour.Visible() || s.left != stop+1 {
			t.Errorf("stop %d: visible %v, left %d times", stop, s.tour.Visible(), s.left)
		}
	}
}

// What lies below the tour can be used while it is on.
func TestTourLetsThroughToTheWindow(t *testing.T) {
	s := newScene(t, settings.Light, fyne.NewSize(1024, 700))
	s.tour.Start()
	at := s.place(s.below).AddXY(20, 10)
	test.TapCanvas(s.window.Canvas(), at)
	if s.taps != 1 {
		t.Errorf("the button below was tapped %d times", s.taps)
	}
}

// The card itself is in the way.
func TestCardOfTheTourKeepsClicks(t *testing.T) {
	s := newScene(t, settings.Light, fyne.NewSize(1024, 700))
	s.tour.Start()
	s.tour.card.Move(s.place(s.below))
	test.TapCanvas(s.window.Canvas(), s.place(s.below).AddXY(20, 20))
	if s.taps != 0 {
		t.Error("a click on the card went through to the window")
	}
}

// A part that is not shown has no ring, and the card stands in the middle.
func TestTourPastAHiddenPart(t *testing.T) {
	s := newScene(t, settings.Light, fyne.NewSize(1024, 700))
	s.parts["steps"].Hide()
	s.tour.Start()
	if s.tour.ring.Visible() {
		t.Error("a ring round a hidden part")
	}
	middle := s.tour.card.Position().AddXY(s.tour.card.Size().Width/2, s.tour.card.Size().Height/2)
	if middle != fyne.NewPos(512, 350) {
		t.Errorf("the card stands at %v", middle)
	}
	if got := len(Stops(Parts{Steps: s.tour.stops[0].Target})); got != 1 {
		t.Errorf("%d stops for one part", got)
	}
}
