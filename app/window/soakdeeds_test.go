//go:build linux

package window

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"time"

	"gussetwright/app/shortcuts"
	"gussetwright/geometry"
	"gussetwright/geometry/bag"
)

// deed is something that a user does, at a step. It returns an error where the program
// did not do what it was told.
type deed struct {
	name string
	step int
	do   func(s *soak) error
}

const stepFiles = shortcuts.Steps

func deeds() []deed {
	return []deed{
		{"type a size", stepBag, (*soak).typeSize},
		{"drag a slider", stepBag, (*soak).dragSlider},
		{"drag a panel edge", stepBag, (*soak).dragEdge},
		{"turn the bag", stepBag, (*soak).turnBag},
		{"lesson", stepBag, (*soak).lesson},
		{"meeting", stepBag, (*soak).meet},
		{"visit the steps", stepBag, (*soak).visitSteps},
		{"import artwork", stepArtwork, (*soak).importArtwork},
		{"export", stepFiles, (*soak).export},
		{"undo and redo", stepBag, (*soak).undoRedo},
		{"zoom", stepBag, (*soak).zoom},
		{"legend", stepBag, (*soak).legend},
		{"measure", stepBag, (*soak).measure},
		{"dark and light", stepBag, (*soak).darken},
		{"text size", stepBag, (*soak).enlargeText},
		{"help and findings", stepBag, (*soak).lookUp},
		{"open again", stepBag, (*soak).openAgain},
	}
}

// sizes are the three sizes of a bag, and between what the soak changes them.
var sizes = []struct {
	name        string
	least, most int
	of          func(bag.Body) float64
}{
	{"width", 160, 240, func(b bag.Body) float64 { return b.Width }},
	{"gusset", 80, 120, func(b bag.Body) float64 { return b.Gusset }},
	{"height", 250, 330, func(b bag.Body) float64 { return b.Height }},
}

func (s *soak) typeSize() error {
	number := s.random.IntN(len(sizes))
	size := sizes[number]
	before := size.of(s.body(s.path))
	value := size.least + s.random.IntN(size.most-size.least)
	if float64(value) == before {
		value++
	}
	s.tap(s.at(s.numberEntry(number), 0.3, 0.5))
	s.press("ctrl+a")
	s.do("type", "--delay", "30", strconv.Itoa(value))
	s.press("Return")
	if got := size.of(s.saved(true).Spec.Body); got != float64(value) {
		return fmt.Errorf("%s %d was typed, %g is saved", size.name, value, got)
	}
	return nil
}

func (s *soak) dragSlider() error {
	number := s.random.IntN(len(sizes))
	size := sizes[number]
	before := size.of(s.body(s.path))
	slide := s.slider(number)
	from, to := 0.3+0.1*s.random.Float32(), 0.4+0.1*s.random.Float32()
	s.pull(s.at(slide, from, 0.5), s.at(slide, to, 0.5))
	if !s.changes(patience) {
		return errors.New("a slider was dragged and nothing changed")
	}
	s.keep("slider")
	if got := size.of(s.saved(false).Spec.Body); got == before {
		return fmt.Errorf("%s stayed %g when its slider was dragged", size.name, got)
	}
	s.press("ctrl+z")
	if got := size.of(s.saved(true).Spec.Body); got != before {
		return fmt.Errorf("%s is %g after a drag was undone, was %g", size.name, got, before)
	}
	return nil
}

func (s *soak) dragEdge() error {
	body := s.body(s.path)
	edge := s.onBlank(geometry.Vec2{X: body.Width, Y: body.Gusset/2 + body.Height/2})
	by := float32(12)
	if body.Width > 200 {
		by = -by
	}
	s.pull(edge, edge.AddXY(by, 0))
	s.keep("edge")
	if !s.changes(patience) {
		return errors.New("a panel edge was dragged and nothing changed")
	}
	if got := s.saved(false).Spec.Body; got.Width == body.Width {
		return fmt.Errorf("width stayed %g when its edge was dragged", body.Width)
	}
	return nil
}

func (s *soak) turnBag() error {
	pane := s.twin.folded
	return s.seen(pane, "the folded bag", func() {
		middle := s.at(pane, 0.5, 0.55)
		for range 3 {
			s.pull(middle, middle.AddXY(120*s.random.Float32()-60, 60*s.random.Float32()-30))
		}
		s.wheel(middle, 3)
		s.press("Right", "Right", "Up", "plus", "minus")
		s.keep("turned")
	})
}

// lesson plays and steps through the folding.
func (s *soak) lesson() error {
	s.press("ctrl+l")
	s.pause()
	err := s.seen(s.twin.pages, "the lesson", func() {
		s.press("space")
		time.Sleep(3 * time.Second)
		s.press("space")
		s.keep("lesson")
		s.press("Right", "Right", "Up", "Down", "Left", "3", "End", "Left", "plus", "minus")
		s.pause()
	})
	s.press("Home", "Escape")
	s.pause()
	return err
}

// meet changes sizes in the meeting view, keeps one and compares.
func (s *soak) meet() error {
	s.press("ctrl+F11")
	s.pause()
	err := s.seen(s.twin.pages, "the meeting view", func() {
		s.press("k", "Right", "Right", "Down", "Right", "c")
		s.pause()
		s.keep("meeting")
		s.press("c", "1", "Delete", "0")
	})
	s.press("Left", "Escape")
	s.pause()
	s.press("Escape")
	s.pause()
	return err
}

func (s *soak) visitSteps() error {
	middle := s.at(s.twin.steps.Page(), 0.5, 0.5)
	for step := 1; step <= shortcuts.Steps; step++ {
		s.press(fmt.Sprintf("ctrl+%d", step))
		s.pause()
		s.wheel(middle, 8)
		s.pause()
		s.keep("step " + strconv.Itoa(step))
		s.wheel(middle, -8)
		s.twin.goToStep(step)
		if !s.alike() {
			return fmt.Errorf("step %d is not chosen", step)
		}
	}
	return nil
}

// importArtwork brings a file onto the bag, changes it on disk, and takes it out again.
func (s *soak) importArtwork() error {
	before := len(s.saved(false).Spec.Artwork)
	name := artworkNames[s.artNo%len(artworkNames)]
	s.artNo++
	s.writeArtwork(name)
	s.press("ctrl+i")
	s.pause()
	s.keep("artwork dialog")
	s.chooseFile(s.dialogs.artwork, name)
	if !s.changes(2 * patience) {
		s.tap(s.dialogs.artwork[cancelWord])
		return fmt.Errorf("%s was chosen and nothing changed", name)
	}
	if got := len(s.saved(false).Spec.Artwork); got != before+1 {
		return fmt.Errorf("%d pieces of artwork after %s was added to %d", got, name, before)
	}
	s.keep("artwork " + name)
	s.writeArtwork(name)
	if !s.changes(2 * patience) {
		return fmt.Errorf("%s changed on disk and was not read again", name)
	}
	time.Sleep(2 * time.Second) // it is opened, and a notice tells of that
	s.press("Escape", "ctrl+z")
	s.pause()
	if got := len(s.saved(false).Spec.Artwork); got != before {
		return fmt.Errorf("%d pieces of artwork after %s was taken out again, were %d", got, name, before)
	}
	return nil
}

// export writes all files into an empty folder.
func (s *soak) export() error {
	old, err := filepath.Glob(filepath.Join(s.files(), "*"))
	if err != nil {
		return err
	}
	for _, path := range old {
		if err := os.RemoveAll(path); err != nil {
			return err
		}
	}
	s.press("ctrl+2", fmt.Sprintf("ctrl+%d", stepFiles)) // it looks anew which files there are
	s.pause()
	button, found := s.shining(s.at(s.twin.files.Button(), 0.1, 0).X)
	if !found {
		return errors.New("no button to write files")
	}
	s.tap(button)
	var last []string
	quiet := time.Now()
	for end := time.Now().Add(4 * patience); time.Now().Before(end); time.Sleep(200 * time.Millisecond) {
		paths, err := filepath.Glob(filepath.Join(s.files(), "*"))
		if err != nil {
			return err
		}
		if len(paths) == 0 || !slices.Equal(paths, last) {
			last, quiet = paths, time.Now()
		}
		if time.Since(quiet) > 3*time.Second {
			break
		}
	}
	s.keep("exported")
	if len(last) < 3 {
		return fmt.Errorf("only %q were written", last)
	}
	return nil
}

// undoRedo makes steps with the keys of an entry and goes back and forth.
func (s *soak) undoRedo() error {
	s.tap(s.at(s.numberEntry(2), 0.3, 0.5))
	direction := "Up"
	if s.body(s.path).Height > 300 {
		direction = "Down"
	}
	for range 12 {
		s.press(direction)
	}
	s.press("Return")
	after := s.saved(true).Spec.Body
	steps := 4 + s.random.IntN(5)
	for range steps {
		s.press("ctrl+z")
	}
	back := s.saved(true).Spec.Body
	for range steps {
		s.press("ctrl+y")
	}
	if again := s.saved(true).Spec.Body; again != after {
		return fmt.Errorf("height %g after %d steps undone and redone, was %g", again.Height, steps, after.Height)
	}
	if back == after {
		return fmt.Errorf("%d steps undone changed nothing", steps)
	}
	return nil
}

func (s *soak) zoom() error {
	middle := s.at(s.twin.blank, 0.5, 0.5)
	err := s.seen(s.twin.blank, "the blank", func() {
		s.press("ctrl+equal", "ctrl+equal")
		s.wheel(middle, -6)
		s.pause()
		s.keep("zoomed")
	})
	s.wheel(middle, 6)
	s.press("ctrl+minus", "ctrl+minus", "ctrl+0")
	return err
}

func (s *soak) legend() error {
	button := s.at(s.button("Legend"), 0.5, 0.5)
	err := s.seen(s.twin.blank, "the legend", func() { s.tap(button) })
	s.pause()
	s.tap(button)
	return err
}

// measure measures across the blank.
func (s *soak) measure() error {
	err := s.seen(s.twin.blank, "the measure", func() {
		s.press("ctrl+m")
		s.tap(s.at(s.twin.blank, 0.3, 0.4))
		s.tap(s.at(s.twin.blank, 0.6, 0.6))
		s.keep("measured")
	})
	s.press("ctrl+m")
	return err
}

// darken changes to the dark theme by the menu, uses it, and comes back.
func (s *soak) darken() error {
	err := s.seen(s.twin.pages, "the theme", func() {
		s.choose("View", "Appearance", "Dark")
		s.pause()
		s.keep("dark")
		s.press("ctrl+equal", "ctrl+3", "ctrl+2", "ctrl+0")
	})
	s.choose("View", "Appearance", "Light")
	s.pause()
	return err
}

func (s *soak) enlargeText() error {
	err := s.seen(s.twin.pages, "the text", func() {
		s.press("ctrl+alt+equal", "ctrl+alt+equal")
		s.pause()
		s.keep("large text")
	})
	s.press("ctrl+alt+minus", "ctrl+alt+minus")
	s.pause()
	return err
}

// lookUp reads the help and walks along the findings.
func (s *soak) lookUp() error {
	err := s.seen(s.twin.pages, "the help", func() {
		s.press("ctrl+h")
		s.pause()
		s.keep("help")
	})
	s.press("Escape")
	s.pause()
	s.press("ctrl+Down", "ctrl+Down", "ctrl+Down", "ctrl+Up")
	return err
}

// openAgain opens the project anew, which forgets the history.
func (s *soak) openAgain() error {
	s.press("ctrl+o")
	s.pause()
	s.keep("open dialog")
	s.chooseFile(s.dialogs.project, filepath.Base(s.path))
	s.pause()
	s.keep("opened again")
	before := s.body(s.path)
	s.press("ctrl+z") // there is nothing to undo any more
	s.pause()
	if s.saved(false).Spec.Body != before {
		return errors.New("there is a step to undo after the project was opened")
	}
	return nil
}
