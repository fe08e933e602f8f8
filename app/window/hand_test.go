//go:build linux

package window

import (
	"strconv"
	"time"

	"fyne.io/fyne/v2"
)

func (s *screen) click(at fyne.Position) {
	s.t.Helper()
	s.tap(at)
	s.settle()
}

// tap clicks without waiting for what comes of it.
func (s *screen) tap(at fyne.Position) {
	s.t.Helper()
	s.move(at)
	s.do("click", "1")
}

func (s *screen) drag(from, to fyne.Position) {
	s.t.Helper()
	s.pull(from, to)
	s.settle()
}

// pull drags without waiting for what comes of it.
func (s *screen) pull(from, to fyne.Position) {
	s.t.Helper()
	s.move(from)
	s.do("mousedown", "1")
	const steps = 8
	for step := 1; step <= steps; step++ {
		share := float32(step) / steps
		s.move(fyne.NewPos(from.X+share*(to.X-from.X), from.Y+share*(to.Y-from.Y)))
		time.Sleep(30 * time.Millisecond)
	}
	s.do("mouseup", "1")
}

func (s *screen) move(to fyne.Position) {
	s.t.Helper()
	s.do("mousemove", strconv.Itoa(int(to.X+0.5)), strconv.Itoa(int(to.Y+0.5)))
	time.Sleep(80 * time.Millisecond)
}

func (s *screen) keys(keys string) {
	s.t.Helper()
	s.do("key", keys)
	s.settle()
}

func (s *screen) typed(text string) {
	s.t.Helper()
	s.do("type", "--delay", "30", text)
	s.settle()
}

// save saves by key and waits until the title says so.
func (s *screen) save() {
	s.t.Helper()
	s.keys("ctrl+s")
	s.waitForTitle("demo ")
}
