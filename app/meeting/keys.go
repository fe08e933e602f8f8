package meeting

import "fyne.io/fyne/v2"

// TypedKey takes the keys of the view. The window calls it for keys that nothing else
// takes.
func (v *View) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyEscape, fyne.KeyF11:
		v.around.Leave()
	case fyne.KeyRight, fyne.KeyUp:
		v.dials[v.stepped].slider.step(true)
	case fyne.KeyLeft, fyne.KeyDown:
		v.dials[v.stepped].slider.step(false)
	case fyne.KeyReturn, fyne.KeyEnter:
		v.takeChosen()
	case fyne.KeyDelete:
		v.removeChosen()
	}
}

// TypedRune takes the letters of the view.
func (v *View) TypedRune(letter rune) {
	switch letter {
	case '0':
		v.choose(none)
	case '1', '2', '3', '4', '5', '6', '7', '8', '9':
		v.chooseLetter(int(letter - '1'))
	case 'k', 'K':
		v.keep()
	case 'c', 'C':
		v.compare()
	case 'p', 'P':
		v.proof()
	case 'f', 'F':
		v.stage.turn(first)
	case '+', '=':
		v.stage.zoom(zoomStep)
	case '-', '−':
		v.stage.zoom(1 / zoomStep)
	}
}
