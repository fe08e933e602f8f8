package window

import (
	"time"

	"fyne.io/fyne/v2"
)

// settle is how long the bag must stay as it is before a copy is kept: long enough
// not to write during a drag, short enough to lose no more than a few seconds.
// latest is how long a copy is put off at most while the bag keeps changing.
const (
	settle = 2 * time.Second
	latest = 10 * time.Second
)

// keeper keeps a copy of unsaved work on disk, for the case of a crash.
type keeper struct {
	window *Window
	timer  *time.Timer
	since  time.Time // of the first change that has no copy yet
	failed bool      // said once that a copy cannot be kept
}

func (w *Window) newKeeper() *keeper {
	k := &keeper{window: w}
	k.timer = time.AfterFunc(time.Hour, func() { fyne.Do(k.keep) })
	k.timer.Stop()
	return k
}

// changed says that the bag is another one now.
func (k *keeper) changed() {
	if k == nil {
		return
	}
	if k.since.IsZero() {
		k.since = time.Now()
	}
	k.timer.Reset(min(settle, max(0, latest-time.Since(k.since))))
}

func (k *keeper) keep() {
	err := k.window.file.Autosave()
	if err != nil && !k.failed {
		k.window.alarm(err)
	}
	k.failed = err != nil
	k.since = time.Time{}
	if k.failed {
		k.timer.Reset(latest) // the disk may have room again
	}
}

// close removes the copy: the window is closed in good order.
func (k *keeper) close() {
	k.timer.Stop()
	k.window.alarm(k.window.file.Close())
}
