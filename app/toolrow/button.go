package toolrow

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Button is a tool with an icon and a word for what it does. The word stands beside the
// icon, or is said below the button while the pointer rests on it or it has the focus.
type Button struct {
	widget.Button

	word     string
	iconOnly bool // at any width
	row      *row
	waiting  *time.Timer // until the word is said
}

// hintAfter is how long a pointer rests on a button until its word is said.
const hintAfter = 600 * time.Millisecond

// Sign returns a button that shows its icon alone.
func Sign(word string, icon fyne.Resource, tapped func()) *Button {
	return newButton(word, icon, tapped, true)
}

// Named returns a button with icon and word.
func Named(word string, icon fyne.Resource, tapped func()) *Button {
	return newButton(word, icon, tapped, false)
}

func newButton(word string, icon fyne.Resource, tapped func(), iconOnly bool) *Button {
	b := &Button{word: word, iconOnly: iconOnly}
	b.Icon, b.Importance = icon, widget.LowImportance
	b.OnTapped = func() {
		b.hush()
		if tapped != nil {
			tapped()
		}
	}
	if !iconOnly {
		b.Text = word
	}
	b.ExtendBaseWidget(b)
	return b
}

// Word returns what the button does, shown or not.
func (b *Button) Word() string { return b.word }

// SetWord says that the button does something else.
func (b *Button) SetWord(word string) {
	if b.word == word {
		return
	}
	short := b.Text == ""
	b.word = word
	if !short {
		b.SetText(word)
	}
}

// canBeShort tells whether the button has a word beside it that may give way.
func (b *Button) canBeShort() bool { return !b.iconOnly }

// shorten takes the word off the button or puts it back.
func (b *Button) shorten(short bool) {
	text := b.word
	if short || b.iconOnly {
		text = ""
	}
	if b.Text != text {
		b.SetText(text)
	}
}

// wordWidth returns what the word beside the icon takes.
func (b *Button) wordWidth() float32 {
	return fyne.MeasureText(b.word, theme.TextSize(), fyne.TextStyle{Bold: true}).Width + theme.Padding()
}

func (b *Button) fullWidth() float32 {
	if b.iconOnly || b.Text != "" {
		return b.MinSize().Width
	}
	return b.MinSize().Width + b.wordWidth()
}

func (b *Button) leastWidth() float32 {
	if b.Text == "" {
		return b.MinSize().Width
	}
	return b.MinSize().Width - b.wordWidth()
}

// MouseIn is part of desktop.Hoverable.
func (b *Button) MouseIn(ev *desktop.MouseEvent) {
	b.Button.MouseIn(ev)
	b.hush()
	b.waiting = time.AfterFunc(hintAfter, func() { fyne.Do(b.rested) })
}

// rested says the word once the pointer has rested on the button.
func (b *Button) rested() {
	if b.waiting != nil {
		b.hint()
	}
}

// MouseOut is part of desktop.Hoverable.
func (b *Button) MouseOut() {
	b.Button.MouseOut()
	b.hush()
}

// FocusGained is part of fyne.Focusable.
func (b *Button) FocusGained() {
	b.Button.FocusGained()
	b.hint()
}

// FocusLost is part of fyne.Focusable.
func (b *Button) FocusLost() {
	b.Button.FocusLost()
	b.hush()
}

// hint says the word below the button, unless it stands beside the icon.
func (b *Button) hint() {
	if b.row == nil || b.Text != "" || !b.Visible() {
		return
	}
	b.row.hint.Restyle()
	b.row.hint.Say(b.word, func(size fyne.Size) fyne.Position {
		x := b.Position().X + (b.Size().Width-size.Width)/2
		x = max(min(x, b.row.width-size.Width-theme.Padding()), theme.Padding())
		return fyne.NewPos(x, b.Position().Y+b.Size().Height+theme.Padding()/2)
	})
	canvas.Refresh(b) // the window does not know yet of what it has never shown
}

// hush takes the word away, and the wait for it.
func (b *Button) hush() {
	if b.waiting != nil {
		b.waiting.Stop()
		b.waiting = nil
	}
	if b.row != nil {
		b.row.hint.Say("", nil)
	}
}
