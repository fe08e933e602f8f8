package entry

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"gussetwright/geometry/check"
)

// Message is a sign and a sentence below an entry: what is wrong with it or what to
// know about it. It takes no room while it says nothing. A message about a place
// can be clicked to show the place.
type Message struct {
	widget.BaseWidget

	severity check.Severity
	sign     *widget.Icon
	text     *Text
	show     func()
	grow     func()
}

// NewMessage returns a message that says nothing.
func NewMessage() *Message {
	m := &Message{sign: widget.NewIcon(nil), text: NewText("", Small)}
	m.sign.Hide()
	m.text.OnGrow(func() {
		if m.grow != nil {
			m.grow()
		}
	})
	m.ExtendBaseWidget(m)
	return m
}

// Say changes the message. show is called when the message is clicked; it may be
// nil. An empty text says nothing.
func (m *Message) Say(severity check.Severity, text string, show func()) {
	m.show = show
	if severity != m.severity {
		m.severity = severity
		m.sign.SetResource(Sign(severity))
	}
	if text == m.text.Text() {
		return
	}
	before := m.text.Text() == ""
	m.text.SetText(text)
	if now := text == ""; now != before {
		m.sign.Hidden = now
		m.sign.Refresh()
		if m.grow != nil {
			m.grow()
		}
	}
}

// Text returns what the message says.
func (m *Message) Text() string { return m.text.Text() }

// Severity returns how bad it is.
func (m *Message) Severity() check.Severity { return m.severity }

// OnGrow sets what is called when the height of the message has changed.
func (m *Message) OnGrow(grow func()) { m.grow = grow }

// Tapped shows the place.
func (m *Message) Tapped(*fyne.PointEvent) {
	if m.show != nil {
		m.show()
	}
}

// Cursor tells whether the message can be clicked.
func (m *Message) Cursor() desktop.Cursor {
	if m.show == nil {
		return desktop.DefaultCursor
	}
	return desktop.PointerCursor
}

// HeightFor returns the height at a width.
func (m *Message) HeightFor(width float32) float32 {
	if m.text.Text() == "" {
		return 0
	}
	return max(m.text.HeightFor(width-m.indent()), m.signSize())
}

func (m *Message) signSize() float32 { return m.Theme().Size(theme.SizeNameCaptionText) * 1.4 }

func (m *Message) indent() float32 {
	return m.signSize() + m.Theme().Size(theme.SizeNamePadding)
}

// CreateRenderer is part of fyne.Widget.
func (m *Message) CreateRenderer() fyne.WidgetRenderer { return &messageRenderer{m} }

type messageRenderer struct{ m *Message }

func (r *messageRenderer) Layout(size fyne.Size) {
	sign := r.m.signSize()
	r.m.sign.Resize(fyne.NewSquareSize(sign))
	r.m.text.Move(fyne.NewPos(r.m.indent(), 0))
	r.m.text.Resize(fyne.NewSize(size.Width-r.m.indent(), size.Height))
}

func (r *messageRenderer) MinSize() fyne.Size {
	return fyne.NewSize(r.m.indent()+r.m.text.MinSize().Width, r.m.HeightFor(r.m.Size().Width))
}

func (r *messageRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.m.sign, r.m.text}
}
func (r *messageRenderer) Destroy() {}

func (r *messageRenderer) Refresh() {
	r.m.sign.Refresh()
	r.m.text.Refresh()
	r.Layout(r.m.Size())
}

// Sign returns the sign of a severity; signs differ in shape and in colour.
func Sign(severity check.Severity) fyne.Resource {
	switch severity {
	case check.Error:
		return theme.NewErrorThemedResource(theme.ErrorIcon())
	case check.Warning:
		return theme.NewWarningThemedResource(theme.WarningIcon())
	}
	return theme.NewThemedResource(theme.InfoIcon())
}
