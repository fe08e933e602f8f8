package lesson

import "time"

// pace is how the lesson goes on.
type pace int

const (
	resting pace = iota
	once         // to the end of the stage
	through      // to the end of the lesson
)

// How long things take at the usual speed.
const (
	motionTime = 3 * time.Second
	stillTime  = 1200 * time.Millisecond // of a stage in which nothing moves
	holdTime   = 1500 * time.Millisecond // between two stages
)

// player moves a place on through the lesson.
type player struct {
	at     place
	pace   pace
	speed  float64
	waited time.Duration // since the stage has come to its end
}

// speeds are those that can be chosen.
var speeds = [...]float64{0.5, 1, 2}

// goTo goes to a place and rests there.
func (p *player) goTo(c *course, at place) {
	p.at, p.pace, p.waited = c.within(at), resting, 0
}

// show goes to the beginning of a stage and shows its motion; where the lesson is being
// played it goes on from there.
func (p *player) show(c *course, stage int) {
	playing := p.pace
	p.goTo(c, place{stage: stage})
	if playing != through {
		playing = once
	}
	p.play(c, playing)
}

// play begins to move on; at the end of the lesson, from the beginning.
func (p *player) play(c *course, how pace) {
	if p.at.whole() >= float64(len(c.Stages)) {
		p.at = place{}
	}
	p.pace = how
	p.settle(c)
}

// settle stops at what cannot be folded.
func (p *player) settle(c *course) {
	if c.stuck(p.at.stage) {
		p.goTo(c, p.at)
	}
}

// advance moves on by a time. It tells whether the place is another.
func (p *player) advance(c *course, by time.Duration) bool {
	before := p.at
	by = time.Duration(float64(by) * p.speed)
	for by > 0 && p.pace != resting {
		if p.at.share < 1 {
			by = p.move(c, by)
			continue
		}
		if p.pace == once || p.at.stage >= c.last() {
			p.pace = resting
			break
		}
		if rest := holdTime - p.waited; by < rest {
			p.waited += by
			break
		} else {
			by -= rest
		}
		p.at, p.waited = place{stage: p.at.stage + 1}, 0
		p.settle(c)
	}
	return p.at != before
}

// move goes on within the stage and returns the time that is left when it ends.
func (p *player) move(c *course, by time.Duration) (left time.Duration) {
	length := c.length(p.at.stage)
	p.at.share += float64(by) / float64(length)
	if p.at.share < 1 {
		return 0
	}
	left = time.Duration((p.at.share - 1) * float64(length))
	p.at.share, p.waited = 1, 0
	return left
}

// length is how long a stage takes at the usual speed.
func (c *course) length(stage int) time.Duration {
	if c.Stages[stage].Name == "blank" {
		return stillTime
	}
	return motionTime
}
