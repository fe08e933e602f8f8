// Package pulse writes down, a line a second, how the program fares while it runs:
// goroutines, memory, and how long the frames of the window take. It does nothing unless it
// is asked for.
package pulse

import (
	"fmt"
	"io"
	"os"
	"time"
)

// Variable names the environment variable that names the file to write to.
const Variable = "GUSSETWRIGHT_PULSE"

// Late is how long a frame may take; a slower one can be felt.
const Late = 100 * time.Millisecond

// everySecond is how often a line is written.
const everySecond = time.Second

// Start begins to write lines to a file, made anew, until the program ends. eachFrame makes
// the window do something at every frame from then on. Where path is empty nothing is begun.
// The error says that the file cannot be made.
func Start(path string, eachFrame func(do func())) error {
	if path == "" {
		return nil
	}
	file, err := os.Create(path)
	if err != nil {
		return fmt.Errorf("write the pulse of the program: %w; name a file that can be written in %s", err, Variable)
	}
	go func() {
		_ = keep(file, eachFrame, everySecond, nil) // a full disk ends the lines, which whoever reads them sees
		_ = file.Close()
	}()
	return nil
}

// keep writes a line every interval until end is closed or a line cannot be written.
func keep(w io.Writer, eachFrame func(do func()), interval time.Duration, end <-chan struct{}) error {
	if _, err := fmt.Fprintln(w, heading); err != nil {
		return err
	}
	frames := &heart{}
	eachFrame(func() { frames.beat(time.Now()) })
	ticker := time.NewTicker(interval)
	defer ticker.Stop()
	for {
		select {
		case <-end:
			return nil
		case now := <-ticker.C:
			line := measure()
			line.Time = now
			line.Frames, line.Late, line.Longest = frames.take(now)
			if _, err := fmt.Fprintln(w, line); err != nil {
				return err
			}
		}
	}
}
