package meeting

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/app/entry"
)

// signed is a sentence behind the sign of how bad it is, in letters that are read across a
// table. It takes no room while it says nothing.
type signed struct {
	widget.BaseWidget

	sign *widget.Icon
	text *entry.Text
	of   trouble // that is said
}

func newSigned() *signed {
	s := &signed{sign: widget.NewIcon(nil), text: entry.NewText("", entry.Plain)}
	s.sign.Hide()
	s.ExtendBaseWidget(s)
	return s
}

// say changes what is said.
func (s *signed) say(t trouble) {
	if t == s.of {
		return
	}
	s.of = t
	s.text.SetText(t.text)
	if t.text == "" {
		s.sign.Hide()
		return
	}
	s.sign.SetResource(entry.Sign(t.severity))
	s.sign.Show()
}

// Text returns what is said.
func (s *signed) Text() string { return s.text.Text() }

// signSize is that of the letters with what they reach below the line.
func (s *signed) signSize() float32 { return 1.3 * s.Theme().Size(theme.SizeNameText) }

func (s *signed) indent() float32 { return s.signSize() + s.Theme().Size(theme.SizeNamePadding) }

// HeightFor returns the height at a width.
func (s *signed) HeightFor(width float32) float32 {
	if s.text.Text() == "" {
		return 0
	}
	return max(s.text.HeightFor(max(width-s.indent(), 1)), s.signSize())
}

// MinSize is part of fyne.CanvasObject.
func (s *signed) MinSize() fyne.Size { return fyne.NewSize(1, s.HeightFor(s.Size().Width)) }

// CreateRenderer is part of fyne.Widget.
func (s *signed) CreateRenderer() fyne.WidgetRenderer { return &signedRenderer{s} }

type signedRenderer struct{ s *signed }

func (r *signedRenderer) Layout(size fyne.Size) {
	put(r.s.sign, fyne.NewPos(0, 0), fyne.NewSquareSize(r.s.signSize()))
	put(r.s.text, fyne.NewPos(r.s.indent(), 0), fyne.NewSize(max(size.Width-r.s.indent(), 1), size.Height))
}

func (r *signedRenderer) MinSize() fyne.Size { return r.s.MinSize() }
func (r *signedRenderer) Destroy()           {}

func (r *signedRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.s.sign, r.s.text}
}

// Refresh takes over a change of theme.
func (r *signedRenderer) Refresh() {
	r.s.sign.Refresh()
	r.s.text.Refresh()
	r.Layout(r.s.Size())
}
