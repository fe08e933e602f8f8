//go:build linux

package window

import (
	"bytes"
	"fmt"
	"os"
	"strconv"
	"strings"
	"sync"
	"time"
)

// idleFor is how long the program is left alone before and after a soak.
const idleFor = 5 * time.Second

// notebook notes what the soak did when, and the memory of the program every second.
type notebook struct {
	pid   int
	began time.Time
	spans []span
	end   func() // stops noting memory
	over  bool   // the soak came to its end

	mutex  sync.Mutex
	memory series // of the whole program, in MB
}

// span is a deed and when it was done.
type span struct {
	name     string
	from, to time.Time
	err      error // what the program did otherwise than it was told
}

func newNotebook(pid int) *notebook {
	stop, stopped := make(chan struct{}), make(chan struct{})
	n := &notebook{pid: pid, began: time.Now()}
	n.end = sync.OnceFunc(func() { close(stop); <-stopped })
	go func() {
		defer close(stopped)
		ticker := time.NewTicker(time.Second)
		defer ticker.Stop()
		for {
			select {
			case <-stop:
				return
			case now := <-ticker.C:
				n.weigh(now)
			}
		}
	}()
	return n
}

// weigh notes the memory that the program holds now. A program that has ended holds none
// and is noted by others.
func (n *notebook) weigh(now time.Time) {
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", n.pid))
	if err != nil {
		return
	}
	kilobytes, err := residentOf(status)
	if err != nil {
		return // a process that is ending has no memory any more
	}
	n.mutex.Lock()
	defer n.mutex.Unlock()
	n.memory = append(n.memory, point{now, kilobytes / 1000})
}

// residentOf returns VmRSS of /proc/PID/status, in kilobytes of 1000 bytes. The kernel
// counts 1024 bytes as one kB (proc_pid_status(5)).
func residentOf(status []byte) (float64, error) {
	for line := range bytes.Lines(status) {
		rest, found := strings.CutPrefix(string(line), "VmRSS:")
		if !found {
			continue
		}
		number, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(rest), "kB")), 64)
		return number * 1.024, err
	}
	return 0, fmt.Errorf("no VmRSS in %q", status)
}

// begin notes what is done from now on.
func (n *notebook) begin(name string) {
	n.spans = append(n.spans, span{name: name, from: time.Now()})
}

// done notes that it is done, and how it went.
func (n *notebook) done(err error) {
	last := &n.spans[len(n.spans)-1]
	last.to, last.err = time.Now(), err
}

// finish notes that the soak came to its end.
func (n *notebook) finish() { n.over = true }

// at returns what was done at a time.
func (n *notebook) at(when time.Time) string {
	for _, s := range n.spans {
		if !when.Before(s.from) && (s.to.IsZero() || when.Before(s.to)) {
			return s.name
		}
	}
	return "nothing"
}

// restAt returns when the first or the last rest ended.
func (n *notebook) restAt(name string) (time.Time, bool) {
	for _, s := range n.spans {
		if s.name == name && !s.to.IsZero() {
			return s.to, true
		}
	}
	return time.Time{}, false
}
