package entry

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"gussetwright/geometry/check"
)

// Option is one of the values of a choice, in words.
type Option struct {
	Value string
	Word  string // translated
	Line  string // what it means, translated
}

// Choice is the entry of one value out of a few, with a line below it that explains
// the one that is chosen.
type Choice struct {
	Column

	label, help string
	options     []Option
	choose      func(string)
	picker      *picker
	line        *Text
	message     *Message
	onFocus     func(Explained)
	value       string
	updating    bool
}

// NewChoice returns the entry of a choice. Label and help are translated. choose is
// called when the user takes another option.
func NewChoice(label, help string, options []Option, choose func(string)) *Choice {
	c := &Choice{label: label, help: help, options: options, choose: choose, line: NewText("", Muted), message: NewMessage()}
	c.picker = newPicker(c.picked, func() {
		if c.onFocus != nil {
			c.onFocus(c)
		}
	})
	for _, option := range options {
		c.picker.Options = append(c.picker.Options, option.Word)
	}
	c.fill(0.5, NewText(label, Plain), c.picker, c.line, c.message)
	c.ExtendBaseWidget(c)
	return c
}

// OnFocus sets what is called when the entry gets the focus.
func (c *Choice) OnFocus(call func(Explained)) { c.onFocus = call }

// Put shows a value.
func (c *Choice) Put(value string) {
	if value == c.value {
		return
	}
	c.value = value
	for _, option := range c.options {
		if option.Value == value {
			c.updating = true
			c.picker.SetSelected(option.Word)
			c.updating = false
			c.line.SetText(option.Line)
		}
	}
}

// SetOptions offers other options. The one that is chosen stays so where it is among
// them.
func (c *Choice) SetOptions(options []Option) {
	if slices.Equal(options, c.options) {
		return
	}
	c.options = options
	c.picker.Options = nil
	for _, option := range options {
		c.picker.Options = append(c.picker.Options, option.Word)
	}
	value := c.value
	c.value = ""
	c.Put(value)
	c.picker.Refresh()
}

// Complain shows what is wrong with the value, or nothing.
func (c *Choice) Complain(text string) { c.message.Say(check.Error, text, nil) }

// Message returns what the entry complains about, or nothing.
func (c *Choice) Message() string { return c.message.Text() }

// Focusable returns what takes the focus.
func (c *Choice) Focusable() fyne.Focusable { return c.picker }

// Pick chooses a value as the user does.
func (c *Choice) Pick(value string) {
	for _, option := range c.options {
		if option.Value == value {
			c.picker.SetSelected(option.Word)
		}
	}
}

func (c *Choice) picked(word string) {
	if c.updating {
		return
	}
	for _, option := range c.options {
		if option.Word == word && option.Value != c.value {
			c.choose(option.Value)
			c.Put(option.Value)
		}
	}
}

// Explanation says what the choice is.
func (c *Choice) Explanation() (title, text string) { return c.label, c.help }

// picker is a list to choose from that tells when it gets the focus.
type picker struct {
	widget.Select
	gained func()
}

func newPicker(picked func(string), gained func()) *picker {
	p := &picker{gained: gained}
	p.OnChanged = picked
	p.ExtendBaseWidget(p)
	return p
}

// FocusGained tells the owner.
func (p *picker) FocusGained() {
	p.Select.FocusGained()
	p.gained()
}

// MinSize leaves the width to the column: a long word is cut at its end.
func (p *picker) MinSize() fyne.Size {
	size := p.Select.MinSize()
	return fyne.NewSize(min(size.Width, 4*size.Height), size.Height)
}
