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

func TestNothingIsBegunUnasked(t *testing.T) {
	before := runtime.NumGoroutine()
	if err := Start("", func(func()) { t.Error("the window has something to do") }); err != nil {
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

// A frame that takes longer than the limit is late once, and others before and after are
// not.
func TestLateFramesAreCounted(t *testing.T) {
	var file bytes.Buffer
	frames, end, ended := make(chan func()), make(chan struct{}), make(chan error)
	go func() { ended <- keep(&file, func(do func()) { frames <- do }, 50*time.Millisecond, end) }()
	frame := <-frames
	for _, rest := range []time.Duration{Late / 10, 3 * Late, Late / 10, Late / 10} {
		frame()
		time.Sleep(rest)
	}
	frame()
	time.Sleep(Late) // for the line to be written
	close(end)
	if err := <-ended; err != nil {
		t.Fatal(err)
	}
	beats, err := Read(&file)
	if err != nil {
		t.Fatal(err)
	}
	count, late, longest := 0, 0, time.Duration(0)
	for _, b := range beats {
		count, late, longest = count+b.Frames, late+b.Late, max(longest, b.Longest)
		if b.Goroutines < 2 || b.Heap <= 0 || b.Objects <= 0 {
			t.Errorf("a running test is measured as %+v", b)
		}
	}
	if count != 4 || late == 0 || late == count || longest < 3*Late {
		t.Errorf("of %d frames %d were late, the longest %v; one of 4 took %v", count, late, longest, 3*Late)
	}
}

// While the window hangs, every line says for how long.
func TestHangingWindowIsSeen(t *testing.T) {
	h, start := &heart{}, time.Now()
	if frames, late, longest := h.take(start); frames != 0 || late != 0 || longest != 0 {
		t.Errorf("before the first frame: %d frames, %d late, the longest %v", frames, late, longest)
	}
	h.beat(start)
	for _, waited := range []time.Duration{time.Second, 2 * time.Second} {
		if frames, late, longest := h.take(start.Add(waited)); frames != 0 || late != 0 || longest != waited {
			t.Errorf("after %v: %d frames, %d late, the longest %v", waited, frames, late, longest)
		}
	}
	h.beat(start.Add(3 * time.Second))
	if frames, late, longest := h.take(start.Add(3 * time.Second)); frames != 1 || late != 1 || longest != 3*time.Second {
		t.Errorf("afterwards: %d frames, %d late, the longest %v", frames, late, longest)
	}
	if frames, late, longest := h.take(start.Add(3 * time.Second)); frames != 0 || late != 0 || longest != 0 {
		t.Errorf("at once again: %d frames, %d late, the longest %v", frames, late, longest)
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
