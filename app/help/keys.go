package help

import (
	"fyne.io/fyne/v2"
)

// FirstFocus returns what should hold the focus when the page is shown, so that its
// keys work at once.
func (p *Page) FirstFocus() fyne.Focusable { return p.back }

// TypedKey takes the keys of the page: arrows and page keys scroll, Escape leads
// back. It tells whether the key was one of them. The window calls it for keys that
// nothing else takes.
func (p *Page) TypedKey(event *fyne.KeyEvent) bool {
	const share = 0.9 // of what is seen; the rest stays in sight
	line, sight := 3*p.back.MinSize().Height/2, share*p.scroll.Size().Height
	switch event.Name {
	case fyne.KeyEscape:
		p.leave()
	case fyne.KeyDown:
		p.scrollBy(line)
	case fyne.KeyUp:
		p.scrollBy(-line)
	case fyne.KeyPageDown:
		p.scrollBy(sight)
	case fyne.KeyPageUp:
		p.scrollBy(-sight)
	case fyne.KeyHome:
		p.scroll.ScrollToTop()
	case fyne.KeyEnd:
		p.scroll.ScrollToBottom()
	default:
		return false
	}
	return true
}

func (p *Page) scrollBy(distance float32) {
	p.scroll.ScrollToOffset(p.scroll.Offset.AddXY(0, distance))
}
