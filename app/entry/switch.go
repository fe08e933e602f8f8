package entry

import (
	"fyne.io/fyne/v2"

	"gussetwright/geometry/check"
)

// Switch is the entry of something that is there or is not.
type Switch struct {
	Column

	label, help string
	turn        func(bool)
	box         *box
	message     *Message
	onFocus     func(Explained)
	updating    bool
}

// NewSwitch returns the entry of a switch. Label and help are translated. turn is
// called when the user turns it.
func NewSwitch(label, help string, turn func(bool)) *Switch {
	s := &Switch{label: label, help: help, turn: turn, message: NewMessage()}
	s.box = newBox(label, s.turned, func() {
		if s.onFocus != nil {
			s.onFocus(s)
		}
	})
	s.fill(0.5, s.box, NewText(help, Muted), s.message)
	s.ExtendBaseWidget(s)
	return s
}

// OnFocus sets what is called when the entry gets the focus.
func (s *Switch) OnFocus(call func(Explained)) { s.onFocus = call }

// Put shows a value.
func (s *Switch) Put(on bool) {
	if on == s.box.Checked {
		return
	}
	s.updating = true
	s.box.SetChecked(on)
	s.updating = false
}

// Complain shows what is wrong with the value, or nothing.
func (s *Switch) Complain(text string) { s.message.Say(check.Error, text, nil) }

// Message returns what the entry complains about, or nothing.
func (s *Switch) Message() string { return s.message.Text() }

// Focusable returns what takes the focus.
func (s *Switch) Focusable() fyne.Focusable { return s.box }

func (s *Switch) turned(on bool) {
	if !s.updating {
		s.turn(on)
	}
}

// Explanation says what the switch is.
func (s *Switch) Explanation() (title, text string) { return s.label, s.help }
