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

// Of four frames one takes longer than the limit.
func TestLateFramesAreCounted(t *testing.T) {
	h, now := &heart{}, time.Now()
	h.beat(now)
	for _, took := range []time.Duration{Late / 6, 3 * Late, Late, Late / 6} {
		now = now.Add(took)
		h.beat(now)
	}
	if frames, late, longest := h.take(now); frames != 4 || late != 1 || longest != 3*Late {
		t.Errorf("%d frames, %d late, the longest %v; want 4, 1 and %v", frames, late, longest, 3*Late)
	}
}

// heard is a file that tells of every line.
type heard struct {
	bytes.Buffer
	lines chan struct{}
}

func (h *heard) Write(line []byte) (int, error) {
	defer func() { h.lines <- struct{}{} }()
	return h.Buffer.Write(line)
}

// Every line has the frames since the one before, and how the program fares.
func TestFramesAreWritten(t *testing.T) {
	file := heard{lines: make(chan struct{})}
	frame, end, ended := make(chan func()), make(chan struct{}), make(chan error)
	go func() { ended <- keep(&file, func(do func()) { frame <- do }, time.Millisecond, end) }()
	<-file.lines // the heading
	draw := <-frame
	for range 3 {
		draw()
	}
	<-file.lines
	<-file.lines // began after the frames
	close(end)
	for done := false; !done; {
		select {
		case <-file.lines: // one that was begun already
		case err := <-ended:
			if err != nil {
				t.Fatal(err)
			}
			done = true
		}
	}
	beats, err := Read(&file)
	if err != nil {
		t.Fatal(err)
	}
	frames := 0
	for _, b := range beats {
		frames += b.Frames
		if b.Goroutines < 2 || b.Heap <= 0 || b.Objects <= 0 {
			t.Errorf("a running test is measured as %+v", b)
		}
	}
	if frames != 2 {
		t.Errorf("%d frames were written down, want the 2 that ended", frames)
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
