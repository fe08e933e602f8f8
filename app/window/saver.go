package window

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"gussetwright/app/notice"
)

// saver writes files away from the goroutine of the window, so that a slow disk never
// stops it: one after the other, and whatever else needs the file waits for its turn.
type saver struct {
	bar *notice.Bar
	// run does work on a goroutine of its own, then what follows on that of the window.
	run     func(work, then func())
	remind  func(say func()) (stop func()) // calls say when writing takes long
	busy    bool
	waiting []func()
}

// longSaving is how long writing takes before the window says so.
const longSaving = 500 * time.Millisecond

func newSaver(bar *notice.Bar) *saver {
	return &saver{
		bar: bar,
		run: func(work, then func()) {
			go func() {
				work()
				fyne.Do(then)
			}()
		},
		remind: func(say func()) func() {
			timer := time.AfterFunc(longSaving, func() { fyne.Do(say) })
			return func() { timer.Stop() }
		},
	}
}

// after does what needs the saved file: at once, or once nothing is being written.
func (s *saver) after(do func()) {
	if s.busy {
		s.waiting = append(s.waiting, do)
		return
	}
	do()
}

// write does work and then what follows from it.
func (s *saver) write(work, then func()) {
	s.busy = true
	stop := s.remind(func() {
		if s.busy && !s.bar.Visible() {
			s.bar.Say(notice.Tell, savingText(), notice.Answer{Label: closeWord()})
		}
	})
	s.run(work, func() {
		stop()
		s.busy = false
		if s.bar.Text() == savingText() {
			s.bar.Escape()
		}
		then()
		s.goOn()
	})
}

// goOn does what waited, until some of it writes again.
func (s *saver) goOn() {
	for !s.busy && len(s.waiting) > 0 {
		do := s.waiting[0]
		s.waiting = s.waiting[1:]
		do()
	}
}

func savingText() string { return lang.L("Saving… You can go on working.") }
