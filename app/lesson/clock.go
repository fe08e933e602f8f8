package lesson

import (
	"time"

	"fyne.io/fyne/v2"
)

// clock calls tick before every picture that the window could draw, some sixty times a
// second, with the time since the last, as long as it runs. It belongs to fyne's
// goroutine and has none of its own.
type clock struct {
	tick  func(time.Duration)
	now   func() time.Time
	start func(func()) (stop func()) // has something done for every picture

	last time.Time
	stop func() // while it runs
}

func newClock(tick func(time.Duration)) *clock {
	return &clock{tick: tick, now: time.Now, start: everyPicture}
}

func everyPicture(do func()) (stop func()) {
	beat := fyne.NewAnimation(time.Second, func(float32) { do() })
	beat.RepeatCount = fyne.AnimationRepeatForever
	beat.Start()
	return beat.Stop
}

// run starts the clock or stops it.
func (c *clock) run(wanted bool) {
	switch {
	case wanted && c.stop == nil:
		c.last = c.now()
		c.stop = c.start(c.beat)
	case !wanted && c.stop != nil:
		c.stop()
		c.stop = nil
	}
}

func (c *clock) beat() {
	const longest = 100 * time.Millisecond // when the window was busy, the motion waits
	if c.stop == nil {
		return // the last beat of a clock that was stopped
	}
	now := c.now()
	passed := min(now.Sub(c.last), longest)
	c.last = now
	c.tick(passed)
}
