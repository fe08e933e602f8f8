package pulse

import (
	"sync"
	"time"
)

// heart asks the window again and again and keeps how long it took to answer.
type heart struct {
	mutex   sync.Mutex
	asked   time.Time // when the question that is open was asked; zero when none is
	answers int
	late    int
	longest time.Duration
}

func newHeart() *heart { return &heart{} }

// beat asks until stopped is closed. The next question waits for the answer to the last
// one, so that a window that is busy does not find a heap of them.
func (h *heart) beat(post func(func()), stopped <-chan struct{}) {
	answered := make(chan struct{}, 1)
	timer := time.NewTimer(rest)
	defer timer.Stop()
	for {
		h.ask(time.Now())
		post(func() {
			h.answer(time.Now())
			answered <- struct{}{}
		})
		select {
		case <-stopped:
			return
		case <-answered:
		}
		timer.Reset(rest)
		select {
		case <-stopped:
			return
		case <-timer.C:
		}
	}
}

func (h *heart) ask(now time.Time) {
	h.mutex.Lock()
	defer h.mutex.Unlock()
	h.asked = now
}

func (h *heart) answer(now time.Time) {
	h.mutex.Lock()
	defer h.mutex.Unlock()
	took := now.Sub(h.asked)
	h.asked = time.Time{}
	h.answers++
	h.longest = max(h.longest, took)
	if took > Late {
		h.late++
	}
}

// take returns what was kept since it was taken last. A question that is still open
// counts into the longest with the time that it has waited by now.
func (h *heart) take(now time.Time) (answers, late int, longest time.Duration) {
	h.mutex.Lock()
	defer h.mutex.Unlock()
	answers, late, longest = h.answers, h.late, h.longest
	if !h.asked.IsZero() {
		longest = max(longest, now.Sub(h.asked))
	}
	h.answers, h.late, h.longest = 0, 0, 0
	return answers, late, longest
}
