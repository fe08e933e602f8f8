package entry

import (
	"fmt"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"gussetwright/geometry/check"
)

// Name is the entry of a line of words.
type Name struct {
	Column

	label, help string
	most        int // characters
	take        func(string)
	line        *typing
	message     *Message
	onFocus     func(Explained)
	value       string
}

// NewName returns the entry of a name with at most so many characters. Label and
// help are translated. take is called with each name that is entered.
func NewName(label, help string, most int, take func(string)) *Name {
	n := &Name{label: label, help: help, most: most, take: take, message: NewMessage()}
	n.line = newTyping(n)
	n.fill(0.5, NewText(label, Plain), n.line, n.message)
	n.ExtendBaseWidget(n)
	return n
}

// OnFocus sets what is called when the entry gets the focus.
func (n *Name) OnFocus(call func(Explained)) { n.onFocus = call }

// Put shows a name. What is being typed stays as long as it is the same.
func (n *Name) Put(value string) {
	if value != n.value {
		n.value = value
		n.restore()
	}
}

// Text returns what stands in the line.
func (n *Name) Text() string { return n.line.Text }

// Message returns what the entry complains about, or nothing.
func (n *Name) Message() string { return n.message.Text() }

// Complain shows what is wrong with the name, or nothing.
func (n *Name) Complain(text string) { n.message.Say(check.Error, text, nil) }

// Focusable returns what takes the focus.
func (n *Name) Focusable() fyne.Focusable { return n.line }

// Explanation says what the name is for.
func (n *Name) Explanation() (title, text string) { return n.label, n.help }

func (n *Name) typed() bool { return n.line.Text != n.value }

func (n *Name) commit() bool {
	if over := utf8.RuneCountInString(n.line.Text) - n.most; over > 0 {
		n.Complain(fmt.Sprintf(lang.L("That is %d characters too long; %d are allowed. Shorten it."), over, n.most))
		return false
	}
	n.Complain("")
	if n.typed() {
		n.value = n.line.Text
		n.take(n.value)
	}
	return true
}

func (n *Name) restore() {
	if n.line.Text != n.value {
		n.line.SetText(n.value)
	}
	n.Complain("")
}

// Forget drops what was typed and not taken over.
func (n *Name) Forget() { n.restore() }

func (n *Name) focused() {
	if n.onFocus != nil {
		n.onFocus(n)
	}
}
