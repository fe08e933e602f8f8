package lesson

import (
	"slices"
	"time"

	"fyne.io/fyne/v2"
)

// show goes to a stage and shows its motion once, or goes on from there.
func (v *View) show(stage int) {
	v.hush()
	v.player.show(v.course, min(max(stage, 0), len(v.course.Stages)-1))
	v.update()
}

// again shows the motion of the stage once more.
func (v *View) again() { v.show(v.player.at.stage) }

// next goes to the stage so many after this one. There is none after the last. Back from
// amid a motion is its beginning.
func (v *View) next(by int) {
	if at := v.player.at; by < 0 && at.share > 0 && at.share < 1 {
		v.scrub(place{stage: at.stage})
		return
	}
	if stage := v.player.at.stage + by; stage >= 0 && stage < len(v.course.Stages) {
		v.show(stage)
		return
	}
	if by < 0 {
		v.scrub(place{})
		return
	}
	v.scrub(place{len(v.course.Stages) - 1, 1})
}

// scrub goes to a place and rests there.
func (v *View) scrub(at place) {
	v.hush()
	v.player.goTo(v.course, at)
	v.update()
}

// step goes a part of a stage on, or back.
func (v *View) step(by float64) {
	whole := v.player.at.whole() + by
	v.scrub(placeAt(min(max(whole, 0), float64(len(v.course.Stages))), len(v.course.Stages)))
}

// play plays the lesson from here to its end, or stops.
func (v *View) play() {
	v.hush()
	if v.player.pace != resting {
		v.player.pace = resting
	} else {
		v.player.play(v.course, through)
	}
	v.update()
}

// faster takes the next speed, or the one before.
func (v *View) faster(by int) {
	at := slices.Index(speeds[:], v.player.speed) + by
	v.setSpeed(speeds[min(max(at, 0), len(speeds)-1)])
}

func (v *View) setSpeed(speed float64) {
	v.player.speed = speed
	v.update()
}

// write has a kind of file written.
func (v *View) write(kind string) {
	v.player.pace = resting
	v.update()
	v.around.Write(kind)
}

// fineStep is the share of a stage that a key goes on.
const fineStep = 0.1

// TypedKey takes the keys of the view. The window calls it for keys that nothing else
// takes.
func (v *View) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyEscape:
		v.around.Leave()
	case fyne.KeyRight, fyne.KeyPageDown:
		v.next(1)
	case fyne.KeyLeft, fyne.KeyPageUp:
		v.next(-1)
	case fyne.KeyUp:
		v.step(fineStep)
	case fyne.KeyDown:
		v.step(-fineStep)
	case fyne.KeyHome:
		v.scrub(place{})
	case fyne.KeyEnd:
		v.scrub(place{len(v.course.Stages) - 1, 1})
	case fyne.KeySpace:
		v.play()
	case fyne.KeyBackspace:
		v.again()
	}
}

// TypedRune takes the letters of the view.
func (v *View) TypedRune(letter rune) {
	switch {
	case letter == '+' || letter == '=':
		v.faster(1)
	case letter == '-' || letter == '−':
		v.faster(-1)
	case letter >= '0' && letter <= '9':
		v.typeDigit(int(letter - '0'))
	case letter == 'r' || letter == 'R':
		v.again()
	case letter == 'a' || letter == 'A':
		v.flat.switchArt()
	case letter == 't' || letter == 'T':
		v.flat.turnOver()
	case letter == 'w' || letter == 'W':
		v.page.words.readOn()
	case letter == 'f' || letter == 'F':
		v.around.FullScreen()
	}
}

// typed is the number of a stage that is being typed.
type typed struct {
	number int
	at     time.Time
}

// betweenDigits is how long after a digit another belongs to the same number.
const betweenDigits = 2 * time.Second

// typeDigit shows the stage of a number of one digit at once, and that of two when the
// second is there. A 0 by itself shows the whole bag.
func (v *View) typeDigit(digit int) {
	now, last := v.clock.now(), len(v.course.Stages)
	number := digit
	if now.Sub(v.typed.at) < betweenDigits && v.typed.number > 0 && 10*v.typed.number+digit <= last {
		number += 10 * v.typed.number
	}
	v.typed = typed{number, now}
	switch {
	case number == 0:
		v.bag.fit()
	case number <= last:
		v.show(number - 1)
	}
}
