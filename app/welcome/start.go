// Package welcome is what the window shows first: the ways to begin a bag, and the
// tour of the window.
package welcome

import (
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/appearance"
	"gussetwright/app/settings"
	"gussetwright/app/steady"
)

// Actions is what can be done from the start page. All are set.
type Actions struct {
	FromProduct func()                             // begin with the Product step
	FromSize    func(width, depth, height float64) // begin with a size in mm; depth 0 is a flat bag, which needs a pinch base
	OpenDemo    func()                             // open the demo project
	Open        func()                             // choose a project file
	OpenRecent  func(path string)                  // open a file of the recent list
	TakeTour    func()                             // show the tour of the window
}

// Start is the start page.
type Start struct {
	widget.BaseWidget

	set     *settings.Settings
	actions Actions
	size    *measures
	scroll  *steady.Scroll
}

// widest is the width of the page in heights of a letter.
const widest = 80

// NewStart returns the start page.
func NewStart(set *settings.Settings, actions Actions) *Start {
	s := &Start{set: set, actions: actions}
	s.size = newMeasures(set, actions.FromSize, s.bring)
	s.scroll = steady.NewScroll(container.New(
		column{widest}, container.NewPadded(container.NewVBox(s.heading(), s.ways(), s.recent()))))
	s.ExtendBaseWidget(s)
	return s
}

// CreateRenderer is part of fyne.Widget.
func (s *Start) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(s.scroll) }

// button returns a button that comes into sight when it gains the focus.
func (s *Start) button(text string, importance widget.Importance, tapped func()) *appearance.Button {
	b := appearance.NewButton(text, tapped)
	b.Importance = importance
	b.OnFocus = func() { s.bring(b) }
	return b
}

// bring scrolls an object of the page into sight.
func (s *Start) bring(object fyne.CanvasObject) {
	driver := fyne.CurrentApp().Driver()
	top := driver.AbsolutePositionForObject(object).Y - driver.AbsolutePositionForObject(s.scroll.Content).Y
	margin := 2 * theme.Padding()
	offset := max(s.scroll.Offset.Y, top+object.Size().Height+margin-s.scroll.Size().Height)
	offset = max(min(offset, top-margin), 0)
	if offset != s.scroll.Offset.Y {
		s.scroll.ScrollToOffset(fyne.NewPos(0, offset))
	}
}

// heading names the program and offers the tour.
func (s *Start) heading() fyne.CanvasObject {
	const side = 72
	icon := canvas.NewImageFromResource(appearance.ProgramIcon())
	icon.FillMode = canvas.ImageFillContain
	icon.SetMinSize(fyne.NewSquareSize(side))
	name := widget.NewLabel("Gussetwright")
	name.SizeName = theme.SizeNameHeadingText
	name.TextStyle.Bold = true
	about := widget.NewLabel(lang.L("Design a paper carrier bag and get the blank, the files and the numbers for it. How would you like to begin?"))
	about.Wrapping = fyne.TextWrapWord
	tour := s.button(lang.L("Take the tour"), widget.MediumImportance, s.actions.TakeTour)
	open := s.button(lang.L("Open a project…"), widget.MediumImportance, s.actions.Open)
	return container.NewPadded(container.New(heading{}, icon, container.NewVBox(name, about), container.NewHBox(tour, open)))
}

// ways are the three ways to begin.
func (s *Start) ways() fyne.CanvasObject {
	begin := s.button(lang.L("Begin with the product"), widget.HighImportance, s.actions.FromProduct)
	create := s.button(lang.L("Make the bag"), widget.HighImportance, s.size.submit)
	demo := s.button(lang.L("Open the demo"), widget.HighImportance, s.actions.OpenDemo)
	cards := &rank{}
	return container.New(cards,
		container.NewPadded(way(cards, appearance.FromProductIcon(), lang.L("From a product"),
			lang.L("Say what goes in and how heavy it is, and get a size that fits."), nil, begin)),
		container.NewPadded(way(cards, appearance.FromSizeIcon(), lang.L("From a size"),
			lang.L("Enter width, depth and height, in any unit: 240, 24 cm or 9 1/2 in."), s.size.object, create)),
		container.NewPadded(way(cards, appearance.ProgramIcon(), lang.L("From the demo"),
			lang.L("Look at the finished bag of an invented tea house and change what you like."), nil, demo)))
}

// recent lists the recent files; nothing where there are none.
func (s *Start) recent() fyne.CanvasObject {
	paths := s.set.Recent()
	if len(paths) == 0 {
		return container.NewVBox()
	}
	title := widget.NewLabel(lang.L("Opened or saved last"))
	title.TextStyle.Bold = true
	list := container.NewVBox()
	for _, path := range paths {
		name := s.button(short(filepath.Base(path)), widget.LowImportance, func() { s.actions.OpenRecent(path) })
		folder := widget.NewLabel(filepath.Dir(path))
		folder.Truncation = fyne.TextTruncateEllipsis
		folder.Importance = widget.LowImportance
		list.Add(container.NewBorder(nil, nil, name, nil, folder))
	}
	return container.NewVBox(title, container.NewPadded(newCard(list)))
}

// short returns a name that is not too long to stand on a button of any window.
func short(name string) string {
	const most = 30
	if letters := []rune(name); len(letters) > most {
		return string(letters[:most-1]) + "…"
	}
	return name
}
