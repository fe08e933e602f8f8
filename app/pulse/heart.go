package pulse

import (
	"sync"
	"time"
)

// heart keeps how the frames of the window follow each other. In every frame the toolkit
// takes in what the user did and draws what became of it, so the time from one frame to the
// next is how long the window can leave a click without an answer.
type heart struct {
	mutex   sync.Mutex
	last    time.Time // when the last frame began; zero before the first
	frames  int
	late    int
	longest time.Duration
}

// beat notes a frame.
func (h *heart) beat(now time.Time) {
	h.mutex.Lock()
	defer h.mutex.Unlock()
	if !h.last.IsZero() {
		took := now.Sub(h.last)
		h.frames++
		h.longest = max(h.longest, took)
		if took > Late {
			h.late++
		}
	}
	h.last = now
}

// take returns what was kept since it was taken last. A frame that is still going on counts
// into the longest with the time that it has taken by now.
func (h *heart) take(now time.Time) (frames, late int, longest time.Duration) {
	h.mutex.Lock()
	defer h.mutex.Unlock()
	frames, late, longest = h.frames, h.late, h.longest
	if !h.last.IsZero() {
		longest = max(longest, now.Sub(h.last))
	}
	h.frames, h.late, h.longest = 0, 0, 0
	return frames, late, longest
}
