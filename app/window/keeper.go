package window

import (
	"time"

	"fyne.io/fyne/v2"

	"gussetwright/app/notice"
	"gussetwright/app/words"
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
	closed bool
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

// keep writes the copy away from the window. While one is being written no other is
// begun: what changed meanwhile follows.
func (k *keeper) keep() {
	if k.closed {
		return
	}
	k.since = time.Time{}
	if task := k.window.file.BeginAutosave(); task != nil {
		k.window.saver.run(task.Write, func() { k.kept(task.End()) })
	}
}

func (k *keeper) kept(err error) {
	if k.closed {
		return
	}
	if err != nil && !k.failed {
		k.window.bar.SayAfter(notice.Alarm, words.Error(err), notice.Answer{Label: closeWord()})
	}
	k.failed = err != nil
	if k.failed {
		k.timer.Reset(latest) // the disk may have room again
		return
	}
	k.changed() // perhaps, while the copy was written; if not, nothing is
}

// close removes the copy: the window is closed in good order.
func (k *keeper) close() {
	k.closed = true
	k.timer.Stop()
	k.window.alarm(k.window.file.Close())
}
