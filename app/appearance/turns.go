package appearance

import (
	"time"

	"fyne.io/fyne/v2"
)

// Turns has a change of the look made again and again, at most once between two pictures of
// the window. Laying everything out in another look takes half of the time that a picture
// may take, and drawing it the other half: a key that is held down would bring more than
// one of them into a picture.
type Turns struct {
	change      func()
	afterDrawn  func(do func()) // does something once the window has been drawn
	busy, again bool
}

// NewTurns returns turns for a change, of which none has been taken.
func NewTurns(change func()) *Turns { return &Turns{change: change, afterDrawn: AfterDrawn} }

// Ask has the change made once the window has been drawn after the last, however often it
// is asked for meanwhile. It is called on fyne's goroutine.
func (t *Turns) Ask() {
	if t.busy {
		t.again = true
		return
	}
	t.busy = true
	fyne.Do(t.take)
}

func (t *Turns) take() {
	t.again = false
	t.change()
	t.afterDrawn(func() {
		t.busy = false
		if t.again {
			t.Ask()
		}
	})
}

// AfterDrawn does something once the window has been drawn, on fyne's goroutine. Animations
// move ahead of every picture, so that one lies between two moves.
func AfterDrawn(do func()) {
	moves := 0
	var wait *fyne.Animation
	wait = fyne.NewAnimation(time.Second, func(part float32) {
		moves++
		if moves == 2 || part == 1 { // in tests an animation makes its last move alone
			wait.Stop()
			do()
		}
	})
	wait.Start()
}
