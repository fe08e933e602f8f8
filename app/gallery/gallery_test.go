package gallery

import (
	"runtime"
	"strings"
	"testing"
	"time"
)

const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm"><rect width="20" height="20"/></svg>`

// await waits until the gallery tells that something was opened.
func await(t *testing.T, told chan bool) {
	t.Helper()
	select {
	case <-told:
	case <-time.After(time.Minute):
		t.Fatal("nothing was told")
	}
}

func TestOpensEachPageOnce(t *testing.T) {
	told := make(chan bool, 8)
	g := New(func() { told <- true })
	defer g.Close()
	data := []byte(drawing)
	if art, err := g.Art("a.svg", data, 1); art != nil || err != nil || g.Opening() != 1 {
		t.Fatalf("at once: %v, %v, opening %d", art, err, g.Opening())
	}
	await(t, told)
	first, err := g.Art("a.svg", data, 1)
	if err != nil || first == nil || g.Opening() != 0 {
		t.Fatalf("opened: %v, %v, opening %d", first, err, g.Opening())
	}
	if again, _ := g.Art("a.svg", data, 1); again != first {
		t.Error("opened a second time")
	}
	// Read again from the disk, it lies elsewhere in memory.
	g.Art("a.svg", []byte(drawing), 1)
	await(t, told)
	if len(g.slots) != 2 {
		t.Errorf("%d pages are open, want 2", len(g.slots))
	}
}

func TestTellsWhatCannotBeOpened(t *testing.T) {
	told := make(chan bool, 1)
	g := New(func() { told <- true })
	defer g.Close()
	data := []byte("no picture at all")
	g.Art("a.png", data, 1)
	await(t, told)
	if art, err := g.Art("a.png", data, 1); art != nil || err == nil || !strings.Contains(err.Error(), `"a.png"`) {
		t.Errorf("%v, %v", art, err)
	}
}

// While there is much of it, artwork that nobody asked for lately is let go of, and
// what is in use stays.
func TestLetsGoOfWhatIsNotShown(t *testing.T) {
	now := time.Now()
	told := make(chan bool, 8)
	g := New(func() { told <- true })
	g.now = func() time.Time { return now }
	defer g.Close()
	old, used := []byte(drawing), []byte(drawing+" ")
	g.Art("old.svg", old, 1)
	await(t, told)
	now = now.Add(time.Hour)
	g.Art("used.svg", used, 1)
	await(t, told)
	if len(g.slots) != 2 {
		t.Fatalf("%d pages are open while they are small, want 2", len(g.slots))
	}
	large, _ := g.Art("used.svg", used, 1)
	for range 70 { // 70 × 4 MB
		picture := *large.Levels[0]
		picture.Pix = make([]byte, 4<<20)
		large.Levels = append(large.Levels, &picture)
	}
	g.lock.Lock()
	g.tidy()
	g.lock.Unlock()
	if len(g.slots) != 1 {
		t.Errorf("%d pages are open, want only the one in use", len(g.slots))
	}
}

// What the project does not hold any more is let go of, but not at once: a file that is
// just being brought in is not held yet.
func TestForgetsWhatTheProjectDropped(t *testing.T) {
	now := time.Now()
	told := make(chan bool, 8)
	g := New(func() { told <- true })
	g.now = func() time.Time { return now }
	defer g.Close()
	before, after := []byte(drawing), []byte(drawing)
	for _, data := range [][]byte{before, after} {
		g.Art("a.svg", data, 1)
		await(t, told)
	}
	held := func(string) []byte { return after }
	g.Forget(held)
	if len(g.slots) != 2 {
		t.Errorf("%d pages are open, want 2 that were asked for just now", len(g.slots))
	}
	now = now.Add(time.Hour)
	g.Forget(held)
	if art, _ := g.Art("a.svg", after, 1); len(g.slots) != 1 || art == nil {
		t.Errorf("%d pages are open, want the one that the project holds", len(g.slots))
	}
	now = now.Add(time.Hour)
	g.Forget(func(string) []byte { return nil })
	if len(g.slots) != 0 {
		t.Errorf("%d pages are open after the project was closed", len(g.slots))
	}
}

func TestClosedGalleryTellsNothing(t *testing.T) {
	before := runtime.NumGoroutine()
	g := New(func() { t.Error("told after closing") })
	g.lock.Lock() // opening cannot end before closing
	go func() { g.open(t.Context(), &slot{end: func() {}}, "a.svg", []byte(drawing), 1) }()
	g.closed = true
	g.lock.Unlock()
	if art, err := g.Art("b.svg", []byte(drawing), 1); art != nil || err != nil {
		t.Errorf("%v, %v", art, err)
	}
	for range 200 {
		if runtime.NumGoroutine() <= before {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	t.Error("a goroutine is left")
}
