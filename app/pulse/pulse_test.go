package pulse

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"
)

// window stands in for the goroutine of the window: what is posted is done in its turn.
type window chan func()

func newWindow(t *testing.T) window {
	w, closed := make(window, 100), make(chan struct{})
	go func() {
		for {
			select {
			case do := <-w:
				do()
			case <-closed:
				return
			}
		}
	}()
	t.Cleanup(func() { close(closed) })
	return w
}

func (w window) post(do func()) { w <- do }

func TestNothingIsBegunUnasked(t *testing.T) {
	before := runtime.NumGoroutine()
	if err := Start("", func(func()) { t.Error("the window is asked") }); err != nil {
		t.Error(err)
	}
	if after := runtime.NumGoroutine(); after != before {
		t.Errorf("%d goroutines, %d before", after, before)
	}
}

func TestFileThatCannotBeMade(t *testing.T) {
	err := Start(filepath.Join(t.TempDir(), "none", "pulse"), func(func()) {})
	if !errors.Is(err, os.ErrNotExist) || !strings.Contains(err.Error(), Variable) {
		t.Errorf("got %v, want that there is no such folder and where it was named", err)
	}
}

// A window that is busy for longer than the limit is late once, and answers before and
// after.
func TestLateAnswersAreCounted(t *testing.T) {
	w := newWindow(t)
	var file bytes.Buffer
	end, ended := make(chan struct{}), make(chan error)
	go func() { ended <- keep(&file, w.post, 50*time.Millisecond, end) }()
	w.post(func() { time.Sleep(3 * Late) })
	time.Sleep(8 * Late)
	close(end)
	if err := <-ended; err != nil {
		t.Fatal(err)
	}
	beats, err := Read(&file)
	if err != nil {
		t.Fatal(err)
	}
	answers, late, longest := 0, 0, time.Duration(0)
	for _, b := range beats {
		answers, late, longest = answers+b.Answers, late+b.Late, max(longest, b.Longest)
		if b.Goroutines < 3 || b.Heap <= 0 || b.Objects <= 0 {
			t.Errorf("a running test is measured as %+v", b)
		}
	}
	if late == 0 || answers <= late || longest < 2*Late {
		t.Errorf("of %d answers %d were late, the longest %v; the window was busy for %v", answers, late, longest, 3*Late)
	}
}

// While the window hangs, every line says for how long.
func TestHangingWindowIsSeen(t *testing.T) {
	h := newHeart()
	start := time.Now()
	h.ask(start)
	for _, waited := range []time.Duration{time.Second, 2 * time.Second} {
		if answers, late, longest := h.take(start.Add(waited)); answers != 0 || late != 0 || longest != waited {
			t.Errorf("after %v: %d answers, %d late, the longest %v", waited, answers, late, longest)
		}
	}
	h.answer(start.Add(3 * time.Second))
	if answers, late, longest := h.take(start.Add(4 * time.Second)); answers != 1 || late != 1 || longest != 3*time.Second {
		t.Errorf("answered: %d answers, %d late, the longest %v", answers, late, longest)
	}
	if answers, late, longest := h.take(start.Add(5 * time.Second)); answers != 0 || late != 0 || longest != 0 {
		t.Errorf("a second later: %d answers, %d late, the longest %v", answers, late, longest)
	}
}

func TestLinesAreReadBack(t *testing.T) {
	want := []Beat{
		{time.UnixMilli(1_700_000_000_123), 31, 5 << 20, 4 << 20, 70_000, 61, 1, 123_456 * time.Microsecond},
		{time.UnixMilli(1_700_000_001_124), 32, 6 << 20, 4 << 20, 71_000, 60, 0, 17 * time.Millisecond},
	}
	text := heading + "\n" + want[0].String() + "\n" + want[1].String() + "\n"
	got, err := Read(strings.NewReader(text + want[0].String()[:20])) // killed while writing
	if err != nil || len(got) != 2 || got[0] != want[0] || got[1] != want[1] {
		t.Errorf("got %v, %v; want %v", got, err, want)
	}
	if _, err := Read(strings.NewReader(text + "now 3 4\n")); err == nil || !strings.Contains(err.Error(), "now 3 4") {
		t.Errorf("a broken line gives %v", err)
	}
}
