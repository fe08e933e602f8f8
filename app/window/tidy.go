package window

import (
	"runtime/debug"
	"time"
)

// pause is how long nothing must change before memory that is not used any more goes
// back to the system. Pictures come and go by megabytes while the user works.
const pause = 4 * time.Second

// tidy gives memory back in a pause of the work, once for each.
type tidy struct{ timer *time.Timer }

func newTidy() *tidy { return &tidy{time.AfterFunc(pause, debug.FreeOSMemory)} }

// changed says that the user is at work.
func (t *tidy) changed() { t.timer.Reset(pause) }

func (t *tidy) close() { t.timer.Stop() }
