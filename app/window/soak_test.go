//go:build linux

package window

import (
	"flag"
	"fmt"
	"image/png"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"gussetwright/app/project"
	"gussetwright/app/pulse"
)

var (
	soakFor    = flag.Duration("soak", 0, "how long TestSoak uses the program, such as 30m; it is skipped without")
	soakKeep   = flag.String("keep", "", "a folder in which TestSoak leaves pictures of the screen")
	soakStrict = flag.Bool("strict", false, "TestSoak fails where a frame of the window took longer than 100 ms; the machine must be quiet")
)

// The names of the times at which the program is left alone.
const restBegin, restEnd = "at rest before", "at rest after"

// seed makes every soak do the same things in the same order.
const seed = 1907

// soak is the real program in long use, and what was noted meanwhile.
type soak struct {
	*screen
	path    string
	random  *rand.Rand
	notes   *notebook
	dialogs dialogs
	kept    map[string]time.Time // when a picture of the name was kept last
	artNo   int                  // counts the artwork that was imported
}

// TestSoak uses the real program for as long as -soak says: sizes typed and dragged, the
// bag turned and folded, artwork imported, files exported, steps undone, over and over in
// an order drawn from a fixed seed. Then memory and goroutines must be where they were.
func TestSoak(t *testing.T) {
	if *soakFor == 0 {
		t.Skip("go run ./cmd/task soak uses the program for half an hour")
	}
	program := buildProgram(t, "gussetwright")
	s := &soak{screen: newScreen(t), path: demoFile(t), random: rand.New(rand.NewPCG(seed, seed)), kept: map[string]time.Time{}}
	t.Setenv("HOME", s.home) // so that dialogs of the twin list the same places
	pulseFile := filepath.Join(s.home, "pulse")
	s.more = []string{pulse.Variable + "=" + pulseFile}
	s.start(program, s.path)
	s.makeTwin(s.copyForTwin())
	s.notes = newNotebook(s.program.Process.Pid)
	defer func() { s.notes.report(t, pulseFile, *soakStrict) }() // of a soak that broke off, too
	s.findPlaces()
	s.rest(restBegin)
	s.useUntil(time.Now().Add(*soakFor))
	s.rest(restEnd)
	s.keep("end")
	s.quit()
	s.notes.finish()
}

// rest leaves the program alone, so that it can be seen idle.
func (s *soak) rest(name string) {
	s.level(stepBag)
	s.notes.begin(name)
	time.Sleep(idleFor)
	s.notes.done(nil)
}

// useUntil does everything once in a drawn order, again and again.
func (s *soak) useUntil(end time.Time) {
	all := deeds()
	for {
		for _, i := range s.random.Perm(len(all)) {
			if time.Now().After(end) {
				return
			}
			s.level(all[i].step)
			s.notes.begin(all[i].name)
			err := all[i].do(s)
			if err != nil {
				s.t.Logf("%s: %v", all[i].name, err)
				s.keepNow("missed-" + all[i].name)
			}
			s.notes.done(err)
		}
	}
}

// level brings the program to a step with everything saved and the twin to the same.
func (s *soak) level(step int) {
	s.t.Helper()
	s.notes.begin("between")
	s.press("Escape", "Escape", "ctrl+s", fmt.Sprintf("ctrl+%d", step), "ctrl+0")
	s.waitForTitle("demo ")
	s.twin.open(s.copyForTwin())
	s.twin.goToStep(step)
	s.waitFor("the window to look like its twin", func() bool {
		if !s.alike() {
			// A notice that came late stays where a pane or an entry has the focus and
			// takes Escape for itself. Its button is at the right end, below the menu.
			s.press("Escape")
			s.tap(fyne.NewPos(screenWidth-36, s.menuHeight+25))
			return false
		}
		return true
	})
	s.notes.done(nil)
}

// alike tells whether the window shows the step that its twin shows at the same place,
// as it does while nothing lies over it, and text and window are as large.
func (s *soak) alike() bool {
	s.t.Helper()
	want := markTop(s.twin.window.Canvas().Capture()) + int(s.menuHeight)
	got := markTop(s.picture())
	return got >= want-2 && got <= want+2
}

// copyForTwin copies the project for the twin, which leaves the file itself to the program.
func (s *soak) copyForTwin() string {
	s.t.Helper()
	folder := filepath.Join(s.home, "twin")
	if err := os.MkdirAll(folder, 0o755); err != nil {
		s.t.Fatal(err)
	}
	data, err := os.ReadFile(s.path)
	if err != nil {
		s.t.Fatal(err)
	}
	path := filepath.Join(folder, filepath.Base(s.path))
	if err := os.WriteFile(path, data, 0o644); err != nil {
		s.t.Fatal(err)
	}
	return path
}

// pause gives the program the time that a person takes to look.
func (s *soak) pause() { time.Sleep(500 * time.Millisecond) }

// press presses keys one after the other without waiting for what comes of it.
func (s *soak) press(keys ...string) {
	s.t.Helper()
	for _, key := range keys {
		s.do("key", key)
		time.Sleep(60 * time.Millisecond)
	}
}

// saved saves and returns the project that is then on disk. Where changed, it waits for
// the program to say that there is something to save.
func (s *soak) saved(changed bool) project.Project {
	s.t.Helper()
	if changed {
		s.waitForTitle("demo*")
	}
	s.press("ctrl+s")
	s.waitForTitle("demo ")
	p, err := project.Open(s.path)
	if err != nil {
		s.t.Fatal(err)
	}
	return p
}

// changes tells whether the program says within a while that there is something to save.
func (s *soak) changes(within time.Duration) bool {
	for end := time.Now().Add(within); time.Now().Before(end); time.Sleep(100 * time.Millisecond) {
		if strings.HasPrefix(s.read("getwindowname", s.window), "demo*") {
			return true
		}
	}
	return false
}

// keep keeps a picture of the screen for a person to look at: one of each name, and
// another after a while.
func (s *soak) keep(name string) {
	const again = 10 * time.Minute
	if last, found := s.kept[name]; found && time.Since(last) < again {
		return
	}
	s.keepNow(name)
}

func (s *soak) keepNow(name string) {
	s.t.Helper()
	s.kept[name] = time.Now()
	if *soakKeep == "" {
		return
	}
	if err := os.MkdirAll(*soakKeep, 0o755); err != nil {
		s.t.Fatal(err)
	}
	file := fmt.Sprintf("%04.0fs-%s.png", time.Since(s.notes.began).Seconds(), strings.ReplaceAll(name, " ", "-"))
	out, err := os.Create(filepath.Join(*soakKeep, file))
	if err != nil {
		s.t.Fatal(err)
	}
	defer out.Close()
	if err := png.Encode(out, s.picture()); err != nil {
		s.t.Fatal(err)
	}
}
